using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>What leaving soundings out taught: which method serves this survey, and how its error grows away from data.</summary>
/// <param name="Method">The method with the smallest error.</param>
/// <param name="Settles">Whether settling the sheet on its soundings makes it better: where cells are coarse, not where noise is most of what differs.</param>
/// <param name="RmseM">Its root mean square error, m.</param>
/// <param name="Count">Soundings left out and predicted.</param>
/// <param name="Error">Variance of the error by distance to the nearest datum.</param>
internal sealed record LeaveOutResult(GriddingMethod Method, bool Settles, double RmseM, int Count, ErrorModel Error);

/// <summary>Leaves soundings out, grids the rest as the lake is gridded, and reads the grid where they lay.</summary>
/// <remarks>
/// Runs as long as the survey's own gaps are wide, not only single pings: neighbours on one track are near copies, and would
/// flatter any method (RobertsEtAl2017). The grid is asked, not the surface at the sounding itself: between the centres of cells
/// some of the surface is lost, and more of one method's than of another's.
/// </remarks>
/// <param name="soundings">Soundings as measured.</param>
/// <param name="cloud">The points that the lake is drawn from: soundings thinned to half cells, shore, contours.</param>
/// <param name="near">The same points by distance.</param>
/// <param name="frame">The lake's frame.</param>
/// <param name="mask">Water; null without a shoreline.</param>
/// <param name="cancel">Stops the work.</param>
internal sealed class LeaveOut(PointCloud soundings, PointCloud cloud, LocalKriging near, GridFrame frame, bool[]? mask, CancellationToken cancel)
{
    /// <summary>Soundings in a run, at most.</summary>
    private const int LongestRun = 400;

    /// <summary>Points in the part of the survey that is tried, at most.</summary>
    private const int MostPoints = 30_000;

    /// <summary>Points above which kriging is not tried: it would take minutes on a phone.</summary>
    private const int MostKrigingPoints = 40_000;

    /// <summary>Tries the methods; null where there are too few soundings to spare any.</summary>
    /// <param name="wished">The method to measure; all are tried for <see cref="GriddingMethod.Auto"/>.</param>
    /// <param name="mayAverage">Whether means of near points are in question: among contours they would make steps.</param>
    /// <param name="gapM">Distance to data that the larger part of the lake lies within, m.</param>
    /// <param name="seed">Seed of the chance by which soundings are left out.</param>
    public LeaveOutResult? Try(GriddingMethod wished, bool mayAverage, double gapM, ulong seed)
    {
        PointCloud part = Part();
        bool all = wished is GriddingMethod.Kriging or GriddingMethod.Distance || (wished == GriddingMethod.Auto && mayAverage && cloud.Count <= MostKrigingPoints);
        TrialErrors? runs = null, pings = null;
        // Single pings tell how a method stands the noise along a track, runs how it crosses the gaps between tracks.
        SideBySide.Both(() => runs = Leave(part, RunLength(part, gapM), all, seed), () => pings = Leave(part, 1, all, seed + 1), cancel);
        if (runs is null) return null;
        pings ??= runs;
        Scores scores = new(runs, pings);
        GriddingMethod best = wished == GriddingMethod.Auto ? scores.Best(all) : wished;
        // A sheet that holds its soundings is worth 3 %: who measured looks for the measured depth on the map.
        bool settles = scores.Of(best, true) < 1.03 * scores.Of(best, false);
        double[] errors = runs.ErrorsM(best, settles);
        // Pings tell the error beside data, runs how it grows away from them.
        ErrorModel model = ErrorModel.Fit([.. runs.DistanceM, .. pings.DistanceM], [.. errors, .. pings.ErrorsM(best, settles)]);
        return new LeaveOutResult(best, settles, TrialErrors.Rmse(errors), runs.Count, model);
    }

    private sealed class Scores(TrialErrors runs, TrialErrors pings)
    {
        private readonly bool[] _fairRuns = runs.Fair();
        private readonly bool[] _fairPings = pings.Fair();

        public double Of(GriddingMethod method, bool settled) =>
            Math.Sqrt(TrialErrors.Rmse(runs.ErrorsM(method, settled), _fairRuns) * TrialErrors.Rmse(pings.ErrorsM(method, settled), _fairPings));

        // Smooth natural neighbours unless triangles are better by 1 %, or what costs more and is rougher by 3 %.
        public GriddingMethod Best(bool all)
        {
            double natural = Of(GriddingMethod.NaturalNeighbour), linear = Of(GriddingMethod.Linear);
            GriddingMethod best = linear < 0.99 * natural ? GriddingMethod.Linear : GriddingMethod.NaturalNeighbour;
            if (!all) return best;
            double kriged = Of(GriddingMethod.Kriging), mean = Of(GriddingMethod.Distance);
            if (Math.Min(kriged, mean) >= 0.97 * Math.Min(natural, linear)) return best;
            return mean < 0.94 * kriged ? GriddingMethod.Distance : GriddingMethod.Kriging;
        }

        private double Of(GriddingMethod method) => Math.Min(Of(method, false), Of(method, true));
    }

    private TrialErrors? Leave(PointCloud part, int run, bool all, ulong seed)
    {
        bool[] left = Choose(part, run, seed, out int leftCount);
        if (leftCount < 20 || part.Count - leftCount < 30) return null;
        PointCloud kept = part.Where(i => !left[i]), gone = part.Where(i => left[i]);
        PointCloud thinned = CloudThinning.ToHalfCells(kept, frame);
        Triangulation mesh = new(thinned.XM, thinned.YM, cancel);
        if (mesh.EdgeCount == 0) return null;
        TrialGrid grid = new(frame, mask, kept, gone);
        grid.Draw(mesh, thinned, all ? new LocalKriging(thinned, near) : null, cancel);
        TrialErrors errors = grid.Errors(mesh);
        return errors.Count < 20 ? null : errors;
    }

    // A strip through the middle of a very large survey speaks for all of it.
    private PointCloud Part()
    {
        double from = double.NegativeInfinity, to = double.PositiveInfinity;
        if (soundings.Count > MostPoints)
        {
            double[] sorted = soundings.XM.ToArray();
            Array.Sort(sorted);
            (from, to) = (sorted[(sorted.Length - MostPoints) / 2], sorted[(sorted.Length + MostPoints) / 2]);
        }

        PointCloud part = soundings.Where(i => soundings.XM[i] >= from && soundings.XM[i] <= to);
        for (int i = 0; i < cloud.Count; i++)
            if (cloud.Kind[i] != PointKind.Sounding && cloud.XM[i] >= from && cloud.XM[i] <= to) part.Add(cloud.XM[i], cloud.YM[i], cloud.DepthM[i], cloud.Kind[i], cloud.Track[i]);
        return part;
    }

    // So many soundings that the middle of the run lies as far from the next one as the gaps are wide; a few dozen runs at least.
    private static int RunLength(PointCloud part, double gapM)
    {
        double pathM = 0;
        int steps = 0, count = 0;
        for (int i = 0; i < part.Count; i++)
        {
            if (part.Kind[i] != PointKind.Sounding) continue;
            count++;
            if (i == 0 || part.Kind[i - 1] != PointKind.Sounding || part.Track[i] != part.Track[i - 1]) continue;
            double dx = part.XM[i] - part.XM[i - 1], dy = part.YM[i] - part.YM[i - 1];
            pathM += Math.Sqrt((dx * dx) + (dy * dy));
            steps++;
        }

        if (steps == 0) return 1;
        int wanted = (int)Math.Clamp(2 * gapM / Math.Max(pathM / steps, 1e-3), 2, LongestRun);
        return Math.Clamp(count / 60, 1, wanted);
    }

    private static bool[] Choose(PointCloud part, int run, ulong seed, out int count)
    {
        bool[] left = new bool[part.Count];
        count = 0;
        int track = int.MinValue, inRun = 0;
        bool leaving = false;
        SeededRandom random = new(seed);
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
}
