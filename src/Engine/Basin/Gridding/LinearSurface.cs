using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Flat triangles between soundings, drawn onto a grid.</summary>
internal static class LinearSurface
{
    /// <summary>Linear value in a triangle by barycentric weights; the corners may turn either way.</summary>
    public static double At((double X, double Y, double Value) a, (double X, double Y, double Value) b, (double X, double Y, double Value) c, double x, double y)
    {
        double area = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        double wb = (((x - a.X) * (c.Y - a.Y)) - ((y - a.Y) * (c.X - a.X))) / area;
        double wc = (((b.X - a.X) * (y - a.Y)) - ((b.Y - a.Y) * (x - a.X))) / area;
        return a.Value + (wb * (b.Value - a.Value)) + (wc * (c.Value - a.Value));
    }

    /// <summary>Draws every used triangle's plane onto the cells whose centre it holds.</summary>
    /// <param name="mesh">Triangulation.</param>
    /// <param name="values">Value by vertex.</param>
    /// <param name="used">Whether to draw a triangle; null draws all but ghosts.</param>
    /// <param name="frame">Frame.</param>
    /// <param name="target">[Ny*Nx]; other cells are left as they are.</param>
    public static void Draw(Triangulation mesh, ReadOnlySpan<float> values, bool[]? used, GridFrame frame, float[] target)
    {
        ReadOnlySpan<int> origin = mesh.Origin;
        for (int t = 0; t < mesh.EdgeCount / 3; t++)
        {
            if (mesh.IsGhost(t) || (used is not null && !used[t])) continue;
            int a = origin[3 * t], b = origin[(3 * t) + 1], c = origin[(3 * t) + 2];
            Triangle(frame, Corner(mesh, frame, values, a), Corner(mesh, frame, values, b), Corner(mesh, frame, values, c), target);
        }
    }

    private static (double X, double Y, double Value) Corner(Triangulation mesh, GridFrame frame, ReadOnlySpan<float> values, int v) =>
        (frame.ColumnAt(mesh.VertexXM(v)), frame.RowAt(mesh.VertexYM(v)), values[v]);

    private static void Triangle(
        GridFrame frame, (double X, double Y, double Value) a, (double X, double Y, double Value) b, (double X, double Y, double Value) c, float[] target)
    {
        const double slack = 1e-9;
        double lowY = Math.Min(a.Y, Math.Min(b.Y, c.Y)), highY = Math.Max(a.Y, Math.Max(b.Y, c.Y));
        int firstRow = Math.Max(0, (int)Math.Ceiling(lowY - slack)), lastRow = Math.Min(frame.Ny - 1, (int)Math.Floor(highY + slack));
        if (firstRow > lastRow) return;
        double area = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        double slopeX = (((b.Value - a.Value) * (c.Y - a.Y)) - ((c.Value - a.Value) * (b.Y - a.Y))) / area;
        double slopeY = (((c.Value - a.Value) * (b.X - a.X)) - ((b.Value - a.Value) * (c.X - a.X))) / area;
        float least = (float)Math.Min(a.Value, Math.Min(b.Value, c.Value)), most = (float)Math.Max(a.Value, Math.Max(b.Value, c.Value));
        for (int iy = firstRow; iy <= lastRow; iy++)
        {
            double left = double.PositiveInfinity, right = double.NegativeInfinity;
            Cut(a.X, a.Y, b.X, b.Y, iy, ref left, ref right);
            Cut(b.X, b.Y, c.X, c.Y, iy, ref left, ref right);
            Cut(c.X, c.Y, a.X, a.Y, iy, ref left, ref right);
            int first = Math.Max(0, (int)Math.Ceiling(left - slack)), last = (int)Math.Min(frame.Nx - 1, Math.Floor(right + slack));
            for (int ix = first; ix <= last; ix++)
            {
                float value = (float)(a.Value + ((ix - a.X) * slopeX) + ((iy - a.Y) * slopeY));
                target[(iy * frame.Nx) + ix] = Math.Clamp(value, least, most);
            }
        }
    }

    // Where the side from a to b crosses a row, in cells: widens the run from left to right.
    private static void Cut(double ax, double ay, double bx, double by, int row, ref double left, ref double right)
    {
        double low = Math.Min(ay, by), high = Math.Max(ay, by);
        if (row < low - 1e-9 || row > high + 1e-9) return;
        double height = by - ay;
        if (Math.Abs(height) < 1e-9)
        {
            left = Math.Min(left, Math.Min(ax, bx));
            right = Math.Max(right, Math.Max(ax, bx));
            return;
        }

        double x = ax + (Math.Clamp((row - ay) / height, 0, 1) * (bx - ax));
        left = Math.Min(left, x);
        right = Math.Max(right, x);
    }
}
