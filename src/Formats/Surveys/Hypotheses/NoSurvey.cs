using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Points with numbers that are no survey of one water: lists of lakes, casts of an instrument; and a sounder that repeats its last depth.</summary>
internal static class NoSurvey
{
    private const double ListSpacingM = 2000;
    private const double WidestDeg = 8;
    private const int FewestAtPlace = 5;
    private const int LongestStill = 14;

    /// <summary>Why the points are no survey; null when they can be one.</summary>
    public static FindingForm? Why(RawSurvey raw, CoordinateSystem crs)
    {
        if (raw.Points.Count != 1 || raw.Lines.Count > 0 || raw.Points[0].X.Length < 12) return null;
        RawPoints points = raw.Points[0];
        if (crs.IsGeographic && raw.CrsKnown != Knowledge.Stated && TooWide(points) is FindingForm wide) return wide;
        return Casts(points) ?? List(points, crs.IsGeographic ? 111_000 : crs.UnitM);
    }

    // Metres counted from a peg on the shore look like degrees, and would make a lake as large as a country.
    private static FindingForm? TooWide(RawPoints points)
    {
        // Across the date line one lake has longitudes of both signs.
        double wide = Math.Min(Spans(points.X), Spans([.. points.X.Select(x => x < 0 ? x + 360 : x)])), tall = Spans(points.Y);
        if (!(Math.Max(wide, tall) > WidestDeg)) return null;
        return $"as degrees its places would span {tall:0.#} degrees of latitude and {wide:0.#} of longitude: they are lengths from a point of the surveyor's own. Take a file with places on the earth.";

        static double Spans(double[] values)
        {
            double[] sorted = [.. values.Order()];
            return sorted[sorted.Length * 4 / 5] - sorted[sorted.Length / 5];
        }
    }

    // Many depths at each of a few places: an instrument was lowered there.
    private static FindingForm? Casts(RawPoints points)
    {
        double whole = points.Z.Max() - points.Z.Min();
        var places = Enumerable.Range(0, points.X.Length).Where(i => !double.IsNaN(points.Z[i])).GroupBy(i => (points.X[i], points.Y[i]))
            .Select(g => (Count: g.Count(), Span: g.Max(i => points.Z[i]) - g.Min(i => points.Z[i]))).ToArray();
        int rows = places.Where(p => p.Count >= FewestAtPlace && p.Span > 0.4 * whole).Sum(p => p.Count);
        if (rows < 0.6 * points.X.Length || !(whole > 0)) return null;
        return $"its {points.X.Length} rows hold many depths at each of {places.Length} places: an instrument was lowered there, or the receiver stood still. Take a file with soundings of the bottom; casts of a thermometer belong into profiles.csv.";
    }

    // Each place kilometres from the next: a list of waters with one number each.
    private static FindingForm? List(RawPoints points, double unitM)
    {
        int n = points.X.Length, stride = Math.Max(1, n / 120);
        if (n > 20_000) return null;
        double shrink = unitM > 1000 ? Math.Cos(points.Y[n / 2] * Math.PI / 180) : 1;
        List<double> nearest = [];
        for (int i = 0; i < n; i += stride)
        {
            double best = double.PositiveInfinity;
            for (int j = 0; j < n; j++)
            {
                double dx = (points.X[j] - points.X[i]) * shrink, dy = points.Y[j] - points.Y[i], d = (dx * dx) + (dy * dy);
                if (j != i && d > 0 && d < best) best = d;
            }

            nearest.Add(Math.Sqrt(best) * unitM);
        }

        nearest.Sort();
        double typicalM = nearest[nearest.Count / 2];
        if (!(typicalM > ListSpacingM) || double.IsInfinity(typicalM)) return null;
        return $"its {n} places lie some {typicalM / 1000:F1} km from each other: that is a list of waters with one number each, not the soundings of one. Take a file with the depths within the lake.";
    }

    /// <summary>Sets the rows of a track aside in which the sounder, having lost the bottom, repeats one depth while the boat moves on; says how many.</summary>
    public static void SetStillAside(string file, RawSurvey raw, ProblemLog log)
    {
        for (int k = 0; k < raw.Points.Count; k++)
        {
            RawPoints points = raw.Points[k];
            double[] steps = [.. Enumerable.Range(1, Math.Max(0, points.Z.Length - 1)).Select(i => Math.Abs(points.Z[i] - points.Z[i - 1])).Where(s => s > 0).Order()];
            if (steps.Length < 40) continue;
            double usual = steps[steps.Length / 2];
            // Of numbers that nearly never stand still by themselves a long stand is none of the bottom.
            bool fine = Stands(points.Z) < 0.12 * points.Z.Length;
            bool[] drop = new bool[points.Z.Length];
            int still = 0;
            for (int from = 0; from < points.Z.Length;)
            {
                int to = from;
                while (to + 1 < points.Z.Length && points.Z[to + 1] == points.Z[from]) to++;
                if (points.Z[from] != 0 && to - from >= LongestStill && Moves(points, from, to) && (fine || Jumps(points.Z, from, to, usual)))
                {
                    still += to - from + 1;
                    for (int i = from; i <= to; i++) drop[i] = true;
                }

                from = to + 1;
            }

            // Where most of the file stands still it is its resolution, not a lost bottom.
            if (still == 0 || still > points.Z.Length / 2) continue;
            raw.Points[k] = RowGroup.Keep(points, [.. Enumerable.Range(0, points.Z.Length).Where(i => !drop[i])]);
            raw.Rows = (Math.Max(raw.Rows.Of, points.Z.Length), raw.Rows.Lost + still);
            log.Warn(file, $"{still} rows repeat one depth while the boat moved on: the bottom was lost there, and they are not used.");
        }
    }

    // Steps of no change outside of long stands.
    private static int Stands(double[] z)
    {
        int all = 0;
        for (int from = 0; from < z.Length;)
        {
            int to = from;
            while (to + 1 < z.Length && z[to + 1] == z[from]) to++;
            if (to - from < LongestStill) all += to - from;
            from = to + 1;
        }

        return all;
    }

    private static bool Moves(RawPoints points, int from, int to)
    {
        int moved = 0;
        for (int i = from + 1; i <= to; i++) if (points.X[i] != points.X[i - 1] || points.Y[i] != points.Y[i - 1]) moved++;
        return moved * 2 > to - from;
    }

    // A 0 beside it is a lost bottom itself and tells nothing.
    private static bool Jumps(double[] z, int from, int to, double usual)
    {
        double before = from > 0 && z[from - 1] != 0 ? Math.Abs(z[from] - z[from - 1]) : 0, after = to + 1 < z.Length && z[to + 1] != 0 ? Math.Abs(z[to + 1] - z[to]) : 0;
        return Math.Max(before, after) > Math.Max(0.4, 8 * usual);
    }
}
