using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Where a file of contours holds several waters: keeps the one that is meant, or asks which.</summary>
internal sealed class SeveralWaters(string file, RawSurvey raw, CoordinateSystem crs, SurveyOptions options, SurveyContext context, ProblemLog log)
{
    private const int MostChoices = 12;
    private const double LeastShare = 0.02;

    // Basins of one lake lie near each other, lakes of their own further.
    private const double NearShare = 0.6;

    /// <summary>Keeps what the options or the lake's position say; else a question, null where there is nothing to ask.</summary>
    public SurveyQuestion? KeepOrAsk()
    {
        if (options.Area is { Count: 4 } area)
        {
            Keep(area);
            return null;
        }

        List<GeoExtent> waters = [.. Groups().Where(w => Size(w) > 0)];
        if (waters.Count < 2) return null;
        double largest = waters.Max(Size);
        waters = [.. waters.Where(w => Size(w) >= LeastShare * largest).OrderByDescending(Size)];
        if (waters.Count < 2) return null;
        if (context.Position is GeoPoint at && waters.FirstOrDefault(w => Holds(w, at)) is GeoExtent own)
        {
            Keep(BoxOf(own));
            return null;
        }

        List<SurveyChoice> choices = [new SurveyChoice(new SurveyOptions { Area = [-90, -180, 90, 180] }, $"all {waters.Count} as one")];
        foreach (GeoExtent w in waters.Take(MostChoices))
        {
            GeoPoint middle = new((w.SouthDeg + w.NorthDeg) / 2, GeoPoint.WrapLongitudeDeg((w.WestDeg + w.EastDeg) / 2));
            choices.Add(new SurveyChoice(new SurveyOptions { Area = BoxOf(w) },
                $"only the water at {middle.LatDeg:F4}, {middle.LonDeg:F4}, {Math.Sqrt(Size(w)) * 111:0.0} km across", middle, Places.Country(middle.LatDeg, middle.LonDeg) ?? ""));
        }

        return new SurveyQuestion(file, SurveyQuestionKind.Rows, $"The file holds {waters.Count} separate waters. Which is the lake?", choices, "area");
    }

    // Shores are lakes of their own; deeper rings near each other can be basins of one.
    private List<GeoExtent> Groups()
    {
        List<GeoExtent> groups = [];
        bool shores = raw.Waters.TrueForAll(w => w.Z == 0);
        foreach (RawLine ring in raw.Waters)
        {
            ExtentBox box = new();
            for (int i = 0; i < ring.X.Length; i++) if (crs.TryToGeo(ring.X[i], ring.Y[i], out double lat, out double lon)) box.Add(lat, lon);
            if (box.Extent is not GeoExtent own) continue;
            for (int k = groups.Count - 1; k >= 0 && !shores; k--)
            {
                if (!Near(groups[k], own)) continue;
                own = Joined(groups[k], own);
                groups.RemoveAt(k);
            }

            groups.Add(own);
        }

        return groups;
    }

    private void Keep(IReadOnlyList<double> area)
    {
        int before = raw.Lines.Count + raw.Polygons.Count;
        raw.Lines.RemoveAll(l => !Inside(l.X, l.Y, area));
        raw.Polygons.RemoveAll(p => !Inside(p.Outer.X, p.Outer.Y, area));
        int left = before - raw.Lines.Count - raw.Polygons.Count;
        if (left > 0) log.Note(file, $"{left} shapes belong to other waters of the file and are not used.");
    }

    private bool Inside(double[] x, double[] y, IReadOnlyList<double> area)
    {
        int inside = 0, all = 0;
        for (int i = 0; i < x.Length; i += Math.Max(1, x.Length / 16))
        {
            if (!crs.TryToGeo(x[i], y[i], out double lat, out double lon)) continue;
            all++;
            lon = GeoPoint.WrapLongitudeDeg(lon);
            if (lat >= area[0] && lat <= area[2] && lon >= area[1] && lon <= area[3]) inside++;
        }

        return inside * 2 > all;
    }

    private static double Size(GeoExtent e) => (e.NorthDeg - e.SouthDeg) * Width(e) * Math.Cos(e.NorthDeg * Math.PI / 180);

    private static double Width(GeoExtent e) => e.EastDeg >= e.WestDeg ? e.EastDeg - e.WestDeg : e.EastDeg + 360 - e.WestDeg;

    private static bool Holds(GeoExtent e, GeoPoint p) => p.LatDeg >= e.SouthDeg && p.LatDeg <= e.NorthDeg && p.LonDeg >= e.WestDeg && p.LonDeg <= e.EastDeg;

    private static bool Near(GeoExtent a, GeoExtent b)
    {
        double reachLat = NearShare * Math.Max(a.NorthDeg - a.SouthDeg, b.NorthDeg - b.SouthDeg), reachLon = NearShare * Math.Max(Width(a), Width(b));
        return a.SouthDeg - reachLat <= b.NorthDeg && b.SouthDeg - reachLat <= a.NorthDeg && a.WestDeg - reachLon <= b.EastDeg && b.WestDeg - reachLon <= a.EastDeg;
    }

    private static GeoExtent Joined(GeoExtent a, GeoExtent b) =>
        new(Math.Min(a.SouthDeg, b.SouthDeg), Math.Min(a.WestDeg, b.WestDeg), Math.Max(a.NorthDeg, b.NorthDeg), Math.Max(a.EastDeg, b.EastDeg));

    private static double[] BoxOf(GeoExtent e) =>
        [Math.Round(e.SouthDeg - 0.0005, 5), Math.Round(e.WestDeg - 0.0005, 5), Math.Round(e.NorthDeg + 0.0005, 5), Math.Round(e.EastDeg + 0.0005, 5)];
}
