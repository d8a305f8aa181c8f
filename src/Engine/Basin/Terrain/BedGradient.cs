using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Terrain;

/// <summary>Slope and aspect of the bed. Immutable.</summary>
public sealed class BedGradient
{
    private BedGradient(GridFrame frame, float[] slopeDeg, float[] aspectDeg) =>
        (Frame, SlopeDeg, AspectDeg) = (frame, slopeDeg, aspectDeg);

    /// <summary>The grid's frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>[Ny*Nx] steepest slope, degrees, 0 to 90; NaN on land.</summary>
    public float[] SlopeDeg { get; }

    /// <summary>[Ny*Nx] bearing in which the bed falls, degrees clockwise from grid north, 0 to 360; NaN on land and where the bed is level.</summary>
    public float[] AspectDeg { get; }

    /// <summary>Computes both over 3 by 3 cells. Source: Horn1981.</summary>
    /// <param name="grid">Depths.</param>
    public static BedGradient Of(DepthGrid grid)
    {
        Require.NotNull(grid);
        GridFrame frame = grid.Frame;
        float[] slopeDeg = new float[frame.Count], aspectDeg = new float[frame.Count];
        Span<double> z = stackalloc double[9];
        double scale = 1.0 / (8.0 * frame.CellM);
        for (int iy = 0; iy < frame.Ny; iy++)
        {
            for (int ix = 0; ix < frame.Nx; ix++)
            {
                int i = frame.Index(ix, iy);
                slopeDeg[i] = aspectDeg[i] = float.NaN;
                if (!(grid.DepthM[i] > 0)) continue;
                BedWindow.Read(grid.DepthM, frame, ix, iy, z);
                double east = (z[2] + (2 * z[5]) + z[8] - z[0] - (2 * z[3]) - z[6]) * scale;
                double north = (z[0] + (2 * z[1]) + z[2] - z[6] - (2 * z[7]) - z[8]) * scale;
                double rise = Math.Sqrt((east * east) + (north * north));
                slopeDeg[i] = (float)double.RadiansToDegrees(Math.Atan(rise));
                if (rise > 0) aspectDeg[i] = (float)(double.RadiansToDegrees(Math.Atan2(-east, -north)) + (east > 0 ? 360.0 : 0.0));
            }
        }

        return new BedGradient(frame, slopeDeg, aspectDeg);
    }
}
