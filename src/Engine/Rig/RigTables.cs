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

/// <summary>One row of a table over weights.</summary>
/// <param name="Size">The size.</param>
/// <param name="HoldsChance">Chance that it keeps the bottom.</param>
/// <param name="Tow">The middle case, solved.</param>
/// <param name="FallS">Fall on slack line, s, middle case; infinity where the line stops it.</param>
/// <param name="FastestMps">Fastest speed that still holds, m s-1, middle case.</param>
public readonly record struct SizeRow(StandardWeight Size, double HoldsChance, TowResult Tow, double FallS, double FastestMps);

/// <summary>Tables over depth and speed, and over weights.</summary>
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
    /// <param name="choice">The choice that was made at the conditions' own depth and speed for this kind of jig: the table then agrees
    /// with it there and takes its samples along; null for the quick law alone.</param>
    /// <exception cref="RefusedException">A number lies outside <see cref="TowBounds"/>.</exception>
    public static WeightCell[] Weights(Jig kind, FishingLine line, RigConditions conditions, HoldRule rule,
        ReadOnlySpan<double> depthsM, ReadOnlySpan<double> speedsMps, IReadOnlyList<StandardWeight> sizes, RigChoice? choice = null)
    {
        Require.NotNull(conditions);
        Require.NotNull(sizes);
        WeightCell[] cells = new WeightCell[depthsM.Length * speedsMps.Length];
        for (int row = 0; row < depthsM.Length; row++)
        {
            for (int column = 0; column < speedsMps.Length; column++)
            {
                RigConditions at = conditions with { DepthM = depthsM[row], SpeedMps = speedsMps[column] };
                double needed = choice is not null && at == conditions ? choice.NeededKg : WeightNeed.QuickKg(kind, line, at, rule, choice?.SureShare ?? 1);
                cells[(row * speedsMps.Length) + column] = new WeightCell(depthsM[row], speedsMps[column], needed, Lightest(sizes, needed));
            }
        }

        return cells;
    }

    /// <summary>What each size of one kind of jig does at one depth and speed, lightest first.</summary>
    /// <param name="kind">The jig whose mass is varied.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Conditions.</param>
    /// <param name="rule">What counts as keeping the bottom.</param>
    /// <param name="sizes">Sizes, ascending.</param>
    /// <param name="choice">The choice made at these conditions for this kind of jig.</param>
    /// <exception cref="RefusedException">A number lies outside <see cref="TowBounds"/>.</exception>
    public static SizeRow[] Sizes(Jig kind, FishingLine line, RigConditions conditions, HoldRule rule, IReadOnlyList<StandardWeight> sizes, RigChoice choice)
    {
        Require.NotNull(conditions);
        Require.NotNull(kind);
        Require.NotNull(sizes);
        Require.NotNull(choice);
        SizeRow[] rows = new SizeRow[sizes.Count];
        for (int i = 0; i < rows.Length; i++)
        {
            Jig jig = kind.WithMass(sizes[i].MassKg);
            TowCase tow = conditions.Tow(jig, line);
            rows[i] = new SizeRow(sizes[i], choice.HoldsChance(jig.MassKg), TowSolver.Solve(tow),
                FallSolver.Solve(FallCase.Of(jig, line, conditions), conditions.Current).TimeS, HoldLimits.FastestMps(tow, rule.LeastShare));
        }

        return rows;
    }

    /// <summary>The lightest size of at least a mass; null when none is.</summary>
    /// <param name="sizes">Sizes, ascending.</param>
    /// <param name="neededKg">The mass, kg.</param>
    public static StandardWeight? Lightest(IReadOnlyList<StandardWeight> sizes, double neededKg)
    {
        Require.NotNull(sizes);
        foreach (StandardWeight size in sizes)
            if (size.MassKg >= neededKg) return size;
        return null;
    }

    /// <summary>What one rig does by depth (rows) and drag speed (columns), row by row, in the middle case.</summary>
    /// <param name="jig">Jig.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Everything but depth and speed.</param>
    /// <param name="depthsM">Depths, m.</param>
    /// <param name="speedsMps">Drag speeds, m s-1.</param>
    /// <exception cref="RefusedException">A number lies outside <see cref="TowBounds"/>.</exception>
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
