using System.Globalization;
using System.Text;
using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Demo.Ketterfold;

/// <summary>Writes the bottom as files a surveyor might hand over: a grid of depths, a shoreline; and the truth.</summary>
internal static class SurveyText
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    /// <summary>ESRI ASCII grid in geographic degrees with the small errors of a survey.</summary>
    public static byte[] Grid(GeneratedLake lake, LocalProjection plane, ulong seed)
    {
        const double stepDeg = 0.00018;
        (double west, double south, double east, double north) = Bounds(lake, plane);
        west = Math.Floor(west / stepDeg) * stepDeg;
        south = Math.Floor(south / stepDeg) * stepDeg;
        int columns = (int)((east - west) / stepDeg) + 2, rows = (int)((north - south) / stepDeg) + 2;
        SmoothNoise error = new(seed ^ 0x51A3);
        StringBuilder text = new();
        text.Append(Plain, $"ncols {columns}\nnrows {rows}\nxllcorner {west:0.######}\nyllcorner {south:0.######}\ncellsize {stepDeg}\nNODATA_value -1\n");
        for (int row = rows - 1; row >= 0; row--)
        {
            double latDeg = south + ((row + 0.5) * stepDeg);
            for (int column = 0; column < columns; column++)
            {
                PlanePoint place = plane.ToPlane(latDeg, west + ((column + 0.5) * stepDeg));
                double depthM = DepthM(lake, place);
                if (column > 0) text.Append(' ');
                if (double.IsNaN(depthM)) text.Append("-1");
                else text.Append(Plain, $"{Math.Max(0.1, depthM + ((0.12 + (0.006 * depthM)) * error.Octaves(place.XM, place.YM, 60, 2))):0.#}");
            }

            text.Append('\n');
        }

        return Encoding.ASCII.GetBytes(text.ToString());
    }

    public static byte[] Shoreline(GeneratedLake lake, LocalProjection plane)
    {
        StringBuilder text = new("{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"name\":\"Ketterfold Reservoir (invented)\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[");
        for (int i = 0; i < lake.Shore.Count; i++)
        {
            if (i > 0 && Math.Abs(CellOutline.AreaM2(lake.Shore[i])) < 4 * lake.Frame.CellAreaM2) continue;
            if (i > 0) text.Append(',');
            Ring(text, Thin(lake.Shore[i], 2), plane, i == 0);
        }

        text.Append("]}}]}\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    public static byte[] Truth(GeneratedLake lake, LocalProjection plane)
    {
        StringBuilder text = new("{\"type\":\"FeatureCollection\",\"name\":\"Bottom forms of Ketterfold Reservoir, as placed (invented)\",\"features\":[");
        bool first = true;
        foreach (TruthForm form in lake.Forms)
        {
            if (!first) text.Append(',');
            first = false;
            text.Append(Plain, $"\n{{\"type\":\"Feature\",\"properties\":{{\"class\":\"{WordOf(form.Class)}\",\"name\":\"{form.Name}\",\"depth_m\":{form.DepthM:0.0},\"size_m\":{form.SizeM:0}");
            if (!double.IsNaN(form.OrientationDeg)) text.Append(Plain, $",\"orientation_deg\":{form.OrientationDeg:0}");
            text.Append("},\"geometry\":");
            Geometry(text, form.Geometry, plane);
            text.Append('}');
        }

        text.Append("\n]}\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>A class as written in files: <c>main_channel</c>.</summary>
    public static string WordOf(FormClass form) => form switch
    {
        FormClass.MainChannel => "main_channel",
        FormClass.SideChannel => "side_channel",
        FormClass.ChannelBend => "channel_bend",
        FormClass.Junction => "junction",
        FormClass.Flat => "flat",
        FormClass.MainPoint => "main_point",
        FormClass.SecondaryPoint => "secondary_point",
        FormClass.BluffWall => "bluff_wall",
        FormClass.BluffEnd => "bluff_end",
        FormClass.Hump => "hump",
        FormClass.Saddle => "saddle",
        FormClass.Ledge => "ledge",
        FormClass.Slope => "slope",
        _ => "hole",
    };

    private static (double West, double South, double East, double North) Bounds(GeneratedLake lake, LocalProjection plane)
    {
        double west = 180, south = 90, east = -180, north = -90;
        foreach (PlanePoint p in lake.Shore[0])
        {
            GeoPoint g = plane.ToGeo(p);
            west = Math.Min(west, g.LonDeg);
            east = Math.Max(east, g.LonDeg);
            south = Math.Min(south, g.LatDeg);
            north = Math.Max(north, g.LatDeg);
        }

        return (west, south, east, north);
    }

    // Bilinear over the true bottom, land included, so that the shore is met where it lies.
    private static double DepthM(GeneratedLake lake, PlanePoint place)
    {
        GridFrame frame = lake.Frame;
        if (!frame.TryCellAt(place, out int cx, out int cy) || float.IsNaN(lake.DepthM[frame.Index(cx, cy)])) return double.NaN;
        double column = frame.ColumnAt(place.XM), row = frame.RowAt(place.YM);
        int x = Math.Clamp((int)Math.Floor(column), 0, frame.Nx - 2), y = Math.Clamp((int)Math.Floor(row), 0, frame.Ny - 2);
        double tx = column - x, ty = row - y;
        float[] e = lake.ElevationM;
        double elevation = ((1 - ty) * (((1 - tx) * e[frame.Index(x, y)]) + (tx * e[frame.Index(x + 1, y)])))
            + (ty * (((1 - tx) * e[frame.Index(x, y + 1)]) + (tx * e[frame.Index(x + 1, y + 1)])));
        return Math.Max(0.1, -elevation);
    }

    private static void Geometry(StringBuilder text, FormGeometry geometry, LocalProjection plane)
    {
        switch (geometry.Shape)
        {
            case FormShape.Point:
                text.Append("{\"type\":\"Point\",\"coordinates\":");
                Point(text, plane.ToGeo(geometry.Points[0]));
                break;
            case FormShape.Line:
                text.Append("{\"type\":\"LineString\",\"coordinates\":[");
                List<PlanePoint> line = Thin(geometry.Points, 2);
                for (int i = 0; i < line.Count; i++)
                {
                    if (i > 0) text.Append(',');
                    Point(text, plane.ToGeo(line[i]));
                }

                text.Append(']');
                break;
            default:
                text.Append("{\"type\":\"Polygon\",\"coordinates\":[");
                for (int i = 0; i < geometry.Parts.Count; i++)
                {
                    if (i > 0) text.Append(',');
                    Ring(text, Thin(geometry.Parts[i], 5), plane, i == 0);
                }

                text.Append(']');
                break;
        }

        text.Append('}');
    }

    // Outer rings turn left, islands right, as RFC 7946 asks.
    private static void Ring(StringBuilder text, List<PlanePoint> ring, LocalProjection plane, bool outer)
    {
        bool turn = CellOutline.AreaM2(ring) > 0 != outer;
        text.Append('[');
        for (int i = 0; i <= ring.Count; i++)
        {
            int k = i % ring.Count;
            if (i > 0) text.Append(',');
            Point(text, plane.ToGeo(ring[turn ? ring.Count - 1 - k : k]));
        }

        text.Append(']');
    }

    private static void Point(StringBuilder text, GeoPoint place) => text.Append(Plain, $"[{place.LonDeg:0.00000},{place.LatDeg:0.00000}]");

    private static List<PlanePoint> Thin(IReadOnlyList<PlanePoint> points, int keepEvery)
    {
        if (points.Count < 8 * keepEvery) return [.. points];
        List<PlanePoint> kept = [];
        for (int i = 0; i < points.Count; i += keepEvery) kept.Add(points[i]);
        return kept;
    }
}
