namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>One reading of which column is the depth or height, with what its name says.</summary>
/// <param name="Column">The column.</param>
/// <param name="Weight">Log-odds against "no depth at all".</param>
/// <param name="Words">What its name says.</param>
internal sealed record DepthColumns(int Column, double Weight, HeaderWords Words)
{
    /// <summary>Below this a column is no depth.</summary>
    public const double Possible = -2;

    /// <summary>From this on a column is a depth without asking, where no other stands.</summary>
    public const double Convincing = 1.5;

    /// <summary>The readings, best first.</summary>
    public static List<DepthColumns> Of(IReadOnlyList<ColumnNumbers> columns, IReadOnlyList<HeaderWords> words, bool named, PlaceColumns place)
    {
        List<DepthColumns> found = [];
        for (int c = 0; c < columns.Count; c++)
        {
            if (c == place.X || c == place.Y || c == place.XLetter || c == place.YLetter || columns[c].Count == 0) continue;
            found.Add(new DepthColumns(c, Said(words[c], named) + Numbers(columns, c, place), words[c]));
        }

        return [.. found.OrderByDescending(d => d.Weight)];
    }

    /// <summary>Log-odds of a header's words.</summary>
    private static double Said(HeaderWords words, bool named) => words.Role switch
    {
        ColumnRole.Depth => words.Weight + 2,
        ColumnRole.Height or ColumnRole.Bare => words.Weight,
        ColumnRole.Unknown when words.Unit is not null => 1.5,
        ColumnRole.Unknown => named ? -2.5 : 0,
        ColumnRole.Other => -words.Weight - 2,
        _ => -9,
    };

    /// <summary>Log-odds of how the numbers behave.</summary>
    private static double Numbers(IReadOnlyList<ColumnNumbers> columns, int column, PlaceColumns place)
    {
        ColumnNumbers n = columns[column];
        double weight = 0, share = (double)n.Count / n.Values.Length;
        if (share < 0.1) weight -= 4;
        else if (share < 0.6) weight -= 1;
        if (n.Low == n.High) weight -= 8;
        else if (n.Distinct <= 2 && n.Count > 12) weight -= 8;
        if (n.Counts) weight -= 9;
        else if (n.OnlyGrows) weight -= 5;
        else if (n.NeverFalls < 0.015 && n.Distinct > n.Count * 0.3 && n.Count > 8) weight -= 4;
        if (Math.Max(Math.Abs(n.Low1), Math.Abs(n.High1)) > 12000) weight -= 9;
        if (n.Decimals == 0) weight -= n.Distinct <= 4 && n.Count > 20 ? 3 : n.Distinct <= 25 ? 1 : 0.5;
        else weight += 0.5;
        // Another place, such as eastings beside degrees, varies by a hair of its size.
        if (n.Decimals >= 5 && Math.Abs(n.Middle) > 1 && (n.High1 - n.Low1) / Math.Abs(n.Middle) < 2e-3) weight -= 4;
        if (n.Letters > 0.2) weight -= 5;
        if (n.Roughness is double rough && !double.IsNaN(rough)) weight += rough < 0.12 ? 0.5 : rough > 0.6 ? -1.5 : 0;
        return weight + Agreement(columns[place.X], columns[place.Y], n);
    }

    // A depth belongs to its place: rows that lie near each other but were taken apart agree, while speeds and temperatures do not.
    private static double Agreement(ColumnNumbers x, ColumnNumbers y, ColumnNumbers z)
    {
        int n = z.Values.Length;
        if (z.Count < 30 || !(z.Spread > 0)) return 0;
        List<int> with = [.. Enumerable.Range(0, n).Where(i => !double.IsNaN(z.Values[i]) && !double.IsNaN(x.Values[i]) && !double.IsNaN(y.Values[i]))];
        if (with.Count < 30) return 0;
        int stride = Math.Max(1, with.Count / 150), apart = Math.Max(3, with.Count / 40);
        double shrink = x.IsDegrees ? Math.Cos(y.Middle * Math.PI / 180) : 1, wide = Math.Max((x.High1 - x.Low1) * shrink, y.High1 - y.Low1);
        List<double> near = [];
        for (int k = 0; k < with.Count; k += stride)
        {
            int i = with[k], best = -1;
            double bestGap = wide * 0.04;
            for (int j = 0; j < with.Count; j += Math.Max(1, with.Count / 1500))
            {
                if (Math.Abs(j - k) < apart) continue;
                double dx = (x.Values[with[j]] - x.Values[i]) * shrink, dy = y.Values[with[j]] - y.Values[i];
                if (Math.Abs(dx) > bestGap || Math.Abs(dy) > bestGap) continue;
                double gap = Math.Sqrt((dx * dx) + (dy * dy));
                if (gap < bestGap) (best, bestGap) = (with[j], gap);
            }

            if (best >= 0) near.Add(Math.Abs(z.Values[best] - z.Values[i]));
        }

        if (near.Count < 12) return 0;
        near.Sort();
        // For numbers that do not belong to places the median is about 0.7 of the spread.
        double ratio = near[near.Count / 2] / z.Spread;
        return ratio < 0.12 ? 3 : ratio < 0.25 ? 2 : ratio < 0.4 ? 1 : ratio < 0.55 ? 0 : -1.5;
    }
}
