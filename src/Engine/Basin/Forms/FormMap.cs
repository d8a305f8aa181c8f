using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>All forms of a lake's bottom, and which form a cell belongs to. Treated as immutable.</summary>
public sealed class FormMap
{
    internal FormMap(GridFrame frame, double yardstickM, IReadOnlyList<BottomForm> forms, short[] formOfCell, FormClass?[] groundOfCell)
    {
        (Frame, YardstickM, Forms, FormOfCell) = (frame, yardstickM, forms, formOfCell);
        GroundOfCell = groundOfCell;
    }

    /// <summary>The grid's frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>The yardstick that was used, m.</summary>
    public double YardstickM { get; }

    /// <summary>Forms; <see cref="BottomForm.Id"/> is the index.</summary>
    public IReadOnlyList<BottomForm> Forms { get; }

    /// <summary>[Ny*Nx] the form that names a cell, sharpest first (hump before slope); -1 for none.</summary>
    public short[] FormOfCell { get; }

    /// <summary>[Ny*Nx] flat or slope, before sharper forms are laid over it; null for neither.</summary>
    public FormClass?[] GroundOfCell { get; }
}
