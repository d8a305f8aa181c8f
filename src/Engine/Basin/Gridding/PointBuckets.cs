namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Points sorted into square buckets of a few points each, to find near ones.</summary>
internal sealed class PointBuckets
{
    // Points as given, and in the order of buckets: a search reads them in a row.
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _sortedX;
    private readonly double[] _sortedY;
    private readonly double _westM;
    private readonly double _southM;
    private readonly double _bucketM;
    private readonly int _nx;
    private readonly int _ny;
    private readonly int[] _start;
    private readonly int[] _points;

    /// <summary>Sorts points.</summary>
    public PointBuckets(double[] xM, double[] yM)
    {
        (_x, _y) = (xM, yM);
        PlaneBox box = default;
        for (int i = 0; i < xM.Length; i++) box.Add(xM[i], yM[i]);
        SpacingM = Math.Max(0.1, Math.Sqrt(Math.Max(box.WidthM * box.HeightM, 1) / Math.Max(1, xM.Length)));
        (_westM, _southM) = (box.WestM, box.SouthM);
        _bucketM = Math.Max(2 * SpacingM, Math.Max(box.WidthM, box.HeightM) / 4000);
        (_nx, _ny) = ((int)(box.WidthM / _bucketM) + 1, (int)(box.HeightM / _bucketM) + 1);
        _start = new int[(_nx * _ny) + 1];
        _points = new int[xM.Length];
        for (int i = 0; i < xM.Length; i++) _start[BucketOf(i) + 1]++;
        for (int b = 0; b < _nx * _ny; b++) _start[b + 1] += _start[b];
        int[] next = _start.AsSpan(0, _nx * _ny).ToArray();
        for (int i = 0; i < xM.Length; i++) _points[next[BucketOf(i)]++] = i;
        (_sortedX, _sortedY) = (Array.ConvertAll(_points, i => xM[i]), Array.ConvertAll(_points, i => yM[i]));
    }

    /// <summary>Spacing that the points would have if spread evenly over their box, m.</summary>
    public double SpacingM { get; }

    /// <summary>The nearest points in each of some equal sectors around a place.</summary>
    /// <param name="xM">Easting, m.</param>
    /// <param name="yM">Northing, m.</param>
    /// <param name="sectors">Number of sectors.</param>
    /// <param name="perSector">Points wanted in each.</param>
    /// <param name="near">[sectors*perSector] receives indices.</param>
    /// <param name="nearM2">[sectors*perSector] work space.</param>
    /// <returns>Number found, packed at the front.</returns>
    public int NearestBySector(double xM, double yM, int sectors, int perSector, int[] near, double[] nearM2)
    {
        Array.Fill(near, -1);
        Array.Fill(nearM2, double.PositiveInfinity);
        int bx = (int)Math.Clamp((xM - _westM) / _bucketM, 0, _nx - 1), by = (int)Math.Clamp((yM - _southM) / _bucketM, 0, _ny - 1);
        int seen = 0, afterFull = -1;
        for (int ring = 0; ring < Math.Max(_nx, _ny); ring++)
        {
            for (int y = by - ring; y <= by + ring; y++)
            {
                if ((uint)y >= (uint)_ny) continue;
                bool whole = y == by - ring || y == by + ring;
                for (int x = bx - ring; x <= bx + ring; x += whole || ring == 0 ? 1 : 2 * ring)
                {
                    if ((uint)x >= (uint)_nx) continue;
                    int b = (y * _nx) + x;
                    for (int k = _start[b]; k < _start[b + 1]; k++) Offer(k, xM, yM, sectors, perSector, near, nearM2);
                    seen += _start[b + 1] - _start[b];
                }
            }

            // One ring more once enough was seen: sectors over land may stay empty.
            if (seen >= 2 * sectors * perSector && afterFull < 0) afterFull = ring;
            if (afterFull >= 0 && ring > afterFull) break;
        }

        int count = 0;
        for (int k = 0; k < near.Length; k++) if (near[k] >= 0) near[count++] = near[k];
        return count;
    }

    /// <summary>Up to about as many points as there is room for, evenly from the buckets that a distance reaches.</summary>
    /// <returns>Number found, packed at the front of <paramref name="found"/>.</returns>
    public int Around(double xM, double yM, double reachM, Span<int> found)
    {
        int x0 = (int)Math.Max(0, (xM - reachM - _westM) / _bucketM), x1 = (int)Math.Min(_nx - 1, (xM + reachM - _westM) / _bucketM);
        int y0 = (int)Math.Max(0, (yM - reachM - _southM) / _bucketM), y1 = (int)Math.Min(_ny - 1, (yM + reachM - _southM) / _bucketM);
        int inside = 0;
        for (int y = y0; y <= y1; y++) inside += _start[(y * _nx) + x1 + 1] - _start[(y * _nx) + x0];
        int step = (inside + found.Length - 1) / found.Length, count = 0, skip = 0;
        for (int y = y0; y <= y1; y++)
        {
            int end = _start[(y * _nx) + x1 + 1], p = _start[(y * _nx) + x0] + skip;
            for (; p < end; p += step) found[count++] = _points[p];
            skip = p - end;
        }

        return count;
    }

    // Keeps a point, by its place among the sorted, if it is nearer than the furthest kept of its sector.
    private void Offer(int sorted, double xM, double yM, int sectors, int perSector, int[] near, double[] nearM2)
    {
        double dx = _sortedX[sorted] - xM, dy = _sortedY[sorted] - yM, d2 = (dx * dx) + (dy * dy);
        int first = Octant(dx, dy) * sectors / 8 * perSector, k = first + perSector - 1;
        if (d2 >= nearM2[k]) return;
        for (; k > first && nearM2[k - 1] > d2; k--) (near[k], nearM2[k]) = (near[k - 1], nearM2[k - 1]);
        (near[k], nearM2[k]) = (_points[sorted], d2);
    }

    private static int Octant(double dx, double dy)
    {
        int octant = dy < 0 ? 4 : 0;
        if (dy < 0) (dx, dy) = (-dx, -dy);
        if (dx < 0) { octant += 2; (dx, dy) = (dy, -dx); }
        return dy > dx ? octant + 1 : octant;
    }

    private int BucketOf(int i) => ((int)((_y[i] - _southM) / _bucketM) * _nx) + (int)((_x[i] - _westM) / _bucketM);
}
