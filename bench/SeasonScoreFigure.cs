using SecondShore.Answers.Scoring;
using SecondShore.Formats.Lake;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Accuracy on the measured lakes beside the repository (or in the folder SECONDSHORE_SHARED names).</summary>
internal sealed class SeasonScoreFigure(ScoreMode mode) : IFigure
{
    public string Name => "season-" + ScoreRunner.ModeWord(mode);

    public string Claim => $"error on measured lakes, mode {ScoreRunner.ModeWord(mode)}, each lake and the median";

    public FigureMargin Margin => new(0.02, 0.01);

    public string LeftOut => mode switch
    {
        ScoreMode.Fit => "the second half of the years; each lake says whether the priors saw it",
        ScoreMode.Few => "every reading after the few; each lake says whether the priors saw it",
        ScoreMode.Hindcast => "all that came after the day of each forecast; each lake says whether the priors saw it",
        _ => "lakes that say so; the priors saw the others, for which season-priors tells what holds",
    };

    public IEnumerable<Measured> Measure()
    {
        LakeFolder[] lakes = MeasuredLakes.Read();
        if (lakes.Length == 0) yield break;
        ScoreReport report = ScoreRunner.Run(lakes, mode);
        foreach (LakeScore lake in report.Lakes)
        {
            foreach (Measured m in Lines(lake.Lake, lake.InSample ? "in sample" : "left out", lake.TemperatureRmseC, lake.SurfaceRmseC, lake.ThermoclineMaeM, lake.OverturnMaeDays, lake.Coverage80, lake.CrpsThermoclineM, lake.CrpsOverturnDays, lake.SkillVsClimatology))
                yield return m;
        }

        // What the priors saw is no evidence: the headline is of regions they never saw; season-priors gives it for those they did.
        string seen = $"{report.Lakes.Count(l => l.InSample)} of {report.Lakes.Count} lakes in sample";
        foreach (ScoreSummary s in report.Summary)
        {
            foreach (Measured m in Lines("median-" + s.Over, seen, s.TemperatureRmseC, s.SurfaceRmseC, s.ThermoclineMaeM, s.OverturnMaeDays, s.Coverage80, s.CrpsThermoclineM, s.CrpsOverturnDays, s.SkillVsClimatology))
                yield return m;
        }
    }

    private IEnumerable<Measured> Lines(string lake, string sample, params double?[] values)
    {
        (string Key, string Unit)[] keys =
        [
            ("temperature-rmse", "K"), ("surface-rmse", "K"), ("thermocline-mae", "m"), ("overturn-mae", "d"),
            ("coverage80", "share"), ("crps-thermocline", "m"), ("crps-overturn", "d"), ("skill-vs-climatology", "share"),
        ];
        for (int i = 0; i < keys.Length; i++)
            if (values[i] is { } v) yield return new Measured($"{Name}-{lake}-{keys[i].Key}", v, keys[i].Unit, sample, OnPage: lake.StartsWith("median", StringComparison.Ordinal));
    }
}
