using System.Globalization;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Scoring.Chains;
using SecondShore.Engine.Motion;
using SecondShore.TestKit.Figures;
using SecondShore.Words;

namespace SecondShore.Bench;

/// <summary>The interface model against measured chains of thermometers, site by site and window by window.</summary>
internal sealed class MotionChains : IFigure
{
    public string Name => "motion-chains";

    public string Claim => "displacement of the thermocline against measured chains: correlation, amplitude, error over that of no tilt, coverage";

    public FigureMargin Margin => new(0.02, 0.02);

    public IEnumerable<Measured> Measure()
    {
        foreach (MeasuredChainLake measured in MeasuredChains.Read())
        {
            foreach (Measured m in Of(measured, measured.Lake, "")) yield return m;
            if (measured.Lake.Folder.Winds.Count < 2) continue;
            foreach (Measured m in Of(measured, measured.OneWind, "-one-wind")) yield return m;
        }
    }

    private IEnumerable<Measured> Of(MeasuredChainLake measured, PreparedLake lake, string winds)
    {
        WindScoreQuestion question = new() { From = measured.From, To = measured.To };
        WindScore score = WindScorer.Run(lake, measured.Chains, question, UnitSystem.Metric);
        string name = $"{Name}-{measured.Name}{winds}";
        foreach (WindScoreWindow window in score.Windows)
        {
            string when = window.From.ToString("MMdd", CultureInfo.InvariantCulture);
            foreach (WindScoreSite site in window.Sites)
            {
                if (site.Why is { } why) Console.Error.WriteLine($"{name} {when} {site.Site}: {why}.");
                string against = FormattableString.Invariant($"{site.IsothermC:0.0} degC, {site.UpperM:0.0} m upper, own period {window.PeriodH:0.0} h");
                foreach (Measured m in Lines($"{name}-{when}-{site.Site}", site.Whole, against)) yield return m;
                foreach (Measured m in Lines($"{name}-{when}-{site.Site}-band", site.Band, "periods of 5 to 60 h")) yield return m;
            }
        }

        if (score.Summary is not { } all) yield break;
        string of = $"median over {all.Count} sites and windows, {score.Winds} winds";
        yield return new Measured($"{name}-r", all.R, "", of);
        yield return new Measured($"{name}-amplitude", all.AmplitudeRatio, "ratio", of);
        yield return new Measured($"{name}-of-none", all.OfNone, "ratio", of + "; error over that of no tilt");
        yield return new Measured($"{name}-worst-of-none", all.WorstOfNone, "ratio", "the worst of the same");
        yield return new Measured($"{name}-coverage80", all.Coverage80, "share", "all hours");
    }

    private static IEnumerable<Measured> Lines(string name, CourseFigures? f, string against)
    {
        if (f is null) yield break;
        yield return new Measured(name + "-r", f.R, "", against, OnPage: false);
        yield return new Measured(name + "-amplitude", f.AmplitudeRatio, "ratio", against, OnPage: false);
        yield return new Measured(name + "-lag", f.LagH, "h", against, OnPage: false);
        yield return new Measured(name + "-rmse", f.RmseM, "m", FormattableString.Invariant($"none {f.NoneM:0.00} m"), OnPage: false);
        if (f.Coverage80 is { } covered) yield return new Measured(name + "-coverage80", covered, "share", $"{f.Hours} hours", OnPage: false);
    }
}
