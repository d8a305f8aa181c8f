using SecondShore.Engine.Core;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>The second shore: the line where the thermocline meets the bottom. Immutable.</summary>
/// <remarks>The contour depth = thermocline depth, at rest or tilted by the wind.</remarks>
public sealed class SecondShoreLine
{
    private SecondShoreLine(List<DepthContour> lines)
    {
        Lines = lines;
        foreach (DepthContour line in lines) LengthM += line.LengthM;
    }

    /// <summary>The pieces of the line; deeper bottom on the left.</summary>
    public IReadOnlyList<DepthContour> Lines { get; }

    /// <summary>Length of all pieces, m.</summary>
    public double LengthM { get; }

    /// <summary>Traces the line of a thermocline that lies level.</summary>
    /// <param name="grid">Depths at today's level.</param>
    /// <param name="thermoclineM">Depth of the thermocline below today's surface, m, 0 or more.</param>
    public static SecondShoreLine Trace(DepthGrid grid, double thermoclineM)
    {
        Require.NotNull(grid);
        Require.NotNegative(thermoclineM);
        List<DepthContour> lines = [];
        new ContourTracer(ContourField.Of(grid)).Trace(thermoclineM, lines);
        return new SecondShoreLine(lines);
    }

    /// <summary>Traces the line of a thermocline that lies at a different depth in each cell.</summary>
    /// <param name="grid">Depths at today's level.</param>
    /// <param name="thermoclineM">[Ny*Nx] depth of the thermocline below today's surface, m; NaN where there is none: no line is drawn there.</param>
    /// <exception cref="ArgumentException">The array's length is not the number of cells.</exception>
    public static SecondShoreLine Trace(DepthGrid grid, ReadOnlySpan<float> thermoclineM)
    {
        Require.NotNull(grid);
        Require.SameLength(thermoclineM.Length, grid.Frame.Count, nameof(thermoclineM));
        double sum = 0;
        int count = 0;
        for (int i = 0; i < thermoclineM.Length; i++)
        {
            if (!(grid.DepthM[i] > 0) || !float.IsFinite(thermoclineM[i])) continue;
            sum += thermoclineM[i];
            count++;
        }

        List<DepthContour> lines = [];
        if (count > 0) new ContourTracer(ContourField.Of(grid).Minus(thermoclineM)).Trace(0, lines, sum / count);
        return new SecondShoreLine(lines);
    }
}
