using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Lays one sheet of depths over another with a feathered seam.</summary>
internal static class RasterMerge
{
    /// <summary>Cells over which a seam fades.</summary>
    private const double FeatherCells = 8;

    /// <summary>Cells whose lower depth shows through an upper sheet: those it leaves open, and those within the seam about them.</summary>
    /// <param name="wet">[Ny*Nx] cells of interest.</param>
    /// <param name="over">[Ny*Nx] the upper sheet, NaN where it is silent.</param>
    /// <param name="frame">Frame.</param>
    public static bool[] ShowsThrough(bool[] wet, float[] over, GridFrame frame)
    {
        bool[] open = new bool[over.Length];
        for (int i = 0; i < open.Length; i++) open[i] = wet[i] && !float.IsFinite(over[i]);
        float[] squared = NearestCell.Of(open, frame.Nx, frame.Ny).SquaredCells;
        for (int i = 0; i < open.Length; i++) open[i] = wet[i] && squared[i] < (FeatherCells + 1) * (FeatherCells + 1);
        return open;
    }

    /// <summary>Puts <paramref name="over"/> onto <paramref name="under"/> in place: where only one knows a cell it wins, where both do
    /// the upper one wins, fading in from its own edge.</summary>
    public static void Lay(float[] under, float[] over, GridFrame frame)
    {
        bool[] lower = new bool[under.Length];
        bool overlap = false;
        for (int i = 0; i < under.Length; i++)
        {
            lower[i] = float.IsNaN(over[i]) && !float.IsNaN(under[i]);
            overlap |= !float.IsNaN(over[i]) && !float.IsNaN(under[i]);
        }

        float[]? squared = overlap ? NearestCell.Of(lower, frame.Nx, frame.Ny).SquaredCells : null;
        for (int i = 0; i < under.Length; i++)
        {
            if (float.IsNaN(over[i])) continue;
            if (squared is null || float.IsNaN(under[i]) || float.IsPositiveInfinity(squared[i])) { under[i] = over[i]; continue; }
            double t = (Math.Sqrt(squared[i]) - 0.5) / FeatherCells, weight = t * t * (3 - (2 * t));
            if (t >= 1) { under[i] = over[i]; continue; }
            under[i] = (float)(under[i] + (weight * (over[i] - under[i])));
        }
    }
}
