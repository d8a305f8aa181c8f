using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>What an outline alone says of each of its water cells. Arrays run over the water cells in the order
/// of <see cref="Cells"/>.</summary>
internal sealed class ShapeFields
{
    /// <summary>Measures an outline.</summary>
    /// <param name="frame">Frame.</param>
    /// <param name="water">[Ny*Nx] whether a cell is water; one at least is.</param>
    /// <param name="cancel">Stops the work.</param>
    public ShapeFields(GridFrame frame, bool[] water, CancellationToken cancel)
    {
        Frame = frame;
        IndexOf = new int[water.Length];
        List<int> cells = [];
        bool[] land = new bool[water.Length];
        for (int i = 0; i < water.Length; i++)
        {
            land[i] = !water[i];
            IndexOf[i] = water[i] ? cells.Count : -1;
            if (water[i]) cells.Add(i);
        }

        Cells = [.. cells];
        float[] toShore = ToShoreCells(land, frame);
        WidthM = LocalWidth.Of(toShore, frame, cancel);
        ShoreM = new float[Cells.Length];
        for (int k = 0; k < Cells.Length; k++)
        {
            ShoreM[k] = (float)(toShore[Cells[k]] * frame.CellM);
            WidthM[Cells[k]] *= (float)frame.CellM;
            WidestM = Math.Max(WidestM, ShoreM[k]);
        }

        WidthM = [.. Cells.Select(i => WidthM[i])];
        Sheet = Membrane.Of(this, cancel);
    }

    /// <summary>The frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>Index in the frame of each water cell.</summary>
    public int[] Cells { get; }

    /// <summary>[Ny*Nx] place of a cell in <see cref="Cells"/>, -1 on land.</summary>
    public int[] IndexOf { get; }

    /// <summary>Distance to the nearest shore, m.</summary>
    public float[] ShoreM { get; }

    /// <summary>Half the width of the water at a cell, m: the radius of the largest circle of water that holds it.</summary>
    public float[] WidthM { get; }

    /// <summary>Sag of a sheet held at the shore and loaded evenly, 1 where it is largest.</summary>
    public float[] Sheet { get; }

    /// <summary>Radius of the largest circle of water, m.</summary>
    public double WidestM { get; }

    // The frame's own edge is land too. A cell at the shore lies half a cell from it.
    private static float[] ToShoreCells(bool[] land, GridFrame frame)
    {
        float[] squared = NearestCell.Of(land, frame.Nx, frame.Ny).SquaredCells;
        for (int i = 0; i < squared.Length; i++)
        {
            int x = i % frame.Nx, y = i / frame.Nx;
            float edge = Math.Min(Math.Min(x, frame.Nx - 1 - x), Math.Min(y, frame.Ny - 1 - y)) + 1;
            squared[i] = land[i] ? 0 : Math.Min(MathF.Sqrt(squared[i]), edge) - 0.5f;
        }

        return squared;
    }
}
