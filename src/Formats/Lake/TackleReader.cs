using System.Text.Json;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads tackle.json.</summary>
internal static class TackleReader
{
    private static readonly double LargestDragAreaM2 = 0.002;

    public static TackleDocument? Read(string file, byte[] bytes, ProblemLog log)
    {
        using JsonDocument? json = JsonFields.Parse(file, bytes, log);
        if (json is null) return null;
        JsonFields root = new(file, "", json.RootElement, log);
        List<JigItem> jigs = [];
        foreach (JsonFields item in root.Objects("jigs"))
        {
            double? weightG = item.Number(Quantity.Mass, 0.5, 1000, "weight");
            if (weightG is double g) jigs.Add(Jig(item, g, jigs.Count));
            else item.Warn("a jig needs weight_g or weight_oz, 0.5 to 1000 g; it is not used.");
        }

        return new TackleDocument
        {
            Jigs = jigs,
            Trailers = [.. root.Objects("trailers").Select(Trailer)],
            Lines = [.. root.Objects("lines").Select(Line)],
            Rods = [.. root.Objects("rods").Select(Rod)],
        };
    }

    private static JigItem Jig(JsonFields item, double weightG, int before) => new()
    {
        Name = Named(item, "Jig", before),
        WeightG = weightG,
        Material = item.Text("material"),
        DensityKgPerM3 = item.Number(Quantity.Number, 2000, 20000, "density_kg_m3"),
        Head = item.Text("head"),
        Skirt = item.Text("skirt"),
        SkirtDragAreaM2 = item.Number(Quantity.Area, 0, LargestDragAreaM2, "skirt_drag_area"),
        Trailer = item.Text("trailer"),
        Colour = item.Text("colour", "color"),
        Count = CountOf(item),
        Observations = [.. item.Objects("observations").Select(JigObservationReader.Read).OfType<JigObservationItem>()],
        Note = item.Text("note"),
    };

    private static TrailerItem Trailer(JsonFields item, int index) => new()
    {
        Name = Named(item, "Trailer", index),
        Kind = item.Text("kind"),
        LengthM = item.Number(Quantity.Length, 0.001, 1, "length"),
        WeightG = item.Number(Quantity.Mass, 0, 100, "weight"),
        DragAreaM2 = item.Number(Quantity.Area, 0, LargestDragAreaM2, "drag_area"),
        DensityKgPerM3 = item.Number(Quantity.Number, 700, 2000, "density_kg_m3"),
        Colour = item.Text("colour", "color"),
        Count = CountOf(item),
        Note = item.Text("note"),
    };

    private static LineItem Line(JsonFields item, int index) => new()
    {
        Name = Named(item, "Line", index),
        Kind = item.Text("kind"),
        DiameterM = item.Number(Quantity.Length, 0.00005, 0.002, "diameter"),
        IsDiameterMeasured = item.Flag("diameter_measured"),
        StrengthN = item.Number(Quantity.Strength, 4, 1400, "strength"),
        DensityKgPerM3 = item.Number(Quantity.Number, 500, 8000, "density_kg_m3"),
        ModulusPa = item.Number(Quantity.Modulus, 1e8, 3e11, "modulus"),
        LengthM = item.Number(Quantity.Length, 1, 2000, "length"),
        Note = item.Text("note"),
    };

    private static RodItem Rod(JsonFields item, int index) => new()
    {
        Name = Named(item, "Rod", index),
        LengthM = item.Number(Quantity.Length, 0.3, 6, "length"),
        LightestLureG = item.Number(Quantity.Mass, 0, 2000, "lure_min"),
        HeaviestLureG = item.Number(Quantity.Mass, 0, 2000, "lure_max"),
        Power = item.Text("power"),
        FishingLine = item.Text("line"),
        TipHeightM = item.Number(Quantity.Length, 0, 6, "tip_height"),
        Note = item.Text("note"),
    };

    private static int? CountOf(JsonFields item) => item.Number(Quantity.Number, 0, 100000, "count") is double n ? (int)n : null;

    private static string Named(JsonFields item, string kind, int before)
    {
        string name = item.Text("name");
        return name.Length > 0 ? name : $"{kind} {before + 1}";
    }
}
