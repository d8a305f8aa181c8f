using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>The cells of an arm and what follows from them.</summary>
internal sealed class ArmCells
{
    /// <summary>Gathers cells.</summary>
    public ArmCells(DepthGrid grid, List<int> cells)
    {
        Cells = cells;
        float[] depthM = new float[cells.Count];
        double sumX = 0, sumY = 0, sum = 0;
        int deepest = cells[0];
        for (int k = 0; k < depthM.Length; k++)
        {
            int i = cells[k];
            depthM[k] = grid.DepthM[i];
            PlanePoint p = grid.Frame.Centre(i);
            sumX += p.XM;
            sumY += p.YM;
            sum += depthM[k];
            if (depthM[k] > grid.DepthM[deepest]) deepest = i;
        }

        Basin = Hypsography.FromCells(depthM, grid.Frame.CellAreaM2)!;
        MeanDepthM = sum / depthM.Length;
        MaxDepthM = grid.DepthM[deepest];
        Deepest = grid.Frame.Centre(deepest);
        Centroid = new PlanePoint(sumX / depthM.Length, sumY / depthM.Length);
    }

    /// <summary>Indices of the cells.</summary>
    public List<int> Cells { get; }

    /// <summary>Area by depth.</summary>
    public Hypsography Basin { get; }

    /// <summary>Mean depth, m.</summary>
    public double MeanDepthM { get; }

    /// <summary>Greatest depth, m.</summary>
    public double MaxDepthM { get; }

    /// <summary>The deepest place.</summary>
    public PlanePoint Deepest { get; }

    /// <summary>Middle of the cells.</summary>
    public PlanePoint Centroid { get; }
}
