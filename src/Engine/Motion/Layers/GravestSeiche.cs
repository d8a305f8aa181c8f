using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>The slowest free rocking of the interface, without rotation (SpigelImberger1980; two-layer Merian in a box).</summary>
/// <param name="PeriodS">Period, s.</param>
/// <param name="ShapeShare">[Ny*Nx] displacement over the largest one, -1 to 1; NaN where the interface does not reach; its zero line is the node.</param>
public sealed record GravestSeiche(double PeriodS, double[] ShapeShare)
{
    /// <summary>Finds it in the largest connected piece of the interface by inverse iteration.</summary>
    /// <param name="depths">Depths on the computing grid.</param>
    /// <param name="layers">Layers at rest.</param>
    /// <param name="minLowerM">Least thickness of the lower layer, m.</param>
    /// <returns>Null where the interface has fewer than four cells.</returns>
    public static GravestSeiche? Find(CoarseDepths depths, LayerPair layers, double minLowerM = 0.5)
    {
        Require.NotNull(depths);
        Require.NotNull(layers);
        InterfaceGrid grid = InterfaceGrid.Of(depths, layers.UpperM, minLowerM);
        InterfaceSystem system = new(grid, layers);
        int n = system.Entries.Length;
        if (n < 4 || system.FaceCount < 3) return null;
        double[] z = system.DistanceAlong(), right = new double[n], az = new double[n];
        Prepare(z);
        double eigenvalue = 0;
        for (int pass = 0; pass < 60; pass++)
        {
            z.CopyTo(right, 0);
            for (int c = 0; c < n; c++) z[c] *= eigenvalue > 0 ? 1.0 / eigenvalue : 0.0;
            system.Solve(right, z, 1e-4, 20_000);
            Prepare(z);
            system.Apply(z, az);
            double quotient = 0;
            for (int c = 0; c < n; c++) quotient += z[c] * az[c];
            bool settled = Math.Abs(quotient - eigenvalue) < 1e-4 * quotient;
            eigenvalue = quotient;
            if (settled) break;
        }

        double largest = 0;
        foreach (double value in z) largest = Math.Max(largest, Math.Abs(value));
        double[] shape = new double[depths.Frame.Count];
        Array.Fill(shape, double.NaN);
        for (int c = 0; c < n; c++)
        {
            int entry = system.Entries[c];
            shape[(((entry / grid.Stride) - 1) * depths.Frame.Nx) + (entry % grid.Stride) - 1] = z[c] / largest;
        }

        double frequency = Math.Sqrt(eigenvalue * layers.ReducedGravityMps2) / grid.CellM;
        return new GravestSeiche(2.0 * Math.PI / frequency, shape);

        void Prepare(double[] field)
        {
            system.Centre(field);
            system.KeepLargestPiece(field);
            double norm = 0;
            foreach (double value in field) norm += value * value;
            norm = 1.0 / Math.Sqrt(norm);
            for (int c = 0; c < field.Length; c++) field[c] *= norm;
        }
    }
}
