using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Rounds the terraces that flat triangles leave inside a contour and in its bends.</summary>
/// <remarks>
/// Where all corners of a triangle lie on contours of one depth the bed is unknown but for the slope outside: it goes on
/// falling (or rising) as outside, ever less, and never by more than half the interval to the next contour. So hollows get a
/// floor, humps a top, and a channel that crosses a bend of a contour keeps running.
/// </remarks>
internal static class FlatContours
{
    private const int SmoothingPasses = 12;

    /// <summary>Cells in triangles whose corners all lie on contours of one depth.</summary>
    public static bool[] Find(Triangulation mesh, PointCloud cloud, GridFrame frame)
    {
        int triangles = mesh.EdgeCount / 3;
        bool[] flat = new bool[triangles];
        for (int t = 0; t < triangles; t++)
        {
            if (mesh.IsGhost(t)) continue;
            int a = mesh.Origin[3 * t], b = mesh.Origin[(3 * t) + 1], c = mesh.Origin[(3 * t) + 2];
            flat[t] = cloud.Kind[a] == PointKind.Contour && cloud.Kind[b] == PointKind.Contour && cloud.Kind[c] == PointKind.Contour
                && cloud.DepthM[a] == cloud.DepthM[b] && cloud.DepthM[b] == cloud.DepthM[c];
        }

        float[] drawn = new float[frame.Count];
        LinearSurface.Draw(mesh, Ones(cloud.Count), flat, frame, drawn);
        bool[] cells = new bool[frame.Count];
        for (int i = 0; i < cells.Length; i++) cells[i] = drawn[i] > 0;
        return cells;
    }

    /// <summary>Rounds flat cells in place.</summary>
    public static void Round(float[] depthM, bool[] flat, double intervalM, GridFrame frame)
    {
        bool[] sloped = new bool[flat.Length];
        for (int i = 0; i < flat.Length; i++) sloped[i] = !flat[i] && float.IsFinite(depthM[i]);
        (int[] nearest, float[] squared) = NearestCell.Of(sloped, frame.Nx, frame.Ny);
        float[] shift = new float[flat.Length];
        double mostM = 0.5 * intervalM;
        for (int i = 0; i < flat.Length; i++)
        {
            // Between two waters the hull is dug away, and no depth was drawn there.
            if (!flat[i] || nearest[i] < 0 || !float.IsFinite(depthM[i])) continue;
            // The slope outside: from the nearest sloped cell, and one as far again beyond it.
            double cells = Math.Sqrt(squared[i]), fall = depthM[i] - Beyond(depthM, flat, frame, i, nearest[i], cells, out double over);
            double slope = fall / over;
            shift[i] = (float)(Math.Sign(slope) * mostM * (1 - Math.Exp(-Math.Abs(slope) * cells / mostM)));
        }

        Smooth(shift, flat, frame);
        for (int i = 0; i < flat.Length; i++) if (flat[i]) depthM[i] += shift[i];
    }

    // Depth past the nearest sloping cell of a flat one, up to three cells further along the way from it (cells long);
    // over: how far past, in cells.
    private static double Beyond(float[] depthM, bool[] flat, GridFrame frame, int i, int nearest, double cells, out double over)
    {
        int x = nearest % frame.Nx, y = nearest / frame.Nx;
        double dx = (x - (i % frame.Nx)) / cells, dy = (y - (i / frame.Nx)) / cells;
        for (int step = 3; step >= 1; step--)
        {
            int bx = (int)Math.Round(x + (step * dx)), by = (int)Math.Round(y + (step * dy));
            if (!frame.Contains(bx, by) || flat[frame.Index(bx, by)] || !float.IsFinite(depthM[frame.Index(bx, by)])) continue;
            over = step + 0.5;
            return depthM[frame.Index(bx, by)];
        }

        over = 1;
        return depthM[nearest];
    }

    private static void Smooth(float[] shift, bool[] flat, GridFrame frame)
    {
        float[] next = new float[shift.Length];
        for (int pass = 0; pass < SmoothingPasses; pass++)
        {
            for (int iy = 1; iy < frame.Ny - 1; iy++)
            {
                for (int ix = 1; ix < frame.Nx - 1; ix++)
                {
                    int i = frame.Index(ix, iy);
                    if (flat[i]) next[i] = 0.25f * (shift[i - 1] + shift[i + 1] + shift[i - frame.Nx] + shift[i + frame.Nx]);
                }
            }

            for (int i = 0; i < shift.Length; i++) if (flat[i]) shift[i] = 0.5f * (shift[i] + next[i]);
        }
    }

    private static float[] Ones(int count)
    {
        float[] ones = new float[count];
        Array.Fill(ones, 1f);
        return ones;
    }
}
