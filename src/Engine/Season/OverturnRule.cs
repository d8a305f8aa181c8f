namespace SecondShore.Engine.Season;

/// <summary>Reads the day of turnover off a course of daily temperatures near the surface and at the bottom.</summary>
public static class OverturnRule
{
    /// <summary>
    /// The lasting turnover: first day from <paramref name="from"/> with three mixed days in a row after which no five days in a
    /// row are clearly layered (0.2 kg m-3); -1 when the course ends layered.
    /// </summary>
    /// <param name="topC">Temperature near the surface by day, degC.</param>
    /// <param name="bottomC">Temperature at the bottom by day, degC.</param>
    /// <param name="from">First day that may count: the day of greatest stability, or later.</param>
    public static int Lasting(ReadOnlySpan<double> topC, ReadOnlySpan<double> bottomC, int from)
    {
        int run = 0, found = -1, layered = 0;
        for (int day = Math.Max(0, from); day < topC.Length; day++)
        {
            double difference = Difference(topC[day], bottomC[day]);
            run = difference < Stratification.LayeredKgPerM3 ? run + 1 : 0;
            layered = difference > 2 * Stratification.LayeredKgPerM3 ? layered + 1 : 0;
            if (layered >= 5) found = -1;
            if (found < 0 && run >= 3) found = day - 2;
        }

        return found;
    }

    /// <summary>The strict rule of the measured lakes: first day from <paramref name="from"/> after which every day is mixed; -1 when the last is not.</summary>
    public static int Strict(ReadOnlySpan<double> topC, ReadOnlySpan<double> bottomC, int from)
    {
        int day = topC.Length - 1;
        while (day >= from && ProfileRule.IsMixed(topC[day], bottomC[day])) day--;
        return day == topC.Length - 1 ? -1 : day + 1;
    }

    /// <summary>Day with the greatest density difference from top to bottom, 0 to length - 1.</summary>
    public static int MostStable(ReadOnlySpan<double> topC, ReadOnlySpan<double> bottomC)
    {
        int best = 0;
        double most = double.MinValue;
        for (int day = 0; day < topC.Length; day++)
        {
            double difference = Difference(topC[day], bottomC[day]);
            if (difference > most && topC[day] > bottomC[day]) (best, most) = (day, difference);
        }

        return best;
    }

    private static double Difference(double topC, double bottomC) =>
        topC <= bottomC ? 0 : Water.FreshWater.DensityKgPerM3(bottomC) - Water.FreshWater.DensityKgPerM3(topC);
}
