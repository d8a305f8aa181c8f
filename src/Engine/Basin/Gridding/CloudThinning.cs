using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Averages soundings that crowd: a sounder pings many times within a cell.</summary>
internal static class CloudThinning
{
    /// <summary>One point, the mean, for each half cell that holds soundings; other kinds pass through.</summary>
    public static PointCloud ToHalfCells(PointCloud cloud, GridFrame frame)
    {
        PointCloud thinned = new();
        Dictionary<long, int> seats = new(Math.Min(cloud.Count, 1 << 20));
        List<int> counts = [];
        double half = 0.5 * frame.CellM;
        for (int i = 0; i < cloud.Count; i++)
        {
            double x = cloud.XM[i], y = cloud.YM[i], depthM = cloud.DepthM[i];
            if (cloud.Kind[i] == PointKind.Sounding)
            {
                long key = ((long)Math.Floor((y - frame.SouthM) / half) << 32) ^ (uint)(int)Math.Floor((x - frame.WestM) / half);
                if (seats.TryGetValue(key, out int seat))
                {
                    counts[seat]++;
                    double share = 1.0 / counts[seat];
                    thinned.XM[seat] += share * (x - thinned.XM[seat]);
                    thinned.YM[seat] += share * (y - thinned.YM[seat]);
                    thinned.DepthM[seat] += (float)(share * (depthM - thinned.DepthM[seat]));
                    continue;
                }

                seats[key] = thinned.Count;
            }

            thinned.Add(x, y, depthM, cloud.Kind[i], cloud.Track[i]);
            counts.Add(1);
        }

        return thinned;
    }
}
