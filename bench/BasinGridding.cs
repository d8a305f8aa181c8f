using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Bench;

/// <summary>Error of the gridder on left-out real soundings, beside GDAL's linear triangulation and inverse distance on the same split.</summary>
internal sealed class BasinGridding : IFigure
{
    public string Name => "basin-gridding";

    public string Claim => "leave-out error and time on real soundings, against GDAL's linear and inverse-distance grids of the same cells";

    public IEnumerable<Measured> Measure()
    {
        foreach (BasinSurveyFiles.Points survey in BasinSurveyFiles.All())
        {
            foreach (int run in (int[])[1, 24])
            {
                foreach (Measured measured in Split(survey, run)) yield return measured;
            }
        }
    }

    private static IEnumerable<Measured> Split(BasinSurveyFiles.Points survey, int run)
    {
        string what = $"{survey.Name}-{(run == 1 ? "pings" : "runs")}";
        (List<int> kept, List<int> left) = Leave(survey, run);
        GridFrame frame = FrameOf(survey);
        LocalProjection plane = new(new GeoPoint(40, -80));
        double offX = 0.5 * (frame.WestM + frame.EastM), offY = 0.5 * (frame.SouthM + frame.NorthM);
        GridFrame shifted = new(frame.WestM - offX, frame.SouthM - offY, frame.CellM, frame.Nx, frame.Ny);
        double[] lat = new double[kept.Count], lon = new double[kept.Count], depth = new double[kept.Count];
        for (int k = 0; k < kept.Count; k++)
        {
            GeoPoint place = plane.ToGeo(new PlanePoint(survey.XM[kept[k]] - offX, survey.YM[kept[k]] - offY));
            (lat[k], lon[k], depth[k]) = (place.LatDeg, place.LonDeg, survey.DepthM[kept[k]]);
        }

        Survey ours = new() { Soundings = [new SoundingSet(survey.Name, lat, lon, depth, null, [])] };
        GridOptions options = new() { Projection = plane, Frame = shifted };
        SurveyGridder.Grid(ours, options);
        GriddedLake lake = null!;
        double seconds = BasinGdal.Own(() => lake = SurveyGridder.Grid(ours, options));
        DepthGrid grid = lake.Grid ?? throw new InvalidOperationException(lake.Refusal);
        double[] oursAt = [.. left.Select(i => grid.DepthAtM(new PlanePoint(survey.XM[i] - offX, survey.YM[i] - offY)))];
        double[][] theirs = [];
        double[] theirSeconds = [];
        if (BasinGdal.Present) (theirs, theirSeconds) = Gdal(survey, kept, left, frame);
        // Errors are compared where every method gives a depth.
        double[] truth = [.. left.Select(i => survey.DepthM[i])];
        bool[] all = [.. truth.Select((_, k) => !double.IsNaN(oursAt[k]) && theirs.All(t => !double.IsNaN(t[k])))];
        string against = $"{all.Count(a => a)} of {left.Count} left-out soundings, {frame.Nx} x {frame.Ny} cells of {frame.CellM} m";
        yield return new Measured($"basin-gridding-{what}-rmse", Rmse(oursAt, truth, all), "m", $"{lake.Method}; {against}");
        yield return new Measured($"basin-gridding-{what}-outside", (double)oursAt.Count(double.IsNaN) / left.Count, "share", "left-out soundings that came out as land");
        yield return new Measured($"basin-gridding-{what}-within-2sd", Within(grid, survey, left, oursAt, offX, offY), "share", "want 0.95");
        if (!BasinGdal.Present) yield break;
        yield return new Measured($"basin-gridding-{what}-linear-rmse", Rmse(theirs[0], truth, all), "m", "gdal_grid linear");
        yield return new Measured($"basin-gridding-{what}-distance-rmse", Rmse(theirs[1], truth, all), "m", "gdal_grid invdistnn, power 2, 12 points");
        yield return new Measured($"basin-gridding-{what}-time-ratio", seconds / theirSeconds[0], "of linear", $"processor time {seconds:0.00} s against {theirSeconds[0]:0.00} s; inverse distance {theirSeconds[1]:0.00} s");
    }

    private static (double[][] At, double[] Seconds) Gdal(BasinSurveyFiles.Points survey, List<int> kept, List<int> left, GridFrame frame)
    {
        string folder = Directory.CreateTempSubdirectory("basin-gridding").FullName;
        string csv = Path.Combine(folder, "points.csv"), vrt = Path.Combine(folder, "points.vrt"), output = Path.Combine(folder, "grid.bin");
        using (StreamWriter writer = new(csv))
        {
            writer.WriteLine("x,y,z");
            foreach (int i in kept) writer.WriteLine($"{BasinGdal.Text(survey.XM[i])},{BasinGdal.Text(survey.YM[i])},{BasinGdal.Text(survey.DepthM[i])}");
        }

        File.WriteAllText(vrt, $"<OGRVRTDataSource><OGRVRTLayer name=\"points\"><SrcDataSource>{csv}</SrcDataSource><GeometryType>wkbPoint</GeometryType>"
            + "<GeometryField encoding=\"PointFromColumns\" x=\"x\" y=\"y\" z=\"z\"/></OGRVRTLayer></OGRVRTDataSource>");
        double radius = 15 * frame.CellM;
        string[] methods = ["linear:radius=0:nodata=-9999", $"invdistnn:power=2:radius={BasinGdal.Text(radius)}:max_points=12:nodata=-9999"];
        double[][] at = new double[2][];
        double[] seconds = new double[2];
        for (int m = 0; m < 2; m++)
        {
            File.Delete(output);
            seconds[m] = BasinGdal.Run("gdal_grid", "-q", "-a", methods[m], "-txe", BasinGdal.Text(frame.WestM), BasinGdal.Text(frame.EastM),
                "-tye", BasinGdal.Text(frame.SouthM), BasinGdal.Text(frame.NorthM), "-outsize", $"{frame.Nx}", $"{frame.Ny}", "-of", "ENVI", "-ot", "Float32",
                "-l", "points", vrt, output);
            byte[] bytes = File.ReadAllBytes(output);
            float[] cells = new float[frame.Count];
            for (int row = 0; row < frame.Ny; row++) Buffer.BlockCopy(bytes, 4 * (frame.Ny - 1 - row) * frame.Nx, cells, 4 * row * frame.Nx, 4 * frame.Nx);
            at[m] = [.. left.Select(i => Sample(cells, frame, survey.XM[i], survey.YM[i]))];
        }

        Directory.Delete(folder, true);
        return (at, seconds);
    }

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

    private static (List<int> Kept, List<int> Left) Leave(BasinSurveyFiles.Points survey, int run)
    {
        SeededRandom random = new(77);
        List<int> kept = [], left = [];
        for (int i = 0; i < survey.XM.Count; i += run)
        {
            bool leave = random.NextDouble() < 0.1;
            for (int k = i; k < Math.Min(survey.XM.Count, i + run); k++) (leave && survey.DepthM[k] > 0 ? left : kept).Add(k);
        }

        return (kept, left);
    }

    private static GridFrame FrameOf(BasinSurveyFiles.Points survey)
    {
        double west = survey.XM.Min(), east = survey.XM.Max(), south = survey.YM.Min(), north = survey.YM.Max();
        double cell = Math.Max(1, Math.Ceiling(Math.Sqrt((east - west) * (north - south) / 120_000)));
        return new GridFrame(west - cell, south - cell, cell, (int)((east - west) / cell) + 3, (int)((north - south) / cell) + 3);
    }

    private static double Rmse(double[] at, double[] truth, bool[] use)
    {
        double sum = 0;
        int count = 0;
        for (int k = 0; k < at.Length; k++)
        {
            if (!use[k]) continue;
            sum += (at[k] - truth[k]) * (at[k] - truth[k]);
            count++;
        }

        return Math.Sqrt(sum / count);
    }

    private static double Within(DepthGrid grid, BasinSurveyFiles.Points survey, List<int> left, double[] at, double offX, double offY)
    {
        int inside = 0, count = 0;
        for (int k = 0; k < at.Length; k++)
        {
            if (double.IsNaN(at[k]) || !grid.Frame.TryCellAt(new PlanePoint(survey.XM[left[k]] - offX, survey.YM[left[k]] - offY), out int ix, out int iy)) continue;
            count++;
            if (Math.Abs(at[k] - survey.DepthM[left[k]]) <= 2 * grid.DepthSdM[grid.Frame.Index(ix, iy)]) inside++;
        }

        return (double)inside / count;
    }
}
