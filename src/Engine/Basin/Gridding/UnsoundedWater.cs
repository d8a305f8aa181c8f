using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Water inside the shoreline that no sounding speaks for: a creek's back, drawn by its banks alone, would stand dry.</summary>
/// <remarks>
/// There the bed falls from the shore as steeply as it does, in the middle of the lot, along the sounded shores of the same
/// lake, but no deeper than the nearest soundings: a channel goes on instead of ending at a wall.
/// </remarks>
internal sealed class UnsoundedWater
{
    private readonly float[] _toShoreCells;
    private readonly int[] _nearestSounded;
    private readonly float[] _toSoundedCells;

    /// <summary>Measures distances.</summary>
    /// <param name="mask">Water.</param>
    /// <param name="sounded">Cells with a sounding, contour or raster.</param>
    /// <param name="frame">Frame.</param>
    public UnsoundedWater(bool[] mask, bool[] sounded, GridFrame frame)
    {
        bool[] land = new bool[mask.Length];
        for (int i = 0; i < land.Length; i++) land[i] = !mask[i];
        _toShoreCells = Roots(NearestCell.Of(land, frame.Nx, frame.Ny).SquaredCells);
        (_nearestSounded, float[] squared) = NearestCell.Of(sounded, frame.Nx, frame.Ny);
        _toSoundedCells = Roots(squared);
    }

    /// <summary>Deepens cells in place.</summary>
    /// <param name="depthM">Drawn depths.</param>
    /// <param name="sounded">Cells with a datum.</param>
    /// <param name="mask">Water.</param>
    /// <param name="doubtM">[Ny*Nx] receives the depth that was guessed, m, 0 elsewhere.</param>
    /// <returns>Number of cells guessed.</returns>
    public int Deepen(float[] depthM, bool[] sounded, bool[] mask, float[] doubtM)
    {
        double slope = ShoreSlope(depthM, sounded);
        if (!(slope > 0)) return 0;
        int guessed = 0;
        for (int i = 0; i < depthM.Length; i++)
        {
            if (!mask[i] || sounded[i] || _nearestSounded[i] < 0) continue;
            double shore = Math.Max(0.5, _toShoreCells[i] - 0.5), trust = Math.Clamp((_toSoundedCells[i] / shore / 2) - 1, 0, 1);
            if (trust <= 0) continue;
            double guess = trust * Math.Min(slope * shore, 0.9 * depthM[_nearestSounded[i]]);
            if (guess <= depthM[i]) continue;
            depthM[i] = (float)guess;
            doubtM[i] = (float)guess;
            guessed++;
        }

        return guessed;
    }

    // Depth over distance to the shore, median of the sounded cells near it, m per cell.
    private double ShoreSlope(float[] depthM, bool[] sounded)
    {
        List<float> slopes = [];
        for (int i = 0; i < sounded.Length; i++)
        {
            float cells = _toShoreCells[i] - 0.5f;
            if (sounded[i] && depthM[i] > 0 && cells is > 1.5f and < 12f) slopes.Add(depthM[i] / cells);
        }

        if (slopes.Count < 20) return 0;
        slopes.Sort();
        return 0.8 * slopes[slopes.Count / 2];
    }

    private static float[] Roots(float[] squared)
    {
        for (int i = 0; i < squared.Length; i++) squared[i] = MathF.Sqrt(squared[i]);
        return squared;
    }
}
