using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Finds where and how large a raw survey is.</summary>
internal static class Setting
{
    private const int Most = 20_000;

    /// <summary>The setting of a survey.</summary>
    public static SurveySetting Of(RawSurvey raw, CoordinateSystem? crs)
    {
        (List<double> xs, List<double> ys) = Collect(raw);
        if (crs is null || xs.Count == 0) return new SurveySetting(null, double.NaN, 1, false);
        xs.Sort();
        ys.Sort();
        int cut = xs.Count / 100;
        double west = xs[cut], east = xs[^(cut + 1)], south = ys[cut], north = ys[^(cut + 1)];
        if (!crs.TryToGeo(xs[xs.Count / 2], ys[ys.Count / 2], out double lat, out double lon)) return new SurveySetting(null, double.NaN, 1, false);
        double wideM = crs.IsGeographic ? (east - west) * 111_320 * Math.Cos(lat * Math.PI / 180) : (east - west) * crs.UnitM;
        double tallM = (north - south) * (crs.IsGeographic ? 111_320 : crs.UnitM);
        return new SurveySetting(Places.Country(lat, lon), Math.Sqrt((wideM * wideM) + (tallM * tallM)), crs.UnitM, !crs.IsGeographic);
    }

    /// <summary>The middle of a survey in its own numbers; false when it has no place.</summary>
    public static bool TryMiddle(RawSurvey raw, out double x, out double y)
    {
        (List<double> xs, List<double> ys) = Collect(raw);
        x = y = 0;
        if (xs.Count == 0) return false;
        xs.Sort();
        ys.Sort();
        (x, y) = (xs[xs.Count / 2], ys[ys.Count / 2]);
        return true;
    }

    /// <summary>Places of a survey, every so many.</summary>
    public static (List<double> X, List<double> Y) Collect(RawSurvey raw)
    {
        List<double> xs = [], ys = [];
        long total = raw.Points.Sum(p => (long)p.X.Length);
        int step = (int)Math.Max(1, total / Most);
        foreach (RawPoints points in raw.Points)
            for (int i = 0; i < points.X.Length; i += step) Add(points.X[i], points.Y[i]);
        foreach (RawLine line in raw.Lines) Ring(line.X, line.Y);
        foreach (RawPolygon polygon in raw.Polygons) Ring(polygon.Outer.X, polygon.Outer.Y);
        if (raw.Raster is not RawRaster raster) return (xs, ys);
        foreach ((double column, double row) in new[] { (0.0, 0.0), (raster.Columns - 1.0, 0.0), (0.0, raster.Rows - 1.0), (raster.Columns - 1.0, raster.Rows - 1.0) })
        {
            (double x, double y) = raster.Place.At(column, row);
            Add(x, y);
        }

        return (xs, ys);

        // A few points of each ring tell how far it reaches.
        void Ring(double[] x, double[] y)
        {
            for (int i = 0; i < x.Length; i += Math.Max(1, x.Length / 4)) Add(x[i], y[i]);
        }

        void Add(double x, double y)
        {
            if (!double.IsFinite(x) || !double.IsFinite(y)) return;
            xs.Add(x);
            ys.Add(y);
        }
    }
}
