using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Where sets of soundings overlap: the later one wins, or one that is four times denser; the other is shifted to meet it at the seam.</summary>
internal static class SetPrecedence
{
    /// <summary>Applies precedence between every two sets.</summary>
    /// <param name="cloud">Soundings.</param>
    /// <param name="set">Set by point, later sets with higher numbers.</param>
    /// <param name="sets">Number of sets.</param>
    /// <param name="frame">Frame, for distances.</param>
    /// <param name="dropped">Points left out.</param>
    /// <returns>Whether to keep each point; depths near a seam are shifted in place.</returns>
    public static bool[] Apply(PointCloud cloud, int[] set, int sets, GridFrame frame, out int dropped)
    {
        bool[] keep = new bool[cloud.Count];
        Array.Fill(keep, true);
        dropped = 0;
        for (int later = 1; later < sets; later++)
        {
            for (int earlier = 0; earlier < later; earlier++)
            {
                double spacingLater = SpacingM(cloud, set, later, frame), spacingEarlier = SpacingM(cloud, set, earlier, frame);
                if (double.IsNaN(spacingLater) || double.IsNaN(spacingEarlier)) continue;
                (int winner, int loser) = spacingEarlier * 2 < spacingLater ? (earlier, later) : (later, earlier);
                dropped += Yield(cloud, set, winner, loser, 2 * Math.Min(spacingLater, spacingEarlier), frame, keep);
            }
        }

        return keep;
    }

    // Spacing of a set within the cells (of four) that it touches, m; NaN for a set without points.
    private static double SpacingM(PointCloud cloud, int[] set, int which, GridFrame frame)
    {
        HashSet<long> touched = [];
        int count = 0;
        double side = 4 * frame.CellM;
        for (int i = 0; i < cloud.Count; i++)
        {
            if (set[i] != which) continue;
            count++;
            touched.Add(((long)Math.Floor(cloud.YM[i] / side) << 32) ^ (uint)(int)Math.Floor(cloud.XM[i] / side));
        }

        return count == 0 ? double.NaN : side * Math.Sqrt((double)touched.Count / count);
    }

    private static int Yield(PointCloud cloud, int[] set, int winner, int loser, double reachM, GridFrame frame, bool[] keep)
    {
        reachM = Math.Max(reachM, 2 * frame.CellM);
        bool[] marked = new bool[frame.Count];
        float[] depthM = new float[frame.Count];
        for (int i = 0; i < cloud.Count; i++)
        {
            if (set[i] != winner || !keep[i] || !frame.TryCellAt(new(cloud.XM[i], cloud.YM[i]), out int ix, out int iy)) continue;
            marked[frame.Index(ix, iy)] = true;
            depthM[frame.Index(ix, iy)] = cloud.DepthM[i];
        }

        (int[] nearest, float[] squared) = NearestCell.Of(marked, frame.Nx, frame.Ny);
        double side = 8 * reachM;
        Dictionary<(int, int), (double Sum, int Count)> offset = [];
        List<(int Point, double DistanceM)> seam = [];
        int dropped = 0;
        for (int i = 0; i < cloud.Count; i++)
        {
            if (set[i] != loser || !keep[i] || !frame.TryCellAt(new(cloud.XM[i], cloud.YM[i]), out int ix, out int iy)) continue;
            int cell = frame.Index(ix, iy);
            double distanceM = Math.Sqrt(squared[cell]) * frame.CellM;
            if (distanceM < 4 * reachM && distanceM >= reachM) seam.Add((i, distanceM));
            if (!(distanceM < reachM)) continue;
            keep[i] = false;
            dropped++;
            (double sum, int count) = offset.GetValueOrDefault(KeyOf(cloud, i, side));
            offset[KeyOf(cloud, i, side)] = (sum + depthM[nearest[cell]] - cloud.DepthM[i], count + 1);
        }

        foreach ((int i, double distanceM) in seam)
        {
            if (!offset.TryGetValue(KeyOf(cloud, i, side), out (double Sum, int Count) local) || !(cloud.DepthM[i] > 0)) continue;
            double fade = 1 - ((distanceM - reachM) / (3 * reachM));
            cloud.DepthM[i] += (float)(fade * local.Sum / local.Count);
        }

        return dropped;
    }

    private static (int X, int Y) KeyOf(PointCloud cloud, int i, double side) =>
        ((int)Math.Floor(cloud.XM[i] / side), (int)Math.Floor(cloud.YM[i] / side));
}
