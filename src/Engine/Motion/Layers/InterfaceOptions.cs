using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>Settings of the interface model. Defaults are for a lake day; tests of exact solutions turn things off.</summary>
public sealed record InterfaceOptions
{
    /// <summary>Wanted side of a computing cell, m.</summary>
    public double CellM { get; init; } = 50.0;

    /// <summary>Most water cells: a larger lake is computed on coarser cells.</summary>
    public int MaxCells { get; init; } = 40_000;

    /// <summary>Least thickness of the lower layer at rest for a cell to take part, m (choice).</summary>
    public double MinLowerM { get; init; } = 0.5;

    /// <summary>Layers' thicknesses follow the interface; false keeps those at rest (the linear equations).</summary>
    public bool MovingThickness { get; init; } = true;

    /// <summary>Drag coefficient of the bottom, dimensionless (science page).</summary>
    public double BottomDragIndex { get; init; } = 0.0025;

    /// <summary>Drag coefficient between the layers, dimensionless (choice).</summary>
    public double InterfaceDragIndex { get; init; } = 0.0005;

    /// <summary>Linear damping of the difference of the layers' velocities, s-1, for what the grid does not resolve.</summary>
    public double DampingPerS { get; init; } = 1.0e-5;

    /// <summary>Longest time between updates of thickness, friction and wind, s.</summary>
    public double RefreshS { get; init; } = 900.0;

    /// <summary>Share of the longest stable step that is used, above 0, at most 0.95.</summary>
    public double StepShare { get; init; } = 0.9;

    /// <summary>Height of bank and trees that shelter the shore, m.</summary>
    public double BankM { get; init; } = Shelter.DefaultBankM;

    /// <summary>No friction of any kind and thicknesses at rest: the equations that have exact solutions.</summary>
    public static InterfaceOptions Ideal { get; } = new()
    {
        MovingThickness = false,
        BottomDragIndex = 0,
        InterfaceDragIndex = 0,
        DampingPerS = 0,
        MinLowerM = 0.01,
        BankM = 0,
    };

    /// <summary>Checks the ranges.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public InterfaceOptions Checked()
    {
        Require.Positive(CellM);
        Require.InRange(MaxCells, 1, 10_000_000);
        Require.Positive(MinLowerM);
        Require.NotNegative(BottomDragIndex);
        Require.NotNegative(InterfaceDragIndex);
        Require.NotNegative(DampingPerS);
        Require.Positive(RefreshS);
        Require.InRange(StepShare, 1e-6, 0.95);
        Require.NotNegative(BankM);
        return this;
    }
}
