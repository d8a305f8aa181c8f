using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Lays one sheet of depths over another with a feathered seam.</summary>
internal static class RasterMerge
{
    /// <summary>Cells over which a seam fades.</summary>
    private const double FeatherCells = 8;

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
            double t = Math.Min(1, (Math.Sqrt(squared[i]) - 0.5) / FeatherCells), weight = t * t * (3 - (2 * t));
            under[i] = (float)(under[i] + (weight * (over[i] - under[i])));
        }
    }
}
