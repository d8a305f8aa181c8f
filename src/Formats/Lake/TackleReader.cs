using System.Text.Json;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads tackle.json.</summary>
internal static class TackleReader
{
    public static TackleDocument? Read(string file, byte[] bytes, ProblemLog log)
    {
        using JsonDocument? json = JsonFields.Parse(file, bytes, log);
        if (json is null) return null;
        JsonFields root = new(file, "", json.RootElement, log);
        List<JigItem> jigs = [];
        foreach (JsonFields item in root.Objects("jigs"))
        {
            double? weightG = item.Number(Quantity.Mass, 0.1, 2000, "weight");
            if (weightG is double g) jigs.Add(Jig(item, g, jigs.Count));
            else item.Warn("a jig needs weight_g or weight_oz above 0; it is not used.");
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
        DensityKgPerM3 = item.Number(Quantity.Number, 1000, 25000, "density_kg_m3"),
        Head = item.Text("head"),
        Skirt = item.Text("skirt"),
        Colour = item.Text("colour", "color"),
        Count = CountOf(item),
        Note = item.Text("note"),
    };

    private static TrailerItem Trailer(JsonFields item, int index) => new()
    {
        Name = Named(item, "Trailer", index),
        Kind = item.Text("kind"),
        LengthM = item.Number(Quantity.Length, 0.001, 1, "length"),
        WeightG = item.Number(Quantity.Mass, 0, 500, "weight"),
        Colour = item.Text("colour", "color"),
        Count = CountOf(item),
        Note = item.Text("note"),
    };

    private static LineItem Line(JsonFields item, int index) => new()
    {
        Name = Named(item, "Line", index),
        Kind = item.Text("kind"),
        DiameterM = item.Number(Quantity.Length, 0.00002, 0.005, "diameter"),
        StrengthN = item.Number(Quantity.Strength, 1, 5000, "strength"),
        DensityKgPerM3 = item.Number(Quantity.Number, 500, 3000, "density_kg_m3"),
        LengthM = item.Number(Quantity.Length, 1, 2000, "length"),
        Note = item.Text("note"),
    };

    private static RodItem Rod(JsonFields item, int index) => new()
    {
        Name = Named(item, "Rod", index),
        LengthM = item.Number(Quantity.Length, 0.3, 6, "length"),
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
