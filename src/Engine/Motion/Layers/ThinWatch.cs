using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>Looks over all cells for layers that are thin or soon may be.</summary>
internal sealed unsafe class ThinWatch(InterfaceGrid grid, double upperM)
{
    /// <summary>Adds the cells whose layers are thinner than a margin, or would be brought to their floor by the present rate times a factor.</summary>
    /// <param name="f">The fields, thicknesses set.</param>
    /// <param name="rateFactor">Time looked ahead over the side of a cell, s m-1.</param>
    /// <param name="watchedM">Layers thinner than this are added in any case, m.</param>
    /// <param name="thin">Receives them.</param>
    public void Find(InterfaceArrays f, double rateFactor, double watchedM, ThinCells thin)
    {
        int stride = grid.Stride;
        Vector128<double> atRest = Vector128.Create(upperM), factor = Vector128.Create(rateFactor), watched = Vector128.Create(watchedM), floor = Vector128.Create(ThinCells.FloorM);
        fixed (double* offset = f.OffsetM, depth = grid.DepthM, east = f.East, north = f.North, eastRoot = f.EastRoot, northRoot = f.NorthRoot)
        {
            for (int run = 0; run < grid.RunStarts.Length; run++)
            {
                int last = grid.RunEnds[run];
                for (int i = grid.RunStarts[run]; i < last; i += Lanes.Count)
                {
                    Vector128<double> across = (Lanes.Load(east + i) * Lanes.Load(eastRoot + i)) - (Lanes.Load(east + i - 1) * Lanes.Load(eastRoot + i - 1));
                    Vector128<double> along = (Lanes.Load(north + i) * Lanes.Load(northRoot + i)) - (Lanes.Load(north + i - stride) * Lanes.Load(northRoot + i - stride));
                    Vector128<double> margin = Lanes.Max(watched, factor * Lanes.Abs(across + along)) + floor;
                    Vector128<double> spare = Thinnest(offset + i, depth + i, atRest) - margin;
                    if (!Lanes.AnyNegative(spare)) continue;
                    if (spare.ToScalar() < 0 && grid.Active[i]) thin.Add(i);
                    if (spare.GetElement(1) < 0 && i + 1 < last && grid.Active[i + 1]) thin.Add(i + 1);
                }
            }
        }
    }

    /// <summary>The thinnest that either layer is anywhere, m.</summary>
    public double ThinnestM(InterfaceArrays f)
    {
        Vector128<double> atRest = Vector128.Create(upperM), thinnest = Vector128.Create(1e300);
        fixed (double* offset = f.OffsetM, depth = grid.DepthM, outside = grid.Outside)
        {
            for (int run = 0; run < grid.RunStarts.Length; run++)
                for (int i = grid.RunStarts[run]; i < grid.RunEnds[run]; i += Lanes.Count)
                    thinnest = Lanes.Min(thinnest, Thinnest(offset + i, depth + i, atRest) + Lanes.Load(outside + i));
        }

        return Math.Min(thinnest.ToScalar(), thinnest.GetElement(1));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<double> Thinnest(double* offset, double* depth, Vector128<double> atRest)
    {
        Vector128<double> upper = atRest + Lanes.Load(offset);
        return Lanes.Min(upper, Lanes.Load(depth) - upper);
    }
}
