namespace SecondShore.Engine.Core.Numerics;

/// <summary>Gaps in a row of values, NaN where one is missing.</summary>
public static class Gaps
{
    /// <summary>Bridges short gaps between two known values with a straight line; longer ones, and those at the ends, stay NaN.</summary>
    /// <param name="values">The values, evenly spaced; changed in place.</param>
    /// <param name="longest">Most values missing in a row that are bridged.</param>
    public static void Bridge(double[] values, int longest)
    {
        Require.NotNull(values);
        for (int i = 1; i < values.Length; i++)
        {
            if (!double.IsNaN(values[i]) || double.IsNaN(values[i - 1])) continue;
            int end = i;
            while (end < values.Length && double.IsNaN(values[end])) end++;
            if (end == values.Length || end - i > longest) continue;
            double before = values[i - 1], step = (values[end] - before) / (end - i + 1);
            for (int k = i; k < end; k++) values[k] = before + (step * (k - i + 1));
        }
    }
}
