namespace SecondShore.Weather;

/// <summary>
/// Fills gaps and says how many: up to six hours on a straight line; up to two days, where the column allows, with the mean of the
/// same hour of the days around. Longer gaps stay open.
/// </summary>
internal static class GapFilling
{
    private static readonly int LineHours = 6;

    public static HourlyBlock Fill(HourlyBlock block, List<Finding> notes)
    {
        double[]?[] filled = new double[]?[block.Values.Length];
        for (int c = 0; c < filled.Length; c++)
            if (block.Values[c] is { } values) filled[c] = Fill(HourlyColumn.All[c], values, notes);
        return block with { Values = filled };
    }

    private static double[] Fill(HourlyColumn column, double[] values, List<Finding> notes)
    {
        double[] result = [.. values];
        int line = 0, days = 0, open = 0;
        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsNaN(values[i])) continue;
            int end = i;
            while (end < values.Length && double.IsNaN(values[end])) end++;
            int length = end - i;
            bool inside = i > 0 && end < values.Length;
            if (inside && length <= Math.Min(LineHours, column.MaxFillHours))
            {
                for (int k = i; k < end; k++) result[k] = Between(column, values[i - 1], values[end], (k - i + 1.0) / (length + 1));
                line += length;
            }
            else if (inside && length <= column.MaxFillHours)
            {
                for (int k = i; k < end; k++) result[k] = SameHour(values, k);
                int missed = result.AsSpan(i, length).ToArray().Count(double.IsNaN);
                (days, open) = (days + length - missed, open + missed);
            }
            else
            {
                // What holds for the hour before its stamp was moved back by one: the last hour never has it.
                open += column.OfHourBefore && end == values.Length ? length - 1 : length;
            }

            i = end;
        }

        if (line == 1) notes.Add($"1 missing hour of {column.Said} was filled on a line between the neighbours.");
        else if (line > 1) notes.Add($"{line} missing hours of {column.Said} were filled on a line between the neighbours.");
        if (days == 1) notes.Add($"1 missing hour of {column.Said} was filled from the same hour of the days around.");
        else if (days > 1) notes.Add($"{days} missing hours of {column.Said} were filled from the same hour of the days around.");
        if (open == 1) notes.Add($"1 hour of {column.Said} is missing and stays open.");
        else if (open > 1) notes.Add($"{open} hours of {column.Said} are missing and stay open.");
        return result;
    }

    private static double Between(HourlyColumn column, double from, double to, double share)
    {
        if (column != HourlyColumn.WindFrom) return from + ((to - from) * share);
        double turn = ((to - from + 540) % 360) - 180;
        return (from + (turn * share) + 360) % 360;
    }

    private static double SameHour(double[] values, int at)
    {
        double sum = 0;
        int count = 0;
        foreach (int side in (ReadOnlySpan<int>)[-1, 1])
        {
            for (int day = 1; day <= 3; day++)
            {
                int k = at + (side * day * 24);
                if (k < 0 || k >= values.Length || double.IsNaN(values[k])) continue;
                (sum, count) = (sum + values[k], count + 1);
                break;
            }
        }

        return count > 0 ? sum / count : double.NaN;
    }
}
