using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>Water told apart by its width: bodies that a wide disc can reach, and the narrow arms and straits it cannot.</summary>
/// <remarks>A morphological opening with a disc that follows from the lake's own widest water, so it suits a pond and a long reservoir.</remarks>
internal static class NarrowArms
{
    /// <summary>Connected part by cell, -1 on land; wide and narrow parts never share a label.</summary>
    public static int[] Label(DepthGrid grid, double narrowShare)
    {
        GridFrame frame = grid.Frame;
        float[] toLand = ToLandCells(grid);
        float widest = 0;
        foreach (float cells in toLand) widest = Math.Max(widest, cells);
        double radius = narrowShare * widest;
        bool[] core = new bool[frame.Count];
        for (int i = 0; i < core.Length; i++) core[i] = toLand[i] > radius;
        float[] toCore = NearestCell.Of(core, frame.Nx, frame.Ny).SquaredCells;
        float[] wide = new float[frame.Count], narrow = new float[frame.Count];
        for (int i = 0; i < wide.Length; i++)
        {
            if (!(grid.DepthM[i] > 0)) continue;
            if (toCore[i] <= radius * radius) wide[i] = 1; else narrow[i] = 1;
        }

        WaterPieces wides = WaterPieces.Of(wide, frame), narrows = WaterPieces.Of(narrow, frame);
        int[] label = new int[frame.Count];
        for (int i = 0; i < label.Length; i++)
            label[i] = wides.Label[i] >= 0 ? wides.Label[i] : narrows.Label[i] >= 0 ? wides.Count + narrows.Label[i] : -1;
        return label;
    }

    // Distance to land; beyond the grid lies land.
    private static float[] ToLandCells(DepthGrid grid)
    {
        GridFrame frame = grid.Frame;
        bool[] land = new bool[frame.Count];
        for (int i = 0; i < land.Length; i++) land[i] = !(grid.DepthM[i] > 0);
        float[] cells = NearestCell.Of(land, frame.Nx, frame.Ny).SquaredCells;
        for (int i = 0; i < cells.Length; i++)
        {
            int x = i % frame.Nx, y = i / frame.Nx;
            float edge = 1 + Math.Min(Math.Min(x, frame.Nx - 1 - x), Math.Min(y, frame.Ny - 1 - y));
            cells[i] = land[i] ? 0 : Math.Min(MathF.Sqrt(cells[i]), edge);
        }

        return cells;
    }
}
