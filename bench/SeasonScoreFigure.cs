using SecondShore.Answers.Scoring;
using SecondShore.Bench.Priors;
using SecondShore.Engine.Season;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Accuracy on the measured lakes beside the repository (or in the folder SECONDSHORE_SHARED names).</summary>
internal sealed class SeasonScoreFigure(ScoreMode mode) : IFigure
{
    public string Name => "season-" + ScoreRunner.ModeWord(mode);

    public string Claim => $"error on measured lakes, mode {ScoreRunner.ModeWord(mode)}, each lake and the median";

    public FigureMargin Margin => new(0.02, 0.01);

    public string LeftOut => "each lake's region, when the numbers it is scored with were learned" + mode switch
    {
        ScoreMode.Fit => "; and the second half of the years",
        ScoreMode.Few => "; and every reading after the few",
        ScoreMode.Hindcast => "; and all that came after the day of each forecast",
        ScoreMode.Bare => "; and all but position, height, area and depth",
        ScoreMode.BareDepthUnknown => "; and all but position, height and area",
        _ => "",
    };

    public IEnumerable<Measured> Measure()
    {
        Dictionary<string, PriorNumbers> without = PriorFile.ReadLeftOut(SeasonPriors.LeftOutPath);
        ScoredLake[] lakes = [.. MeasuredLakes.Read().Select(ScoredLakeReader.From).Select(l => l with { Numbers = without.GetValueOrDefault(l.Name) })];
        if (lakes.Length == 0) yield break;
        ScoreReport report = ScoreRunner.Run(lakes, mode);
        foreach (LakeScore lake in report.Lakes)
        {
            foreach (Measured m in Lines(lake.Lake, lake.InSample ? "in sample" : "left out", lake.TemperatureRmseC, lake.SurfaceRmseC, lake.ThermoclineMaeM, lake.OverturnMaeDays, lake.Coverage80, lake.CrpsThermoclineM, lake.CrpsOverturnDays, lake.SkillVsClimatology, lake.Coverage80Thermocline, lake.Coverage80Overturn))
                yield return m;
        }

        string seen = $"{report.Lakes.Count(l => l.InSample)} of {report.Lakes.Count} lakes in sample, the others left out";
        foreach (ScoreSummary s in report.Summary)
        {
            foreach (Measured m in Lines("median-" + s.Over, seen, s.TemperatureRmseC, s.SurfaceRmseC, s.ThermoclineMaeM, s.OverturnMaeDays, s.Coverage80, s.CrpsThermoclineM, s.CrpsOverturnDays, s.SkillVsClimatology, s.Coverage80Thermocline, s.Coverage80Overturn))
                yield return m;
        }
    }

    private IEnumerable<Measured> Lines(string lake, string sample, params double?[] values)
    {
        (string Key, string Unit)[] keys =
        [
            ("temperature-rmse", "K"), ("surface-rmse", "K"), ("thermocline-mae", "m"), ("overturn-mae", "d"),
            ("coverage80", "share"), ("crps-thermocline", "m"), ("crps-overturn", "d"), ("skill-vs-climatology", "share"),
            ("coverage80-thermocline", "share"), ("coverage80-overturn", "share"),
        ];
        for (int i = 0; i < keys.Length; i++)
            if (values[i] is { } v) yield return new Measured($"{Name}-{lake}-{keys[i].Key}", v, keys[i].Unit, sample, OnPage: lake.StartsWith("median", StringComparison.Ordinal));
    }
}
