namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Pings that no bed can have given: lost echoes logged as 0, second echoes, fish and noise, and readings that stuck.</summary>
/// <remarks>
/// A ping is judged by the one before and the one after it on its track, which must agree with each other. A channel or a
/// rock that one ping has hit keeps its place: a bed has to rise and fall again within two pings more steeply than it can stand.
/// A short stretch goes where it starts and ends at a wall, several times as deep as the pings on both sides.
/// </remarks>
internal static class FalseEchoes
{
    /// <summary>Rise per run to both sides that no bed keeps up from ping to ping.</summary>
    private const double SteepestTan = 1.2;

    /// <summary>The same where the ping stands at twice the depth of its neighbours, as a second echo does.</summary>
    private const double SecondEchoTan = 0.5;

    /// <summary>Depth that a lost echo is logged with, m, at most.</summary>
    private const double LostM = 0.05;

    /// <summary>Least depth of the neighbours of a lost echo, m: beside less it may be the shore.</summary>
    private const double LostBesideM = 0.5;

    /// <summary>Rise per run at both ends of a false stretch: steeper than a bluff.</summary>
    private const double WallTan = 3;

    /// <summary>Depth of a false stretch over that of the pings beside it.</summary>
    private const double TimesAsDeep = 3;

    /// <summary>Pings in a false stretch, at most.</summary>
    private const int LongestStretch = 12;

    /// <summary>Which points to keep.</summary>
    public static bool[] Keep(PointCloud cloud)
    {
        bool[] keep = new bool[cloud.Count];
        Array.Fill(keep, true);
        double leastM = Math.Max(0.5, 8 * UsualOffM(cloud));
        // A second look, past what the first one dropped: false echoes come in pairs.
        for (int pass = 0; pass < 2; pass++) Drop(cloud, keep, leastM);
        DropStretches(cloud, keep, leastM);
        return keep;
    }

    private static void Drop(PointCloud cloud, bool[] keep, double leastM)
    {
        ReadOnlySpan<PointKind> kinds = cloud.Kind;
        ReadOnlySpan<int> tracks = cloud.Track;
        int before = -1, at = -1;
        for (int after = 0; after < keep.Length; after++)
        {
            if (!keep[after] || kinds[after] != PointKind.Sounding) continue;
            bool joined = at >= 0 && before >= 0 && tracks[before] == tracks[at] && tracks[at] == tracks[after];
            if (joined && IsFalse(cloud, before, at, after, leastM))
            {
                keep[at] = false;
                at = after;
                continue;
            }

            (before, at) = (at, after);
        }
    }

    private static void DropStretches(PointCloud cloud, bool[] keep, double leastM)
    {
        // Depths of 0 judge nobody: between walls they are the banks of a canal.
        List<int> pings = [];
        for (int i = 0; i < keep.Length; i++) if (keep[i] && cloud.Kind[i] == PointKind.Sounding && cloud.DepthM[i] > LostM) pings.Add(i);
        for (int before = 0; before + 2 < pings.Count; before++)
        {
            if (!IsWall(cloud, pings[before], pings[before + 1], leastM)) continue;
            int after = before + 2, last = Math.Min(pings.Count - 1, before + 1 + LongestStretch);
            while (after <= last && IsDeeper(cloud, pings[before], pings[after], leastM)) after++;
            if (after > last || !IsWall(cloud, pings[after], pings[after - 1], leastM)) continue;
            for (int k = before + 1; k < after; k++) keep[pings[k]] = false;
            before = after - 1;
        }
    }

    private static bool IsWall(PointCloud cloud, int shallow, int deep, double leastM) =>
        IsDeeper(cloud, shallow, deep, leastM) && Tan(cloud, shallow, deep) > WallTan;

    private static bool IsDeeper(PointCloud cloud, int shallow, int deep, double leastM) =>
        cloud.Track[shallow] == cloud.Track[deep] && cloud.DepthM[deep] > (TimesAsDeep * cloud.DepthM[shallow]) + leastM;

    private static bool IsFalse(PointCloud cloud, int before, int at, int after, double leastM)
    {
        double a = cloud.DepthM[before], b = cloud.DepthM[after], depthM = cloud.DepthM[at], middleM = 0.5 * (a + b), offM = Math.Abs(depthM - middleM);
        if (Math.Abs(a - b) > 0.5 * offM) return false;
        if (depthM <= LostM && Math.Min(a, b) > LostBesideM) return true;
        if (offM < leastM) return false;
        double tan = Math.Min(Tan(cloud, before, at), Tan(cloud, at, after));
        return tan > SteepestTan || (tan > SecondEchoTan && Math.Abs(depthM - (2 * middleM)) < 0.15 * middleM);
    }

    private static double Tan(PointCloud cloud, int i, int j)
    {
        double dx = cloud.XM[i] - cloud.XM[j], dy = cloud.YM[i] - cloud.YM[j];
        return Math.Abs(cloud.DepthM[i] - cloud.DepthM[j]) / Math.Max(Math.Sqrt((dx * dx) + (dy * dy)), 1e-3);
    }

    // Median of how far a ping lies from the middle of its neighbours: noise, and the bed's own unevenness.
    private static double UsualOffM(PointCloud cloud)
    {
        List<double> offs = [];
        for (int i = 1; i + 1 < cloud.Count; i++)
        {
            if (cloud.Kind[i] != PointKind.Sounding || cloud.Track[i - 1] != cloud.Track[i] || cloud.Track[i + 1] != cloud.Track[i]) continue;
            offs.Add(Math.Abs(cloud.DepthM[i] - (0.5 * (cloud.DepthM[i - 1] + cloud.DepthM[i + 1]))));
        }

        offs.Sort();
        return offs.Count > 0 ? offs[offs.Count / 2] : 0;
    }
}
