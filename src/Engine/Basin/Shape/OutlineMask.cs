using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>The water cells of an outline.</summary>
/// <param name="Projection">Its plane.</param>
/// <param name="Frame">Its frame, with a rim of land.</param>
/// <param name="Water">[Ny*Nx] whether a cell's centre is water.</param>
internal sealed record OutlineMask(LocalProjection Projection, GridFrame Frame, bool[] Water)
{
    /// <summary>Widest outline that is taken for one lake's, m.</summary>
    private const double WidestM = 1_000_000;

    /// <summary>Least width on the whole of what is taken for water, m.</summary>
    private const double NarrowestM = 0.5;

    /// <summary>Finds them; null where the rings enclose no cell of water.</summary>
    /// <param name="sketch">The outline and the wished number of cells.</param>
    /// <param name="mostCells">Cells of the frame at most.</param>
    public static OutlineMask? Of(LakeSketch sketch, int mostCells)
    {
        if (Clean(sketch.Outline) is not { } outline) return null;
        LocalProjection plane = sketch.Projection ?? new LocalProjection(Middle(outline));
        PlaneShoreline shore = new(outline, plane);
        PlaneBox box = default;
        foreach (List<PlanePoint[]> rings in shore.Polygons)
            foreach (PlanePoint p in rings[0]) box.Add(p.XM, p.YM);
        if (Math.Max(box.WidthM, box.HeightM) > WidestM) return null;
        // By area as the rings turn, then by what the even-odd rule leaves of it: loops that cross count otherwise.
        double areaM2 = Math.Max(shore.AreaM2, 1e-4 * box.WidthM * box.HeightM);
        OutlineMask? found = null;
        for (int tries = 0; tries < 3 && areaM2 > 0; tries++)
        {
            GridFrame frame = FrameOf(box, Math.Sqrt(areaM2 / sketch.WaterCells), mostCells);
            found = new OutlineMask(plane, frame, shore.Mask(frame));
            int count = found.Water.Count(w => w);
            if (count > 0.7 * sketch.WaterCells && count < 1.4 * sketch.WaterCells) break;
            areaM2 = Math.Max(1, count) * frame.CellAreaM2;
        }

        // A line between places far apart is not quite straight in the plane: what it encloses is no water.
        return found is not null && found.AreaM2 > NarrowestM * Math.Max(box.WidthM, box.HeightM) ? found : null;
    }

    private double AreaM2 => Water.Count(w => w) * Frame.CellAreaM2;

    private static GridFrame FrameOf(PlaneBox box, double cellM, int mostCells)
    {
        cellM = Math.Max(cellM, 0.05);
        while (((box.WidthM / cellM) + 4) * ((box.HeightM / cellM) + 4) > mostCells) cellM *= 1.1;
        int nx = (int)Math.Ceiling(box.WidthM / cellM) + 2, ny = (int)Math.Ceiling(box.HeightM / cellM) + 2;
        double westM = (0.5 * (box.WestM + box.EastM)) - (0.5 * nx * cellM);
        double southM = (0.5 * (box.SouthM + box.NorthM)) - (0.5 * ny * cellM);
        return new GridFrame(westM, southM, cellM, nx, ny);
    }

    // Points that are no places, and rings that are none without them, are left out.
    private static Shoreline? Clean(Shoreline outline)
    {
        List<WaterPolygon> kept = [];
        foreach (WaterPolygon polygon in outline.Polygons)
        {
            GeoPoint[] outer = Places(polygon.Outer);
            if (outer.Length >= 3) kept.Add(new WaterPolygon(outer, [.. polygon.Islands.Select(Places).Where(ring => ring.Length >= 3)]));
        }

        return kept.Count > 0 ? new Shoreline(kept) : null;
    }

    private static GeoPoint[] Places(IReadOnlyList<GeoPoint> ring) =>
        [.. ring.Where(p => double.IsFinite(p.LatDeg) && double.IsFinite(p.LonDeg) && Math.Abs(p.LatDeg) < 89)];

    private static GeoPoint Middle(Shoreline outline)
    {
        GeoPoint first = outline.Polygons[0].Outer[0];
        double south = 90, north = -90, west = 0, east = 0;
        foreach (GeoPoint p in outline.Polygons.SelectMany(polygon => polygon.Outer))
        {
            double lon = GeoPoint.WrapLongitudeDeg(p.LonDeg - first.LonDeg);
            (south, north, west, east) = (Math.Min(south, p.LatDeg), Math.Max(north, p.LatDeg), Math.Min(west, lon), Math.Max(east, lon));
        }

        return new GeoPoint(0.5 * (south + north), GeoPoint.WrapLongitudeDeg(first.LonDeg + (0.5 * (west + east))));
    }
}
