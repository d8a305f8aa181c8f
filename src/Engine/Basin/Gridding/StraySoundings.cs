namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Soundings that cannot belong to the lake: a sounder switched on at home, a fix gone wild.</summary>
internal static class StraySoundings
{
    /// <summary>Marks strays: without a shoreline, clusters of few soundings further from the rest than the rest is wide.</summary>
    /// <param name="cloud">Soundings.</param>
    /// <returns>Whether to keep each.</returns>
    public static bool[] Keep(PointCloud cloud)
    {
        bool[] keep = new bool[cloud.Count];
        Array.Fill(keep, true);
        if (cloud.Count < 10) return keep;
        // The middle nine tenths give the lake's size; what lies over one and a half sizes outside is looked at.
        (double west, double east) = Core90(cloud.XM);
        (double south, double north) = Core90(cloud.YM);
        double size = Math.Max(Math.Max(east - west, north - south), 1.0);
        double reach = 1.5 * size;
        int strays = 0;
        for (int i = 0; i < cloud.Count; i++)
        {
            double x = cloud.XM[i], y = cloud.YM[i];
            if (x < west - reach || x > east + reach || y < south - reach || y > north + reach) { keep[i] = false; strays++; }
        }

        // A fiftieth of the soundings is a part of the survey, not a mishap.
        if (strays * 50 > cloud.Count) Array.Fill(keep, true);
        return keep;
    }

    /// <summary>Marks soundings within a box that is wider by a share of its size.</summary>
    public static bool[] Within(PointCloud cloud, PlaneBox box, double share)
    {
        double margin = share * Math.Max(box.WidthM, box.HeightM);
        bool[] keep = new bool[cloud.Count];
        for (int i = 0; i < keep.Length; i++)
        {
            double x = cloud.XM[i], y = cloud.YM[i];
            keep[i] = x >= box.WestM - margin && x <= box.EastM + margin && y >= box.SouthM - margin && y <= box.NorthM + margin;
        }

        return keep;
    }

    private static (double Low, double High) Core90(ReadOnlySpan<double> values)
    {
        int step = Math.Max(1, values.Length / 20_000), n = (values.Length + step - 1) / step;
        double[] sampled = new double[n];
        for (int i = 0; i < n; i++) sampled[i] = values[i * step];
        Array.Sort(sampled);
        return (sampled[n / 20], sampled[n - 1 - (n / 20)]);
    }
}
