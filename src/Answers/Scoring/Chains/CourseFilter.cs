using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Answers.Scoring.Chains;

/// <summary>Takes out of an hourly course what is not the rocking of the water.</summary>
internal static class CourseFilter
{
    // Loggers that lose the isotherm for a few hours leave a gap that a straight line bridges.
    private const int LongestBridgeH = 3;

    /// <summary>The course with gaps of a few hours bridged; longer ones stay NaN.</summary>
    public static double[] Bridged(double[] course)
    {
        double[] whole = [.. course];
        Gaps.Bridge(whole, LongestBridgeH);
        return whole;
    }

    /// <summary>The course less its straight line of best fit; NaN stays.</summary>
    public static double[] Detrended(double[] course)
    {
        double n = 0, x = 0, y = 0, xx = 0, xy = 0;
        for (int i = 0; i < course.Length; i++)
            if (!double.IsNaN(course[i])) (n, x, y, xx, xy) = (n + 1, x + i, y + course[i], xx + ((double)i * i), xy + (i * course[i]));
        double spread = (n * xx) - (x * x), slope = spread > 0 ? ((n * xy) - (x * y)) / spread : 0, level = n > 0 ? (y - (slope * x)) / n : 0;
        return [.. course.Select((value, i) => value - level - (slope * i))];
    }

    /// <summary>The part of a detrended course with periods between two bounds, by its sines and cosines; NaN where the course is NaN.</summary>
    /// <param name="course">Hourly.</param>
    /// <param name="shortestH">Shortest period, h.</param>
    /// <param name="longestH">Longest period, h.</param>
    public static double[] Band(double[] course, double shortestH, double longestH)
    {
        int n = course.Length;
        double[] band = new double[n];
        for (int k = 1; k <= n / 2; k++)
        {
            double periodH = (double)n / k;
            if (periodH < shortestH || periodH > longestH) continue;
            double cosine = 0, sine = 0;
            for (int i = 0; i < n; i++)
            {
                if (double.IsNaN(course[i])) continue;
                double angle = 2 * Math.PI * k * i / n;
                cosine += course[i] * Math.Cos(angle);
                sine += course[i] * Math.Sin(angle);
            }

            for (int i = 0; i < n; i++)
            {
                double angle = 2 * Math.PI * k * i / n;
                band[i] += ((cosine * Math.Cos(angle)) + (sine * Math.Sin(angle))) * 2 / n;
            }
        }

        for (int i = 0; i < n; i++) if (double.IsNaN(course[i])) band[i] = double.NaN;
        return band;
    }
}
