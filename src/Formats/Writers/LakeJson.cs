using System.Text.Json;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;

namespace SecondShore.Formats.Writers;

/// <summary>Text of lake.json. Reading it back gives the same values.</summary>
public static class LakeJson
{
    /// <summary>Text of a new lake.json. To change one that is there, use <see cref="LakeFolderEdits"/>, which keeps unknown keys.</summary>
    public static string Lake(LakeDocument lake)
    {
        ArgumentNullException.ThrowIfNull(lake);
        return JsonText.Write(json =>
        {
            json.WriteStartObject();
            json.Known("name", lake.Name);
            if (lake.IsInvented) json.WriteBoolean("invented", true);
            Place(json, lake.Position);
            json.Known("elevation_m", lake.ElevationM);
            json.Known("time_zone", lake.TimeZoneId);
            json.Known("local_standard_utc_offset_h", lake.StandardOffsetH);
            json.Known("surface_area_m2", lake.SurfaceAreaM2);
            json.Known("max_depth_m", lake.MaxDepthM);
            json.Known("mean_depth_m", lake.MeanDepthM);
            json.Known("secchi_m", lake.SecchiM);
            json.Known("light_extinction_per_m", lake.LightExtinctionPerM);
            if (lake.IsReservoir is bool reservoir) json.WriteBoolean("reservoir", reservoir);
            json.Known("outlet_depth_m", lake.OutletDepthM);
            if (lake.Dam is GeoPoint)
            {
                json.WriteStartObject("dam");
                Place(json, lake.Dam);
                json.WriteEndObject();
            }

            json.Known("clarity", lake.Clarity is { } clarity ? WaterClarities.WordOf(clarity) : null);
            json.Known("wind_measurement_height_m", lake.WindHeightM);
            if (lake.MeasuredUntil is DateTimeOffset until) json.WriteString("measured_until", CsvText.TimeText(until));
            if (lake.Units is DisplayUnits units) json.WriteString("units", units == DisplayUnits.UsCustomary ? "us" : "metric");
            Ramps(json, lake.Ramps);
            NoWake(json, lake.NoWakeAreas);
            Marks(json, lake.Marks);
            Measured(json, lake);
            Survey(json, lake);
            Fitted(json, lake.Fitted);
            json.WriteEndObject();
        });
    }

    /// <summary>Writes the value of the key <c>ramps</c>, <c>marks</c> and so on into an open object.</summary>
    internal static void Fitted(Utf8JsonWriter json, FittedLake fitted)
    {
        if (fitted.Parameters.Count == 0 && fitted.Bias is null) return;
        json.WriteStartObject("fitted");
        List(json, "parameters", fitted.Parameters, parameter =>
        {
            json.WriteString("name", parameter.Name);
            json.WriteNumber("p10", parameter.P10);
            json.WriteNumber("p50", parameter.P50);
            json.WriteNumber("p90", parameter.P90);
        });
        if (fitted.Bias is { } bias)
        {
            json.WriteStartObject("bias");
            Numbers(json, "depths_m", bias.DepthM);
            Numbers(json, "days_of_year", bias.Days);
            Numbers(json, "kelvin", bias.OffK);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Measured(Utf8JsonWriter json, LakeDocument lake)
    {
        Named(json, "wind_stations", lake.WindStations, station => station.Name, station =>
        {
            Place(json, station.Place);
            json.Known("height_m", station.HeightM);
            json.Known("over", station.OnLand switch { true => "land", false => "water", null => null });
        });
        Named(json, "moorings", lake.Moorings, mooring => mooring.Name, mooring => Place(json, mooring.Place));
    }

    private static void Named<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> items, Func<T, string> key, Action<T> body)
    {
        if (items.Count == 0) return;
        json.WriteStartObject(name);
        foreach (T item in items)
        {
            json.WriteStartObject(key(item));
            body(item);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Numbers(Utf8JsonWriter json, string name, IReadOnlyList<double> values)
    {
        json.WriteStartArray(name);
        foreach (double value in values) json.WriteNumberValue(value);
        json.WriteEndArray();
    }

    internal static void Marks(Utf8JsonWriter json, IReadOnlyList<PlaceMark> marks) => List(json, "marks", marks, mark =>
    {
        json.WriteString("kind", mark.Kind switch
        {
            PlaceMarkKind.Arm => "arm",
            PlaceMarkKind.MustVisit => "must_visit",
            PlaceMarkKind.NeverVisit => "never_visit",
            _ => "spot",
        });
        json.WriteString("name", mark.Name);
        Place(json, mark.Place);
        json.WriteNumber("radius_m", mark.RadiusM);
        json.Known("note", mark.Note);
    });

    internal static void Ramps(Utf8JsonWriter json, IReadOnlyList<RampMark> ramps) => List(json, "ramps", ramps, ramp =>
    {
        json.WriteString("name", ramp.Name);
        Place(json, ramp.Place);
        json.Known("toe_below_full_pool_m", ramp.ToeBelowFullPoolM);
        json.Known("note", ramp.Note);
    });

    internal static void NoWake(Utf8JsonWriter json, IReadOnlyList<NoWakeArea> areas) => List(json, "no_wake_areas", areas, area =>
    {
        json.WriteString("name", area.Name);
        List(json, "outline", area.Outline, corner => Place(json, corner));
    });

    private static void Survey(Utf8JsonWriter json, LakeDocument lake)
    {
        if (lake.SurveyOptions.Count == 0 && lake.SurveyBelowFullPoolM is null) return;
        json.WriteStartObject("survey");
        bool common = lake.SurveyOptions.TryGetValue("", out SurveyOptions? all);
        if (common) Options(json, all!);
        if (!common || all!.BelowFullPoolM is null) json.Known("below_full_pool_m", lake.SurveyBelowFullPoolM);
        List(json, "files", [.. lake.SurveyOptions.Where(o => o.Key.Length > 0)], entry =>
        {
            json.WriteString("file", entry.Key);
            Options(json, entry.Value);
        });
        json.WriteEndObject();
    }

    internal static void Options(Utf8JsonWriter json, SurveyOptions options)
    {
        json.Known("unit", options.Unit switch
        {
            DepthUnit.Metres => "m",
            DepthUnit.Feet => "ft",
            DepthUnit.Fathoms => "fathoms",
            DepthUnit.Decimetres => "dm",
            DepthUnit.Centimetres => "cm",
            DepthUnit.Millimetres => "mm",
            _ => null
        });
        json.Known("sense", options.Sense switch { DepthSense.Depth => "depth", DepthSense.NegativeDepth => "negative_depth", DepthSense.Elevation => "elevation", _ => null });
        json.Known("crs", options.Crs);
        json.Known("x_column", options.XColumn);
        json.Known("y_column", options.YColumn);
        json.Known("depth_column", options.DepthColumn);
        json.Known("separator", options.Separator switch { ',' => "comma", ';' => "semicolon", '\t' => "tab", ' ' => "blank", _ => null });
        if (options.DecimalComma is bool comma) json.WriteBoolean("decimal_comma", comma);
        json.Known("below_full_pool_m", options.BelowFullPoolM);
        json.Known("surface_elevation_m", options.SurfaceElevationM);
        json.Known("transducer_depth_m", options.TransducerDepthM);
        json.Known("angles", options.Angles switch { AngleForm.DegreeMinutes => "degree_minutes", AngleForm.Plain => "plain", _ => null });
        if (options.Swapped is bool swapped) json.WriteBoolean("swapped", swapped);
        if (options.WestPositive is bool west) json.WriteBoolean("west_positive", west);
        if (options.UseRest is bool rest) json.WriteBoolean("use_rest", rest);
        if (options.Area is { Count: 4 } area)
        {
            json.WriteStartArray("area");
            foreach (double edge in area) json.WriteNumberValue(edge);
            json.WriteEndArray();
        }

        json.Known("why", options.Why);
        if (!options.Use) json.WriteBoolean("use", false);
    }

    private static void Place(Utf8JsonWriter json, GeoPoint? place)
    {
        if (place is not GeoPoint p) return;
        json.WriteNumber("latitude_deg", p.LatDeg);
        json.WriteNumber("longitude_deg", p.LonDeg);
    }

    internal static void List<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> items, Action<T> body)
    {
        if (items.Count == 0) return;
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            json.WriteStartObject();
            body(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
