using SecondShore.Engine.Core;
using SecondShore.Engine.Motion.Layers;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Motion;

/// <summary>How a wind field is computed.</summary>
public sealed record WindFieldOptions
{
    /// <summary>The interface model's settings; its damping is replaced by the one that fits the basin's own period.</summary>
    public InterfaceOptions Interface { get; init; } = new();

    /// <summary>Pairs of layers that stand for the ensemble.</summary>
    public int Members { get; init; } = 5;

    /// <summary>Days before the first hour over which the water is spun up from rest, as far as the weather reaches back.</summary>
    public double SpinUpDays { get; init; } = 5.0;

    /// <summary>Periods of the gravest rocking in which it falls to 1/e besides the drag (choice: 3 of the reported 1 to 5).</summary>
    public double PeriodsToFade { get; init; } = 3.0;

    /// <summary>Most members computed at once; null takes the processors, one in a browser.</summary>
    public int? Parallelism { get; init; }

    /// <summary>Fetch on the same grid where it is known already; null finds it.</summary>
    public FetchField? Fetch { get; init; }

    /// <summary>Winds measured or forecast at places of their own; empty takes the weather's wind for the whole lake.</summary>
    public IReadOnlyList<StationWind> Stations { get; init; } = [];

    /// <summary>
    /// The ensemble's layers in the hours after the first, members in the same order, null where one has none any more; the last
    /// holds on. Empty keeps the first.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<TwoLayers?>> Ahead { get; init; } = [];

    /// <summary>Standard deviation of the error of a displacement over the root mean square of the displacement at the place.</summary>
    public double ErrorShare { get; init; } = MotionError.ShareOfRms;

    /// <summary>Checks the ranges.</summary>
    public WindFieldOptions Checked()
    {
        Interface.Checked();
        Require.InRange(Members, 1, 100);
        Require.NotNull(Stations);
        Require.InRange(ErrorShare, 0.0, 100.0);
        Require.InRange(SpinUpDays, 0.0, 60.0);
        Require.InRange(PeriodsToFade, 0.1, 1000.0);
        if (Parallelism is { } given) Require.InRange(given, 1, 1024);
        return this;
    }
}
