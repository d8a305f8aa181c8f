using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>What leaving soundings out taught: which method serves this survey, and how its error grows away from data.</summary>
/// <param name="Method">The method with the smallest error.</param>
/// <param name="RmseM">Its root mean square error, m.</param>
/// <param name="Count">Soundings left out and predicted.</param>
/// <param name="Error">Variance of the error by distance to the nearest datum.</param>
internal sealed record LeaveOutResult(GriddingMethod Method, double RmseM, int Count, ErrorModel Error);

/// <summary>Leaves runs of soundings out and predicts them from the rest.</summary>
/// <remarks>Runs, not single pings: neighbours on one track are near copies, and would flatter any method (formulary J.5).</remarks>
internal static class LeaveOut
{
    /// <summary>Soundings in a run.</summary>
    private const int RunLength = 24;

    /// <summary>Points in the part of the survey that is tried, at most.</summary>
    private const int MostPoints = 120_000;

    /// <summary>Points above which kriging is not tried: it would take minutes on a phone.</summary>
    private const int MostKrigingPoints = 40_000;

    /// <summary>Tries the methods; null where there are too few soundings to spare any.</summary>
    public static LeaveOutResult? Try(PointCloud cloud, GriddingMethod wished, bool mayKrige, ulong seed, CancellationToken cancel)
    {
        PointCloud part = Part(cloud);
        Residuals? runs = Leave(part, RunLength, wished, mayKrige, seed, cancel);
        if (runs is null) return null;
        // Single pings tell how a method stands the noise along a track, runs how it crosses the gaps between tracks.
        Residuals pings = Leave(part, 1, wished, mayKrige, seed + 1, cancel) ?? runs;
        double linear = Score(runs, pings, r => r.LinearM), natural = Score(runs, pings, r => r.NaturalM), kriged = Score(runs, pings, r => r.KrigingM);
        GriddingMethod best = wished != GriddingMethod.Auto ? wished
            : kriged < 0.97 * Math.Min(natural, linear) ? GriddingMethod.Kriging
            : linear < 0.99 * natural ? GriddingMethod.Linear : GriddingMethod.NaturalNeighbour;
        double[] errors = best switch { GriddingMethod.Kriging => runs.KrigingM, GriddingMethod.Linear => runs.LinearM, _ => runs.NaturalM };
        return new LeaveOutResult(best, runs.Rmse(errors), runs.Count, ErrorModel.Fit(runs.DistanceM.AsSpan(0, runs.Count), errors.AsSpan(0, runs.Count)));
    }

    private static double Score(Residuals runs, Residuals pings, Func<Residuals, double[]> errors) =>
        Math.Sqrt(runs.Rmse(errors(runs)) * pings.Rmse(errors(pings)));

    private static Residuals? Leave(PointCloud part, int longest, GriddingMethod wished, bool mayKrige, ulong seed, CancellationToken cancel)
    {
        bool[] left = Choose(part, longest, seed, out int leftCount);
        if (leftCount < 20 || part.Count - leftCount < 30) return null;
        PointCloud kept = part.Where(i => !left[i]);
        Triangulation mesh = new(kept.XM, kept.YM, cancel);
        if (mesh.EdgeCount == 0) return null;
        Residuals r = Predict(part, left, kept, mesh, wished, mayKrige && kept.Count <= MostKrigingPoints, cancel);
        return r.Count < 20 ? null : r;
    }

    private static Residuals Predict(
        PointCloud part, bool[] left, PointCloud kept, Triangulation mesh, GriddingMethod wished, bool krige, CancellationToken cancel)
    {
        NaturalNeighbour.Probe natural = new(new NaturalNeighbour(mesh, kept.DepthM));
        LocalKriging? kriging = krige && wished is GriddingMethod.Auto or GriddingMethod.Kriging ? new(kept.XM, kept.YM, kept.DepthM) : null;
        Residuals r = new(part.Count);
        int triangle = 0;
        for (int i = 0; i < part.Count; i++)
        {
            if (!left[i]) continue;
            if ((i & 1023) == 0) cancel.ThrowIfCancellationRequested();
            double x = part.XM[i], y = part.YM[i], truth = part.DepthM[i];
            if (!natural.TryLinearAt(x, y, ref triangle, out double linear)) continue;
            if (!natural.TryAt(x, y, ref triangle, out double smooth)) continue;
            double spatial = double.NaN;
            if (kriging is not null && !kriging.TryAt(x, y, out spatial)) spatial = linear;
            r.Add(linear - truth, smooth - truth, spatial - truth, NearestCornerM(mesh, triangle, x, y));
        }

        return r;
    }

    private static double NearestCornerM(Triangulation mesh, int triangle, double x, double y)
    {
        double least = double.PositiveInfinity;
        for (int k = 0; k < 3; k++)
        {
            int v = mesh.Origin[(3 * triangle) + k];
            double dx = mesh.VertexXM(v) - x, dy = mesh.VertexYM(v) - y;
            least = Math.Min(least, (dx * dx) + (dy * dy));
        }

        return Math.Sqrt(least);
    }

    // A strip through the middle of a very large survey speaks for all of it.
    private static PointCloud Part(PointCloud cloud)
    {
        if (cloud.Count <= MostPoints) return cloud;
        double[] sorted = cloud.XM.ToArray();
        Array.Sort(sorted);
        double from = sorted[(cloud.Count - MostPoints) / 2], to = sorted[(cloud.Count + MostPoints) / 2];
        return cloud.Where(i => cloud.XM[i] >= from && cloud.XM[i] <= to);
    }

    private static bool[] Choose(PointCloud part, int longest, ulong seed, out int count)
    {
        bool[] left = new bool[part.Count];
        count = 0;
        int track = int.MinValue, inRun = 0;
        bool leaving = false;
        SeededRandom random = new(seed);
        int soundings = 0;
        for (int i = 0; i < part.Count; i++) if (part.Kind[i] == PointKind.Sounding) soundings++;
        int run = Math.Clamp(soundings / 60, 1, longest);
        for (int i = 0; i < part.Count; i++)
        {
            if (part.Kind[i] != PointKind.Sounding) continue;
            if (inRun-- <= 0 || part.Track[i] != track) (inRun, track, leaving) = (run - 1, part.Track[i], random.NextDouble() < 0.12);
            // Points of depth 0 stand for a shore: they are given, not predicted.
            if (!leaving || !(part.DepthM[i] > 0)) continue;
            left[i] = true;
            count++;
        }

        return left;
    }

    private sealed class Residuals(int room)
    {
        public double[] LinearM { get; } = new double[room];

        public double[] NaturalM { get; } = new double[room];

        public double[] KrigingM { get; } = new double[room];

        public double[] DistanceM { get; } = new double[room];

        public int Count { get; private set; }

        public void Add(double linear, double natural, double kriging, double distance)
        {
            (LinearM[Count], NaturalM[Count], KrigingM[Count], DistanceM[Count]) = (linear, natural, kriging, distance);
            Count++;
        }

        public double Rmse(double[] errors)
        {
            double sum = 0;
            for (int i = 0; i < Count; i++) sum += errors[i] * errors[i];
            return Math.Sqrt(sum / Count);
        }
    }
}
