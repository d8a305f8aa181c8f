using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>Reads and sets a model's state and its totals.</summary>
public static class InterfaceState
{
    /// <summary>Copies the displacement, m positive down, of each cell; NaN where the model does not compute.</summary>
    /// <param name="model">The model.</param>
    /// <param name="offsetM">[Ny*Nx] of the depths' frame.</param>
    public static void CopyOffset(InterfaceModel model, Span<double> offsetM)
    {
        InterfaceGrid grid = Require.NotNull(model).Grid;
        Require.SameLength(offsetM.Length, grid.Depths.Frame.Count, nameof(offsetM));
        for (int i = 0; i < offsetM.Length; i++)
        {
            int entry = EntryOf(grid, i);
            offsetM[i] = grid.Active[entry] ? model.Fields.OffsetM[entry] : double.NaN;
        }
    }

    /// <summary>Sets the displacement of each cell that the model computes, m positive down; the motion is left as it is.</summary>
    /// <param name="model">The model.</param>
    /// <param name="offsetM">[Ny*Nx] of the depths' frame; values where the model does not compute are not read.</param>
    public static void SetOffset(InterfaceModel model, ReadOnlySpan<double> offsetM)
    {
        InterfaceGrid grid = Require.NotNull(model).Grid;
        Require.SameLength(offsetM.Length, grid.Depths.Frame.Count, nameof(offsetM));
        for (int i = 0; i < offsetM.Length; i++)
        {
            int entry = EntryOf(grid, i);
            if (grid.Active[entry]) model.Fields.OffsetM[entry] = Require.Finite(offsetM[i], nameof(offsetM));
        }
    }

    /// <summary>Velocity of the upper layer less that of the lower at a cell's centre, m s-1; still where the model does not compute.</summary>
    /// <param name="model">The model.</param>
    /// <param name="cell">Index in the depths' frame.</param>
    public static Current Difference(InterfaceModel model, int cell)
    {
        InterfaceGrid grid = Require.NotNull(model).Grid;
        InterfaceArrays f = model.Fields;
        int i = EntryOf(grid, cell), stride = grid.Stride;
        if (!grid.Active[i]) return default;
        return new Current(
            0.5 * (Speed(f.East[i], f.EastRoot[i]) + Speed(f.East[i - 1], f.EastRoot[i - 1])),
            0.5 * (Speed(f.North[i], f.NorthRoot[i]) + Speed(f.North[i - stride], f.NorthRoot[i - stride])));
    }

    /// <summary>
    /// Takes displacement and velocity from a model of other layers over the same depths; the displacement is then about the new rest.
    /// </summary>
    internal static void TakeOver(InterfaceModel model, InterfaceModel from)
    {
        InterfaceGrid grid = model.Grid;
        InterfaceArrays to = model.Fields, old = from.Fields;
        Require.SameLength(from.Grid.Length, grid.Length, nameof(from));
        double sum = 0;
        for (int i = 0; i < grid.Length; i++)
        {
            if (!grid.Active[i]) continue;
            to.OffsetM[i] = from.Grid.Active[i] ? old.OffsetM[i] : 0.0;
            sum += to.OffsetM[i];
        }

        double meanM = model.ActiveCells > 0 ? sum / model.ActiveCells : 0.0;
        for (int i = 0; i < grid.Length; i++)
        {
            if (!grid.Active[i]) continue;
            // A lifted bottom of the lower layer must leave both layers some water.
            double mostM = grid.DepthM[i] - model.Layers.UpperM - ThinCells.FloorM;
            to.OffsetM[i] = Math.Clamp(to.OffsetM[i] - meanM, ThinCells.FloorM - model.Layers.UpperM, Math.Max(0.0, mostM));
        }

        model.RefreshThickness();
        for (int i = 0; i < grid.Length; i++)
        {
            to.East[i] = Speed(old.East[i], old.EastRoot[i]) * to.EastRoot[i];
            to.North[i] = Speed(old.North[i], old.NorthRoot[i]) * to.NorthRoot[i];
        }
    }

    /// <summary>Volumes of the layers over the cells that compute, m3.</summary>
    public static (double UpperM3, double LowerM3) VolumesM3(InterfaceModel model)
    {
        InterfaceGrid grid = Require.NotNull(model).Grid;
        double upper = 0, lower = 0, areaM2 = grid.CellM * grid.CellM;
        for (int i = 0; i < grid.Length; i++)
        {
            if (!grid.Active[i]) continue;
            upper += model.Layers.UpperM + model.Fields.OffsetM[i];
            lower += grid.DepthM[i] - model.Layers.UpperM - model.Fields.OffsetM[i];
        }

        return (upper * areaM2, lower * areaM2);
    }

    /// <summary>The thinnest that either layer is anywhere, m.</summary>
    public static double ThinnestM(InterfaceModel model)
    {
        InterfaceGrid grid = Require.NotNull(model).Grid;
        double thinnest = double.MaxValue;
        for (int i = 0; i < grid.Length; i++)
        {
            if (!grid.Active[i]) continue;
            double offsetM = model.Fields.OffsetM[i], upperM = model.Layers.UpperM;
            thinnest = Math.Min(thinnest, Math.Min(upperM + offsetM, grid.DepthM[i] - upperM - offsetM));
        }

        return thinnest;
    }

    /// <summary>Energy of motion and tilt, J: half rho times the integral of h_r v2 + g' zeta2.</summary>
    public static double EnergyJ(InterfaceModel model)
    {
        InterfaceGrid grid = Require.NotNull(model).Grid;
        InterfaceArrays f = model.Fields;
        double sum = 0;
        for (int i = 0; i < grid.Length; i++)
        {
            sum += (f.East[i] * f.East[i]) + (f.North[i] * f.North[i])
                + (grid.Active[i] ? model.Layers.ReducedGravityMps2 * f.OffsetM[i] * f.OffsetM[i] : 0.0);
        }

        return 0.5 * PhysicalConstants.RoundWaterDensityKgPerM3 * grid.CellM * grid.CellM * sum;
    }

    /// <summary>
    /// The quadratic form that the steps conserve exactly without wind and friction, J: the energy plus a cross term of the
    /// order of the step (decision 0060).
    /// </summary>
    internal static double StepEnergyJ(InterfaceModel model)
    {
        InterfaceGrid grid = model.Grid;
        InterfaceArrays f = model.Fields;
        int stride = grid.Stride;
        double slope = model.LastStepS * model.Layers.ReducedGravityMps2 / grid.CellM, turn = 0.25 * model.LastStepS * model.CoriolisPerSecond;
        double cross = 0;
        for (int i = stride; i < grid.Length - stride - 1; i++)
        {
            cross += f.East[i] * -slope * f.EastRoot[i] * (f.OffsetM[i + 1] - f.OffsetM[i]);
            cross += f.North[i] * -slope * f.NorthRoot[i] * (f.OffsetM[i + stride] - f.OffsetM[i]);
            cross -= f.North[i] * turn * ((f.East[i - 1] + f.East[i]) + (f.East[i - 1 + stride] + f.East[i + stride]));
        }

        return EnergyJ(model) - (0.5 * PhysicalConstants.RoundWaterDensityKgPerM3 * grid.CellM * grid.CellM * cross);
    }

    private static double Speed(double motion, double root) => root > 0 ? motion / root : 0.0;

    private static int EntryOf(InterfaceGrid grid, int cell)
    {
        int nx = grid.Depths.Frame.Nx;
        return grid.Entry(cell % nx, cell / nx);
    }
}
