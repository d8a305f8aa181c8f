using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Averages soundings that crowd: a sounder pings many times within a cell.</summary>
internal static class CloudThinning
{
    /// <summary>One point, the mean, for each half cell that holds soundings; other kinds pass through.</summary>
    public static PointCloud ToHalfCells(PointCloud cloud, GridFrame frame)
    {
        PointCloud thinned = new();
        thinned.Reserve(cloud.Count);
        SeatTable seats = new(cloud.Count), shoreSeats = new(cloud.Count);
        int[] counts = new int[cloud.Count];
        double half = 0.5 * frame.CellM;
        ReadOnlySpan<double> xM = cloud.XM, yM = cloud.YM;
        ReadOnlySpan<float> depths = cloud.DepthM;
        ReadOnlySpan<PointKind> kinds = cloud.Kind;
        ReadOnlySpan<int> tracks = cloud.Track;
        for (int i = 0; i < xM.Length; i++)
        {
            double x = xM[i], y = yM[i], depthM = depths[i];
            if (kinds[i] == PointKind.Sounding)
            {
                // Marks of depth 0 are a shore: averaged with the soundings beside them they would put water on land.
                int seat = (depthM > 0 ? seats : shoreSeats).SeatOf((int)Math.Floor((x - frame.WestM) / half), (int)Math.Floor((y - frame.SouthM) / half), thinned.Count);
                if (seat < thinned.Count)
                {
                    double share = 1.0 / ++counts[seat];
                    thinned.Shift(seat, share * (x - thinned.XM[seat]), share * (y - thinned.YM[seat]), (float)(share * (depthM - thinned.DepthM[seat])));
                    continue;
                }
            }

            counts[thinned.Count] = 1;
            thinned.Add(x, y, depthM, kinds[i], tracks[i]);
        }

        return thinned;
    }

    // Half cells to seats by open addressing: columns and rows are so regular that a common hash of them piles up.
    private sealed class SeatTable
    {
        private readonly int[] _x;
        private readonly int[] _y;
        private readonly int[] _seat;
        private readonly int _shift;

        public SeatTable(int most)
        {
            int bits = Math.Max(4, 33 - System.Numerics.BitOperations.LeadingZeroCount((uint)most));
            (_x, _y, _seat, _shift) = (new int[1 << bits], new int[1 << bits], new int[1 << bits], 64 - bits);
            Array.Fill(_seat, -1);
        }

        /// <summary>The seat of a half cell; the given one is taken where it has none.</summary>
        public int SeatOf(int x, int y, int free)
        {
            ulong key = ((ulong)(uint)y << 32) | (uint)x;
            int k = (int)((key * 0x9E3779B97F4A7C15UL) >> _shift);
            while (_seat[k] >= 0)
            {
                if (_x[k] == x && _y[k] == y) return _seat[k];
                k = (k + 1) & (_seat.Length - 1);
            }

            (_x[k], _y[k], _seat[k]) = (x, y, free);
            return free;
        }
    }
}
