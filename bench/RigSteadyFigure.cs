using System.Diagnostics;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Rig;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Steady tows solved a second, on one core.</summary>
internal sealed class RigSteadyFigure : IFigure
{
    public string Name => "rig-steady";

    public string Claim => "Steady tows of mixed rigs solved per second on one core; at least 20,000 wanted.";

    public FigureMargin Margin => FigureMargin.OfValue(0.2);

    public IEnumerable<Measured> Measure()
    {
        TowCase[] tows = RigBenchCases.Tows(4000);
        double check = 0;
        double best = double.PositiveInfinity;
        long before = 0, allocated = 0;
        for (int round = 0; round < 12; round++)
        {
            before = GC.GetAllocatedBytesForCurrentThread();
            // Processor time: neighbours on the machine do not count.
            TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime;
            foreach (TowCase tow in tows) check += TowSolver.Solve(tow).TensionN;
            best = Math.Min(best, (Process.GetCurrentProcess().TotalProcessorTime - start).TotalSeconds);
            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        // The same at a hundred times finer steps, for what the speed costs in accuracy.
        double worst = 0;
        for (int i = 0; i < 400; i++)
        {
            TowResult usual = TowSolver.Solve(tows[i]), fine = TowSolver.Solve(tows[i], 2000);
            worst = Math.Max(worst, Math.Abs(usual.WeightOnBottomShare - fine.WeightOnBottomShare));
        }

        yield return new Measured("rig-steady", tows.Length / best, "solutions/s", "20000 wanted");
        yield return new Measured("rig-steady-allocated", (double)allocated / tows.Length, "bytes/solution", "0 wanted", FigureMargin.Exact);
        yield return new Measured("rig-steady-error", worst, "share of weight on bottom, worst of 400", "100 times finer steps", FigureMargin.OfValue(0.05));
        if (double.IsNaN(check)) throw new InvalidOperationException("A tow gave no number.");
    }
}

/// <summary>Mixed rigs for the figures: in use, not at the bounds.</summary>
internal static class RigBenchCases
{
    public static TowCase[] Tows(int count)
    {
        SeededRandom random = new(7);
        TowCase[] tows = new TowCase[count];
        CurrentProfile sheared = CurrentProfile.Of([0, 3, 8, 20], [0.01, 0.05, -0.04, 0.1], [0, 0.03, 0.03, -0.05]);
        for (int i = 0; i < count; i++)
        {
            double depth = random.NextDouble(3, 20);
            tows[i] = new TowCase
            {
                DepthM = depth,
                LineOutM = depth * random.NextDouble(1.5, 3.5),
                SpeedMps = random.NextDouble(0.1, 0.5),
                TipHeightM = random.NextDouble(0, 1.2),
                Current = i % 2 == 0 ? sheared : null,
                JigWeightN = random.NextDouble(0.06, 0.35),
                JigDragAreaM2 = random.NextDouble(2e-4, 6e-4),
                FrictionCoefficient = random.NextDouble(0.3, 0.7),
                LineDiameterM = random.NextDouble(2e-4, 4e-4),
                LineDensityKgPerM3 = i % 3 == 0 ? 975 : 1780,
                LineModulusPa = 2e9,
                LineDragFactor = 1,
                WaterDensityKgPerM3 = 999,
                ViscosityM2PerS = 1.1e-6,
            };
        }

        return tows;
    }
}
