using System.Diagnostics;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Motion.Layers;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Cell updates of the interface model a second, against a plain C loop of the same scheme and the memory's bandwidth.</summary>
internal sealed class MotionCells : IFigure
{
    // 9 doubles read and 3 written for each cell and step when nothing stays in the cache.
    private const double BytesPerUpdate = 96;

    public string Name => "motion-cells";

    public string Claim => "cell updates a second against C (-O3 -march=native) and measured memory bandwidth, target 0.8 of C";

    public FigureMargin Margin => FigureMargin.OfValue(0.15);

    public IEnumerable<Measured> Measure()
    {
        using MotionNative? native = MotionNative.TryLoad();
        foreach ((string size, int side, int steps) in new[] { ("lake", 200, 1500), ("large", 1600, 25) })
            foreach (Measured measured in OfSize(native, size, side, steps)) yield return measured;
    }

    private static IEnumerable<Measured> OfSize(MotionNative? native, string size, int side, int steps)
    {
        InterfaceModel[] models = [Model(side), Model(side), Model(side), Model(side)];
        double updates = (double)side * side * steps;
        (double ours, double theirs) = Race(() => Managed(models[0], steps), native is null ? null : () => Native(native, models[1], side, steps));
        if (native is not null && models[0].Fields.OffsetM[models[0].Grid.Entry(side / 3, side / 2)] is var a
            && models[1].Fields.OffsetM[models[1].Grid.Entry(side / 3, side / 2)] is var b && !(Math.Abs(a - b) <= 1e-9 * Math.Abs(a)))
            throw new InvalidOperationException($"The two loops disagree: {a} and {b}.");
        yield return new Measured($"motion-cells-{size}", updates / ours / 1e6, "million/s", $"one core, {side} x {side} cells");
        if (native is not null) yield return new Measured($"motion-cells-{size}-of-c", theirs / ours, "ratio", "C loop, one core, same run; target 0.8");
        (double both, double bothTheirs) = Race(
            () => Parallel.Invoke(() => Managed(models[0], steps), () => Managed(models[2], steps)),
            native is null ? null : () => Parallel.Invoke(() => Native(native, models[1], side, steps), () => Native(native, models[3], side, steps)));
        yield return new Measured($"motion-cells-{size}-both", 2 * updates / both / 1e6, "million/s", "two members on two cores");
        if (native is null) yield break;
        yield return new Measured($"motion-cells-{size}-both-of-c", bothTheirs / both, "ratio", "C loop on two threads, same run; target 0.8");
        double bandwidth = Bandwidth(native);
        yield return new Measured($"motion-bandwidth-{size}", bandwidth / 1e9, "GB/s", "C triad on two threads over 3 x 128 MB");
        yield return new Measured($"motion-cells-{size}-of-bandwidth", 2 * updates * BytesPerUpdate / both / bandwidth, "ratio", "96 bytes an update if nothing stays in the cache; above 1 the cache helps");
    }

    private static InterfaceModel Model(int side)
    {
        GridFrame frame = new(0, 0, 50, side, side);
        float[] depthM = new float[frame.Count];
        for (int i = 0; i < depthM.Length; i++) depthM[i] = 20f + (4f * MathF.Sin(i * 1e-3f));
        CoarseDepths depths = CoarseDepths.Of(new DepthGrid(new LocalProjection(new GeoPoint(45, -90)), frame, depthM), 1);
        InterfaceModel model = new(depths, new LayerPair(8, 0.0161), 45, InterfaceOptions.Ideal with { DampingPerS = 1e-5 });
        model.SetStress(0.05, 0.02);
        model.Advance(600);
        return model;
    }

    private static StepFactors Factors(InterfaceModel model) => new(model.LastStepS / 50, model.LastStepS * 0.0161 / 50, 0.25 * model.LastStepS * 1e-4);

    private static void Managed(InterfaceModel model, int steps)
    {
        StepFactors factors = Factors(model);
        for (int step = 0; step < steps; step++) InterfaceKernel.Step(model.Grid, model.Fields, factors, InterfaceKernel.UseVectors);
    }

    private static unsafe void Native(MotionNative native, InterfaceModel model, int side, int steps)
    {
        InterfaceArrays f = model.Fields;
        StepFactors k = Factors(model);
        fixed (double* offset = f.OffsetM, east = f.East, north = f.North, eastRoot = f.EastRoot, northRoot = f.NorthRoot,
            eastKeep = f.EastKeep, northKeep = f.NorthKeep, eastPush = f.EastPush, northPush = f.NorthPush)
        {
            native.Steps(offset, east, north, eastRoot, northRoot, eastKeep, northKeep, eastPush, northPush, side, side, model.Grid.Stride, k.Flow, k.Slope, k.Turn, steps);
        }
    }

    // By turns, best of seven, so that a neighbour's load hits both alike.
    private static (double Ours, double Theirs) Race(Action ours, Action? theirs)
    {
        double best = double.MaxValue, bestTheirs = double.MaxValue;
        for (int round = 0; round < 7; round++)
        {
            best = Math.Min(best, Seconds(ours));
            if (theirs is not null) bestTheirs = Math.Min(bestTheirs, Seconds(theirs));
        }

        return (best, bestTheirs);
    }

    private static unsafe double Bandwidth(MotionNative native)
    {
        const int n = 16 << 20;
        double[] a = new double[n], b = new double[n], c = new double[n];
        Array.Fill(b, 1.0);
        Array.Fill(c, 2.0);
        double best = double.MaxValue;
        for (int round = 0; round < 7; round++) best = Math.Min(best, Seconds(() => Parallel.Invoke(() => Half(0), () => Half(n / 2))));
        return 3.0 * 8 * n / best;

        void Half(int from)
        {
            fixed (double* pa = a, pb = b, pc = c) native.Triad(pa + from, pb + from, pc + from, 3.0, n / 2);
        }
    }

    private static double Seconds(Action work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }
}
