using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>Where a steady wind holds the interface: the state that rocking dies away to (SpigelImberger1980).</summary>
public static class SteadyTilt
{
    /// <summary>Solves div(h_r grad zeta) = div(h_r tau/(rho g' h1)) with no flux through the edge and no volume gained.</summary>
    /// <param name="depths">Depths on the computing grid.</param>
    /// <param name="layers">Layers at rest.</param>
    /// <param name="eastPa">Eastward stress on open water, Pa.</param>
    /// <param name="northPa">Northward stress on open water, Pa.</param>
    /// <param name="openShare">[Ny*Nx] share of the stress that reaches each cell; empty for all of it.</param>
    /// <param name="minLowerM">Least thickness of the lower layer, m.</param>
    /// <returns>[Ny*Nx] displacement, m positive down; NaN where the interface does not reach. Valid while smaller than the layers.</returns>
    public static double[] SolveM(CoarseDepths depths, LayerPair layers, double eastPa, double northPa,
        ReadOnlySpan<float> openShare = default, double minLowerM = 0.5)
    {
        Require.NotNull(depths);
        Require.NotNull(layers);
        if (!openShare.IsEmpty) Require.SameLength(openShare.Length, depths.Frame.Count, nameof(openShare));
        InterfaceGrid grid = InterfaceGrid.Of(depths, layers.UpperM, minLowerM);
        InterfaceSystem system = new(grid, layers);
        double[] right = new double[system.Entries.Length], zeta = new double[right.Length];
        double slopePerPa = grid.CellM / (PhysicalConstants.RoundWaterDensityKgPerM3 * layers.ReducedGravityMps2 * layers.UpperM);
        for (int face = 0; face < system.FaceCount; face++)
        {
            (int a, int b, double effectiveM) = system.Face(face);
            double open = openShare.IsEmpty ? 1.0 : 0.5 * (openShare[CellOf(a)] + openShare[CellOf(b)]);
            double flux = effectiveM * open * slopePerPa * (system.IsEast(face) ? eastPa : northPa);
            right[a] -= flux;
            right[b] += flux;
        }

        system.Solve(right, zeta, 1e-11, 20 * (int)Math.Sqrt(right.Length) + 2000);
        double[] offsetM = new double[depths.Frame.Count];
        Array.Fill(offsetM, double.NaN);
        for (int c = 0; c < zeta.Length; c++) offsetM[CellOf(c)] = zeta[c];
        return offsetM;

        int CellOf(int c)
        {
            int entry = system.Entries[c], row = (entry / grid.Stride) - 1;
            return (row * depths.Frame.Nx) + (entry % grid.Stride) - 1;
        }
    }
}
