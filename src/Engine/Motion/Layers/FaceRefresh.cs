using System.Runtime.Intrinsics;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>Thickness, friction and wind of the faces from the present state: what stays the same between refreshes.</summary>
/// <remarks>Cells by pairs along the runs; what overruns a run's end lies in the pad, where every face is a wall.</remarks>
internal sealed unsafe class FaceRefresh(InterfaceGrid grid, LayerPair layers, InterfaceOptions options)
{
    // Below this the stress is not spread over a thinner layer: outcropping water is mixed, not flung.
    private const double LeastPushedM = 0.5;
    private const double LeastFaceM = 0.01;
    private readonly double[] _eastShare = Ones(grid.Length);
    private readonly double[] _northShare = Ones(grid.Length);

    /// <summary>What the eastward stress is multiplied with at each entry of the grid; 1 unless set.</summary>
    public double[] EastShare => _eastShare;

    /// <summary>The same for the northward stress.</summary>
    public double[] NorthShare => _northShare;

    /// <summary>Sets the roots of the effective thickness on all faces.</summary>
    /// <returns>The largest effective thickness, m.</returns>
    public double Thicknesses(InterfaceArrays f)
    {
        Vector128<double> largest = Vector128<double>.Zero;
        fixed (double* offset = f.OffsetM, depth = grid.DepthM, eastRoot = f.EastRoot, northRoot = f.NorthRoot, eastOpen = grid.EastOpen, northOpen = grid.NorthOpen)
        {
            for (int run = 0; run < grid.RunStarts.Length; run++)
            {
                int start = grid.RunStarts[run], count = grid.RunEnds[run] - start;
                largest = Roots(offset + start, depth + start, 1, eastRoot + start, eastOpen + start, count, largest);
                largest = Roots(offset + start, depth + start, grid.Stride, northRoot + start, northOpen + start, count, largest);
            }
        }

        return Math.Max(largest.ToScalar(), largest.GetElement(1));
    }

    /// <summary>Sets friction and the wind's push on all faces for steps of a length.</summary>
    /// <param name="f">The fields, thicknesses set.</param>
    /// <param name="stepS">Length of a step, s.</param>
    /// <param name="eastPa">Eastward stress on open water, Pa.</param>
    /// <param name="northPa">Northward stress on open water, Pa.</param>
    public void Forces(InterfaceArrays f, double stepS, double eastPa, double northPa)
    {
        int stride = grid.Stride;
        fixed (double* offset = f.OffsetM, depth = grid.DepthM, east = f.East, north = f.North, eastShare = _eastShare, northShare = _northShare)
        fixed (double* eastRoot = f.EastRoot, northRoot = f.NorthRoot, eastKeep = f.EastKeep, northKeep = f.NorthKeep, eastPush = f.EastPush, northPush = f.NorthPush)
        fixed (double* eastOpen = grid.EastOpen, northOpen = grid.NorthOpen)
        {
            for (int run = 0; run < grid.RunStarts.Length; run++)
            {
                int start = grid.RunStarts[run], count = grid.RunEnds[run] - start;
                Faces(offset + start, depth + start, eastShare + start, 1, eastRoot + start, eastOpen + start, east + start,
                    north + start - stride, 1, stride, eastKeep + start, eastPush + start, count, stepS, eastPa);
                Faces(offset + start, depth + start, northShare + start, stride, northRoot + start, northOpen + start, north + start,
                    east + start - 1, 1, stride, northKeep + start, northPush + start, count, stepS, northPa);
            }
        }
    }

    // Roots of the effective depth of count faces, between each cell and the one next places on; open: 0 at a closed face. Gives the largest seen.
    private Vector128<double> Roots(double* offset, double* depth, int next, double* root, double* open, int count, Vector128<double> largest)
    {
        Vector128<double> half = Vector128.Create(0.5), least = Vector128.Create(LeastFaceM), atRest = Vector128.Create(layers.UpperM);
        Vector128<double> moving = Vector128.Create(options.MovingThickness ? 0.5 : 0.0);
        for (double* end = offset + count; offset < end; offset += Lanes.Count, depth += Lanes.Count, root += Lanes.Count, open += Lanes.Count)
        {
            Vector128<double> upper = atRest + (moving * (Lanes.Load(offset) + Lanes.Load(offset + next)));
            Vector128<double> lower = Lanes.Max((half * (Lanes.Load(depth) + Lanes.Load(depth + next))) - upper, least);
            upper = Lanes.Max(upper, least);
            Vector128<double> effective = Lanes.Load(open) * Lanes.Divide(upper * lower, upper + lower);
            largest = Lanes.Max(largest, effective);
            Lanes.Store(root, Lanes.Sqrt(effective));
        }

        return largest;
    }

    // The motion across a face is the mean of the four faces around it: two neighbours at the given place, two a stride on.
    private void Faces(double* offset, double* depth, double* share, int next, double* root, double* open, double* motion,
        double* around, int beside, int stride, double* keep, double* push, int count, double stepS, double stressPa)
    {
        Vector128<double> half = Vector128.Create(0.5), quarter = Vector128.Create(0.25), one = Vector128.Create(1.0), least = Vector128.Create(LeastFaceM);
        Vector128<double> atRest = Vector128.Create(layers.UpperM), moving = Vector128.Create(options.MovingThickness ? 0.5 : 0.0);
        Vector128<double> damping = Vector128.Create(options.DampingPerS), bed = Vector128.Create(options.BottomDragIndex), between = Vector128.Create(options.InterfaceDragIndex);
        Vector128<double> halfStep = Vector128.Create(0.5 * stepS), stress = Vector128.Create(stepS * stressPa / PhysicalConstants.RoundWaterDensityKgPerM3);
        Vector128<double> leastRoot = Vector128.Create(1e-3), leastPushed = Vector128.Create(LeastPushedM), wall = Vector128.Create(1e300);
        for (int i = 0; i < count; i += Lanes.Count)
        {
            Vector128<double> upper = atRest + (moving * (Lanes.Load(offset + i) + Lanes.Load(offset + i + next)));
            Vector128<double> lower = Lanes.Max((half * (Lanes.Load(depth + i) + Lanes.Load(depth + i + next))) - upper, least);
            upper = Lanes.Max(upper, least);
            Vector128<double> across = quarter * ((Lanes.Load(around + i) + Lanes.Load(around + i + beside)) + (Lanes.Load(around + i + stride) + Lanes.Load(around + i + stride + beside)));
            Vector128<double> along = Lanes.Load(motion + i), thick = Lanes.Load(root + i), isOpen = Lanes.Load(open + i);
            Vector128<double> speed = Lanes.Divide(Lanes.Sqrt((along * along) + (across * across)), Lanes.Max(thick, leastRoot));
            Vector128<double> part = Lanes.Divide(upper, upper + lower), underside = Lanes.Divide(one, lower);
            Vector128<double> rate = damping + (bed * speed * part * part * underside) + (between * speed * (Lanes.Divide(one, upper) + underside));
            // A wall's damping is beyond all bounds: it keeps -1 of its motion, which holds it still.
            Vector128<double> lost = Lanes.Min(one, halfStep * rate) + ((one - isOpen) * wall);
            Lanes.Store(keep + i, Lanes.Divide(one - lost, one + lost));
            Vector128<double> reached = half * (Lanes.Load(share + i) + Lanes.Load(share + i + next));
            Lanes.Store(push + i, Lanes.Divide(stress * thick * reached, Lanes.Max(upper, leastPushed)));
        }
    }

    private static double[] Ones(int length)
    {
        double[] values = new double[length];
        Array.Fill(values, 1.0);
        return values;
    }
}
