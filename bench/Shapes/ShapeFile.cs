using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using SecondShore.Engine.Basin.Shape;

namespace SecondShore.Bench.Shapes;

/// <summary>Writes the learned file: where it comes from, how well it does on lakes left out, and the numbers.</summary>
internal static class ShapeFile
{
    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, NewLine = "\n" };

    public static void Write(
        string path, ShapeNumbers numbers, IReadOnlyList<ShapeLake> lakes, IReadOnlyList<ShapeLake> made,
        IReadOnlyList<DeepestDepths> depths,
        IReadOnlyList<ShapeScore> measured, IReadOnlyList<ShapeScore> ofMade)
    {
        JsonObject file = new()
        {
            ["learned"] = new JsonObject
            {
                ["by"] = "bench basin-shape",
                ["on"] = DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                ["seed"] = ShapeLearner.Seed,
                ["lakes"] = Names(lakes.Select(l => l.Name)),
                ["made_valleys"] = Names(made.Where(l => l.Kind == BasinKind.Dammed).Select(l => l.Name)),
                ["depths_by_area_of"] = Names(depths.Select(d => d.Name)),
                ["left_out"] = Of(measured),
                ["left_out_made"] = Of(ofMade),
            },
            ["natural"] = Numbers(numbers.Natural),
            ["dammed"] = Numbers(numbers.Dammed),
        };
        File.WriteAllText(path, file.ToJsonString(Written) + "\n");
    }

    private static JsonArray Names(IEnumerable<string> names) => new([.. names.Select(n => (JsonNode?)JsonValue.Create(n))]);

    private static JsonObject Of(IReadOnlyList<ShapeScore> scores) => new()
    {
        ["error_of_a_cones"] = Round(ShapePrint.Median(scores, s => s.Ratio)),
        ["within_2sd"] = Round(scores.Average(s => s.Held)),
        ["within_2sd_nothing_told"] = Round(scores.Average(s => s.HeldUnknown)),
        ["area_off"] = Round(ShapePrint.Median(scores, s => s.Area)),
        ["sounded_of_evenly"] = Round(ShapePrint.Median(scores, s => s.Sounded)),
    };

    private static JsonObject Numbers(BasinNumbers numbers) =>
        new([.. BasinNumbers.All.Select(n => KeyValuePair.Create(n.Name, (JsonNode?)JsonValue.Create(Round(n.Of(numbers)))))]);

    private static double Round(double value) => Math.Round(value, 4);
}
