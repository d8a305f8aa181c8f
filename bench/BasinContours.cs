using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Contours and the belt: same lines as GDAL's, and fast enough for a slider.</summary>
internal sealed class BasinContours : IFigure
{
    public string Name => "basin-contours";

    public string Claim => "contours against gdal_contour on the same grid (distance between lines, time), and the belt's time";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure()
    {
        GridFrame frame = new(0, 0, 10, 1000, 700);
        float[] depthM = new float[frame.Count];
        for (int i = 0; i < depthM.Length; i++)
        {
            PlanePoint p = frame.Centre(i);
            depthM[i] = (float)(25 + (14 * Math.Sin(p.XM / 400) * Math.Cos(p.YM / 500)) + (2.5 * Math.Sin((p.XM + (2 * p.YM)) / 90)));
        }

        DepthGrid grid = new(new LocalProjection(new GeoPoint(45, 7)), frame, depthM) { EdgeIsShore = false };
        double[] levels = [.. Enumerable.Range(1, 8).Select(k => (k * 5.0) + 0.123)];
        Contours.Trace(grid, levels);
        IReadOnlyList<DepthContour> lines = [];
        double seconds = BasinGdal.Own(() => lines = Contours.Trace(grid, levels));
        yield return new Measured("basin-contours-time", seconds * 1000, "ms", $"{levels.Length} levels on {frame.Nx} x {frame.Ny} cells, {lines.Sum(l => l.Points.Length)} points");
        yield return new Measured("basin-second-shore-time", 1000 * BasinGdal.Own(() => SecondShoreLine.Trace(grid, 20.4)), "ms", "one level on 700 000 cells");
        SampleDistribution thermocline = SampleDistribution.Normal(20, 1.5, 200);
        Belt.Compute(grid, thermocline, null, 1.5);
        Belt belt = null!;
        double beltSeconds = BasinGdal.Own(() => belt = Belt.Compute(grid, thermocline, null, 1.5));
        yield return new Measured("basin-belt-time", 1000 * beltSeconds, "ms", $"700 000 cells, {belt.ExpectedAreaM2 / 1e6:0.0} km2 expected");
        if (!BasinGdal.Present) yield break;
        (List<(double Level, PlanePoint Point)> theirs, double theirSeconds, double startSeconds) = Gdal(depthM, frame, levels);
        yield return new Measured("basin-contours-time-ratio", seconds / Math.Max(1e-3, theirSeconds - startSeconds), "of gdal_contour", $"{theirSeconds:0.00} s with its files, of which {startSeconds:0.00} s for a grid of one level that is nowhere");
        (double most, double mean) = Apart(theirs, lines, frame);
        yield return new Measured("basin-contours-apart", most, "cells", $"furthest of {theirs.Count} of their points from our line of the same level; mean {mean:0.0000}", FigureMargin.Within(1e-9));
    }

    private static (List<(double Level, PlanePoint Point)> Points, double Seconds, double StartSeconds) Gdal(float[] depthM, GridFrame frame, double[] levels)
    {
        string folder = Directory.CreateTempSubdirectory("basin-contours").FullName, raster = Path.Combine(folder, "grid.bin"), csv = Path.Combine(folder, "lines.csv");
        byte[] bytes = new byte[4 * frame.Count];
        for (int row = 0; row < frame.Ny; row++) Buffer.BlockCopy(depthM, 4 * (frame.Ny - 1 - row) * frame.Nx, bytes, 4 * row * frame.Nx, 4 * frame.Nx);
        File.WriteAllBytes(raster, bytes);
        File.WriteAllText(Path.Combine(folder, "grid.hdr"), $"ENVI\nsamples = {frame.Nx}\nlines = {frame.Ny}\nbands = 1\nheader offset = 0\nfile type = ENVI Standard\ndata type = 4\ninterleave = bsq\nbyte order = 0\n"
            + $"map info = {{UTM, 1, 1, {BasinGdal.Text(frame.WestM)}, {BasinGdal.Text(frame.NorthM)}, {BasinGdal.Text(frame.CellM)}, {BasinGdal.Text(frame.CellM)}, 32, North, WGS-84}}\n");
        double start = BasinGdal.Run("gdal_contour", "-q", "-a", "level", "-fl", "900", "-f", "CSV", "-lco", "GEOMETRY=AS_WKT", raster, Path.Combine(folder, "none.csv"));
        double seconds = BasinGdal.Run("gdal_contour", ["-q", "-a", "level", "-fl", .. levels.Select(BasinGdal.Text), "-f", "CSV", "-lco", "GEOMETRY=AS_WKT", raster, csv]);
        List<(double, PlanePoint)> points = [];
        foreach (string line in File.ReadLines(csv).Skip(1))
        {
            int from = line.IndexOf('(', StringComparison.Ordinal), to = line.IndexOf(')', StringComparison.Ordinal);
            double level = double.Parse(line[(line.LastIndexOf(',') + 1)..].Trim('"'), System.Globalization.CultureInfo.InvariantCulture);
            foreach (string pair in line[(from + 1)..to].Split(','))
            {
                string[] xy = pair.Trim().Split(' ');
                points.Add((level, new PlanePoint(double.Parse(xy[0], System.Globalization.CultureInfo.InvariantCulture), double.Parse(xy[1], System.Globalization.CultureInfo.InvariantCulture))));
            }
        }

        Directory.Delete(folder, true);
        return (points, seconds, start);
    }

    // Furthest and mean distance of their points from our segments of the same level, cells; within half a cell of the grid's
    // rim, where only theirs run on, points are not compared.
    private static (double Most, double Mean) Apart(List<(double Level, PlanePoint Point)> theirs, IReadOnlyList<DepthContour> lines, GridFrame frame)
    {
        Dictionary<(int, int, double), List<(PlanePoint A, PlanePoint B)>> segments = [];
        foreach (DepthContour line in lines)
        {
            for (int i = 0; i < line.Points.Length - (line.Closed ? 0 : 1); i++)
            {
                (PlanePoint a, PlanePoint b) = (line.Points[i], line.Points[(i + 1) % line.Points.Length]);
                (int, int, double) key = ((int)frame.ColumnAt(0.5 * (a.XM + b.XM)), (int)frame.RowAt(0.5 * (a.YM + b.YM)), line.LevelM);
                if (!segments.TryGetValue(key, out var list)) segments[key] = list = [];
                list.Add((a, b));
            }
        }

        double most = 0, sum = 0;
        int count = 0;
        foreach ((double level, PlanePoint p) in theirs)
        {
            double column = frame.ColumnAt(p.XM), row = frame.RowAt(p.YM), best = double.PositiveInfinity;
            if (column < 0.01 || row < 0.01 || column > frame.Nx - 1.01 || row > frame.Ny - 1.01) continue;
            double own = lines.Select(l => l.LevelM).MinBy(l => Math.Abs(l - level));
            for (int k = 0; k < 9; k++)
            {
                if (!segments.TryGetValue(((int)column + (k % 3) - 1, (int)row + (k / 3) - 1, own), out var list)) continue;
                foreach ((PlanePoint a, PlanePoint b) in list) best = Math.Min(best, Distance(p, a, b));
            }

            most = Math.Max(most, Math.Min(best / frame.CellM, 99));
            sum += Math.Min(best / frame.CellM, 99);
            count++;
        }

        return (most, sum / count);
    }

    private static double Distance(PlanePoint p, PlanePoint a, PlanePoint b)
    {
        double dx = b.XM - a.XM, dy = b.YM - a.YM, length2 = (dx * dx) + (dy * dy);
        double t = length2 > 0 ? Math.Clamp((((p.XM - a.XM) * dx) + ((p.YM - a.YM) * dy)) / length2, 0, 1) : 0;
        return p.DistanceToM(new PlanePoint(a.XM + (t * dx), a.YM + (t * dy)));
    }
}
