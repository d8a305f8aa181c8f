using System.Numerics;
using System.Runtime.CompilerServices;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>One step of the interface model, fused into one sweep over the rows so that each field passes the cache once.</summary>
/// <remarks>
/// Order of the updates, each using the newest values: interface, eastward motion, northward motion. With w = sqrt(h_r) v
/// the equations are x' = K x with K skew, for which this order conserves a quadratic form exactly whatever the bottom and
/// the rotation; with the half-implicit friction it never grows (decision 0060).
/// Pointers walk along the runs: an interpreter pays for every index it has to add. A run lies inside the border of
/// <see cref="InterfaceGrid"/>, whose pad is wider than a vector, so that loops may overrun a run's end.
/// </remarks>
internal static unsafe class InterfaceKernel
{
    /// <summary>Whether the vector loops are used.</summary>
    public static readonly bool UseVectors = Vector.IsHardwareAccelerated;

    /// <summary>Takes one step over all rows. No allocation.</summary>
    public static void Step(InterfaceGrid grid, InterfaceArrays f, StepFactors k, bool vectors)
    {
        int stride = grid.Stride;
        fixed (double* offset = f.OffsetM, east = f.East, north = f.North, eastRoot = f.EastRoot, northRoot = f.NorthRoot)
        fixed (double* eastKeep = f.EastKeep, northKeep = f.NorthKeep, eastPush = f.EastPush, northPush = f.NorthPush)
        {
            for (int row = 1; row <= grid.Rows + 1; row++)
            {
                for (int run = grid.FirstRun[row]; run < grid.FirstRun[row + 1]; run++)
                {
                    int s = grid.RunStarts[run], count = grid.RunEnds[run] - s;
                    if (vectors)
                    {
                        MoveInterface(offset + s, east + s, eastRoot + s, north + s, northRoot + s, count, stride, k.Flow);
                        MoveFaces(offset + s, 1, eastRoot + s, eastKeep + s, eastPush + s, east + s, north + s - stride, stride, count, k.Slope, k.Turn);
                    }
                    else
                    {
                        MoveInterfacePlain(offset + s, east + s, eastRoot + s, north + s, northRoot + s, count, stride, k.Flow);
                        MoveFacesPlain(offset + s, 1, eastRoot + s, eastKeep + s, eastPush + s, east + s, north + s - stride, stride, count, k.Slope, k.Turn);
                    }
                }

                for (int run = grid.FirstRun[row - 1]; run < grid.FirstRun[row]; run++)
                {
                    int s = grid.RunStarts[run], count = grid.RunEnds[run] - s;
                    if (vectors) MoveFaces(offset + s, stride, northRoot + s, northKeep + s, northPush + s, north + s, east + s - 1, stride, count, k.Slope, -k.Turn);
                    else MoveFacesPlain(offset + s, stride, northRoot + s, northKeep + s, northPush + s, north + s, east + s - 1, stride, count, k.Slope, -k.Turn);
                }
            }
        }
    }

    // Flow out of each of count cells through its four faces: roots of the depth by the motions of faces; stride: cells of a row.
    private static void MoveInterface(double* offset, double* east, double* eastRoot, double* north, double* northRoot, int count, int stride, double flow)
    {
        Vector<double> factor = new(flow);
        double* south = north - stride, southRoot = northRoot - stride, end = offset + count;
        while (offset < end)
        {
            Vector<double> across = (Load(east) * Load(eastRoot)) - (Load(east - 1) * Load(eastRoot - 1));
            Vector<double> along = (Load(north) * Load(northRoot)) - (Load(south) * Load(southRoot));
            Store(offset, Load(offset) - (factor * (across + along)));
            offset += Vector<double>.Count;
            east += Vector<double>.Count;
            eastRoot += Vector<double>.Count;
            north += Vector<double>.Count;
            northRoot += Vector<double>.Count;
            south += Vector<double>.Count;
            southRoot += Vector<double>.Count;
        }
    }

    // The four faces across: two side by side at the given place, two a stride on.
    private static void MoveFaces(double* offset, int next, double* root, double* keep, double* push, double* motion, double* across,
        int stride, int count, double slopeFactor, double turnFactor)
    {
        Vector<double> slope = new(slopeFactor), turn = new(turnFactor), half = new(0.5);
        double* beyond = offset + next, further = across + stride, end = offset + count;
        while (offset < end)
        {
            Vector<double> kept = Load(keep);
            Vector<double> sum = (Load(across) + Load(across + 1)) + (Load(further) + Load(further + 1));
            Vector<double> gain = Load(push) + (turn * sum) - (slope * Load(root) * (Load(beyond) - Load(offset)));
            Store(motion, (kept * Load(motion)) + ((half + (half * kept)) * gain));
            offset += Vector<double>.Count;
            beyond += Vector<double>.Count;
            root += Vector<double>.Count;
            keep += Vector<double>.Count;
            push += Vector<double>.Count;
            motion += Vector<double>.Count;
            across += Vector<double>.Count;
            further += Vector<double>.Count;
        }
    }

    // The same without vectors.
    private static void MoveInterfacePlain(double* offset, double* east, double* eastRoot, double* north, double* northRoot, int count, int stride, double flow)
    {
        for (int i = 0; i < count; i++)
        {
            double across = (east[i] * eastRoot[i]) - (east[i - 1] * eastRoot[i - 1]);
            double along = (north[i] * northRoot[i]) - (north[i - stride] * northRoot[i - stride]);
            offset[i] -= flow * (across + along);
        }
    }

    // The same without vectors.
    private static void MoveFacesPlain(double* offset, int next, double* root, double* keep, double* push, double* motion, double* across,
        int stride, int count, double slope, double turn)
    {
        for (int i = 0; i < count; i++)
        {
            double kept = keep[i], sum = (across[i] + across[i + 1]) + (across[i + stride] + across[i + stride + 1]);
            double gain = push[i] + (turn * sum) - (slope * root[i] * (offset[i + next] - offset[i]));
            motion[i] = (kept * motion[i]) + ((0.5 + (0.5 * kept)) * gain);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Load(double* from) => Vector.LoadUnsafe(ref *from);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(double* to, Vector<double> value) => value.StoreUnsafe(ref *to);
}
