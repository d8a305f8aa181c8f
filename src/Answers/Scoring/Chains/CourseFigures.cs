namespace SecondShore.Answers.Scoring.Chains;

/// <summary>How a computed course of displacement stands to the measured one.</summary>
/// <param name="Hours">Hours compared.</param>
/// <param name="R">Correlation.</param>
/// <param name="AmplitudeRatio">Standard deviation computed over measured.</param>
/// <param name="LagH">Hours by which the computed course runs behind at the best correlation within half a day; negative when ahead.</param>
/// <param name="RmseM">Root mean square of the difference, m.</param>
/// <param name="NoneM">The same for a thermocline that never tilts, m.</param>
/// <param name="Coverage80">Share of hours within the 80 % interval; null where none was given.</param>
public sealed record CourseFigures(int Hours, double R, double AmplitudeRatio, int LagH, double RmseM, double NoneM, double? Coverage80)
{
    private const int MostLagH = 12;

    /// <summary>Error over that of no tilt.</summary>
    public double OfNone => RmseM / NoneM;

    /// <summary>Compares two courses of one length; hours with NaN in either are left out.</summary>
    /// <param name="computedM">As computed, m.</param>
    /// <param name="measuredM">As measured, m.</param>
    /// <param name="halfWidthM">Half the 80 % interval, m; null gives no coverage.</param>
    public static CourseFigures? Of(double[] computedM, double[] measuredM, double[]? halfWidthM)
    {
        ArgumentNullException.ThrowIfNull(computedM);
        ArgumentNullException.ThrowIfNull(measuredM);
        double square = 0, none = 0;
        int n = 0, within = 0;
        for (int i = 0; i < computedM.Length; i++)
        {
            double off = computedM[i] - measuredM[i];
            if (double.IsNaN(off)) continue;
            n++;
            square += off * off;
            none += measuredM[i] * measuredM[i];
            if (halfWidthM is not null && Math.Abs(off) <= halfWidthM[i]) within++;
        }

        if (n < 3 || !(none > 0)) return null;
        (double r, double ratio) = Correlation(computedM, measuredM, 0);
        int best = 0;
        double most = r;
        for (int lag = -MostLagH; lag <= MostLagH; lag++)
        {
            (double at, _) = Correlation(computedM, measuredM, lag);
            if (at > most + 1e-9) (most, best) = (at, lag);
        }

        return new CourseFigures(n, r, ratio, best, Math.Sqrt(square / n), Math.Sqrt(none / n), halfWidthM is null ? null : (double)within / n);
    }

    // Computed at i + lag with measured at i: a positive lag means that the computed course comes later.
    private static (double R, double Ratio) Correlation(double[] computed, double[] measured, int lag)
    {
        double n = 0, c = 0, m = 0, cc = 0, mm = 0, cm = 0;
        for (int i = Math.Max(0, -lag); i < measured.Length && i + lag < computed.Length; i++)
        {
            double a = computed[i + lag], b = measured[i];
            if (double.IsNaN(a) || double.IsNaN(b)) continue;
            (n, c, m, cc, mm, cm) = (n + 1, c + a, m + b, cc + (a * a), mm + (b * b), cm + (a * b));
        }

        double varC = (cc / n) - (c / n * (c / n)), varM = (mm / n) - (m / n * (m / n));
        if (!(varM > 1e-12) || !(n >= 3)) return (0, 0);
        return varC > 1e-12 ? (((cm / n) - (c / n * (m / n))) / Math.Sqrt(varC * varM), Math.Sqrt(varC / varM)) : (0, 0);
    }
}
