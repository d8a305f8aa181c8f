using SecondShore.Engine.Core.Grid;

namespace SecondShore.Bench;

/// <summary>Soundings in a file that gdal_grid reads, and grids drawn from it.</summary>
internal sealed class BasinGdalGrid : IDisposable
{
    private readonly BasinSurveyFiles.Points _survey;
    private readonly GridFrame _frame;
    private readonly string _folder = Directory.CreateTempSubdirectory("basin-gridding").FullName;

    public BasinGdalGrid(BasinSurveyFiles.Points survey, List<int> kept, GridFrame frame)
    {
        (_survey, _frame) = (survey, frame);
        using StreamWriter writer = new(Path.Combine(_folder, "points.csv"));
        writer.WriteLine("x,y,z");
        foreach (int i in kept) writer.WriteLine($"{BasinGdal.Text(survey.XM[i])},{BasinGdal.Text(survey.YM[i])},{BasinGdal.Text(survey.DepthM[i])}");
        File.WriteAllText(Points, $"<OGRVRTDataSource><OGRVRTLayer name=\"points\"><SrcDataSource>{Path.Combine(_folder, "points.csv")}</SrcDataSource><GeometryType>wkbPoint</GeometryType>"
            + "<GeometryField encoding=\"PointFromColumns\" x=\"x\" y=\"y\" z=\"z\"/></OGRVRTLayer></OGRVRTDataSource>");
    }

    public static string Linear => "linear:radius=0:nodata=-9999";

    private string Points => Path.Combine(_folder, "points.vrt");

    private string Output => Path.Combine(_folder, "grid.bin");

    public static string Distance(GridFrame frame) => $"invdistnn:power=2:radius={BasinGdal.Text(15 * frame.CellM)}:max_points=12:nodata=-9999";

    /// <summary>Processor time of one drawing, s.</summary>
    public double Seconds(string method) => BasinGdal.Run("gdal_grid", "-q", "-a", method, "-txe", BasinGdal.Text(_frame.WestM), BasinGdal.Text(_frame.EastM),
        "-tye", BasinGdal.Text(_frame.SouthM), BasinGdal.Text(_frame.NorthM), "-outsize", $"{_frame.Nx}", $"{_frame.Ny}", "-of", "ENVI", "-ot", "Float32",
        "-l", "points", Points, Output);

    /// <summary>Depths drawn at soundings, m; NaN where none was.</summary>
    public double[] Draw(string method, List<int> left)
    {
        Seconds(method);
        byte[] bytes = File.ReadAllBytes(Output);
        float[] cells = new float[_frame.Count];
        for (int row = 0; row < _frame.Ny; row++) Buffer.BlockCopy(bytes, 4 * (_frame.Ny - 1 - row) * _frame.Nx, cells, 4 * row * _frame.Nx, 4 * _frame.Nx);
        return [.. left.Select(i => Sample(cells, _frame, _survey.XM[i], _survey.YM[i]))];
    }

    public void Dispose() => Directory.Delete(_folder, true);

    private static double Sample(float[] cells, GridFrame frame, double x, double y)
    {
        double column = frame.ColumnAt(x), row = frame.RowAt(y), sum = 0, weights = 0;
        int x0 = (int)Math.Floor(column), y0 = (int)Math.Floor(row);
        for (int k = 0; k < 4; k++)
        {
            int ix = x0 + (k & 1), iy = y0 + (k >> 1);
            if (!frame.Contains(ix, iy) || cells[frame.Index(ix, iy)] < -9000) continue;
            double w = ((k & 1) == 0 ? 1 - (column - x0) : column - x0) * ((k >> 1) == 0 ? 1 - (row - y0) : row - y0);
            sum += w * cells[frame.Index(ix, iy)];
            weights += w;
        }

        return weights > 0.3 ? sum / weights : double.NaN;
    }
}
