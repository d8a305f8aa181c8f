using System.Numerics;
using System.Runtime.CompilerServices;

namespace SecondShore.Engine.Motion;

/// <summary>
/// Fetch along one bearing for every cell of a mask at once. Rows are visited from the upwind side; each row takes the
/// run of its upwind neighbour on the row before, one cell to either side by a rounded (digital) line, so the cost is one
/// addition a cell. A bearing nearer to east or west runs over the transposed mask.
/// </summary>
internal sealed class FetchSweep
{
    private readonly Way _byRows;
    private readonly Way _byColumns;
    private readonly int _factor;
    private readonly int _coarseNx;
    private readonly double _cellM;
    private readonly float[][] _runs = new float[4][];

    /// <summary>Prepares sweeps.</summary>
    /// <param name="depthM">[ny*nx] depth, m; 0 on land.</param>
    /// <param name="nx">Columns.</param>
    /// <param name="ny">Rows.</param>
    /// <param name="cellM">Side of a cell, m.</param>
    /// <param name="factor">Cells a side of the blocks that the results are summed into.</param>
    public FetchSweep(float[] depthM, int nx, int ny, double cellM, int factor)
    {
        _cellM = cellM;
        _factor = factor;
        _coarseNx = (nx + factor - 1) / factor;
        float[] transposedM = new float[depthM.Length];
        for (int iy = 0; iy < ny; iy++)
            for (int ix = 0; ix < nx; ix++) transposedM[(ix * ny) + iy] = depthM[(iy * nx) + ix];
        _byRows = new Way(depthM, ny, nx);
        _byColumns = new Way(transposedM, nx, ny);
        for (int i = 0; i < 4; i++) _runs[i] = new float[Math.Max(nx, ny) + 2];
    }

    /// <summary>Adds, for each block, the fetch of its cells and their fetch times depth.</summary>
    /// <param name="fromDeg">Where the wind comes from.</param>
    /// <param name="fetchM">[coarse] sums of fetch over the block's cells, m.</param>
    /// <param name="fetchDepthM2">[coarse] sums of the depth integrated along the fetch, m2.</param>
    public unsafe void Add(double fromDeg, Span<float> fetchM, Span<float> fetchDepthM2)
    {
        (double east, double north) = Bearings.Unit(fromDeg);
        bool byRows = Math.Abs(north) >= Math.Abs(east);
        double along = byRows ? north : east, across = byRows ? east : north;
        Way way = byRows ? _byRows : _byColumns;
        int rowStride = byRows ? _coarseNx : 1, columnStride = byRows ? 1 : _coarseNx;
        double slope = across / Math.Abs(along);
        float stepM = (float)(_cellM / Math.Abs(along));
        float[] run = _runs[0], runDepth = _runs[1], nextRun = _runs[2], nextDepth = _runs[3];
        Array.Clear(run);
        Array.Clear(runDepth);
        for (int m = 0; m < way.Rows; m++)
        {
            int row = along > 0 ? way.Rows - 1 - m : m, first = way.First[row], count = way.Past[row] - first;
            int shift = (int)(Math.Round(slope * m) - Math.Round(slope * (m - 1)));
            // Beyond a row's water is land: 0 there.
            Array.Clear(nextRun);
            Array.Clear(nextDepth);
            if (count > 0)
            {
                int at = (row * way.Columns) + first;
                fixed (float* depth = &way.DepthM[at], water = &way.Water[at], from = &run[1 + shift + first], fromDepth = &runDepth[1 + shift + first])
                fixed (float* to = &nextRun[1 + first], toDepth = &nextDepth[1 + first], fetch = fetchM, fetchDepth = fetchDepthM2)
                {
                    Advance(depth, water, from, fromDepth, to, toDepth, count, stepM);
                    Gather(to, toDepth, first, count, row / _factor * rowStride, columnStride, stepM, fetch, fetchDepth);
                }
            }

            (run, nextRun) = (nextRun, run);
            (runDepth, nextDepth) = (nextDepth, runDepth);
        }
    }

    // Land gives 0: the mask is a factor, so that vector loops need no choice.
    private static unsafe void Advance(float* depth, float* water, float* run, float* runDepth, float* next, float* nextDepth, int count, float stepM)
    {
        Vector<float> step = new(stepM);
        int i = 0;
        for (; i <= count - Vector<float>.Count; i += Vector<float>.Count)
        {
            Vector<float> mask = Load(water + i);
            ((Load(run + i) + step) * mask).StoreUnsafe(ref next[i]);
            ((Load(runDepth + i) + (Load(depth + i) * step)) * mask).StoreUnsafe(ref nextDepth[i]);
        }

        for (; i < count; i++)
        {
            next[i] = (run[i] + stepM) * water[i];
            nextDepth[i] = (runDepth[i] + (depth[i] * stepM)) * water[i];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static unsafe Vector<float> Load(float* from) => Vector.LoadUnsafe(ref *from);

    // run, runDepth: fetch and depth along it at count cells from first on; start, stride: where their blocks lie in the sums fetchM, fetchDepthM2.
    private unsafe void Gather(float* run, float* runDepth, int first, int count, int start, int stride, float stepM, float* fetchM, float* fetchDepthM2)
    {
        float half = 0.5f * stepM;
        int block = start + (first / _factor * stride), inBlock = first % _factor;
        for (int i = 0; i < count; i++)
        {
            float length = run[i];
            if (length > 0)
            {
                // A cell's own centre lies half a step inside its last crossing.
                fetchM[block] += length - half;
                fetchDepthM2[block] += runDepth[i] * (1f - (half / length));
            }

            if (++inBlock == _factor) { inBlock = 0; block += stride; }
        }
    }

    /// <summary>One way round of the mask: rows as they lie, or columns as rows.</summary>
    private sealed class Way
    {
        public Way(float[] depthM, int rows, int columns)
        {
            (Rows, Columns, DepthM, Water, First, Past) = (rows, columns, depthM, new float[depthM.Length], new int[rows], new int[rows]);
            for (int row = 0; row < rows; row++)
            {
                First[row] = columns;
                for (int column = 0; column < columns; column++)
                {
                    if (!(depthM[(row * columns) + column] > 0)) continue;
                    Water[(row * columns) + column] = 1f;
                    First[row] = Math.Min(First[row], column);
                    Past[row] = column + 1;
                }
            }
        }

        public int Rows { get; }

        public int Columns { get; }

        public float[] DepthM { get; }

        /// <summary>1 for water, 0 for land.</summary>
        public float[] Water { get; }

        /// <summary>First column with water of each row.</summary>
        public int[] First { get; }

        /// <summary>Column past the last with water of each row.</summary>
        public int[] Past { get; }
    }
}
