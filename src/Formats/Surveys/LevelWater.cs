namespace SecondShore.Formats.Surveys;

/// <summary>Looks for a raster of terrain that shows the surface of a lake instead of its bed: very many cells of one height near the top.</summary>
internal static class LevelWater
{
    /// <summary>Depth down to which the surface may have stood below the level given, m.</summary>
    private const double LowestM = 0.5;

    private const double ClassM = 0.01;

    // Our choice: a shallow bed filed in whole feet stays below it.
    private const int FewestCells = 200;
    private const double LeastShare = 0.4;

    /// <summary>Number of cells that lie level; 0 where they are no such share of the water.</summary>
    /// <param name="depthM">Depths, NaN where there are none.</param>
    public static int Cells(ReadOnlySpan<float> depthM)
    {
        int[] classes = new int[(int)((LowestM / ClassM) + 3)];
        int water = 0;
        foreach (float depth in depthM)
        {
            if (!(depth >= -ClassM)) continue;
            water++;
            if (depth <= LowestM) classes[(int)Math.Round(depth / ClassM) + 1]++;
        }

        int most = classes.Max();
        return most >= FewestCells && most >= LeastShare * water ? most : 0;
    }
}
