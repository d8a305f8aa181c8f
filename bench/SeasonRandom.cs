using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;
using SecondShore.Engine.Tests.Season;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Random lakes, weathers and starts: none may give anything but finite water, and heat must close.</summary>
internal sealed class SeasonRandom : IFigure
{
    private const int Lakes = 10000, Days = 20;

    public string Name => "season-random";

    public string Claim => "10,000 random lakes, weathers and starts, twenty days each: no NaN, heat closes to 1e-9";

    public FigureMargin Margin => FigureMargin.Exact;

    public IEnumerable<Measured> Measure()
    {
        int failed = 0;
        Parallel.For(0, Lakes, i =>
        {
            SeededRandom random = new((ulong)i, 4242);
            double areaM2 = Math.Pow(10, random.NextDouble(3.5, 8.5)), depthM = random.NextDouble(1.5, 90), latDeg = random.NextDouble(-65, 65);
            MixingStructure structure = random.NextInt(2) == 0 ? MixingStructure.EnergyBudget : MixingStructure.EddyDiffusivity;
            if (RandomLake.Holds(areaM2, depthM, latDeg, (ulong)i, structure, Days)) return;
            Interlocked.Increment(ref failed);
            Console.Error.WriteLine(FormattableString.Invariant($"lake {i}: {areaM2:0} m2, {depthM:0.0} m deep, latitude {latDeg:0.0}, {structure}"));
        });
        yield return new Measured("season-random-failed", failed, "lakes", $"of {Lakes}, {Days} days each, must be 0");
    }
}
