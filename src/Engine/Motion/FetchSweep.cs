using System.Numerics;

namespace SecondShore.Engine.Motion;

/// <summary>
/// Fetch along one bearing for every cell of a mask at once. Rows are visited from the upwind side; each row takes the
/// run of its upwind neighbour on the row before, one cell to either side by a rounded (digital) line, so the cost is one
/// addition a cell. A bearing nearer to east or west runs over the transposed mask.
/// </summary>
internal sealed class FetchSweep
{
    private readonly float[] _depthM;
    private readonly float[] _transposedM;
    private readonly int _nx;
    private readonly int _ny;
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
        _depthM = depthM;
        _nx = nx;
        _ny = ny;
        _cellM = cellM;
        _factor = factor;
        _coarseNx = (nx + factor - 1) / factor;
        _transposedM = new float[depthM.Length];
        for (int iy = 0; iy < ny; iy++)
            for (int ix = 0; ix < nx; ix++) _transposedM[(ix * ny) + iy] = depthM[(iy * nx) + ix];
        for (int i = 0; i < 4; i++) _runs[i] = new float[Math.Max(nx, ny) + 2];
    }

    /// <summary>Adds, for each block, the fetch of its cells and their fetch times depth.</summary>
    /// <param name="fromDeg">Where the wind comes from.</param>
    /// <param name="fetchM">[coarse] sums of fetch over the block's cells, m.</param>
    /// <param name="fetchDepthM2">[coarse] sums of the depth integrated along the fetch, m2.</param>
    public void Add(double fromDeg, Span<float> fetchM, Span<float> fetchDepthM2)
    {
        (double east, double north) = Bearings.Unit(fromDeg);
        bool byRows = Math.Abs(north) >= Math.Abs(east);
        double along = byRows ? north : east, across = byRows ? east : north;
        int rows = byRows ? _ny : _nx, columns = byRows ? _nx : _ny;
        float[] depthM = byRows ? _depthM : _transposedM;
        int rowStride = byRows ? _coarseNx : 1, columnStride = byRows ? 1 : _coarseNx;
        double slope = across / Math.Abs(along);
        float stepM = (float)(_cellM / Math.Abs(along));
        float[] run = _runs[0], runDepth = _runs[1], nextRun = _runs[2], nextDepth = _runs[3];
        Array.Clear(run);
        Array.Clear(runDepth);
        Array.Clear(nextRun);
        Array.Clear(nextDepth);
        for (int m = 0; m < rows; m++)
        {
            int row = along > 0 ? rows - 1 - m : m;
            int shift = (int)(Math.Round(slope * m) - Math.Round(slope * (m - 1)));
            ReadOnlySpan<float> depths = depthM.AsSpan(row * columns, columns);
            Advance(depths, run.AsSpan(1 + shift, columns), runDepth.AsSpan(1 + shift, columns),
                nextRun.AsSpan(1, columns), nextDepth.AsSpan(1, columns), stepM);
            // Beyond the mask is land: the borders stay 0.
            (run, nextRun) = (nextRun, run);
            (runDepth, nextDepth) = (nextDepth, runDepth);
            run[0] = run[columns + 1] = runDepth[0] = runDepth[columns + 1] = 0f;
            Gather(run.AsSpan(1, columns), runDepth.AsSpan(1, columns), row / _factor * rowStride, columnStride, stepM, fetchM, fetchDepthM2);
        }
    }

    private static void Advance(ReadOnlySpan<float> depthM, ReadOnlySpan<float> run, ReadOnlySpan<float> runDepth,
        Span<float> next, Span<float> nextDepth, float stepM)
    {
        int i = 0, width = Vector<float>.Count;
        if (Vector.IsHardwareAccelerated)
        {
            Vector<float> step = new(stepM);
            for (; i <= depthM.Length - width; i += width)
            {
                Vector<float> depth = new(depthM[i..]);
                Vector<int> water = Vector.GreaterThan(depth, Vector<float>.Zero);
                Vector.ConditionalSelect(water, new Vector<float>(run[i..]) + step, Vector<float>.Zero).CopyTo(next[i..]);
                Vector.ConditionalSelect(water, new Vector<float>(runDepth[i..]) + (depth * step), Vector<float>.Zero).CopyTo(nextDepth[i..]);
            }
        }

        for (; i < depthM.Length; i++)
        {
            float depth = depthM[i];
            bool water = depth > 0;
            next[i] = water ? run[i] + stepM : 0f;
            nextDepth[i] = water ? runDepth[i] + (depth * stepM) : 0f;
        }
    }

    private void Gather(ReadOnlySpan<float> run, ReadOnlySpan<float> runDepth, int start, int stride, float stepM,
        Span<float> fetchM, Span<float> fetchDepthM2)
    {
        float half = 0.5f * stepM;
        for (int i = 0, block = start, inBlock = 0; i < run.Length; i++)
        {
            if (run[i] > 0)
            {
                // A cell's own centre lies half a step inside its last crossing.
                float share = 1f - (half / run[i]);
                fetchM[block] += run[i] - half;
                fetchDepthM2[block] += runDepth[i] * share;
            }

            if (++inBlock == _factor) { inBlock = 0; block += stride; }
        }
    }
}
