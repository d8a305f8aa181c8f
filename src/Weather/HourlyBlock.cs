namespace SecondShore.Weather;

/// <summary>Hours without a hole, each with every column; NaN where a value is missing. Values hold from their stamp on.</summary>
/// <param name="Start">Stamp of the first hour, UTC, a full hour.</param>
/// <param name="Values">One array a column of <see cref="HourlyColumn.All"/>; null for a column that did not come.</param>
/// <param name="Hours">Number of hours.</param>
internal sealed record HourlyBlock(DateTimeOffset Start, double[]?[] Values, int Hours)
{
    public DateTimeOffset End => Start.AddHours(Hours);

    /// <summary>Joins two blocks: what the first has is taken, the second fills its gaps and what lies beyond.</summary>
    public static HourlyBlock Join(HourlyBlock first, HourlyBlock second)
    {
        DateTimeOffset start = first.Start < second.Start ? first.Start : second.Start;
        DateTimeOffset end = first.End > second.End ? first.End : second.End;
        int hours = (int)(end - start).TotalHours;
        int a = (int)(first.Start - start).TotalHours, b = (int)(second.Start - start).TotalHours;
        double[]?[] values = new double[]?[HourlyColumn.All.Count];
        for (int c = 0; c < values.Length; c++)
        {
            if (first.Values[c] is null && second.Values[c] is null) continue;
            double[] joined = new double[hours];
            Array.Fill(joined, double.NaN);
            second.Values[c]?.CopyTo(joined, b);
            double[]? better = first.Values[c];
            for (int i = 0; better is not null && i < better.Length; i++)
                if (!double.IsNaN(better[i])) joined[a + i] = better[i];
            values[c] = joined;
        }

        return new HourlyBlock(start, values, hours);
    }

    /// <summary>The hours of a span that lie inside the block.</summary>
    public HourlyBlock Cut(DateTimeOffset from, DateTimeOffset to)
    {
        int skip = Math.Clamp((int)Math.Ceiling((from - Start).TotalHours), 0, Hours);
        int keep = Math.Clamp((int)Math.Floor((to - Start).TotalHours), skip, Hours) - skip;
        return new HourlyBlock(Start.AddHours(skip), [.. Values.Select(v => v?.AsSpan(skip, keep).ToArray())], keep);
    }

    /// <summary>The block without hours at its end in which nothing is known.</summary>
    public HourlyBlock WithoutEmptyEnd()
    {
        int last = Hours;
        while (last > 0 && Values.All(v => v is null || double.IsNaN(v[last - 1]))) last--;
        return last == Hours ? this : Cut(Start, Start.AddHours(last));
    }
}
