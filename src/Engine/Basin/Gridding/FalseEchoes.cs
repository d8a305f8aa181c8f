namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Single pings that no bed can have given: lost echoes logged as 0, second echoes, fish and noise.</summary>
/// <remarks>
/// A ping is judged by the one before and the one after it on its track, which must agree with each other. A channel or a
/// rock that one ping has hit keeps its place: a bed has to rise and fall again within two pings more steeply than it can stand.
/// </remarks>
internal static class FalseEchoes
{
    /// <summary>Rise per run to both sides that no bed keeps up from ping to ping.</summary>
    private const double SteepestTan = 1.2;

    /// <summary>The same where the ping stands at twice the depth of its neighbours, as a second echo does.</summary>
    private const double SecondEchoTan = 0.5;

    /// <summary>Least depth of the neighbours of a lost echo, m: beside less it may be the shore.</summary>
    private const double LostBesideM = 0.5;

    /// <summary>Which points to keep.</summary>
    public static bool[] Keep(PointCloud cloud)
    {
        bool[] keep = new bool[cloud.Count];
        Array.Fill(keep, true);
        double leastM = Math.Max(0.5, 8 * UsualOffM(cloud));
        // A second look, past what the first one dropped: false echoes come in pairs.
        for (int pass = 0; pass < 2; pass++) Drop(cloud, keep, leastM);
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

    private static bool IsFalse(PointCloud cloud, int before, int at, int after, double leastM)
    {
        double a = cloud.DepthM[before], b = cloud.DepthM[after], depthM = cloud.DepthM[at], middleM = 0.5 * (a + b), offM = Math.Abs(depthM - middleM);
        if (Math.Abs(a - b) > 0.5 * offM) return false;
        if (depthM <= 0.05 && Math.Min(a, b) > LostBesideM) return true;
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
