using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys;

/// <summary>Decides the coordinate system of a raw survey: set, stated, or found from the numbers and the lake's position.</summary>
internal sealed class CrsDecision(string file, RawSurvey raw, SurveyOptions options, SurveyContext context, ProblemLog log, List<Finding> doubts)
{
    private static readonly double NearLakeKm = 60;

    public (CoordinateSystem? Crs, Knowledge Known) Decide()
    {
        if (options.Crs is string set)
        {
            CoordinateSystem? chosen = CoordinateSystems.Parse(set, out FindingForm fault);
            if (chosen is null) log.Error(file, fault);
            else SwapIfOnlyThatFits(chosen);
            return (Checked(chosen), Knowledge.Set);
        }

        if (raw.Crs is not null)
        {
            // Stated degrees that are no degrees: a header that names its columns wrongly.
            if (Checked(raw.Crs) is CoordinateSystem stated) return (stated, raw.CrsKnown);
            return (null, raw.CrsKnown);
        }

        if (!TryMiddle(out double x, out double y)) return (CoordinateSystem.Degrees, Knowledge.Assumed);
        if (LooksLikeDegrees())
        {
            doubts.Add("The file names no coordinate system; its numbers are taken as degrees of longitude and latitude (WGS 84).");
            return (CoordinateSystem.Degrees, Knowledge.Found);
        }

        if (FindNear(x, y) is CoordinateSystem found) return (found, Knowledge.Found);
        log.Error(file, $"the file does not say its coordinate system, and numbers such as {x:G9}, {y:G10} are no degrees; set survey.crs in lake.json, for instance \"EPSG:26918\" for UTM zone 18 north.");
        return (null, Knowledge.Assumed);
    }

    private CoordinateSystem? Checked(CoordinateSystem? crs)
    {
        if (crs is null) return null;
        if (!crs.Doubt.IsEmpty) doubts.Add(crs.Doubt.ToFinding().Opening());
        if (!TryMiddle(out double x, out double y) || crs.TryToGeo(x, y, out _, out _)) return crs;
        log.Error(file, $"numbers such as {x:G9}, {y:G10} do not lie in {crs.Name}; set the right one as survey.crs in lake.json.");
        return null;
    }

    private bool LooksLikeDegrees()
    {
        (double lowX, double highX, double lowY, double highY) = QuantileBox();
        return lowX >= -360 && highX <= 360 && lowY >= -90 && highY <= 90;
    }

    private CoordinateSystem? FindNear(double x, double y)
    {
        if (context.Position is not GeoPoint lake) return null;
        LocalProjection plane = new(lake.LatDeg is > -89 and < 89 ? lake : new GeoPoint(0, lake.LonDeg));
        foreach (int code in Candidates(lake))
        {
            if (CoordinateSystems.FromEpsg(code, out _) is not CoordinateSystem crs) continue;
            double km = Km(plane, crs, x, y);
            if (raw.MayBeSwapped && !(km <= NearLakeKm) && Km(plane, crs, y, x) is double swappedKm && swappedKm <= NearLakeKm)
            {
                km = swappedKm;
                SwapAloud();
            }

            if (!(km <= NearLakeKm)) continue;
            doubts.Add($"The file names no coordinate system; read as {crs.Name} it lies {km:F1} km from the lake's position, so that is taken. Set crs to be sure.");
            return crs;
        }

        return null;
    }

    private static double Km(LocalProjection plane, CoordinateSystem crs, double x, double y) =>
        crs.TryToGeo(x, y, out double latDeg, out double lonDeg) ? plane.ToPlane(latDeg, lonDeg).DistanceToM(new PlanePoint(0, 0)) / 1000 : double.NaN;

    // In a plane whose middle is known, east and north are told apart by which order lies nearer to it.
    private void SwapIfOnlyThatFits(CoordinateSystem chosen)
    {
        if (!raw.MayBeSwapped || chosen.IsGeographic || !TryMiddle(out double x, out double y)) return;
        if (context.Position is GeoPoint lake && lake.LatDeg is > -89 and < 89)
        {
            LocalProjection plane = new(lake);
            if (Km(plane, chosen, y, x) < Km(plane, chosen, x, y)) SwapAloud();
            return;
        }

        if (OffAxis(chosen, y, x) + 1 < OffAxis(chosen, x, y)) SwapAloud();
    }

    // A transverse Mercator is made for a few degrees about its axis: an order that lies far off it is the wrong one.
    private static double OffAxis(CoordinateSystem crs, double x, double y)
    {
        if (!crs.TryToGeo(x, y, out double latDeg, out double lonDeg)) return 1000;
        (double backX, double backY) = crs.FromGeo(new GeoPoint(latDeg, lonDeg));
        double misfitM = Math.Abs(backX - x) + Math.Abs(backY - y);
        return !(misfitM < 1) ? 500 : crs.AxisLonDeg is double axis ? Math.Abs(GeoPoint.WrapLongitudeDeg(lonDeg - axis)) : 0;
    }

    private void SwapAloud()
    {
        raw.Swap();
        doubts.Add("East and north stand in each other's column; they were put right.");
    }

    private static IEnumerable<int> Candidates(GeoPoint lake)
    {
        int utm = EpsgTable.UtmCode(lake.LatDeg, lake.LonDeg);
        yield return utm;
        if (utm % 100 > 1) yield return utm - 1;
        if (utm % 100 < 60) yield return utm + 1;
        yield return 3857;
        foreach (int code in EpsgTable.Regional) yield return code;
    }

    private bool TryMiddle(out double x, out double y)
    {
        List<double> xs = [], ys = [];
        Collect(xs, ys);
        x = y = 0;
        if (xs.Count == 0) return false;
        xs.Sort();
        ys.Sort();
        (x, y) = (xs[xs.Count / 2], ys[ys.Count / 2]);
        return true;
    }

    // A stray fix must not decide: the outer hundredth on each side is left out.
    private (double LowX, double HighX, double LowY, double HighY) QuantileBox()
    {
        List<double> xs = [], ys = [];
        Collect(xs, ys);
        xs.Sort();
        ys.Sort();
        int cut = xs.Count / 100, last = xs.Count - 1 - cut;
        return (xs[cut], xs[last], ys[cut], ys[last]);
    }

    private void Collect(List<double> xs, List<double> ys)
    {
        long total = raw.Points.Sum(p => (long)p.X.Length);
        int step = (int)Math.Max(1, total / 20_000);
        foreach (RawPoints points in raw.Points)
            for (int i = 0; i < points.X.Length; i += step) Add(points.X[i], points.Y[i]);
        foreach (RawLine line in raw.Lines) Add(line.X[0], line.Y[0]);
        foreach (RawPolygon polygon in raw.Polygons) Add(polygon.Outer.X[0], polygon.Outer.Y[0]);
        if (raw.Raster is not RawRaster raster) return;
        foreach ((double column, double row) in new[] { (0.0, 0.0), (raster.Columns - 1.0, 0.0), (0.0, raster.Rows - 1.0), (raster.Columns - 1.0, raster.Rows - 1.0) })
        {
            (double x, double y) = raster.Place.At(column, row);
            Add(x, y);
        }

        void Add(double x, double y)
        {
            if (!double.IsFinite(x) || !double.IsFinite(y)) return;
            xs.Add(x);
            ys.Add(y);
        }
    }
}
