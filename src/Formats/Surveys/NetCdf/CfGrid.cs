using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.NetCdf;

/// <summary>Finds the grid of depths among arrays, and its place, by the Climate and Forecast conventions (CF 1.11) where the file keeps them.</summary>
internal static class CfGrid
{
    /// <summary>Whether an array of numbers has rows and columns.</summary>
    public static bool IsGrid(FiledArray a) => a.Type.IsNumber && a.Shape.Count(n => n > 1) == 2 && a.Shape.All(n => n > 0);

    /// <summary>The survey that the arrays hold.</summary>
    /// <exception cref="ArrayFault">No grid can be told to be of depths, or it has no even place.</exception>
    public static RawSurvey Read(List<FiledArray> arrays, string format, SurveyOptions options, CancellationToken cancel)
    {
        FiledArray grid = Choose(arrays, options);
        grid.HoldToSize();
        long[] sides = [.. grid.Shape.Where(n => n > 1)];
        AffinePlace place = Place(grid, sides, arrays, cancel, out bool degrees);
        RawSurvey raw = new(format) { Raster = new RawRaster((int)sides[1], (int)sides[0], grid.Scaled(cancel), place) };
        CfFacts.Tell(grid, arrays, degrees, raw);
        raw.RolesTaken.Add($"{grid.Name}: grid of depths");
        return raw;
    }

    private static FiledArray Choose(List<FiledArray> arrays, SurveyOptions options)
    {
        List<FiledArray> grids = arrays.FindAll(IsGrid);
        if (grids.Count == 0) throw new ArrayFault("the file holds neither a grid of rows and columns nor lists of lon, lat and depth; export the layer of depths or elevations as GeoTIFF, or one layer of it as NetCDF.");
        string named = string.Join(", ", grids.Take(12).Select(g => g.Name));
        if (options.DepthColumn is string set)
            return grids.Find(g => string.Equals(g.Name, set, StringComparison.OrdinalIgnoreCase)) ?? throw new ArrayFault($"the file holds no grid named '{set}'; it holds {named}.");
        if (grids.TrueForAll(CfFacts.IsOther))
            throw new ArrayFault($"its grids ({named}) are in {grids[0].Text("units")} and the like: that is no depth. Take the file with depths or elevations, or set survey.depth_column to the grid that holds them.");
        return CfFacts.NamedForDepth(grids)
            ?? (grids.Count == 1 ? grids[0] : throw new ArrayFault($"none of its grids is named for depth or elevation ({named}); set survey.depth_column in lake.json to the one that holds it."));
    }

    // Centres of columns and rows, by the two short arrays that tell where each lies.
    private static AffinePlace Place(FiledArray grid, long[] sides, List<FiledArray> arrays, CancellationToken cancel, out bool degrees)
    {
        string[] dimensions = [.. grid.Dimensions.Where((_, k) => grid.Shape[k] > 1)];
        FiledArray? x = null, y = null;
        bool turned = false;
        foreach (bool turn in (bool[])[false, true])
        {
            if (x is not null && y is not null) break;
            turned = turn;
            x = Axis(arrays, sides[turn ? 0 : 1], dimensions.ElementAtOrDefault(turn ? 0 : 1), CfFacts.IsEast);
            y = Axis(arrays, sides[turn ? 1 : 0], dimensions.ElementAtOrDefault(turn ? 1 : 0), CfFacts.IsNorth);
        }

        if (x is null || y is null) throw new ArrayFault($"nothing in the file tells where the rows and columns of its grid {grid.Name} lie (x and y, or lon and lat, of the same size); export it again with them, or as GeoTIFF.");
        degrees = CfFacts.IsDegrees(x) && CfFacts.IsDegrees(y);
        (double x0, double dx) = Even(x, cancel);
        (double y0, double dy) = Even(y, cancel);
        if (degrees && x0 > 180 && x0 + (dx * (x.Count - 1)) > 180) x0 -= 360;
        AffinePlace place = turned ? new(x0, 0, dx, y0, dy, 0) : new(x0, dx, 0, y0, 0, dy);
        return place.IsUsable ? place : throw new ArrayFault("the rows or columns of its grid have no width; the file is damaged. Copy or export it again.");
    }

    private static FiledArray? Axis(List<FiledArray> arrays, long length, string? dimension, Predicate<FiledArray> fits)
    {
        List<FiledArray> axes = arrays.FindAll(a => a.Shape.Count == 1 && a.Shape[0] == length && a.Type.IsNumber && fits(a));
        return axes.Find(a => a.Name == dimension) ?? axes.FirstOrDefault();
    }

    private static (double First, double Step) Even(FiledArray axis, CancellationToken cancel)
    {
        double[] v = axis.Numbers(cancel);
        double step = (v[^1] - v[0]) / (v.Length - 1);
        for (int i = 0; i < v.Length; i++)
            if (!(Math.Abs(v[i] - v[0] - (i * step)) <= 0.05 * Math.Abs(step))) throw new ArrayFault($"its {axis.Name} are not evenly spaced; draw the grid on an even one, or export it as GeoTIFF.");
        return (v[0], step);
    }
}
