using SecondShore.Engine.Core.Units;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>How the filed values of a survey lie: range, signs, fractions, the size of what they cover, and whether they grow inward.</summary>
/// <param name="Count">Values.</param>
/// <param name="Low">Least.</param>
/// <param name="High">Greatest.</param>
/// <param name="Low1">The value that a hundredth lies below.</param>
/// <param name="High1">The value that a hundredth lies above.</param>
/// <param name="ShareNegative">Share of the values that are not zero which is negative.</param>
/// <param name="Distinct">Different values, counted to 50.</param>
/// <param name="AllWhole">Whether all are whole numbers.</param>
/// <param name="WholeFeet">Whether all are whole feet written in metres.</param>
/// <param name="Inward">Correlation of value with distance from the edge, -1 to 1; NaN where it cannot be told.</param>
internal sealed record ValueFacts(long Count, double Low, double High, double Low1, double High1, double ShareNegative, int Distinct, bool AllWhole, bool WholeFeet, double Inward)
{
    private const int Most = 40_000;
    private const int FinestNet = 14;

    public static ValueFacts Of(RawSurvey raw)
    {
        List<(double X, double Y, double Z)> sample = [];
        (long count, double low, double high, long negative, long signed) = Scan(raw, sample);
        if (count == 0) return new ValueFacts(0, double.NaN, double.NaN, double.NaN, double.NaN, 0, 0, false, false, double.NaN);
        double[] sorted = [.. sample.Select(s => s.Z)];
        Array.Sort(sorted);
        int cut = sorted.Length / 100, distinct = 1;
        for (int i = 1; i < sorted.Length && distinct < 50; i++) if (sorted[i] != sorted[i - 1]) distinct++;
        bool whole = sorted.All(v => v % 1 == 0);
        bool feet = !whole && sorted.All(v => Math.Abs((v / Length.MetresPerFoot) - Math.Round(v / Length.MetresPerFoot)) < 0.006);
        return new ValueFacts(count, low, high, sorted[cut], sorted[^(cut + 1)], signed == 0 ? 0 : (double)negative / signed, distinct, whole, feet,
            raw.Lines.Count > 0 ? ByRings(raw) : ByNet(sample));
    }

    private static (long Count, double Low, double High, long Negative, long Signed) Scan(RawSurvey raw, List<(double X, double Y, double Z)> sample)
    {
        long count = 0, negative = 0, signed = 0;
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        long all = raw.Points.Sum(p => (long)p.Z.Length) + raw.Lines.Count + (raw.Raster?.Values.Length ?? 0);
        int step = (int)Math.Max(1, all / Most);
        foreach (RawPoints points in raw.Points) for (int i = 0; i < points.Z.Length; i++) Take(points.Z[i], i, points.X[i], points.Y[i]);
        for (int i = 0; i < raw.Lines.Count; i++) Take(raw.Lines[i].Z, i, raw.Lines[i].X[0], raw.Lines[i].Y[0]);
        if (raw.Raster is RawRaster raster)
        {
            // A step that shares no factor with the width does not run along columns.
            while (step > 1 && raster.Columns % step == 0) step++;
            for (int i = 0; i < raster.Values.Length; i++) Take(raster.Values[i], i, i % raster.Columns, i / raster.Columns);
        }

        return (count, low, high, negative, signed);

        void Take(double z, int i, double x, double y)
        {
            if (double.IsNaN(z)) return;
            count++;
            low = Math.Min(low, z);
            high = Math.Max(high, z);
            if (z != 0) signed++;
            if (z < 0) negative++;
            if (i % step == 0 || count == 1) sample.Add((x, y, z));
        }
    }

    // Closed lines: the wider a ring, the nearer it is to the shore.
    private static double ByRings(RawSurvey raw)
    {
        List<(double Inner, double Value)> pairs = [.. raw.Lines.Where(l => l.Closed).Take(5000).Select(l => (-Math.Log(Math.Max(1e-30, (l.X.Max() - l.X.Min()) * (l.Y.Max() - l.Y.Min()))), l.Z))];
        return pairs.Count < 4 ? double.NaN : Correlation(pairs);
    }

    // A net over the survey: cells with values, and how many cells each lies from one without.
    private static double ByNet(List<(double X, double Y, double Z)> sample)
    {
        if (sample.Count < 60) return double.NaN;
        double[] xs = [.. sample.Select(s => s.X).Order()], ys = [.. sample.Select(s => s.Y).Order()];
        int cut = sample.Count / 50;
        double west = xs[cut], south = ys[cut], wide = xs[^(cut + 1)] - west, tall = ys[^(cut + 1)] - south;
        if (!(wide > 0) || !(tall > 0)) return double.NaN;
        int net = Math.Clamp((int)Math.Sqrt(sample.Count / 3.0), 5, FinestNet);
        double[,] sum = new double[net + 2, net + 2];
        int[,] count = new int[net + 2, net + 2];
        foreach ((double x, double y, double z) in sample)
        {
            int c = (int)Math.Floor((x - west) / wide * net), r = (int)Math.Floor((y - south) / tall * net);
            if (c < 0 || c >= net || r < 0 || r >= net) continue;
            sum[r + 1, c + 1] += z;
            count[r + 1, c + 1]++;
        }

        List<(double Inner, double Value)> pairs = [];
        for (int r = 1; r <= net; r++)
            for (int c = 1; c <= net; c++)
                if (count[r, c] > 0) pairs.Add((ToEdge(count, r, c), sum[r, c] / count[r, c]));
        return pairs.Count < 12 || pairs.Max(p => p.Inner) < 2 ? double.NaN : Correlation(pairs);
    }

    private static int ToEdge(int[,] count, int row, int column)
    {
        int last = count.GetLength(0) - 1;
        for (int ring = 1; ; ring++)
        {
            for (int dr = -ring; dr <= ring; dr++)
            {
                for (int dc = -ring; dc <= ring; dc++)
                {
                    int r = row + dr, c = column + dc;
                    if (r < 0 || c < 0 || r > last || c > last || count[r, c] == 0) return ring;
                }
            }
        }
    }

    private static double Correlation(List<(double Inner, double Value)> pairs)
    {
        double ma = pairs.Average(p => p.Inner), mb = pairs.Average(p => p.Value), ab = 0, aa = 0, bb = 0;
        foreach ((double a, double b) in pairs)
        {
            ab += (a - ma) * (b - mb);
            aa += (a - ma) * (a - ma);
            bb += (b - mb) * (b - mb);
        }

        return aa > 0 && bb > 0 ? ab / Math.Sqrt(aa * bb) : double.NaN;
    }
}
