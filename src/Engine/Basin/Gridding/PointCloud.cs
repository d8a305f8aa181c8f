namespace SecondShore.Engine.Basin.Gridding;

/// <summary>What a point of the cloud was measured as.</summary>
internal enum PointKind : byte
{
    /// <summary>A sounding.</summary>
    Sounding,

    /// <summary>A point of the shoreline.</summary>
    Shore,

    /// <summary>A point of a depth contour.</summary>
    Contour,

    /// <summary>A sample of a raster.</summary>
    Raster,
}

/// <summary>Depth points in the lake's plane, in parallel arrays that grow.</summary>
internal sealed class PointCloud
{
    private double[] _x = new double[1024];
    private double[] _y = new double[1024];
    private float[] _depth = new float[1024];
    private int[] _track = new int[1024];
    private PointKind[] _kind = new PointKind[1024];

    /// <summary>Number of points.</summary>
    public int Count { get; private set; }

    /// <summary>Eastings, m.</summary>
    public Span<double> XM => _x.AsSpan(0, Count);

    /// <summary>Northings, m.</summary>
    public Span<double> YM => _y.AsSpan(0, Count);

    /// <summary>Depths, m; 0 or less is shore or land.</summary>
    public Span<float> DepthM => _depth.AsSpan(0, Count);

    /// <summary>Track (or file, or line) by point: points of one track are near copies of each other.</summary>
    public Span<int> Track => _track.AsSpan(0, Count);

    /// <summary>Kinds.</summary>
    public Span<PointKind> Kind => _kind.AsSpan(0, Count);

    /// <summary>Adds a point.</summary>
    public void Add(double xM, double yM, double depthM, PointKind kind, int track)
    {
        if (Count == _x.Length) Grow(Count * 2);
        _x[Count] = xM;
        _y[Count] = yM;
        _depth[Count] = (float)depthM;
        _track[Count] = track;
        _kind[Count++] = kind;
    }

    /// <summary>Moves a point and its depth.</summary>
    public void Shift(int point, double eastM, double northM, float deeperM)
    {
        _x[point] += eastM;
        _y[point] += northM;
        _depth[point] += deeperM;
    }

    /// <summary>Makes room for more points.</summary>
    public void Reserve(int more)
    {
        if (Count + more > _x.Length) Grow(Count + more);
    }

    /// <summary>The points for which the test holds, in order.</summary>
    public PointCloud Where(Func<int, bool> keep)
    {
        PointCloud kept = new();
        for (int i = 0; i < Count; i++)
            if (keep(i)) kept.Add(_x[i], _y[i], _depth[i], _kind[i], _track[i]);
        return kept;
    }

    private void Grow(int size)
    {
        Array.Resize(ref _x, size);
        Array.Resize(ref _y, size);
        Array.Resize(ref _depth, size);
        Array.Resize(ref _track, size);
        Array.Resize(ref _kind, size);
    }
}
