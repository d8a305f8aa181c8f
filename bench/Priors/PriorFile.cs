using System.Text.Json;
using System.Text.Json.Nodes;
using SecondShore.Engine.Season;

namespace SecondShore.Bench.Priors;

/// <summary>Writes the learned file: where it comes from, how well it does on lakes left out, and the numbers.</summary>
internal static class PriorFile
{
    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, NewLine = "\n" };

    public static void Write(string path, PriorLake[] lakes, PriorNumbers numbers, PriorFigures figures)
    {
        JsonObject file = new()
        {
            ["learned"] = new JsonObject
            {
                ["by"] = "bench season-priors",
                ["on"] = DateTime.UtcNow.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
                ["lakes"] = new JsonArray([.. lakes.Select(l => new JsonObject
                {
                    ["name"] = l.Name,
                    ["latitude_deg"] = Math.Round(l.Lake.Site.Position.LatDeg, 3),
                    ["longitude_deg"] = Math.Round(l.Lake.Site.Position.LonDeg, 3),
                })]),
                ["regions"] = lakes.Select(l => l.Region).Distinct().Count(),
                ["seasons"] = lakes.Sum(l => l.Used.Length),
                ["seed"] = PriorLearner.Seed,
                ["held_to_start_by"] = figures.Ridge,
                ["spreads_widened_by"] = figures.Wider,
                ["left_out"] = Of(figures.LeftOut),
                ["in_sample"] = Of(figures.InSample),
                ["interval80_holds_steps"] = Math.Round(figures.Coverage.Steps, 3),
                ["interval80_holds_dates"] = Math.Round(figures.Coverage.Dates, 3),
                ["last_step_without_a_region_won_at_most"] = Math.Round(figures.LargestLastGain, 4),
            },
            ["numbers"] = new JsonObject([.. PriorNumbers.All.Select(n => KeyValuePair.Create(n.Name, (JsonNode?)JsonValue.Create(Round(n.Of(numbers)))))]),
        };
        File.WriteAllText(path, file.ToJsonString(Written) + "\n");
    }

    private static JsonObject Of(ScoreMedians m) => new()
    {
        ["temperature_k"] = Math.Round(m.TemperatureK, 2),
        ["surface_k"] = Math.Round(m.SurfaceK, 2),
        ["thermocline_m"] = Math.Round(m.ThermoclineM, 2),
        ["overturn_d"] = Math.Round(m.OverturnD, 1),
    };

    // Four figures: more would be noise that changes with every run.
    private static double Round(double value)
    {
        if (value == 0) return 0;
        double scale = Math.Pow(10, Math.Max(0, 3 - (int)Math.Floor(Math.Log10(Math.Abs(value)))));
        return Math.Round(value * scale) / scale;
    }
}

/// <summary>How well numbers do, and how they were made.</summary>
/// <param name="LeftOut">Medians over regions, each scored with numbers learned without it.</param>
/// <param name="InSample">The same with the numbers of all.</param>
/// <param name="Coverage">What 80 % intervals hold of regions left out.</param>
/// <param name="Wider">Factor on the spreads that made them hold it.</param>
/// <param name="Ridge">Weight of the start.</param>
/// <param name="LargestLastGain">Largest share of its cost that the last step of a descent without a region still won.</param>
internal sealed record PriorFigures(ScoreMedians LeftOut, ScoreMedians InSample, CoverageShares Coverage, double Wider, double Ridge, double LargestLastGain);

/// <summary>Medians over regions of blind errors.</summary>
internal sealed record ScoreMedians(double TemperatureK, double SurfaceK, double ThermoclineM, double OverturnD);

/// <summary>Shares of steps and of dates that 80 % intervals hold, mean over regions, and the step's mean ranked probability score, m.</summary>
internal sealed record CoverageShares(double Steps, double Dates, double StepCrpsM);
