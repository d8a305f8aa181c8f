using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Brings a raster to soundings taken on it: their differences, drawn as a surface, fade out away from them.</summary>
internal static class RasterCorrection
{
    /// <summary>Corrects a sheet in place.</summary>
    public static void Apply(float[] sheet, PointCloud cloud, GridFrame frame, List<string> done, CancellationToken cancel)
    {
        PointCloud off = new();
        bool[] sounded = new bool[sheet.Length];
        float[] own = new float[sheet.Length];
        double sum = 0;
        for (int i = 0; i < cloud.Count; i++)
        {
            if (cloud.Kind[i] != PointKind.Sounding || !frame.TryCellAt(new(cloud.XM[i], cloud.YM[i]), out int ix, out int iy)) continue;
            int cell = frame.Index(ix, iy);
            if (!float.IsFinite(sheet[cell])) continue;
            double differenceM = cloud.DepthM[i] - Bilinear(sheet, frame, cloud.XM[i], cloud.YM[i], sheet[cell]);
            off.Add(cloud.XM[i], cloud.YM[i], differenceM, PointKind.Sounding, 0);
            sounded[cell] = true;
            own[cell] = (float)differenceM;
            sum += differenceM;
        }

        if (off.Count < 3) return;
        float[] surface = new float[sheet.Length];
        Array.Fill(surface, float.NaN);
        Triangulation mesh = new(off.XM, off.YM, cancel);
        double spacingM = 3 * frame.CellM;
        if (mesh.EdgeCount > 0)
        {
            spacingM = Math.Max(spacingM, 0.5 * ConcaveHull.LongestM(mesh, default));
            LinearSurface.Draw(mesh, off.DepthM, null, frame, surface);
        }

        (int[] nearest, float[] squared) = NearestCell.Of(sounded, frame.Nx, frame.Ny);
        for (int i = 0; i < sheet.Length; i++)
        {
            double distanceM = Math.Sqrt(squared[i]) * frame.CellM, t = Math.Clamp((distanceM - (0.5 * spacingM)) / (1.5 * spacingM), 0, 1);
            if (t >= 1 || !float.IsFinite(sheet[i])) continue;
            float shiftM = float.IsNaN(surface[i]) ? own[nearest[i]] : surface[i];
            sheet[i] += (float)((1 - (t * t * (3 - (2 * t)))) * shiftM);
        }

        string way = sum >= 0 ? "deeper" : "shallower";
        done.Add(FormattableString.Invariant(
            $"{off.Count} soundings on the raster corrected it near them; they are {Math.Abs(sum / off.Count):0.00} m {way} in the mean."));
    }

    private static double Bilinear(float[] sheet, GridFrame frame, double xM, double yM, float fallback)
    {
        double column = frame.ColumnAt(xM), row = frame.RowAt(yM);
        int x = (int)Math.Floor(column), y = (int)Math.Floor(row);
        if (!frame.Contains(x, y) || !frame.Contains(x + 1, y + 1)) return fallback;
        int i = frame.Index(x, y);
        double tx = column - x, ty = row - y;
        double value = ((1 - ty) * (((1 - tx) * sheet[i]) + (tx * sheet[i + 1]))) + (ty * (((1 - tx) * sheet[i + frame.Nx]) + (tx * sheet[i + frame.Nx + 1])));
        return double.IsFinite(value) ? value : fallback;
    }
}
