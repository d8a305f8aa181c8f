using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Terrain;

/// <summary>Curvature of the bed, hills positive. Immutable.</summary>
/// <remarks>Source: Evans1980, a quadratic patch fitted to 3 by 3 cells, which forgives the noise of soundings.</remarks>
public sealed class BedCurvature
{
    /// <summary>Squared slope below which directions mean nothing.</summary>
    private const double LevelSlope2 = 1e-8;

    private BedCurvature(GridFrame frame, float[] profile, float[] plan, float[] mean) =>
        (Frame, ProfilePerM, PlanPerM, MeanPerM) = (frame, profile, plan, mean);

    /// <summary>The grid's frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>[Ny*Nx] curvature along the fall line, m-1, convex up positive; the mean curvature on level bed; NaN on land.</summary>
    public float[] ProfilePerM { get; }

    /// <summary>[Ny*Nx] curvature of the depth contour, m-1, positive on spurs, negative in valleys; the mean curvature on level bed; NaN on land.</summary>
    public float[] PlanPerM { get; }

    /// <summary>[Ny*Nx] mean curvature -(r + t), m-1, positive on hills; NaN on land.</summary>
    public float[] MeanPerM { get; }

    /// <summary>Computes the three curvatures.</summary>
    /// <param name="grid">Depths.</param>
    public static BedCurvature Of(DepthGrid grid)
    {
        Require.NotNull(grid);
        GridFrame frame = grid.Frame;
        float[] profile = new float[frame.Count], plan = new float[frame.Count], mean = new float[frame.Count];
        Span<double> z = stackalloc double[9];
        for (int iy = 0; iy < frame.Ny; iy++)
        {
            for (int ix = 0; ix < frame.Nx; ix++)
            {
                int i = frame.Index(ix, iy);
                profile[i] = plan[i] = mean[i] = float.NaN;
                if (!(grid.DepthM[i] > 0)) continue;
                BedWindow.Read(grid.DepthM, frame, ix, iy, z);
                (double a, double b, double c) = AtPerM(z, frame.CellM);
                (profile[i], plan[i], mean[i]) = ((float)a, (float)b, (float)c);
            }
        }

        return new BedCurvature(frame, profile, plan, mean);
    }

    // Letters of the patch r x^2 + t y^2 + s x y + p x + q y + f.
    private static (double Profile, double Plan, double Mean) AtPerM(ReadOnlySpan<double> z, double w)
    {
        double w2 = w * w;
        double r = ((z[0] + z[2] + z[3] + z[5] + z[6] + z[8]) / (6 * w2)) - ((z[1] + z[4] + z[7]) / (3 * w2));
        double t = ((z[0] + z[1] + z[2] + z[6] + z[7] + z[8]) / (6 * w2)) - ((z[3] + z[4] + z[5]) / (3 * w2));
        double s = (z[2] + z[6] - z[0] - z[8]) / (4 * w2);
        double p = (z[2] + z[5] + z[8] - z[0] - z[3] - z[6]) / (6 * w);
        double q = (z[0] + z[1] + z[2] - z[6] - z[7] - z[8]) / (6 * w);
        double mean = -(r + t), slope2 = (p * p) + (q * q);
        if (slope2 < LevelSlope2) return (mean, mean, mean);
        double profile = -2 * ((r * p * p) + (t * q * q) + (s * p * q)) / (slope2 * Math.Pow(1 + slope2, 1.5));
        double plan = -2 * ((t * p * p) + (r * q * q) - (s * p * q)) / Math.Pow(slope2, 1.5);
        return (profile, plan, mean);
    }
}
