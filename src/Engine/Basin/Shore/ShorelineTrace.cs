using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>The shoreline of a depth grid, as polygons.</summary>
public static class ShorelineTrace
{
    /// <summary>Polygons of water with their islands, largest water first; null where no water is.</summary>
    /// <param name="grid">Depths at the level wanted.</param>
    public static Shoreline? Of(DepthGrid grid)
    {
        Require.NotNull(grid);
        DepthGrid shored = grid.EdgeIsShore ? grid : new DepthGrid(grid.Projection, grid.Frame, grid.DepthM, grid.DepthSdM);
        List<DepthContour> waters = [], islands = [];
        foreach (DepthContour line in Contours.Trace(shored, [0.0]))
            if (line.Closed) (line.SignedAreaM2 > 0 ? waters : islands).Add(line);
        if (waters.Count == 0) return null;
        waters.Sort((a, b) => b.SignedAreaM2.CompareTo(a.SignedAreaM2));
        List<IReadOnlyList<GeoPoint>>[] holes = new List<IReadOnlyList<GeoPoint>>[waters.Count];
        for (int w = 0; w < holes.Length; w++) holes[w] = [];
        foreach (DepthContour island in islands)
        {
            // The smallest water around an island is the one it stands in.
            for (int w = waters.Count - 1; w >= 0; w--)
            {
                if (!Inside(waters[w].Points, island.Points[0])) continue;
                holes[w].Add(Ring(grid.Projection, island));
                break;
            }
        }

        WaterPolygon[] polygons = new WaterPolygon[waters.Count];
        for (int w = 0; w < polygons.Length; w++) polygons[w] = new WaterPolygon(Ring(grid.Projection, waters[w]), holes[w]);
        return new Shoreline(polygons);
    }

    private static GeoPoint[] Ring(LocalProjection projection, DepthContour line)
    {
        GeoPoint[] ring = new GeoPoint[line.Points.Length];
        for (int i = 0; i < ring.Length; i++) ring[i] = projection.ToGeo(line.Points[i]);
        return ring;
    }

    private static bool Inside(PlanePoint[] ring, PlanePoint p)
    {
        bool inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            if (ring[i].YM > p.YM != ring[j].YM > p.YM
                && p.XM < ring[i].XM + ((p.YM - ring[i].YM) / (ring[j].YM - ring[i].YM) * (ring[j].XM - ring[i].XM)))
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
