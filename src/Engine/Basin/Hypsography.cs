using SecondShore.Engine.Core;

namespace SecondShore.Engine.Basin;

/// <summary>Area of the horizontal slice of a basin by depth below a reference surface. Immutable.</summary>
/// <remarks>Linear between the given depths; depth 0 is the surface; the last depth is the bottom.</remarks>
public sealed class Hypsography
{
    private readonly double[] _depthsM;
    private readonly double[] _areasM2;
    private readonly double[] _belowM3; // volume deeper than each row

    /// <summary>Makes a hypsography.</summary>
    /// <param name="depthsM">Depths, m, first 0, strictly increasing, at least two.</param>
    /// <param name="areasM2">Area of the slice at each depth, m2, never increasing, first above 0, last 0 or more.</param>
    /// <exception cref="ArgumentException">The rows break one of these rules; see <see cref="Fault"/>.</exception>
    public Hypsography(IReadOnlyList<double> depthsM, IReadOnlyList<double> areasM2)
    {
        Require.NotNull(depthsM);
        Require.NotNull(areasM2);
        Require.SameLength(areasM2.Count, depthsM.Count, nameof(areasM2));
        if (Fault(depthsM, areasM2) is { } fault) throw new ArgumentException(fault.ToString(), nameof(depthsM));
        _depthsM = [.. depthsM];
        _areasM2 = [.. areasM2];
        _belowM3 = new double[_depthsM.Length];
        for (int i = _depthsM.Length - 2; i >= 0; i--)
            _belowM3[i] = _belowM3[i + 1] + (0.5 * (_areasM2[i] + _areasM2[i + 1]) * (_depthsM[i + 1] - _depthsM[i]));
    }

    /// <summary>Why rows cannot be a hypsography; null when they can.</summary>
    /// <param name="depthsM">Depths, m.</param>
    /// <param name="areasM2">Area of the slice at each depth, m2, as many.</param>
    public static Finding? Fault(IReadOnlyList<double> depthsM, IReadOnlyList<double> areasM2)
    {
        Require.NotNull(depthsM);
        Require.NotNull(areasM2);
        if (depthsM.Count < 2) return BasinFindings.TooFewDepths.Of();
        if (depthsM[0] != 0) return BasinFindings.NoSurface.Of(depthsM[0]);
        if (!(areasM2[0] > 0) || double.IsInfinity(areasM2[0])) return BasinFindings.NoArea.Of(areasM2[0]);
        for (int i = 1; i < depthsM.Count; i++)
        {
            if (!double.IsFinite(depthsM[i]) || depthsM[i] <= depthsM[i - 1]) return BasinFindings.DepthsFall.Of(depthsM[i], depthsM[i - 1]);
            if (!(areasM2[i] >= 0 && areasM2[i] <= areasM2[i - 1])) return BasinFindings.AreaGrows.Of(areasM2[i], depthsM[i], areasM2[i - 1]);
        }

        return null;
    }

    /// <summary>Depths of the rows, m.</summary>
    public ReadOnlySpan<double> DepthsM => _depthsM;

    /// <summary>Areas of the rows, m2.</summary>
    public ReadOnlySpan<double> AreasM2 => _areasM2;

    /// <summary>Area of the surface, m2.</summary>
    public double SurfaceAreaM2 => _areasM2[0];

    /// <summary>Depth of the bottom, m.</summary>
    public double MaxDepthM => _depthsM[^1];

    /// <summary>Volume of the whole basin, m3.</summary>
    public double VolumeM3 => VolumeBelowM3(0);

    /// <summary>Area of the slice at a depth, m2; 0 below the bottom, the surface area above the surface.</summary>
    public double AreaAtM2(double depthM)
    {
        if (depthM <= 0) return _areasM2[0];
        if (depthM >= MaxDepthM) return depthM > MaxDepthM ? 0 : _areasM2[^1];
        int i = RowAbove(depthM);
        double t = (depthM - _depthsM[i]) / (_depthsM[i + 1] - _depthsM[i]);
        return _areasM2[i] + (t * (_areasM2[i + 1] - _areasM2[i]));
    }

    /// <summary>Volume of the water deeper than a depth, m3 (exact for the piecewise linear areas).</summary>
    public double VolumeBelowM3(double depthM)
    {
        if (depthM >= MaxDepthM) return 0;
        double top = Math.Max(0, depthM);
        int i = RowAbove(top);
        return (0.5 * (AreaAtM2(top) + _areasM2[i + 1]) * (_depthsM[i + 1] - top)) + _belowM3[i + 1];
    }

    /// <summary>A basin known only by its area and depths: A(z) = A0 (1 - z/zmax)^p with p = zmax/zmean - 1.</summary>
    /// <param name="surfaceAreaM2">Area of the surface, m2.</param>
    /// <param name="maxDepthM">Greatest depth, m.</param>
    /// <param name="meanDepthM">Mean depth, m, below the greatest; null takes a third of it (a cone, p = 2).</param>
    public static Hypsography FromShape(double surfaceAreaM2, double maxDepthM, double? meanDepthM = null)
    {
        Require.Positive(surfaceAreaM2);
        Require.Positive(maxDepthM);
        double mean = Require.InRange(meanDepthM ?? (maxDepthM / 3.0), maxDepthM * 0.05, maxDepthM * 0.99, nameof(meanDepthM));
        double power = (maxDepthM / mean) - 1.0;
        const int rows = 61;
        double[] depthsM = new double[rows], areasM2 = new double[rows];
        for (int i = 0; i < rows; i++)
        {
            double share = i / (rows - 1.0);
            depthsM[i] = share * maxDepthM;
            areasM2[i] = surfaceAreaM2 * Math.Pow(1.0 - share, power);
        }

        return new Hypsography(depthsM, areasM2);
    }

    /// <summary>The basin of a depth grid: A(z) is the area of the cells at least as deep as z.</summary>
    /// <param name="grid">Depths; the rows count from its surface.</param>
    /// <param name="rows">Depths to tell, evenly spaced, at least 2.</param>
    /// <returns>The basin, or null where no cell is water.</returns>
    public static Hypsography? FromGrid(DepthGrid grid, int rows = 121)
    {
        Require.NotNull(grid);
        return FromCells(grid.DepthM, grid.Frame.CellAreaM2, rows);
    }

    /// <summary>The basin of some cells.</summary>
    /// <param name="cellDepthM">Depth by cell, m; NaN and 0 or less are land.</param>
    /// <param name="cellAreaM2">Area of a cell, m2.</param>
    /// <param name="rows">Depths to tell, evenly spaced, at least 2.</param>
    /// <returns>The basin, or null where no cell is water.</returns>
    public static Hypsography? FromCells(ReadOnlySpan<float> cellDepthM, double cellAreaM2, int rows = 121)
    {
        Require.Positive(cellAreaM2);
        Require.InRange(rows, 2, 100_000);
        float deepestM = 0;
        foreach (float depthM in cellDepthM) if (depthM > deepestM) deepestM = depthM;
        if (!(deepestM > 0)) return null;
        int[] reaching = new int[rows];
        double stepM = (double)deepestM / (rows - 1);
        foreach (float depthM in cellDepthM)
        {
            if (!(depthM > 0)) continue;
            reaching[Math.Min(rows - 1, (int)(depthM / stepM * (1 + 1e-12)))]++;
        }

        double[] depthsM = new double[rows], areasM2 = new double[rows];
        long below = 0;
        for (int row = rows - 1; row >= 0; row--)
        {
            below += reaching[row];
            depthsM[row] = row == rows - 1 ? deepestM : row * stepM;
            areasM2[row] = below * cellAreaM2;
        }

        return new Hypsography(depthsM, areasM2);
    }

    private int RowAbove(double depthM)
    {
        // Rows are mostly even: the guess is the row, or near it.
        int last = _depthsM.Length - 2, i = Math.Clamp((int)(depthM / MaxDepthM * (last + 1)), 0, last);
        while (i < last && _depthsM[i + 1] <= depthM) i++;
        while (i > 0 && _depthsM[i] > depthM) i--;
        return i;
    }
}
