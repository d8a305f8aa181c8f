using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys;

/// <summary>Places a raw survey on the earth and turns its values into depths, counting what cannot be placed.</summary>
internal sealed class SurveyBuilder(string file, RawSurvey raw, CoordinateSystem? crs, DepthScale scale, ProblemLog log)
{
    private static readonly double DeepestM = 1700;
    private readonly ExtentBox _box = new();
    private long _unplaced;
    private long _impossible;
    private GeoExtent? _extent;

    /// <summary>Where the survey lies; null before <see cref="Build"/> or without a coordinate system.</summary>
    public GeoExtent? Extent => _extent ?? QuickExtent();

    public double MinDepthM { get; private set; } = double.NaN;

    public double MaxDepthM { get; private set; } = double.NaN;

    public Survey? Build(CancellationToken cancellation)
    {
        List<SoundingSet> soundings = [];
        foreach (RawPoints points in raw.Points)
        {
            cancellation.ThrowIfCancellationRequested();
            if (Soundings(points) is SoundingSet set) soundings.Add(set);
        }

        List<ContourLine> contours = [];
        foreach (RawLine line in raw.Lines) if (Contour(line) is ContourLine contour) contours.Add(contour);
        List<WaterPolygon> polygons = [];
        foreach (RawPolygon polygon in raw.Polygons) if (Polygon(polygon) is WaterPolygon water) polygons.Add(water);
        List<SurveyRaster> rasters = [];
        if (raw.Raster is not null && Raster(raw.Raster, cancellation) is SurveyRaster raster) rasters.Add(raster);
        _extent = _box.Extent;
        if (_unplaced > 0) log.Warn(file, FormattableString.Invariant($"{_unplaced} points lie at no possible place and are not used."));
        if (_impossible > 0) log.Warn(file, FormattableString.Invariant($"{_impossible} depths are beyond {DeepestM} m and are not used."));
        bool onlySoundings = contours.Count + polygons.Count + rasters.Count == 0;
        if (onlySoundings && soundings.Count > 0 && soundings.Sum(s => s.DepthM.Length) is int few && few < 3)
        {
            log.Error(file, FormattableString.Invariant($"the file has {few} soundings, too few for a lake; three or more are needed."));
            return null;
        }

        if (onlySoundings && soundings.Count == 0)
        {
            if (raw.Raster is null) log.Error(file, "nothing of the file could be placed and used.");
            return null;
        }

        return new Survey
        {
            Soundings = soundings,
            Contours = contours,
            Rasters = rasters,
            Shoreline = polygons.Count > 0 ? new Shoreline(polygons) : null,
        };
    }

    private SoundingSet? Soundings(RawPoints points)
    {
        int n = points.X.Length;
        List<double> lat = new(n), lon = new(n), depth = new(n);
        List<int> breaks = [];
        int nextBreak = 0;
        bool broken = false;
        for (int i = 0; i < n; i++)
        {
            while (nextBreak < points.TrackBreaks.Count && points.TrackBreaks[nextBreak] <= i)
            {
                broken |= points.TrackBreaks[nextBreak] > 0;
                nextBreak++;
            }

            if (double.IsNaN(points.Z[i])) continue;
            if (!TryPlace(points.X[i], points.Y[i], out double latDeg, out double lonDeg)) continue;
            double depthM = scale.ToDepthM(points.Z[i]);
            if (!Take(depthM)) continue;
            if (broken && lat.Count > 0) breaks.Add(lat.Count);
            broken = false;
            lat.Add(latDeg);
            lon.Add(lonDeg);
            depth.Add(depthM);
        }

        return lat.Count == 0 ? null : new SoundingSet(file, [.. lat], [.. lon], [.. depth], null, breaks);
    }

    private ContourLine? Contour(RawLine line)
    {
        double depthM = scale.ToDepthM(line.Z);
        List<GeoPoint> points = Ring(line.X, line.Y);
        if (points.Count < (line.Closed ? 3 : 2) || !Take(depthM)) return null;
        return new ContourLine(depthM, points, line.Closed);
    }

    private WaterPolygon? Polygon(RawPolygon polygon)
    {
        List<GeoPoint> outer = Ring(polygon.Outer.X, polygon.Outer.Y);
        if (outer.Count < 3) return null;
        List<IReadOnlyList<GeoPoint>> islands = [];
        foreach ((double[] x, double[] y) in polygon.Islands)
        {
            List<GeoPoint> ring = Ring(x, y);
            if (ring.Count >= 3) islands.Add(ring);
        }

        return new WaterPolygon(outer, islands);
    }

    private List<GeoPoint> Ring(double[] x, double[] y)
    {
        List<GeoPoint> points = new(x.Length);
        for (int i = 0; i < x.Length; i++)
            if (TryPlace(x[i], y[i], out double latDeg, out double lonDeg)) points.Add(new GeoPoint(latDeg, lonDeg));
        return points;
    }

    private SurveyRaster? Raster(RawRaster filed, CancellationToken cancellation)
    {
        if (!filed.Place.IsUsable)
        {
            log.Error(file, "the raster's place on the earth cannot be read; export it again with its georeference.");
            return null;
        }

        for (int corner = 0; corner < 4; corner++)
        {
            (double x, double y) = filed.Place.At(corner % 2 == 0 ? 0 : filed.Columns - 1, corner < 2 ? 0 : filed.Rows - 1);
            if (TryPlace(x, y, out _, out _)) continue;
            log.Error(file, FormattableString.Invariant($"a corner of the raster, {x:G9}, {y:G10}, lies at no possible place in {crs!.Name}; check its coordinate system."));
            return null;
        }

        // In place: the filed values are not needed again, and a large raster should not stand in memory twice.
        float[] depthM = filed.Values;
        bool any = false;
        for (int i = 0; i < depthM.Length; i++)
        {
            if (i % 4_000_000 == 0) cancellation.ThrowIfCancellationRequested();
            double value = filed.Values[i];
            if (double.IsNaN(value))
            {
                depthM[i] = float.NaN;
                continue;
            }

            double m = scale.ToDepthM(value);
            bool ok = Take(m);
            any |= ok;
            depthM[i] = ok ? (float)m : float.NaN;
        }

        if (scale.Sense == DepthSense.Elevation && LevelWater.Cells(depthM) is int level && level > 0)
            log.Warn(file, FormattableString.Invariant($"{level} cells, a large part of the water, lie level at its surface: there the file shows the water, not its bed, and no depth is known. Use a survey of the bottom."));
        if (!any) log.Error(file, "the raster has no cell with data.");
        else if (filed.Columns < 2 || filed.Rows < 2)
        {
            log.Error(file, FormattableString.Invariant($"the raster has {filed.Columns} x {filed.Rows} cells, too few for a lake."));
            return null;
        }

        return any ? new SurveyRaster(file, filed.Columns, filed.Rows, depthM, new RasterPlacement(filed.Place, crs!)) : null;
    }

    private bool TryPlace(double x, double y, out double latDeg, out double lonDeg)
    {
        if (crs!.TryToGeo(x, y, out latDeg, out lonDeg))
        {
            _box.Add(latDeg, lonDeg);
            return true;
        }

        _unplaced++;
        return false;
    }

    private bool Take(double depthM)
    {
        // Land may rise above the pool without bound, but no lake is deeper than the deepest.
        if (!(depthM <= DeepestM) || depthM < -9000)
        {
            _impossible++;
            return false;
        }

        if (!(depthM >= MinDepthM)) MinDepthM = depthM;
        if (!(depthM <= MaxDepthM)) MaxDepthM = depthM;
        return true;
    }

    // For a survey that cannot be used yet (say, elevations without a pool level) the place can still be shown.
    private GeoExtent? QuickExtent()
    {
        if (crs is null) return null;
        foreach (RawPoints points in raw.Points) for (int i = 0; i < points.X.Length; i++) TryPlace(points.X[i], points.Y[i], out _, out _);
        foreach (RawLine line in raw.Lines) Ring(line.X, line.Y);
        foreach (RawPolygon polygon in raw.Polygons) Ring(polygon.Outer.X, polygon.Outer.Y);
        if (raw.Raster is RawRaster raster && raster.Place.IsUsable)
        {
            for (int corner = 0; corner < 4; corner++)
            {
                (double x, double y) = raster.Place.At(corner % 2 == 0 ? 0 : raster.Columns - 1, corner < 2 ? 0 : raster.Rows - 1);
                TryPlace(x, y, out _, out _);
            }
        }

        return _extent = _box.Extent;
    }
}

/// <summary>Grows a box of places, across the date line where that is the shorter way.</summary>
internal sealed class ExtentBox
{
    private double _south = double.NaN, _north = double.NaN, _firstLon, _west, _east;
    private bool _any;

    public GeoExtent? Extent => _any
        ? new GeoExtent(_south, GeoPoint.WrapLongitudeDeg(_firstLon + _west), _north, GeoPoint.WrapLongitudeDeg(_firstLon + _east))
        : null;

    public void Add(double latDeg, double lonDeg)
    {
        if (!_any) (_any, _firstLon, _south, _north) = (true, lonDeg, latDeg, latDeg);
        _south = Math.Min(_south, latDeg);
        _north = Math.Max(_north, latDeg);
        double from = GeoPoint.WrapLongitudeDeg(lonDeg - _firstLon);
        _west = Math.Min(_west, from);
        _east = Math.Max(_east, from);
    }
}
