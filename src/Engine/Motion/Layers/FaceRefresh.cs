using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>Thickness, friction and wind of the faces from the present state: what stays the same between refreshes.</summary>
internal sealed class FaceRefresh(InterfaceGrid grid, LayerPair layers, InterfaceOptions options)
{
    // Below this the stress is not spread over a thinner layer: outcropping water is mixed, not flung.
    private const double LeastPushedM = 0.5;
    private const double LeastFaceM = 0.01;

    /// <summary>Sets the roots of the effective thickness on all faces.</summary>
    /// <returns>The largest effective thickness, m.</returns>
    public double Thicknesses(InterfaceArrays f)
    {
        double largest = 0;
        for (int run = 0; run < grid.RunStarts.Length; run++)
        {
            for (int i = grid.RunStarts[run]; i < grid.RunEnds[run]; i++)
            {
                if (!grid.Active[i]) continue;
                if (grid.Active[i + 1]) largest = Math.Max(largest, Set(f, f.EastRoot, i, i + 1));
                if (grid.Active[i + grid.Stride]) largest = Math.Max(largest, Set(f, f.NorthRoot, i, i + grid.Stride));
            }
        }

        return largest;
    }

    /// <summary>Sets friction and the wind's push on all faces for steps of a length.</summary>
    /// <param name="f">The fields, thicknesses set.</param>
    /// <param name="stepS">Length of a step, s.</param>
    /// <param name="eastPa">Eastward stress on open water, Pa.</param>
    /// <param name="northPa">Northward stress on open water, Pa.</param>
    /// <param name="openShare">Share of the stress that reaches each cell; empty for all of it.</param>
    public void Forces(InterfaceArrays f, double stepS, double eastPa, double northPa, ReadOnlySpan<float> openShare)
    {
        int stride = grid.Stride;
        for (int run = 0; run < grid.RunStarts.Length; run++)
        {
            for (int i = grid.RunStarts[run]; i < grid.RunEnds[run]; i++)
            {
                if (f.EastRoot[i] > 0)
                {
                    double across = 0.25 * ((f.North[i] + f.North[i + 1]) + (f.North[i - stride] + f.North[i + 1 - stride]));
                    Face(f, i, i + 1, f.EastRoot[i], f.East[i], across, stepS, eastPa, openShare, out f.EastKeep[i], out f.EastPush[i]);
                }

                if (f.NorthRoot[i] > 0)
                {
                    double across = 0.25 * ((f.East[i - 1] + f.East[i]) + (f.East[i - 1 + stride] + f.East[i + stride]));
                    Face(f, i, i + stride, f.NorthRoot[i], f.North[i], across, stepS, northPa, openShare, out f.NorthKeep[i], out f.NorthPush[i]);
                }
            }
        }
    }

    private double Set(InterfaceArrays f, double[] roots, int a, int b)
    {
        (double upperM, double lowerM) = FaceLayersM(f, a, b);
        double effectiveM = upperM * lowerM / (upperM + lowerM);
        roots[a] = Math.Sqrt(effectiveM);
        return effectiveM;
    }

    private (double UpperM, double LowerM) FaceLayersM(InterfaceArrays f, int a, int b)
    {
        double offsetM = options.MovingThickness ? 0.5 * (f.OffsetM[a] + f.OffsetM[b]) : 0.0;
        double depthM = 0.5 * (grid.DepthM[a] + grid.DepthM[b]);
        return (Math.Max(layers.UpperM + offsetM, LeastFaceM), Math.Max(depthM - layers.UpperM - offsetM, LeastFaceM));
    }

    private void Face(InterfaceArrays f, int a, int b, double root, double motion, double across, double stepS,
        double stressPa, ReadOnlySpan<float> openShare, out double keep, out double push)
    {
        (double upperM, double lowerM) = FaceLayersM(f, a, b);
        double speedMps = Math.Sqrt((motion * motion) + (across * across)) / root;
        double share = upperM / (upperM + lowerM);
        double damping = options.DampingPerS
            + (options.BottomDragIndex * speedMps * share * share / lowerM)
            + (options.InterfaceDragIndex * speedMps * ((1.0 / upperM) + (1.0 / lowerM)));
        double half = Math.Min(1.0, 0.5 * damping * stepS);
        keep = (1.0 - half) / (1.0 + half);
        double open = openShare.IsEmpty ? 1.0 : 0.5 * (openShare[a] + openShare[b]);
        push = stepS * root * stressPa * open
            / (PhysicalConstants.RoundWaterDensityKgPerM3 * Math.Max(upperM, LeastPushedM));
    }
}
