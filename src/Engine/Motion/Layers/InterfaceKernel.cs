using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>One step of the interface model, fused into one sweep over the rows so that each field passes the cache once.</summary>
/// <remarks>
/// Order of the updates, each using the newest values: interface, eastward motion, northward motion. With w = sqrt(h_r) v
/// the equations are x' = K x with K skew, for which this order conserves a quadratic form exactly whatever the bottom and
/// the rotation; with the half-implicit friction it never grows (decision 0060).
/// </remarks>
internal static class InterfaceKernel
{
    /// <summary>Whether the vector loops are used: they pay natively and not in the browser.</summary>
    public static readonly bool UseVectors = Vector.IsHardwareAccelerated && !OperatingSystem.IsBrowser();

    /// <summary>Takes one step over all rows. No allocation.</summary>
    public static void Step(InterfaceGrid grid, InterfaceArrays f, StepFactors k, bool vectors)
    {
        int last = grid.Rows;
        for (int row = 1; row <= last + 1; row++)
        {
            for (int run = grid.FirstRun[row]; run < grid.FirstRun[row + 1]; run++)
            {
                int start = grid.RunStarts[run], count = grid.RunEnds[run] - start;
                if (vectors)
                {
                    MoveInterface(f, start, count, grid.Stride, k.Flow);
                    MoveEast(f, start, count, grid.Stride, k);
                }
                else
                {
                    MoveInterfacePlain(f, start, count, grid.Stride, k.Flow);
                    MoveEastPlain(f, start, count, grid.Stride, k);
                }
            }

            for (int run = grid.FirstRun[row - 1]; run < grid.FirstRun[row]; run++)
            {
                int start = grid.RunStarts[run], count = grid.RunEnds[run] - start;
                if (vectors) MoveNorth(f, start, count, grid.Stride, k);
                else MoveNorthPlain(f, start, count, grid.Stride, k);
            }
        }
    }

    private static void MoveInterface(InterfaceArrays f, int start, int count, int stride, double flow)
    {
        ref double offset = ref At(f.OffsetM, start), east = ref At(f.East, start), north = ref At(f.North, start);
        ref double eastRoot = ref At(f.EastRoot, start), northRoot = ref At(f.NorthRoot, start);
        Vector<double> factor = new(flow);
        for (int i = 0; i < count; i += Vector<double>.Count)
        {
            Vector<double> across = (Load(ref east, i) * Load(ref eastRoot, i)) - (Load(ref east, i - 1) * Load(ref eastRoot, i - 1));
            Vector<double> along = (Load(ref north, i) * Load(ref northRoot, i)) - (Load(ref north, i - stride) * Load(ref northRoot, i - stride));
            Store(ref offset, i, Load(ref offset, i) - (factor * (across + along)));
        }
    }

    private static void MoveEast(InterfaceArrays f, int start, int count, int stride, StepFactors k)
    {
        ref double offset = ref At(f.OffsetM, start), east = ref At(f.East, start), north = ref At(f.North, start);
        ref double root = ref At(f.EastRoot, start), keep = ref At(f.EastKeep, start), push = ref At(f.EastPush, start);
        Vector<double> slope = new(k.Slope), turn = new(k.Turn), half = new(0.5);
        for (int i = 0; i < count; i += Vector<double>.Count)
        {
            Vector<double> kept = Load(ref keep, i);
            Vector<double> across = (Load(ref north, i) + Load(ref north, i + 1)) + (Load(ref north, i - stride) + Load(ref north, i + 1 - stride));
            Vector<double> gain = Load(ref push, i) + (turn * across)
                - (slope * Load(ref root, i) * (Load(ref offset, i + 1) - Load(ref offset, i)));
            Store(ref east, i, (kept * Load(ref east, i)) + ((half + (half * kept)) * gain));
        }
    }

    private static void MoveNorth(InterfaceArrays f, int start, int count, int stride, StepFactors k)
    {
        ref double offset = ref At(f.OffsetM, start), east = ref At(f.East, start), north = ref At(f.North, start);
        ref double root = ref At(f.NorthRoot, start), keep = ref At(f.NorthKeep, start), push = ref At(f.NorthPush, start);
        Vector<double> slope = new(k.Slope), turn = new(k.Turn), half = new(0.5);
        for (int i = 0; i < count; i += Vector<double>.Count)
        {
            Vector<double> kept = Load(ref keep, i);
            Vector<double> across = (Load(ref east, i - 1) + Load(ref east, i)) + (Load(ref east, i - 1 + stride) + Load(ref east, i + stride));
            Vector<double> gain = Load(ref push, i) - (turn * across)
                - (slope * Load(ref root, i) * (Load(ref offset, i + stride) - Load(ref offset, i)));
            Store(ref north, i, (kept * Load(ref north, i)) + ((half + (half * kept)) * gain));
        }
    }

    private static void MoveInterfacePlain(InterfaceArrays f, int start, int count, int stride, double flow)
    {
        ref double offset = ref At(f.OffsetM, start), east = ref At(f.East, start), north = ref At(f.North, start);
        ref double eastRoot = ref At(f.EastRoot, start), northRoot = ref At(f.NorthRoot, start);
        double west = Unsafe.Add(ref east, -1) * Unsafe.Add(ref eastRoot, -1);
        for (int i = 0; i < count; i++)
        {
            double here = Unsafe.Add(ref east, i) * Unsafe.Add(ref eastRoot, i);
            double along = (Unsafe.Add(ref north, i) * Unsafe.Add(ref northRoot, i))
                - (Unsafe.Add(ref north, i - stride) * Unsafe.Add(ref northRoot, i - stride));
            Unsafe.Add(ref offset, i) -= flow * ((here - west) + along);
            west = here;
        }
    }

    private static void MoveEastPlain(InterfaceArrays f, int start, int count, int stride, StepFactors k)
    {
        ref double offset = ref At(f.OffsetM, start), east = ref At(f.East, start), north = ref At(f.North, start);
        ref double root = ref At(f.EastRoot, start), keep = ref At(f.EastKeep, start), push = ref At(f.EastPush, start);
        double slope = k.Slope, turn = k.Turn;
        for (int i = 0; i < count; i++)
        {
            double kept = Unsafe.Add(ref keep, i);
            double across = (Unsafe.Add(ref north, i) + Unsafe.Add(ref north, i + 1))
                + (Unsafe.Add(ref north, i - stride) + Unsafe.Add(ref north, i + 1 - stride));
            double gain = Unsafe.Add(ref push, i) + (turn * across)
                - (slope * Unsafe.Add(ref root, i) * (Unsafe.Add(ref offset, i + 1) - Unsafe.Add(ref offset, i)));
            Unsafe.Add(ref east, i) = (kept * Unsafe.Add(ref east, i)) + ((0.5 + (0.5 * kept)) * gain);
        }
    }

    private static void MoveNorthPlain(InterfaceArrays f, int start, int count, int stride, StepFactors k)
    {
        ref double offset = ref At(f.OffsetM, start), east = ref At(f.East, start), north = ref At(f.North, start);
        ref double root = ref At(f.NorthRoot, start), keep = ref At(f.NorthKeep, start), push = ref At(f.NorthPush, start);
        double slope = k.Slope, turn = k.Turn;
        for (int i = 0; i < count; i++)
        {
            double kept = Unsafe.Add(ref keep, i);
            double across = (Unsafe.Add(ref east, i - 1) + Unsafe.Add(ref east, i))
                + (Unsafe.Add(ref east, i - 1 + stride) + Unsafe.Add(ref east, i + stride));
            double gain = Unsafe.Add(ref push, i) - (turn * across)
                - (slope * Unsafe.Add(ref root, i) * (Unsafe.Add(ref offset, i + stride) - Unsafe.Add(ref offset, i)));
            Unsafe.Add(ref north, i) = (kept * Unsafe.Add(ref north, i)) + ((0.5 + (0.5 * kept)) * gain);
        }
    }

    // Bounds: a run lies inside the border of InterfaceGrid, whose pad is wider than a vector.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ref double At(double[] values, int start) => ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(values), start);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Load(ref double origin, int i) => Vector.LoadUnsafe(ref Unsafe.Add(ref origin, i));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(ref double origin, int i, Vector<double> value) => value.StoreUnsafe(ref Unsafe.Add(ref origin, i));
}
