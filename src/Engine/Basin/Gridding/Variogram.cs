using System.Runtime.CompilerServices;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Spherical variogram: how fast depths differ with distance. Source: Cressie1993.</summary>
/// <param name="NuggetM2">Half the squared difference of soundings at one place, m2.</param>
/// <param name="PartialSillM2">What distance adds, m2.</param>
/// <param name="RangeM">Distance beyond which it adds no more, m.</param>
internal readonly record struct Variogram(double NuggetM2, double PartialSillM2, double RangeM)
{
    /// <summary>Half the mean squared difference at a distance, m2; 0 at distance 0.</summary>
    public double AtM2(double distanceM)
    {
        if (distanceM <= 0) return 0;
        if (distanceM >= RangeM) return NuggetM2 + PartialSillM2;
        double h = distanceM / RangeM;
        return NuggetM2 + (PartialSillM2 * ((1.5 * h) - (0.5 * h * h * h)));
    }

    /// <summary>Covariance of depths at a squared distance, m2: the whole sill less the variogram.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double CovarianceM2(double squaredM2)
    {
        if (squaredM2 <= 0) return NuggetM2 + PartialSillM2;
        double h = Math.Sqrt(squaredM2) / RangeM;
        return h >= 1 ? 0 : PartialSillM2 * (1 - (h * (1.5 - (0.5 * h * h))));
    }

    /// <summary>Fits nugget, sill and range to pairs by weighted least squares over a range of ranges.</summary>
    /// <param name="distanceM">Mean distance of each lag, m.</param>
    /// <param name="halfSquareM2">Half the mean squared difference of each lag, m2.</param>
    /// <param name="pairs">Pairs of each lag; 0 leaves it out.</param>
    public static Variogram Fit(ReadOnlySpan<double> distanceM, ReadOnlySpan<double> halfSquareM2, ReadOnlySpan<int> pairs)
    {
        Variogram best = new(0.01, 1, 100);
        double least = double.PositiveInfinity, furthestM = distanceM[^1];
        for (int k = 1; k <= 40; k++)
        {
            double rangeM = furthestM * 2 * Math.Pow(0.88, 40 - k), s0 = 0, s1 = 0, s2 = 0, t0 = 0, t1 = 0;
            for (int i = 0; i < pairs.Length; i++)
            {
                if (pairs[i] == 0) continue;
                double shape = new Variogram(0, 1, rangeM).AtM2(distanceM[i]), weight = pairs[i] / Math.Max(halfSquareM2[i] * halfSquareM2[i], 1e-8);
                s0 += weight;
                s1 += weight * shape;
                s2 += weight * shape * shape;
                t0 += weight * halfSquareM2[i];
                t1 += weight * shape * halfSquareM2[i];
            }

            double determinant = (s0 * s2) - (s1 * s1);
            if (!(Math.Abs(determinant) > 1e-12)) continue;
            double nugget = ((t0 * s2) - (t1 * s1)) / determinant, sill = ((t1 * s0) - (t0 * s1)) / determinant;
            if (nugget < 0) (nugget, sill) = (0, t1 / s2);
            if (sill <= 0) continue;
            double error = 0;
            for (int i = 0; i < pairs.Length; i++)
            {
                if (pairs[i] == 0) continue;
                double off = new Variogram(nugget, sill, rangeM).AtM2(distanceM[i]) - halfSquareM2[i];
                error += pairs[i] / Math.Max(halfSquareM2[i] * halfSquareM2[i], 1e-8) * off * off;
            }

            if (error < least) (least, best) = (error, new Variogram(nugget, sill, rangeM));
        }

        return best;
    }
}
