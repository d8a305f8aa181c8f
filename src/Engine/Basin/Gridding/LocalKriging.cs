namespace SecondShore.Engine.Basin.Gridding;

/// <summary>
/// Depth from the nearest soundings of each direction: by ordinary kriging (Cressie1993), or as their mean weighted by the
/// inverse square of distance (Shepard1968), which smooths noise that kriging takes for bed. Not for two threads at once.
/// </summary>
internal sealed class LocalKriging
{
    private const int PerSector = 2;
    private const int Sectors = 8;
    private const int Most = PerSector * Sectors;
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly float[] _values;
    private readonly Lazy<PointBuckets> _buckets;
    private readonly int[] _near = new int[Most];
    private readonly double[] _nearM2 = new double[Most];
    private readonly double[] _matrix = new double[Most * (Most + 2)];

    private readonly Lazy<Variogram> _variogram;

    /// <summary>Takes points; they are sorted when first asked for.</summary>
    public LocalKriging(PointCloud cloud)
    {
        (_x, _y, _values) = (cloud.XM.ToArray(), cloud.YM.ToArray(), cloud.DepthM.ToArray());
        _buckets = new(() => new PointBuckets(_x, _y));
        _variogram = new(FitVariogram);
    }

    /// <summary>Takes a part of other points, with the variogram of all of them.</summary>
    public LocalKriging(PointCloud part, LocalKriging all)
        : this(part) => _variogram = all._variogram;

    // The same points with work space of its own.
    private LocalKriging(LocalKriging of) => (_x, _y, _values, _buckets, _variogram) = (of._x, of._y, of._values, of._buckets, of._variogram);

    /// <summary>The fitted variogram.</summary>
    public Variogram Variogram => _variogram.Value;

    /// <summary>Estimate and variance from n given points; <paramref name="matrix"/> is work space of n (n + 2).</summary>
    /// <returns>False when the points cannot be told apart.</returns>
    public static bool TrySolve(
        ReadOnlySpan<double> xM, ReadOnlySpan<double> yM, ReadOnlySpan<float> values, Variogram variogram, double atX, double atY,
        Span<double> matrix, out double value, out double varianceM2)
    {
        // Written with covariances, sill less variogram: that matrix is symmetric and positive, and half the work.
        int n = xM.Length;
        double sill = variogram.NuggetM2 + variogram.PartialSillM2;
        Span<double> toPlace = matrix.Slice(n * n, n), toOne = matrix.Slice((n + 1) * n, n);
        for (int r = 0; r < n; r++)
        {
            Span<double> row = matrix.Slice(r * n, r + 1);
            double x = xM[r], y = yM[r];
            for (int c = 0; c < r; c++) row[c] = variogram.CovarianceM2(Squared(x - xM[c], y - yM[c]));
            row[r] = sill;
            (toPlace[r], toOne[r]) = (variogram.CovarianceM2(Squared(x - atX, y - atY)), 1);
        }

        (value, varianceM2) = (double.NaN, double.NaN);
        Span<double> covariance = stackalloc double[n];
        toPlace.CopyTo(covariance);
        if (!Cholesky(matrix, n, 1e-12 * sill)) return false;
        Solve(matrix, n, toPlace);
        Solve(matrix, n, toOne);
        double placeSum = 0, oneSum = 0;
        for (int r = 0; r < n; r++) (placeSum, oneSum) = (placeSum + toPlace[r], oneSum + toOne[r]);
        // Weights sum to one: what is over goes by the second solution.
        double over = (placeSum - 1) / oneSum;
        (value, varianceM2) = (0, sill - over);
        for (int r = 0; r < n; r++)
        {
            double weight = toPlace[r] - (over * toOne[r]);
            value += weight * values[r];
            varianceM2 -= weight * covariance[r];
        }

        varianceM2 = Math.Max(0, varianceM2);
        return true;
    }

    /// <summary>Kriged value at a place; false where the points cannot be told apart.</summary>
    public bool TryAt(double xM, double yM, out double value) => TryKrige(xM, yM, Find(xM, yM), out value);

    /// <summary>Mean at a place, weighted by the inverse square of distance; NaN without points.</summary>
    public double MeanAt(double xM, double yM) => Mean(xM, yM, Find(xM, yM));

    /// <summary>Both at a place: kriged, or the mean where that fails, and the mean.</summary>
    public (double Kriged, double Mean) BothAt(double xM, double yM)
    {
        int count = Find(xM, yM);
        double mean = Mean(xM, yM, count);
        return (TryKrige(xM, yM, count, out double kriged) ? kriged : mean, mean);
    }

    /// <summary>What a thread asks when it draws a grid: kriged value at a place, or the mean; NaN where there is none.</summary>
    public AskSurface Ask(bool krige)
    {
        LocalKriging own = new(this);
        return krige ? (xM, yM) => own.TryAt(xM, yM, out double value) ? value : double.NaN : own.MeanAt;
    }

    private int Find(double xM, double yM) => _buckets.Value.NearestBySector(xM, yM, Sectors, PerSector, _near, _nearM2);

    private bool TryKrige(double xM, double yM, int count, out double value)
    {
        value = double.NaN;
        if (count == 0) return false;
        Span<double> x = stackalloc double[count], y = stackalloc double[count];
        Span<float> v = stackalloc float[count];
        float least = float.PositiveInfinity, most = float.NegativeInfinity;
        for (int k = 0; k < count; k++)
        {
            (x[k], y[k], v[k]) = (_x[_near[k]], _y[_near[k]], _values[_near[k]]);
            (least, most) = (Math.Min(least, v[k]), Math.Max(most, v[k]));
        }

        if (!TrySolve(x, y, v, Variogram, xM, yM, _matrix, out value, out _)) return false;
        // A little beyond its neighbours is what kriging is for; far beyond is a matrix near its limits.
        double slack = 0.25 * (most - least);
        value = Math.Clamp(value, least - slack, most + slack);
        return true;
    }

    private double Mean(double xM, double yM, int count)
    {
        double sum = 0, weights = 0;
        for (int k = 0; k < count; k++)
        {
            double dx = _x[_near[k]] - xM, dy = _y[_near[k]] - yM, weight = 1 / Math.Max((dx * dx) + (dy * dy), 1e-6);
            sum += weight * _values[_near[k]];
            weights += weight;
        }

        return sum / weights;
    }

    private static double Squared(double dx, double dy) => (dx * dx) + (dy * dy);

    // Lower triangle in place, one over its diagonal; false where a pivot is no larger than the least.
    private static bool Cholesky(Span<double> m, int n, double least)
    {
        for (int r = 0; r < n; r++)
        {
            Span<double> row = m.Slice(r * n, r + 1);
            for (int c = 0; c <= r; c++)
            {
                ReadOnlySpan<double> other = m.Slice(c * n, c + 1);
                double sum = row[c];
                for (int k = 0; k < c; k++) sum -= row[k] * other[k];
                if (c < r) row[c] = sum * other[c];
                else if (sum > least) row[r] = 1 / Math.Sqrt(sum);
                else return false;
            }
        }

        return true;
    }

    private static void Solve(ReadOnlySpan<double> m, int n, Span<double> x)
    {
        for (int r = 0; r < n; r++)
        {
            ReadOnlySpan<double> row = m.Slice(r * n, r + 1);
            double sum = x[r];
            for (int k = 0; k < r; k++) sum -= row[k] * x[k];
            x[r] = sum * row[r];
        }

        for (int r = n - 1; r >= 0; r--)
        {
            double solved = x[r] *= m[(r * n) + r];
            ReadOnlySpan<double> row = m.Slice(r * n, r);
            for (int k = 0; k < row.Length; k++) x[k] -= row[k] * solved;
        }
    }

    // Lags grow by half from the spacing of pings to that of tracks: the first ones tell the noise, the last ones the bed.
    private Variogram FitVariogram()
    {
        const int lags = 16;
        const double growth = 1.5;
        double firstM = MedianNearestM(), reachM = firstM * Math.Pow(growth, lags);
        double[] distance = new double[lags], square = new double[lags], endM2 = new double[lags];
        for (int k = 0; k < lags; k++) endM2[k] = Math.Pow(firstM * Math.Pow(growth, k + 1), 2);
        int[] pairs = new int[lags], found = new int[200];
        int step = Math.Max(1, _x.Length / 400);
        for (int i = 0; i < _x.Length; i += step)
        {
            // Near pairs from all neighbours close by, far ones from a sample.
            foreach (double withinM in (ReadOnlySpan<double>)[firstM * 12, reachM])
            {
                foreach (int j in found.AsSpan(0, _buckets.Value.Around(_x[i], _y[i], withinM, found)))
                {
                    double dx = _x[i] - _x[j], dy = _y[i] - _y[j], d2 = (dx * dx) + (dy * dy), off = _values[i] - _values[j];
                    if (d2 <= 0 || d2 >= endM2[^1]) continue;
                    int lag = 0;
                    while (d2 >= endM2[lag]) lag++;
                    distance[lag] += Math.Sqrt(d2);
                    square[lag] += 0.5 * off * off;
                    pairs[lag]++;
                }
            }
        }

        for (int k = 0; k < lags; k++)
        {
            if (pairs[k] == 0) { distance[k] = firstM * Math.Pow(growth, k + 0.5); continue; }
            distance[k] /= pairs[k];
            square[k] /= pairs[k];
            // Lags weigh alike: there are always more far pairs than near ones.
            pairs[k] = Math.Min(pairs[k], 100);
        }

        return Variogram.Fit(distance, square, pairs);
    }

    private double MedianNearestM()
    {
        List<double> nearest = [];
        int step = Math.Max(1, _x.Length / 300);
        for (int i = 0; i < _x.Length; i += step)
        {
            int count = _buckets.Value.NearestBySector(_x[i], _y[i], Sectors, PerSector, _near, _nearM2);
            double least = double.PositiveInfinity;
            for (int k = 0; k < count; k++)
            {
                double d2 = Squared(_x[_near[k]] - _x[i], _y[_near[k]] - _y[i]);
                if (d2 > 0) least = Math.Min(least, d2);
            }

            if (double.IsFinite(least)) nearest.Add(Math.Sqrt(least));
        }

        nearest.Sort();
        return nearest.Count > 0 ? nearest[nearest.Count / 2] : 1;
    }
}
