using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using SecondShore.Answers.Scoring;
using SecondShore.Engine.Season;

namespace SecondShore.Bench.Priors;

/// <summary>Writes the learned numbers of the oxygen demand, and from which lakes they are.</summary>
internal static class OxygenFile
{
    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, NewLine = "\n" };

    public static void Write(string path, ScoredLake[] lakes, OxygenNumbers numbers)
    {
        JsonObject file = new()
        {
            ["learned"] = new JsonObject
            {
                ["by"] = "bench season-oxygen",
                ["on"] = DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                ["lakes"] = new JsonArray([.. lakes.Select(l => (JsonNode?)JsonValue.Create(l.Name))]),
            },
            ["numbers"] = new JsonObject([.. OxygenNumbers.All.Select(n =>
                KeyValuePair.Create(n.Name, (JsonNode?)JsonValue.Create(Math.Round(n.Of(numbers), 4))))]),
        };
        File.WriteAllText(path, file.ToJsonString(Written) + "\n");
    }
}
