using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>The bed under study: smoothed heights, slopes, distance to shore, and the yardsticks all finders share.</summary>
internal sealed class Bed
{
    public Bed(DepthGrid grid, FormOptions options)
    {
        (Grid, Frame, Options) = (grid, grid.Frame, options);
        float[] z = new float[Frame.Count];
        bool[] land = new bool[Frame.Count];
        List<float> depths = new(Frame.Count / 2);
        for (int i = 0; i < z.Length; i++)
        {
            bool wet = grid.DepthM[i] > 0;
            z[i] = wet ? -grid.DepthM[i] : float.NaN;
            land[i] = !wet;
            if (wet) depths.Add(grid.DepthM[i]);
        }

        depths.Sort();
        WaterCells = depths.Count;
        DeepM = depths.Count > 0 ? depths[(int)(0.995 * (depths.Count - 1))] : 0;
        double areaKm2 = WaterCells * Frame.CellAreaM2 / 1e6;
        ScaleM = options.YardstickM ?? Math.Clamp(25 * Math.Pow(areaKm2, 0.3), Math.Min(2 * Frame.CellM, 80), 80);
        Z = MaskedBlur.Of(z, Frame, 0.22 * ScaleM / Frame.CellM);
        (SlopeTan, FallX, FallY) = Slopes(Z, Frame);
        (SharpTan, _, _) = Slopes(z, Frame);
        if (WaterCells < Frame.Count)
        {
            float[] squared = NearestCell.Of(land, Frame.Nx, Frame.Ny).SquaredCells;
            ShoreM = new float[squared.Length];
            for (int i = 0; i < squared.Length; i++) ShoreM[i] = (float)(Math.Sqrt(squared[i]) * Frame.CellM);
        }
        else
        {
            ShoreM = new float[Frame.Count];
            Array.Fill(ShoreM, float.MaxValue);
        }
    }

    public DepthGrid Grid { get; }

    public GridFrame Frame { get; }

    public FormOptions Options { get; }

    /// <summary>Smoothed elevation of the bed below the surface, m; NaN on land.</summary>
    public float[] Z { get; }

    /// <summary>Slope of <see cref="Z"/>, rise per run; 0 on land.</summary>
    public float[] SlopeTan { get; }

    /// <summary>Slope of the bed as given, rise per run.</summary>
    public float[] SharpTan { get; }

    /// <summary>Unit vector of the way down.</summary>
    public float[] FallX { get; }

    /// <summary>Unit vector of the way down.</summary>
    public float[] FallY { get; }

    /// <summary>Distance to land, m.</summary>
    public float[] ShoreM { get; }

    public int WaterCells { get; }

    /// <summary>Depth that all but half a percent of the lake stays above, m.</summary>
    public double DeepM { get; }

    /// <summary>The yardstick, m.</summary>
    public double ScaleM { get; }

    /// <summary>The yardstick in cells, at least 1.</summary>
    public int ScaleCells => Math.Max(1, (int)Math.Round(ScaleM / Frame.CellM));

    public bool IsWet(int i) => !float.IsNaN(Z[i]);

    /// <summary>Smoothed elevation at a place, bilinear where it can be; NaN on land and outside.</summary>
    public double At(double xM, double yM)
    {
        double column = Frame.ColumnAt(xM), row = Frame.RowAt(yM);
        int x = (int)Math.Floor(column), y = (int)Math.Floor(row);
        if (x < 0 || y < 0 || x + 1 >= Frame.Nx || y + 1 >= Frame.Ny) return double.NaN;
        double tx = column - x, ty = row - y;
        int i = Frame.Index(x, y);
        double value = ((1 - ty) * (((1 - tx) * Z[i]) + (tx * Z[i + 1]))) + (ty * (((1 - tx) * Z[i + Frame.Nx]) + (tx * Z[i + Frame.Nx + 1])));
        return double.IsNaN(value) ? Z[Frame.Index(tx < 0.5 ? x : x + 1, ty < 0.5 ? y : y + 1)] : value;
    }

    /// <summary>Greatest rise over a place along a ray, m; a shore counts as the surface.</summary>
    public double RiseM(PlanePoint from, double dx, double dy, double reachM, double fromZ)
    {
        double most = 0;
        for (double t = Frame.CellM; t <= reachM; t += Frame.CellM)
        {
            double z = At(from.XM + (dx * t), from.YM + (dy * t));
            if (double.IsNaN(z)) return Math.Max(most, -fromZ);
            most = Math.Max(most, z - fromZ);
        }

        return most;
    }

    /// <summary>Greatest fall below a place along a ray, m; the ray ends at the shore.</summary>
    public double FallM(PlanePoint from, double dx, double dy, double reachM, double fromZ)
    {
        double most = 0;
        for (double t = Frame.CellM; t <= reachM; t += Frame.CellM)
        {
            double z = At(from.XM + (dx * t), from.YM + (dy * t));
            if (double.IsNaN(z)) return most;
            most = Math.Max(most, fromZ - z);
        }

        return most;
    }

    /// <summary>Marks the cells within a distance of a line.</summary>
    public void Paint(bool[] mask, IReadOnlyList<PlanePoint> line, Func<int, double> reachM) =>
        ForRunsNear(line, reachM, (first, end) => Array.Fill(mask, true, first, end - first));

    /// <summary>Hands over the cells within a distance of a line, wet or not, in runs along rows from a first index to before an end; a cell may come more than once.</summary>
    public void ForRunsNear(IReadOnlyList<PlanePoint> line, Func<int, double> reachM, Action<int, int> run)
    {
        for (int k = 0; k < line.Count; k++)
        {
            double reach = reachM(k), column = Frame.ColumnAt(line[k].XM), row = Frame.RowAt(line[k].YM), n = reach / Frame.CellM;
            int west = Math.Max(0, (int)Math.Ceiling(column - n)), east = Math.Min(Frame.Nx - 1, (int)(column + n));
            for (int y = Math.Max(0, (int)Math.Ceiling(row - n)); y <= Math.Min(Frame.Ny - 1, (int)(row + n)); y++)
            {
                double left2 = (n * n) - ((y - row) * (y - row));
                int first = west, last = east;
                while (first <= last && (first - column) * (first - column) > left2) first++;
                while (last >= first && (last - column) * (last - column) > left2) last--;
                if (first <= last) run(Frame.Index(first, y), Frame.Index(last, y) + 1);
            }
        }
    }

    /// <summary>Confidence of a measure against the least that passes: a half at the threshold, nearing 1 above.</summary>
    public static double Sure(double measure, double least) => Math.Clamp(1 - (0.5 * least / Math.Max(measure, 1e-9)), 0, 0.99);

    private static (float[] Tan, float[] X, float[] Y) Slopes(float[] z, GridFrame frame)
    {
        float[] tan = new float[z.Length], fx = new float[z.Length], fy = new float[z.Length];
        for (int y = 0; y < frame.Ny; y++)
        {
            for (int x = 0; x < frame.Nx; x++)
            {
                int i = frame.Index(x, y);
                if (float.IsNaN(z[i])) continue;
                double dx = Difference(z, i, x > 0 ? i - 1 : i, x + 1 < frame.Nx ? i + 1 : i) / frame.CellM;
                double dy = Difference(z, i, y > 0 ? i - frame.Nx : i, y + 1 < frame.Ny ? i + frame.Nx : i) / frame.CellM;
                double s = Math.Sqrt((dx * dx) + (dy * dy));
                tan[i] = (float)s;
                if (s > 1e-9) { fx[i] = (float)(-dx / s); fy[i] = (float)(-dy / s); }
            }
        }

        return (tan, fx, fy);
    }

    private static double Difference(float[] z, int i, int before, int after)
    {
        bool a = before != i && !float.IsNaN(z[before]), b = after != i && !float.IsNaN(z[after]);
        return a && b ? 0.5 * (z[after] - z[before]) : a ? z[i] - z[before] : b ? z[after] - z[i] : 0;
    }
}
