using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Pixels of a raster that hold water, as a box.</summary>
internal readonly record struct PixelBox(int FirstColumn, int FirstRow, int LastColumn, int LastRow);

/// <summary>Brings a raster onto the lake's frame.</summary>
internal static class RasterLayer
{
    // Placements are smooth: between control points this many cells apart a straight line errs by far less than a pixel.
    private const int ControlCells = 16;

    /// <summary>The box of pixels with water, or null where there is none.</summary>
    public static PixelBox? WetPixels(SurveyRaster raster)
    {
        int c0 = int.MaxValue, r0 = int.MaxValue, c1 = -1, r1 = -1;
        for (int row = 0; row < raster.Rows; row++)
        {
            ReadOnlySpan<float> line = raster.DepthM.AsSpan(row * raster.Columns, raster.Columns);
            for (int column = 0; column < line.Length; column++)
            {
                if (!(line[column] > 0) || float.IsInfinity(line[column])) continue;
                (c0, c1) = (Math.Min(c0, column), Math.Max(c1, column));
                (r0, r1) = (Math.Min(r0, row), row);
            }
        }

        return c1 < 0 ? null : new PixelBox(c0, r0, c1, r1);
    }

    /// <summary>Side of a pixel in the plane near the middle of the box, m: the geometric mean of its two sides.</summary>
    public static double PixelM(SurveyRaster raster, PixelBox box, LocalProjection projection)
    {
        double column = 0.5 * (box.FirstColumn + box.LastColumn), row = 0.5 * (box.FirstRow + box.LastRow);
        PlanePoint at = projection.ToPlane(raster.Placement.PlaceOf(column, row));
        double across = at.DistanceToM(projection.ToPlane(raster.Placement.PlaceOf(column + 1, row)));
        double down = at.DistanceToM(projection.ToPlane(raster.Placement.PlaceOf(column, row + 1)));
        return Math.Sqrt(across * down);
    }

    /// <summary>Corners and edge middles of the outside of a box, in the plane.</summary>
    public static IEnumerable<PlanePoint> Outline(SurveyRaster raster, PixelBox box, LocalProjection projection)
    {
        double[] columns = [box.FirstColumn - 0.5, 0.5 * (box.FirstColumn + box.LastColumn), box.LastColumn + 0.5];
        double[] rows = [box.FirstRow - 0.5, 0.5 * (box.FirstRow + box.LastRow), box.LastRow + 0.5];
        foreach (double row in rows)
            foreach (double column in columns) yield return projection.ToPlane(raster.Placement.PlaceOf(column, row));
    }

    /// <summary>Depth of the raster at every cell of a frame: bilinear, or the mean over the cell where pixels are finer; NaN without data.</summary>
    public static float[] Resample(SurveyRaster raster, GridFrame frame, LocalProjection projection, CancellationToken cancel)
    {
        float[] depthM = new float[frame.Count];
        int blocksX = ((frame.Nx - 1) / ControlCells) + 2;
        (double C, double R)[] south = new (double, double)[blocksX], north = new (double, double)[blocksX];
        Controls(raster, frame, projection, 0, south);
        for (int iy0 = 0; iy0 < frame.Ny; iy0 += ControlCells)
        {
            cancel.ThrowIfCancellationRequested();
            Controls(raster, frame, projection, iy0 + ControlCells, north);
            int end = Math.Min(frame.Ny, iy0 + ControlCells);
            for (int iy = iy0; iy < end; iy++)
            {
                double ty = (iy - iy0) / (double)ControlCells;
                for (int ix = 0; ix < frame.Nx; ix++)
                {
                    int block = ix / ControlCells;
                    double tx = (ix % ControlCells) / (double)ControlCells;
                    (double c00, double r00) = south[block];
                    (double c10, double r10) = south[block + 1];
                    (double c01, double r01) = north[block];
                    (double c11, double r11) = north[block + 1];
                    double cs = c00 + (tx * (c10 - c00)), cn = c01 + (tx * (c11 - c01));
                    double rs = r00 + (tx * (r10 - r00)), rn = r01 + (tx * (r11 - r01));
                    double widthPx = Math.Max(Math.Abs(c10 - c00), Math.Abs(c01 - c00)) / ControlCells;
                    double heightPx = Math.Max(Math.Abs(r10 - r00), Math.Abs(r01 - r00)) / ControlCells;
                    depthM[frame.Index(ix, iy)] = ValueAt(raster, cs + (ty * (cn - cs)), rs + (ty * (rn - rs)), widthPx, heightPx);
                }
            }

            (south, north) = (north, south);
        }

        return depthM;
    }

    private static void Controls(SurveyRaster raster, GridFrame frame, LocalProjection projection, int iy, (double C, double R)[] row)
    {
        for (int block = 0; block < row.Length; block++)
            row[block] = raster.Placement.PixelOf(projection.ToGeo(frame.Centre(block * ControlCells, iy)));
    }

    private static float ValueAt(SurveyRaster raster, double column, double row, double widthPx, double heightPx)
    {
        // A hair of tolerance: a cell that coincides with a pixel must not fall off the raster's edge by rounding.
        int nearC = (int)Math.Floor(column + 0.5 + 1e-6), nearR = (int)Math.Floor(row + 0.5 + 1e-6);
        if (!(column > -0.5 - 1e-6) || !(row > -0.5 - 1e-6) || !(nearC < raster.Columns) || !(nearR < raster.Rows)) return float.NaN;
        (nearC, nearR) = (Math.Max(0, nearC), Math.Max(0, nearR));
        if (float.IsNaN(raster.DepthM[(nearR * raster.Columns) + nearC])) return float.NaN;
        return widthPx > 1.5 || heightPx > 1.5
            ? MeanOver(raster, column, row, 0.5 * widthPx, 0.5 * heightPx)
            : Bilinear(raster, column, row);
    }

    private static float Bilinear(SurveyRaster raster, double column, double row)
    {
        int c0 = (int)Math.Floor(column), r0 = (int)Math.Floor(row);
        double tc = column - c0, tr = row - r0, sum = 0, weights = 0;
        for (int k = 0; k < 4; k++)
        {
            int c = c0 + (k & 1), r = r0 + (k >> 1);
            if ((uint)c >= (uint)raster.Columns || (uint)r >= (uint)raster.Rows) continue;
            float value = raster.DepthM[(r * raster.Columns) + c];
            double weight = ((k & 1) == 0 ? 1 - tc : tc) * ((k >> 1) == 0 ? 1 - tr : tr);
            if (!float.IsFinite(value) || weight <= 0) continue;
            sum += weight * value;
            weights += weight;
        }

        return weights > 1e-9 ? (float)(sum / weights) : float.NaN;
    }

    private static float MeanOver(SurveyRaster raster, double column, double row, double halfWidth, double halfHeight)
    {
        int c0 = Math.Max(0, (int)Math.Ceiling(column - halfWidth)), c1 = Math.Min(raster.Columns - 1, (int)Math.Floor(column + halfWidth));
        int r0 = Math.Max(0, (int)Math.Ceiling(row - halfHeight)), r1 = Math.Min(raster.Rows - 1, (int)Math.Floor(row + halfHeight));
        double sum = 0;
        int count = 0;
        for (int r = r0; r <= r1; r++)
        {
            for (int c = c0; c <= c1; c++)
            {
                float value = raster.DepthM[(r * raster.Columns) + c];
                if (!float.IsFinite(value)) continue;
                sum += value;
                count++;
            }
        }

        return count > 0 ? (float)(sum / count) : Bilinear(raster, column, row);
    }
}
