using System.Diagnostics;
using SecondShore.Engine.Rig;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Time of the whole table of weights and of a whole choice.</summary>
internal sealed class RigTableFigure : IFigure
{
    public string Name => "rig-table";

    public string Claim => "Time of a table of weights (7 depths by 6 speeds, each with its doubt) and of one choice, on one core.";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure()
    {
        FishingLine line = FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 15);
        RigConditions conditions = new() { DepthM = 9, SpeedMps = 0.27, DepthSdM = 0.5, SpeedSdMps = 0.04, CurrentSdMps = 0.02 };
        double[] depths = [3, 4.5, 6, 9, 12, 15, 18], speeds = [0.13, 0.2, 0.25, 0.3, 0.36, 0.45];
        double table = Best(() => RigTables.Weights(Jig.Usual(0.014), line, conditions, HoldRule.Usual, depths, speeds, StandardWeight.Ounces));
        double choice = Best(() => RigChooser.Choose(RigChooser.Standard(Jig.Usual(0.014), StandardWeight.Ounces), line, conditions, HoldRule.Usual));
        yield return new Measured("rig-table", table * 1e3, "ms", "100 ms wanted in the browser, which takes 3 to 8 times as long");
        yield return new Measured("rig-choice", choice * 1e3, "ms", "200 samples of the doubt, three jigs worked out");

        double quick = WeightNeed.QuickKg(Jig.Usual(0.014), line, conditions, HoldRule.Usual);
        double sampled = Math.Max(
            WeightNeed.LeastKg(Jig.Usual(0.014), line, conditions, HoldRule.Usual, 4000).Quantile(0.9),
            LeastMass.MassKg(Jig.Usual(0.014), conditions.Tow(Jig.Usual(0.014), line), 1, 0.3));
        yield return new Measured("rig-quick-need", quick / sampled, "ratio", "4000 samples of the doubt", FigureMargin.Within(0.005));
    }

    private static double Best<T>(Func<T> work)
    {
        double best = double.PositiveInfinity;
        for (int i = 0; i < 15; i++)
        {
            Stopwatch watch = Stopwatch.StartNew();
            T made = work();
            best = Math.Min(best, watch.Elapsed.TotalSeconds);
            GC.KeepAlive(made);
        }

        return best;
    }
}
