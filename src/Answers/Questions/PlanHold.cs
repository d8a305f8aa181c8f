using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Units;

namespace SecondShore.Answers.Questions;

/// <summary>What becomes of a planned stop when the thermocline lies elsewhere than planned for.</summary>
public enum StopFate
{
    /// <summary>Nothing that matters changes.</summary>
    Holds,

    /// <summary>The thermocline still crosses the bottom there, shallower or deeper.</summary>
    Slides,

    /// <summary>The thermocline no longer meets the bottom there.</summary>
    NoLongerCrosses,
}

/// <summary>A stop still to come, as planned.</summary>
/// <param name="Letter">Its letter.</param>
/// <param name="Place">Where.</param>
/// <param name="Pass">The line to drag along; empty without one.</param>
public sealed record HeldStop(string Letter, PlanePoint Place, IReadOnlyList<PlanePoint> Pass);

/// <summary>A stop and what becomes of it.</summary>
/// <param name="Letter">Its letter.</param>
/// <param name="Fate">What becomes of it.</param>
public sealed record StopHold(string Letter, StopFate Fate);

/// <summary>Whether a kept plan still holds in the water as it is known now.</summary>
/// <param name="WasM">Thermocline depth planned for, m; null where none stood.</param>
/// <param name="NowM">Thermocline depth as known now, m; null where none stands.</param>
/// <param name="Stops">The stops still to come.</param>
public sealed record PlanHold(double? WasM, double? NowM, IReadOnlyList<StopHold> Stops)
{
    /// <summary>A move of the thermocline by less leaves a plan as it is, m: a foot, which is how exactly depths are told.</summary>
    public static readonly double WorthTellingM = Length.MetresPerFoot;

    // How far beside the pass the boat may follow the slope without its being another place.
    private static readonly double BesideM = 60;

    // The jig drags within reach of the layer: bottom that ends so little above or below it still serves.
    private static readonly double NearEnoughM = 0.5;

    /// <summary>Whether anything changed that is worth a word.</summary>
    public bool Changed => Stops.Any(s => s.Fate != StopFate.Holds);

    /// <summary>How much deeper the thermocline lies than planned for, m; negative where it lies shallower, null without one then or now.</summary>
    public double? ShiftM => NowM - WasM;

    /// <summary>Looks at each stop still to come.</summary>
    /// <param name="grid">Depths at the day's level.</param>
    /// <param name="stops">The stops still to come.</param>
    /// <param name="wasM">Thermocline depth planned for, m.</param>
    /// <param name="nowM">Thermocline depth as known now, m.</param>
    public static PlanHold Of(DepthGrid grid, IReadOnlyList<HeldStop> stops, double? wasM, double? nowM)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(stops);
        return new PlanHold(wasM, nowM, [.. stops.Select(s => new StopHold(s.Letter, Fate(grid, s, wasM, nowM)))]);
    }

    private static StopFate Fate(DepthGrid grid, HeldStop stop, double? wasM, double? nowM)
    {
        if (wasM is not { } was || (nowM is { } near && Math.Abs(near - was) < WorthTellingM)) return StopFate.Holds;
        (double shallowM, double deepM) = Around(grid, stop);
        // A stop that never leaned on the layer is not moved by it.
        if (!Meets(was)) return StopFate.Holds;
        return nowM is { } now && Meets(now) ? StopFate.Slides : StopFate.NoLongerCrosses;

        bool Meets(double depthM) => depthM >= shallowM - NearEnoughM && depthM <= deepM + NearEnoughM;
    }

    // Depths of the bottom along the pass and a little beside it.
    private static (double ShallowM, double DeepM) Around(DepthGrid grid, HeldStop stop)
    {
        double cellM = grid.Frame.CellM, shallowM = double.PositiveInfinity, deepM = double.NegativeInfinity;
        int reach = Math.Max(1, (int)Math.Round(BesideM / cellM));
        foreach (PlanePoint point in stop.Pass.Count > 0 ? stop.Pass : [stop.Place])
        {
            if (!grid.Frame.TryCellAt(point, out int cx, out int cy)) continue;
            for (int iy = cy - reach; iy <= cy + reach; iy++)
            {
                for (int ix = cx - reach; ix <= cx + reach; ix++)
                {
                    int dx = ix - cx, dy = iy - cy;
                    if ((dx * dx) + (dy * dy) > reach * reach || !grid.IsWater(ix, iy)) continue;
                    double depthM = grid.DepthM[grid.Frame.Index(ix, iy)];
                    shallowM = Math.Min(shallowM, depthM);
                    deepM = Math.Max(deepM, depthM);
                }
            }
        }

        return (shallowM, deepM);
    }
}
