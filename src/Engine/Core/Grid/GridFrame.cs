using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Core.Grid;

/// <summary>
/// The frame of a square-celled grid in the lake's plane. Arrays over it are row-major, <c>[iy * Nx + ix]</c>,
/// row 0 southmost, column 0 westmost; a value belongs to its cell's centre.
/// </summary>
public sealed record GridFrame
{
    /// <summary>Largest number of cells a grid may have: beyond it memory, not sense, decides.</summary>
    public static readonly int MaxCells = 64_000_000;

    /// <summary>Makes a frame.</summary>
    /// <param name="westM">West edge of the grid (not a cell centre), m in the plane.</param>
    /// <param name="southM">South edge of the grid, m in the plane.</param>
    /// <param name="cellM">Side of a cell, m, above 0.</param>
    /// <param name="nx">Columns, at least 1.</param>
    /// <param name="ny">Rows, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range, or the grid has over <see cref="MaxCells"/> cells.</exception>
    public GridFrame(double westM, double southM, double cellM, int nx, int ny)
    {
        WestM = Require.Finite(westM);
        SouthM = Require.Finite(southM);
        CellM = Require.Positive(cellM);
        Nx = Require.InRange(nx, 1, MaxCells);
        Ny = Require.InRange(ny, 1, MaxCells / nx);
    }

    /// <summary>West edge, m.</summary>
    public double WestM { get; }

    /// <summary>South edge, m.</summary>
    public double SouthM { get; }

    /// <summary>Side of a cell, m.</summary>
    public double CellM { get; }

    /// <summary>Columns.</summary>
    public int Nx { get; }

    /// <summary>Rows.</summary>
    public int Ny { get; }

    /// <summary>Number of cells.</summary>
    public int Count => Nx * Ny;

    /// <summary>Area of a cell, m2.</summary>
    public double CellAreaM2 => CellM * CellM;

    /// <summary>East edge, m.</summary>
    public double EastM => WestM + (Nx * CellM);

    /// <summary>North edge, m.</summary>
    public double NorthM => SouthM + (Ny * CellM);

    /// <summary>Index into arrays over the frame; the caller guards the bounds.</summary>
    public int Index(int ix, int iy) => (iy * Nx) + ix;

    /// <summary>Whether a column and row lie in the grid.</summary>
    public bool Contains(int ix, int iy) => (uint)ix < (uint)Nx && (uint)iy < (uint)Ny;

    /// <summary>Centre of a cell.</summary>
    public PlanePoint Centre(int ix, int iy) => new(WestM + ((ix + 0.5) * CellM), SouthM + ((iy + 0.5) * CellM));

    /// <summary>Centre of the cell with an array index.</summary>
    public PlanePoint Centre(int index) => Centre(index % Nx, index / Nx);

    /// <summary>The cell that holds a point; false outside the grid.</summary>
    public bool TryCellAt(PlanePoint point, out int ix, out int iy)
    {
        double fx = Math.Floor((point.XM - WestM) / CellM), fy = Math.Floor((point.YM - SouthM) / CellM);
        bool inside = fx >= 0 && fy >= 0 && fx < Nx && fy < Ny;
        ix = inside ? (int)fx : -1;
        iy = inside ? (int)fy : -1;
        return inside;
    }

    /// <summary>Column coordinate in cell units where whole numbers are cell centres.</summary>
    public double ColumnAt(double xM) => ((xM - WestM) / CellM) - 0.5;

    /// <summary>Row coordinate in cell units where whole numbers are cell centres.</summary>
    public double RowAt(double yM) => ((yM - SouthM) / CellM) - 0.5;
}
