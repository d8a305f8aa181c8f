using System.Text.Json;
using SecondShore.Formats.Lake;

namespace SecondShore.Formats.Writers;

/// <summary>Text of tackle.json. Reading it back gives the same values, to the last bit.</summary>
public static class TackleJson
{
    /// <summary>The text.</summary>
    public static string Text(TackleDocument tackle)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        return JsonText.Write(json =>
        {
            json.WriteStartObject();
            LakeJson.List(json, "jigs", tackle.Jigs, jig => Jig(json, jig));
            LakeJson.List(json, "trailers", tackle.Trailers, trailer => Trailer(json, trailer));
            LakeJson.List(json, "lines", tackle.Lines, line => Line(json, line));
            LakeJson.List(json, "rods", tackle.Rods, rod => Rod(json, rod));
            json.WriteEndObject();
        });
    }

    private static void Jig(Utf8JsonWriter json, JigItem jig)
    {
        json.WriteString("name", jig.Name);
        json.WriteNumber("weight_g", jig.WeightG);
        json.Known("material", jig.Material);
        json.Known("density_kg_m3", jig.DensityKgPerM3);
        json.Known("head", jig.Head);
        json.Known("skirt", jig.Skirt);
        json.Known("skirt_drag_area_m2", jig.SkirtDragAreaM2);
        json.Known("trailer", jig.Trailer);
        json.Known("colour", jig.Colour);
        json.Known("count", jig.Count);
        LakeJson.List(json, "observations", jig.Observations, seen => Observation(json, seen));
        json.Known("note", jig.Note);
    }

    private static void Observation(Utf8JsonWriter json, JigObservationItem seen)
    {
        json.WriteString("kind", seen.Kind);
        json.WriteNumber("depth_m", seen.DepthM);
        json.Known("speed_mps", seen.SpeedMps);
        json.Known("line_out_m", seen.LineOutM);
        json.Known("current_mps", seen.CurrentMps);
        json.Known("seconds", seen.Seconds);
        json.Known("line", seen.LineName);
        json.Known("time", seen.Time);
        json.Known("note", seen.Note);
    }

    private static void Trailer(Utf8JsonWriter json, TrailerItem trailer)
    {
        json.WriteString("name", trailer.Name);
        json.Known("kind", trailer.Kind);
        json.Known("length_m", trailer.LengthM);
        json.Known("weight_g", trailer.WeightG);
        json.Known("drag_area_m2", trailer.DragAreaM2);
        json.Known("density_kg_m3", trailer.DensityKgPerM3);
        json.Known("colour", trailer.Colour);
        json.Known("count", trailer.Count);
        json.Known("note", trailer.Note);
    }

    private static void Line(Utf8JsonWriter json, LineItem line)
    {
        json.WriteString("name", line.Name);
        json.Known("kind", line.Kind);
        json.Known("diameter_m", line.DiameterM);
        if (line.IsDiameterMeasured is bool measured) json.WriteBoolean("diameter_measured", measured);
        json.Known("strength_n", line.StrengthN);
        json.Known("density_kg_m3", line.DensityKgPerM3);
        json.Known("modulus_pa", line.ModulusPa);
        json.Known("length_m", line.LengthM);
        json.Known("note", line.Note);
    }

    private static void Rod(Utf8JsonWriter json, RodItem rod)
    {
        json.WriteString("name", rod.Name);
        json.Known("length_m", rod.LengthM);
        json.Known("lure_min_g", rod.LightestLureG);
        json.Known("lure_max_g", rod.HeaviestLureG);
        json.Known("power", rod.Power);
        json.Known("line", rod.FishingLine);
        json.Known("tip_height_m", rod.TipHeightM);
        json.Known("note", rod.Note);
    }
}
