using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>The shoreline in the lake's plane.</summary>
internal sealed class PlaneShoreline
{
    /// <summary>Projects a shoreline; rings under three points are left out.</summary>
    public PlaneShoreline(Shoreline shoreline, LocalProjection projection)
    {
        foreach (WaterPolygon polygon in shoreline.Polygons)
        {
            if (polygon.Outer.Count < 3) continue;
            List<PlanePoint[]> rings = [Project(polygon.Outer, projection)];
            foreach (IReadOnlyList<GeoPoint> island in polygon.Islands)
                if (island.Count >= 3) rings.Add(Project(island, projection));
            Polygons.Add(rings);
        }
    }

    /// <summary>Polygons, each its outer ring and then its islands.</summary>
    public List<List<PlanePoint[]>> Polygons { get; } = [];

    /// <summary>Area of water, m2.</summary>
    public double AreaM2
    {
        get
        {
            double sum = 0;
            foreach (List<PlanePoint[]> rings in Polygons) sum += WaterM2(rings);
            return Math.Max(0, sum);
        }
    }

    /// <summary>Area of one water, m2: the one that holds a place, else the largest.</summary>
    public double OneWaterM2(PlanePoint? place)
    {
        double largest = 0;
        foreach (List<PlanePoint[]> rings in Polygons)
        {
            double areaM2 = Math.Max(0, WaterM2(rings));
            if (place is { } on && Holds(rings, on)) return areaM2;
            largest = Math.Max(largest, areaM2);
        }

        return largest;
    }

    /// <summary>Length of all rings, m.</summary>
    public double LengthM
    {
        get
        {
            double sum = 0;
            foreach (List<PlanePoint[]> rings in Polygons)
                foreach (PlanePoint[] ring in rings)
                    for (int i = 0; i < ring.Length; i++) sum += ring[i].DistanceToM(ring[(i + 1) % ring.Length]);
            return sum;
        }
    }

    /// <summary>Whether a place is water (even-odd within a polygon, any polygon).</summary>
    public bool Holds(PlanePoint place)
    {
        foreach (List<PlanePoint[]> rings in Polygons) if (Holds(rings, place)) return true;
        return false;
    }

    /// <summary>Whether each cell's centre is water (even-odd within a polygon, any polygon).</summary>
    public bool[] Mask(GridFrame frame)
    {
        bool[] water = new bool[frame.Count];
        foreach (List<PlanePoint[]> rings in Polygons) Fill(rings, frame, water);
        return water;
    }

    private static bool Holds(List<PlanePoint[]> rings, PlanePoint place)
    {
        bool inside = false;
        foreach (PlanePoint[] ring in rings)
        {
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                PlanePoint a = ring[i], b = ring[j];
                if (a.YM > place.YM != b.YM > place.YM && place.XM < a.XM + ((place.YM - a.YM) / (b.YM - a.YM) * (b.XM - a.XM))) inside = !inside;
            }
        }

        return inside;
    }

    private static double WaterM2(List<PlanePoint[]> rings)
    {
        double sum = 0;
        for (int r = 0; r < rings.Count; r++) sum += (r == 0 ? 1 : -1) * Math.Abs(RingArea(rings[r]));
        return sum;
    }

    private static void Fill(List<PlanePoint[]> rings, GridFrame frame, bool[] water)
    {
        int[] start = new int[frame.Ny + 1];
        ForCrossings(rings, frame, (row, _) => start[row + 1]++);
        for (int row = 0; row < frame.Ny; row++) start[row + 1] += start[row];
        double[] columns = new double[start[^1]];
        int[] next = start.AsSpan(0, frame.Ny).ToArray();
        ForCrossings(rings, frame, (row, column) => columns[next[row]++] = column);
        for (int row = 0; row < frame.Ny; row++)
        {
            Span<double> crossings = columns.AsSpan(start[row], start[row + 1] - start[row]);
            crossings.Sort();
            for (int k = 0; k + 1 < crossings.Length; k += 2)
            {
                int first = (int)Math.Clamp(Math.Ceiling(crossings[k]), 0, frame.Nx);
                int end = (int)Math.Clamp(Math.Ceiling(crossings[k + 1]), 0, frame.Nx);
                for (int ix = first; ix < end; ix++) water[(row * frame.Nx) + ix] = true;
            }
        }
    }

    // Each row's centre line against each edge; an edge owns its lower end only.
    private static void ForCrossings(List<PlanePoint[]> rings, GridFrame frame, Action<int, double> found)
    {
        foreach (PlanePoint[] ring in rings)
        {
            for (int i = 0; i < ring.Length; i++)
            {
                PlanePoint a = ring[i], b = ring[(i + 1) % ring.Length];
                if (a.YM > b.YM) (a, b) = (b, a);
                double low = frame.RowAt(a.YM), high = frame.RowAt(b.YM);
                int first = (int)Math.Clamp(Math.Ceiling(low), 0, frame.Ny), end = (int)Math.Clamp(Math.Ceiling(high), 0, frame.Ny);
                double x0 = frame.ColumnAt(a.XM), slope = (frame.ColumnAt(b.XM) - x0) / (high - low);
                for (int row = first; row < end; row++) found(row, x0 + ((row - low) * slope));
            }
        }
    }

    private static PlanePoint[] Project(IReadOnlyList<GeoPoint> ring, LocalProjection projection)
    {
        PlanePoint[] points = new PlanePoint[ring.Count];
        for (int i = 0; i < points.Length; i++) points[i] = projection.ToPlane(ring[i]);
        return points;
    }

    private static double RingArea(PlanePoint[] ring)
    {
        double sum = 0;
        for (int i = 0; i < ring.Length; i++)
        {
            PlanePoint a = ring[i], b = ring[(i + 1) % ring.Length];
            sum += (a.XM * b.YM) - (b.XM * a.YM);
        }

        return 0.5 * sum;
    }
}
