using System.Numerics;
using System.Runtime.InteropServices;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Motion;

/// <summary>Fetch and mean depth along it, by place and bearing, on the real shoreline at one water level. Immutable.</summary>
/// <remarks>
/// Kept for 36 bearings on blocks of the depth grid (at most <see cref="MaxStoredCells"/> with water); between bearings and
/// inside blocks linear and constant. Each bearing is the mean of nine radials 3 1/3 deg apart (UsArmy1984 with 3 deg).
/// </remarks>
public sealed class FetchField
{
    /// <summary>Bearings kept.</summary>
    public static readonly int BearingCount = 36;

    /// <summary>Most blocks kept: 40 000 take 12 MB.</summary>
    public static readonly int MaxStoredCells = 40_000;

    /// <summary>Most cells swept at full detail; finer grids are gathered first.</summary>
    public static readonly int MaxSweptCells = 600_000;

    private const int RadialsPerBearing = 3;
    private const int HalfFan = 4;
    private readonly int[] _cellOfBlock;
    private readonly float[] _fetchM;
    private readonly float[] _depthM;

    private FetchField(GridFrame frame, int[] cellOfBlock, int count, float[] fetchM, float[] depthM)
    {
        Frame = frame;
        _cellOfBlock = cellOfBlock;
        Count = count;
        _fetchM = fetchM;
        _depthM = depthM;
    }

    /// <summary>Frame of the blocks.</summary>
    public GridFrame Frame { get; }

    /// <summary>Number of blocks with water.</summary>
    public int Count { get; }

    /// <summary>Finds the fetch of a lake.</summary>
    /// <param name="grid">Depths at the water level in question.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The grid holds no water.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static FetchField Of(DepthGrid grid, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        GridFrame fine = Require.NotNull(grid).Frame;
        int gather = (int)Math.Ceiling(Math.Sqrt((double)fine.Count / MaxSweptCells));
        CoarseDepths swept = CoarseDepths.Of(grid, Math.Max(1, gather));
        for (int i = 0; i < swept.DepthM.Length; i++)
            if (swept.WaterShare[i] < 0.5f) swept.DepthM[i] = 0f;
        int water = 0;
        foreach (float depthM in swept.DepthM)
            if (depthM > 0) water++;
        if (water == 0) throw new ArgumentException("The depth grid holds no water: nothing has a fetch.", nameof(grid));
        int factor = Math.Max(1, (int)Math.Ceiling(Math.Sqrt((double)water / MaxStoredCells)));
        return Sweep(swept, factor, progress, cancel);
    }

    /// <summary>The block that holds a point, to be given to <see cref="Sample"/>; -1 where it holds no water.</summary>
    public int CellAt(PlanePoint place) =>
        Frame.TryCellAt(place, out int ix, out int iy) ? _cellOfBlock[Frame.Index(ix, iy)] : -1;

    /// <summary>Fetch at a place, m; 0 off the water.</summary>
    /// <param name="place">The place.</param>
    /// <param name="fromDeg">Where the wind comes from.</param>
    public double FetchM(PlanePoint place, double fromDeg)
    {
        int cell = CellAt(place);
        return cell < 0 ? 0.0 : Sample(cell, fromDeg).FetchM;
    }

    /// <summary>Fetch and mean depth along it, m.</summary>
    /// <param name="cell">A block from <see cref="CellAt"/>, 0 or more.</param>
    /// <param name="fromDeg">Where the wind comes from, finite.</param>
    public (double FetchM, double MeanDepthM) Sample(int cell, double fromDeg)
    {
        BearingShare at = Bearing(fromDeg);
        return (FetchM(cell, at), MeanDepthM(cell, at));
    }

    /// <summary>Where a bearing lies between those kept: worked out once for all the blocks of an hour.</summary>
    internal BearingShare Bearing(double fromDeg)
    {
        double at = Bearings.WrapDeg(fromDeg) * (BearingCount / 360.0);
        int low = (int)at % BearingCount;
        return new BearingShare(low * Count, (low + 1) % BearingCount * Count, at - Math.Floor(at));
    }

    /// <summary>Fetch of a block, m.</summary>
    internal double FetchM(int cell, in BearingShare at)
    {
        float low = _fetchM[at.Low + cell];
        return low + (at.Share * (_fetchM[at.High + cell] - low));
    }

    /// <summary>Fetch of all blocks for one of the bearings kept, from its first entry, m.</summary>
    internal ReadOnlySpan<float> FetchRow(int firstEntry) => _fetchM.AsSpan(firstEntry, Count);

    /// <summary>Mean depth along the fetch of a block, m.</summary>
    internal double MeanDepthM(int cell, in BearingShare at)
    {
        float low = _depthM[at.Low + cell];
        return low + (at.Share * (_depthM[at.High + cell] - low));
    }

    private static FetchField Sweep(CoarseDepths swept, int factor, IProgress<double>? progress, CancellationToken cancel)
    {
        GridFrame from = swept.Frame;
        GridFrame frame = new(from.WestM, from.SouthM, from.CellM * factor, (from.Nx + factor - 1) / factor, (from.Ny + factor - 1) / factor);
        (int[] cellOfBlock, int[] blockOfCell, float[] cellsInside) = Blocks(swept, frame, factor);
        int count = blockOfCell.Length;
        float[] fetchM = new float[BearingCount * count], depthM = new float[BearingCount * count];
        FetchSweep sweep = new(swept.DepthM, from.Nx, from.Ny, from.CellM, factor);
        float[] sumM = new float[frame.Count], sumM2 = new float[frame.Count], radialM = new float[count], radialM2 = new float[count];
        int radials = BearingCount * RadialsPerBearing;
        for (int radial = 0; radial < radials; radial++)
        {
            cancel.ThrowIfCancellationRequested();
            Array.Clear(sumM);
            Array.Clear(sumM2);
            sweep.Add(radial * 360.0 / radials, sumM, sumM2);
            for (int c = 0; c < count; c++)
            {
                radialM[c] = sumM[blockOfCell[c]];
                radialM2[c] = sumM2[blockOfCell[c]];
            }

            for (int bearing = 0; bearing < BearingCount; bearing++)
            {
                int apart = Math.Abs(radial - (bearing * RadialsPerBearing));
                if (Math.Min(apart, radials - apart) > HalfFan) continue;
                AddTo(fetchM.AsSpan(bearing * count, count), radialM);
                AddTo(depthM.AsSpan(bearing * count, count), radialM2);
            }

            progress?.Report((radial + 1.0) / radials);
        }

        float fan = (2 * HalfFan) + 1;
        for (int i = 0; i < fetchM.Length; i++)
        {
            depthM[i] = fetchM[i] > 0 ? depthM[i] / fetchM[i] : 0f;
            fetchM[i] /= fan * cellsInside[i % count];
        }

        return new FetchField(frame, cellOfBlock, count, fetchM, depthM);
    }

    private static void AddTo(Span<float> sum, ReadOnlySpan<float> more)
    {
        ref float to = ref MemoryMarshal.GetReference(sum), from = ref MemoryMarshal.GetReference(more);
        int i = 0;
        for (; i <= sum.Length - Vector<float>.Count; i += Vector<float>.Count)
            (Vector.LoadUnsafe(ref to, (nuint)i) + Vector.LoadUnsafe(ref from, (nuint)i)).StoreUnsafe(ref to, (nuint)i);
        for (; i < sum.Length; i++) sum[i] += more[i];
    }

    private static (int[] CellOfBlock, int[] BlockOfCell, float[] CellsInside) Blocks(CoarseDepths swept, GridFrame frame, int factor)
    {
        int[] inside = new int[frame.Count];
        for (int iy = 0; iy < swept.Frame.Ny; iy++)
            for (int ix = 0; ix < swept.Frame.Nx; ix++)
                if (swept.DepthM[swept.Frame.Index(ix, iy)] > 0) inside[frame.Index(ix / factor, iy / factor)]++;
        List<int> blockOfCell = [];
        List<float> cellsInside = [];
        int[] cellOfBlock = new int[frame.Count];
        for (int i = 0; i < inside.Length; i++)
        {
            cellOfBlock[i] = inside[i] > 0 ? blockOfCell.Count : -1;
            if (inside[i] == 0) continue;
            blockOfCell.Add(i);
            cellsInside.Add(inside[i]);
        }

        return (cellOfBlock, [.. blockOfCell], [.. cellsInside]);
    }
}

/// <summary>A bearing between two of those kept.</summary>
/// <param name="Low">First entry of the one below.</param>
/// <param name="High">First entry of the one above.</param>
/// <param name="Share">Share of the way from the one to the other, 0 to 1.</param>
internal readonly record struct BearingShare(int Low, int High, double Share);
