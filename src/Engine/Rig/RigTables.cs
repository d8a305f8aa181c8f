using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>One cell of a table of weights.</summary>
/// <param name="DepthM">Depth, m.</param>
/// <param name="SpeedMps">Drag speed, m s-1.</param>
/// <param name="NeededKg">Mass that the rule asks for, kg; infinity when none does.</param>
/// <param name="Size">Lightest size that is at least that; null when the heaviest is too light: too fast.</param>
public readonly record struct WeightCell(double DepthM, double SpeedMps, double NeededKg, StandardWeight? Size);

/// <summary>One cell of a table of what one rig does.</summary>
/// <param name="DepthM">Depth, m.</param>
/// <param name="SpeedMps">Drag speed, m s-1.</param>
/// <param name="Tow">The middle case, solved.</param>
public readonly record struct TowCell(double DepthM, double SpeedMps, TowResult Tow);

/// <summary>Tables over depth and speed.</summary>
public static class RigTables
{
    /// <summary>Weight to tie on, by depth (rows) and drag speed (columns), row by row.</summary>
    /// <param name="kind">The jig whose mass is sought.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Everything but depth and speed. Line out follows depth where it is not given; given, it is held.</param>
    /// <param name="rule">What counts as keeping the bottom.</param>
    /// <param name="depthsM">Depths, m.</param>
    /// <param name="speedsMps">Drag speeds, m s-1.</param>
    /// <param name="sizes">Sizes, ascending.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside <see cref="TowBounds"/>.</exception>
    public static WeightCell[] Weights(Jig kind, FishingLine line, RigConditions conditions, HoldRule rule,
        ReadOnlySpan<double> depthsM, ReadOnlySpan<double> speedsMps, IReadOnlyList<StandardWeight> sizes)
    {
        Require.NotNull(conditions);
        Require.NotNull(sizes);
        WeightCell[] cells = new WeightCell[depthsM.Length * speedsMps.Length];
        for (int row = 0; row < depthsM.Length; row++)
        {
            for (int column = 0; column < speedsMps.Length; column++)
            {
                RigConditions at = conditions with { DepthM = depthsM[row], SpeedMps = speedsMps[column] };
                double needed = WeightNeed.QuickKg(kind, line, at, rule);
                StandardWeight? size = null;
                foreach (StandardWeight candidate in sizes)
                {
                    if (candidate.MassKg < needed) continue;
                    size = candidate;
                    break;
                }

                cells[(row * speedsMps.Length) + column] = new WeightCell(depthsM[row], speedsMps[column], needed, size);
            }
        }

        return cells;
    }

    /// <summary>What one rig does by depth (rows) and drag speed (columns), row by row, in the middle case.</summary>
    /// <param name="jig">Jig.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Everything but depth and speed.</param>
    /// <param name="depthsM">Depths, m.</param>
    /// <param name="speedsMps">Drag speeds, m s-1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside <see cref="TowBounds"/>.</exception>
    public static TowCell[] Tows(Jig jig, FishingLine line, RigConditions conditions, ReadOnlySpan<double> depthsM, ReadOnlySpan<double> speedsMps)
    {
        Require.NotNull(conditions);
        TowCell[] cells = new TowCell[depthsM.Length * speedsMps.Length];
        for (int row = 0; row < depthsM.Length; row++)
        {
            for (int column = 0; column < speedsMps.Length; column++)
            {
                RigConditions at = conditions with { DepthM = depthsM[row], SpeedMps = speedsMps[column] };
                cells[(row * speedsMps.Length) + column] = new TowCell(depthsM[row], speedsMps[column], TowSolver.Solve(at.Tow(jig, line)));
            }
        }

        return cells;
    }
}
