using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Scoring.Chains;

/// <summary>What a chain of thermometers says hour by hour: its mean profile and the depth of one temperature.</summary>
internal static class ChainCourse
{
    // Loggers stand about a metre apart: a finer mean profile would be drawn, not measured.
    private const double StepM = 0.25;

    /// <summary>Mean temperature by depth over a time, on the depths that every profile reaches; empty without any.</summary>
    public static (double[] DepthM, double[] TempC) Mean(MeasuredChain chain, DateTimeOffset from, DateTimeOffset to)
    {
        ChainCast[] casts = [.. chain.Casts.Where(c => c.At >= from && c.At < to && c.DepthM.Length >= 3)];
        if (casts.Length == 0) return ([], []);
        // A few profiles with a logger out of water or lost do not cut the depths of all others.
        double top = Quantile([.. casts.Select(c => c.DepthM[0])], 0.9), bottom = Quantile([.. casts.Select(c => c.DepthM[^1])], 0.1);
        int count = (int)Math.Floor((bottom - top) / StepM) + 1;
        if (count < 3) return ([], []);
        double[] depths = new double[count], temps = new double[count];
        for (int i = 0; i < count; i++)
        {
            depths[i] = top + (i * StepM);
            foreach (ChainCast cast in casts) temps[i] += At(cast, depths[i]) / casts.Length;
        }

        return (depths, temps);
    }

    /// <summary>Depth of a temperature at each hour, m; NaN where the chain does not reach it.</summary>
    /// <param name="chain">The chain.</param>
    /// <param name="from">First hour.</param>
    /// <param name="hours">Number of hours.</param>
    /// <param name="tempC">The temperature.</param>
    public static double[] IsothermM(MeasuredChain chain, DateTimeOffset from, int hours, double tempC)
    {
        double[] sum = new double[hours];
        int[] seen = new int[hours];
        foreach (ChainCast cast in chain.Casts)
        {
            // A value of an hour is the mean of what was measured within half an hour of it.
            int hour = (int)Math.Round((cast.At - from).TotalHours);
            if (hour < 0 || hour >= hours || DepthM(cast, tempC) is not (>= 0 and var depthM)) continue;
            sum[hour] += depthM;
            seen[hour]++;
        }

        return [.. sum.Select((s, i) => seen[i] > 0 ? s / seen[i] : double.NaN)];
    }

    /// <summary>Depth of a temperature: the water warmer than it, stacked from the top; NaN where the profile does not span it.</summary>
    internal static double DepthM(ChainCast cast, double tempC)
    {
        double[] z = cast.DepthM, t = cast.TempC;
        if (z.Length < 2 || !(t[0] > tempC) || !(t[^1] < tempC)) return double.NaN;
        double warm = z[0];
        for (int i = 0; i + 1 < z.Length; i++)
        {
            double high = Math.Max(t[i], t[i + 1]), low = Math.Min(t[i], t[i + 1]), share = low >= tempC ? 1 : high <= tempC ? 0 : (high - tempC) / (high - low);
            warm += share * (z[i + 1] - z[i]);
        }

        return warm;
    }

    private static double At(ChainCast cast, double depthM)
    {
        int i = Array.BinarySearch(cast.DepthM, depthM);
        if (i >= 0) return cast.TempC[i];
        int above = ~i;
        if (above == 0) return cast.TempC[0];
        if (above == cast.DepthM.Length) return cast.TempC[^1];
        double share = (depthM - cast.DepthM[above - 1]) / (cast.DepthM[above] - cast.DepthM[above - 1]);
        return cast.TempC[above - 1] + (share * (cast.TempC[above] - cast.TempC[above - 1]));
    }

    private static double Quantile(double[] values, double share)
    {
        Array.Sort(values);
        return values[(int)Math.Round(share * (values.Length - 1))];
    }
}
