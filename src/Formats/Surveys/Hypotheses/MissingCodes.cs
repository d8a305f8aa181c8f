namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Numbers that stand for "no bottom" without saying so: one value, filed again and again, far from all the others.</summary>
internal static class MissingCodes
{
    private const int FewestTimes = 3;
    private const int FewestOthers = 20;

    // Of a grid a value this seldom may be one odd cell beside another.
    private const double FewestCells = 0.005;

    /// <summary>Sets such soundings aside and such cells to nothing, and says how many.</summary>
    public static void SetAside(string file, RawSurvey raw, ProblemLog log)
    {
        for (int k = 0; k < raw.Points.Count; k++)
        {
            RawPoints points = raw.Points[k];
            foreach (double code in Codes(points.Z, FewestTimes).ToArray())
            {
                int[] kept = [.. Enumerable.Range(0, points.Z.Length).Where(i => points.Z[i] != code)];
                Say(file, log, points.Z.Length - kept.Length, code);
                raw.Rows = (Math.Max(raw.Rows.Of, points.Z.Length), raw.Rows.Lost + points.Z.Length - kept.Length);
                points = RowGroup.Keep(points, kept);
            }

            raw.Points[k] = points;
        }

        if (raw.Raster is not RawRaster raster) return;
        double[] some = [.. Sampled(raster.Values)];
        foreach (double code in Codes(some, Math.Max(FewestTimes, (int)(FewestCells * some.Length))).ToArray())
        {
            float value = (float)code;
            int cells = 0;
            for (int i = 0; i < raster.Values.Length; i++)
            {
                if (raster.Values[i] != value) continue;
                raster.Values[i] = float.NaN;
                cells++;
            }

            Say(file, log, cells, code);
        }
    }

    private static void Say(string file, ProblemLog log, int count, double code) =>
        log.Warn(file, $"{count} values are {code:G6}, far from all others: taken as a mark for no depth and not used.");

    // Enough of a large grid to know its ends.
    private static IEnumerable<double> Sampled(float[] values)
    {
        int step = Math.Max(1, values.Length / 400_000);
        for (int i = 0; i < values.Length; i += step) if (!float.IsNaN(values[i])) yield return values[i];
    }

    private static IEnumerable<double> Codes(double[] values, int fewest)
    {
        double[] sorted = [.. values.Where(v => !double.IsNaN(v)).Order()];
        int from = 0, to = sorted.Length;
        for (int turn = 0; turn < 2; turn++)
        {
            int top = to - 1;
            while (top > from && sorted[top - 1] == sorted[to - 1]) top--;
            if (to - top >= fewest && IsCode(sorted.AsSpan(from, top - from), sorted[to - 1]))
            {
                yield return sorted[to - 1];
                to = top;
            }

            int end = from + 1;
            while (end < to && sorted[end] == sorted[from]) end++;
            if (end - from >= fewest && IsCode(sorted.AsSpan(end, to - end), sorted[from]))
            {
                yield return sorted[from];
                from = end;
            }
        }
    }

    // A bed has no step as high as the whole lake is deep; and a sounder's -1 is no place a metre above the water, again and again.
    private static bool IsCode(ReadOnlySpan<double> others, double code)
    {
        if (others.Length < FewestOthers) return false;
        double low = others[0], high = others[^1], middle = others[others.Length / 2];
        if (low == middle || middle == high) return false;
        double gap = code > high ? code - high : low - code;
        return gap > (0.5 * (high - low)) + 1 || (code < 0 && low > 0 && code % 1 == 0);
    }
}
