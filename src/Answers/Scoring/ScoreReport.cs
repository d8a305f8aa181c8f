using System.Text.Json;
using System.Text.Json.Serialization;

namespace SecondShore.Answers.Scoring;

/// <summary>Figures of one lake in one mode; a figure the data do not allow is null, and <see cref="Why"/> says so.</summary>
public sealed record LakeScore
{
    /// <summary>Folder name.</summary>
    public required string Lake { get; init; }

    /// <summary>Mode, in small letters.</summary>
    public required string Mode { get; init; }

    /// <summary>First lake of its region: lakes that share their weather count as one.</summary>
    public string Region { get; init; } = "";

    /// <summary>Whether the priors were learned from a lake of this region: then the figure is no evidence of how well they do elsewhere.</summary>
    public bool InSample { get; init; }

    /// <summary>Root mean square error of temperature at every measured depth and time, K.</summary>
    public double? TemperatureRmseC { get; init; }

    /// <summary>The same for readings no deeper than 1.1 m, K.</summary>
    public double? SurfaceRmseC { get; init; }

    /// <summary>Mean absolute error of the thermocline's depth, m.</summary>
    public double? ThermoclineMaeM { get; init; }

    /// <summary>Mean distance of the date of overturn from the measured interval, days.</summary>
    public double? OverturnMaeDays { get; init; }

    /// <summary>Share of what was measured that lay in the 80 % interval, 0 to 1.</summary>
    public double? Coverage80 { get; init; }

    /// <summary>The same of thermoclines alone; null where the mode does not tell them apart.</summary>
    public double? Coverage80Thermocline { get; init; }

    /// <summary>The same of dates of overturn alone.</summary>
    public double? Coverage80Overturn { get; init; }

    /// <summary>Continuous ranked probability score of the thermocline's depth 7, 14 and 30 days ahead, m.</summary>
    public double? CrpsThermoclineM { get; init; }

    /// <summary>The same for the date of overturn, days.</summary>
    public double? CrpsOverturnDays { get; init; }

    /// <summary>1 - CRPS over that of climatology, thermocline depth 14 days ahead.</summary>
    public double? SkillVsClimatology { get; init; }

    /// <summary>The same against the last thermocline seen.</summary>
    public double? SkillVsPersistence { get; init; }

    /// <summary>1 - CRPS over that of climatology, date of overturn.</summary>
    public double? OverturnSkillVsClimatology { get; init; }

    /// <summary>Readings scored.</summary>
    public int N { get; init; }

    /// <summary>Why a figure is missing.</summary>
    public IReadOnlyList<string> Why { get; init; } = [];
}

/// <summary>Medians over lakes, or over regions of the means of their lakes.</summary>
public sealed record ScoreSummary
{
    /// <summary>Mode.</summary>
    public required string Mode { get; init; }

    /// <summary>What the medians are over: lakes or regions.</summary>
    public string Over { get; init; } = "lakes";

    /// <inheritdoc cref="LakeScore.TemperatureRmseC"/>
    public double? TemperatureRmseC { get; init; }

    /// <inheritdoc cref="LakeScore.SurfaceRmseC"/>
    public double? SurfaceRmseC { get; init; }

    /// <inheritdoc cref="LakeScore.ThermoclineMaeM"/>
    public double? ThermoclineMaeM { get; init; }

    /// <inheritdoc cref="LakeScore.OverturnMaeDays"/>
    public double? OverturnMaeDays { get; init; }

    /// <inheritdoc cref="LakeScore.Coverage80"/>
    public double? Coverage80 { get; init; }

    /// <inheritdoc cref="LakeScore.Coverage80Thermocline"/>
    public double? Coverage80Thermocline { get; init; }

    /// <inheritdoc cref="LakeScore.Coverage80Overturn"/>
    public double? Coverage80Overturn { get; init; }

    /// <inheritdoc cref="LakeScore.CrpsThermoclineM"/>
    public double? CrpsThermoclineM { get; init; }

    /// <inheritdoc cref="LakeScore.CrpsOverturnDays"/>
    public double? CrpsOverturnDays { get; init; }

    /// <inheritdoc cref="LakeScore.SkillVsClimatology"/>
    public double? SkillVsClimatology { get; init; }

    /// <summary>Readings scored.</summary>
    public int N { get; init; }

    /// <summary>Medians of the lakes of one mode.</summary>
    public static ScoreSummary Of(string mode, IReadOnlyList<LakeScore> lakes) => new()
    {
        Mode = mode,
        TemperatureRmseC = Median(lakes.Select(l => l.TemperatureRmseC)),
        SurfaceRmseC = Median(lakes.Select(l => l.SurfaceRmseC)),
        ThermoclineMaeM = Median(lakes.Select(l => l.ThermoclineMaeM)),
        OverturnMaeDays = Median(lakes.Select(l => l.OverturnMaeDays)),
        Coverage80 = Median(lakes.Select(l => l.Coverage80)),
        Coverage80Thermocline = Median(lakes.Select(l => l.Coverage80Thermocline)),
        Coverage80Overturn = Median(lakes.Select(l => l.Coverage80Overturn)),
        CrpsThermoclineM = Median(lakes.Select(l => l.CrpsThermoclineM)),
        CrpsOverturnDays = Median(lakes.Select(l => l.CrpsOverturnDays)),
        SkillVsClimatology = Median(lakes.Select(l => l.SkillVsClimatology)),
        N = lakes.Sum(l => l.N),
    };

    /// <summary>Medians over regions of one mode.</summary>
    public static ScoreSummary OfRegions(string mode, IReadOnlyList<LakeScore> lakes)
    {
        IGrouping<string, LakeScore>[] regions = [.. lakes.GroupBy(l => l.Region)];
        double? Over(Func<LakeScore, double?> of) => Median(regions.Select(r => r.Select(of).Where(v => v is not null).DefaultIfEmpty(null).Average()));
        return new ScoreSummary
        {
            Mode = mode,
            Over = "regions",
            TemperatureRmseC = Over(l => l.TemperatureRmseC),
            SurfaceRmseC = Over(l => l.SurfaceRmseC),
            ThermoclineMaeM = Over(l => l.ThermoclineMaeM),
            OverturnMaeDays = Over(l => l.OverturnMaeDays),
            Coverage80 = Over(l => l.Coverage80),
            Coverage80Thermocline = Over(l => l.Coverage80Thermocline),
            Coverage80Overturn = Over(l => l.Coverage80Overturn),
            CrpsThermoclineM = Over(l => l.CrpsThermoclineM),
            CrpsOverturnDays = Over(l => l.CrpsOverturnDays),
            SkillVsClimatology = Over(l => l.SkillVsClimatology),
            N = lakes.Sum(l => l.N),
        };
    }

    private static double? Median(IEnumerable<double?> values)
    {
        double[] there = [.. values.Where(v => v is { } d && double.IsFinite(d)).Select(v => v!.Value).Order()];
        int n = there.Length;
        return n == 0 ? null : n % 2 == 1 ? there[n / 2] : 0.5 * (there[(n / 2) - 1] + there[n / 2]);
    }
}

/// <summary>Scores of lakes and their medians; <c>ToJson</c> writes the form scripts rely on.</summary>
/// <param name="Lakes">Each lake in each mode.</param>
/// <param name="Summary">Medians: over lakes, then over regions.</param>
public sealed record ScoreReport(IReadOnlyList<LakeScore> Lakes, IReadOnlyList<ScoreSummary> Summary)
{
    /// <summary>The report as JSON.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, ScoreJson.Default.ScoreReport);
}

/// <summary>Source-generated JSON of scores.</summary>
[JsonSourceGenerationOptions(WriteIndented = true, PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower)]
[JsonSerializable(typeof(ScoreReport))]
internal sealed partial class ScoreJson : JsonSerializerContext;
