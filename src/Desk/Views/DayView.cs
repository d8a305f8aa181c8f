using System.Text.Json.Serialization;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Desk.Views;

/// <summary>A day's plan. SI throughout.</summary>
public sealed record DayView
{
    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The ramp.</summary>
    public required string Ramp { get; init; }

    /// <summary>When to launch.</summary>
    public required DateTimeOffset Launch { get; init; }

    /// <summary>When to be home.</summary>
    public required DateTimeOffset Home { get; init; }

    /// <summary>Stops in order.</summary>
    public required IReadOnlyList<StopView> Stops { get; init; }

    /// <summary>Length of the way on the water, m.</summary>
    public double RouteM { get; init; }

    /// <summary>Thermocline depth that day, m.</summary>
    public Spread? ThermoclineM { get; init; }

    /// <summary>Cautions that bear on the plan.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Wind by hour.</summary>
    public IReadOnlyList<HourView> Hours { get; init; } = [];

    /// <summary>What had to be assumed.</summary>
    public IReadOnlyList<string> Assumed { get; init; } = [];

    /// <summary>Title: one line to obey.</summary>
    public string Title { get; init; } = "";

    /// <summary>Why this order, without 'because'.</summary>
    public string Why { get; init; } = "";

    /// <summary>When it must be home, and why then, without 'because'.</summary>
    public string HomeByWhy { get; init; } = "";

    /// <summary>Bites the day may bring.</summary>
    public Spread Bites { get; init; }

    /// <summary>Plans that differ in kind.</summary>
    public IReadOnlyList<AlternativeView> Alternatives { get; init; } = [];

    /// <summary>Whether those are still to be asked for.</summary>
    public bool OthersWait { get; init; }

    /// <summary>What was asked.</summary>
    public required DayAsk Asked { get; init; }

    /// <summary>First light; null on a day without one.</summary>
    public DateTimeOffset? LightAt { get; init; }

    /// <summary>Whether the plan was made on the water, from where the boat was.</summary>
    public bool FromHere { get; init; }

    /// <summary>The days it is one of, in order; empty for a day alone that counts.</summary>
    public IReadOnlyList<RowDayView> Row { get; init; } = [];

    /// <summary>What the chart draws.</summary>
    public RouteDrawing? Chart { get; init; }
}

/// <summary>One of several days in a row.</summary>
/// <param name="Date">The day.</param>
/// <param name="IsPractice">Whether it is practice; a day that counts fishes the best.</param>
public sealed record RowDayView(DateOnly Date, bool IsPractice);

/// <summary>A stop.</summary>
/// <param name="Id">The spot's id.</param>
/// <param name="Letter">Its letter.</param>
/// <param name="Name">Its name.</param>
/// <param name="XM">Place in the lake's plane, m.</param>
/// <param name="YM">Place in the lake's plane, m.</param>
/// <param name="DepthM">Depth to fish, m.</param>
/// <param name="Arrive">When fishing begins.</param>
/// <param name="Leave">When it ends.</param>
/// <param name="Rig">What to tie on.</param>
/// <param name="JigWeightG">The jig's weight, g.</param>
/// <param name="Pass">How to fish it.</param>
/// <param name="Why">Why here and then, without 'because'.</param>
/// <param name="RunMin">Minutes of running to get there.</param>
/// <param name="RunM">Length of the run there, m.</param>
/// <param name="Form">Bottom form, as the engine calls it.</param>
/// <param name="BehindM">How far behind the boat the jig is dragged, m; 0 where that is not known.</param>
public sealed record StopView(string Id, string Letter, string Name, double XM, double YM, double DepthM, DateTimeOffset Arrive, DateTimeOffset Leave,
    string Rig, double JigWeightG, string Pass, string Why, double RunMin, double RunM, string Form = "", double BehindM = 0);

/// <summary>A plan that differs in kind.</summary>
/// <param name="Kind">In what.</param>
/// <param name="Words">When to take it.</param>
/// <param name="Letters">Its stops' letters in order.</param>
public sealed record AlternativeView(string Kind, string Words, IReadOnlyList<string> Letters);

/// <summary>What is asked of a day. Null takes the usual.</summary>
/// <param name="Date">The day, or the first of several, on the lake's calendar.</param>
/// <param name="Ramp">The ramp's name.</param>
/// <param name="Launch">Local time from which the boat may leave.</param>
/// <param name="HomeBy">Local time to be back.</param>
/// <param name="Must">Ids of spots that must be stops.</param>
/// <param name="Never">Ids of spots to leave out.</param>
/// <param name="Here">Where the boat is, to plan the rest of the day from there.</param>
/// <param name="More">Boat, breaks and what is kept in hand.</param>
/// <param name="Days">Days in a row, 1 to 7: practice, and the last of them fishes the best.</param>
/// <param name="AllPractice">Makes the last day practice too.</param>
/// <param name="Which">Which of the days, from 0.</param>
/// <param name="Taken">Kinds of the alternatives that were taken, in order; null for the plan as first made.</param>
/// <param name="RampOpen">Whether the ramp was left open and found: the day is then the one that was asked for without it.</param>
public sealed record DayAsk(DateOnly? Date = null, string? Ramp = null, TimeOnly? Launch = null, TimeOnly? HomeBy = null,
    IReadOnlyList<string>? Must = null, IReadOnlyList<string>? Never = null, HereAsk? Here = null,
    DayMore? More = null, int Days = 1, bool AllPractice = false, int Which = 0, IReadOnlyList<string>? Taken = null, bool RampOpen = false)
{
    /// <summary>Most days in a row.</summary>
    public const int MostDays = 7;

    /// <summary>Whether practice is asked for.</summary>
    [JsonIgnore]
    public bool IsRow => Days > 1 || AllPractice;

    /// <summary>A day like it to be planned anew: its ramp stays, an alternative that was taken does not.</summary>
    public DayAsk Anew() => this with { Taken = null, RampOpen = false };

    /// <summary>Whether one of the days is practice.</summary>
    internal bool IsPractice(int which) => AllPractice || which < Days - 1;

    /// <summary>The same with as many days as there may be, and one of them.</summary>
    internal DayAsk Bounded()
    {
        int days = Math.Clamp(Days, 1, MostDays);
        return this with { Days = days, Which = Math.Clamp(Which, 0, days - 1) };
    }
}

/// <summary>Boat, breaks and what is kept in hand. Null takes the usual.</summary>
/// <param name="CruiseMps">Speed of a run on calm open water, m/s.</param>
/// <param name="DraftM">Depth the hull and drive need, m.</param>
/// <param name="FuelL">Fuel that may be burnt, litres.</param>
/// <param name="WindLimitMps">Mean wind at which to be off the water, m/s.</param>
/// <param name="ReserveMin">Minutes kept in hand before dark, check-in and the wind limit.</param>
/// <param name="Breaks">Breaks, at most three.</param>
public sealed record DayMore(double? CruiseMps = null, double? DraftM = null, double? FuelL = null, double? WindLimitMps = null, double? ReserveMin = null,
    IReadOnlyList<BreakAsk>? Breaks = null);

/// <summary>A break, taken wherever the boat is.</summary>
/// <param name="From">Not begun before, local time.</param>
/// <param name="To">Not begun after, local time.</param>
/// <param name="Minutes">How long.</param>
public sealed record BreakAsk(TimeOnly From, TimeOnly To, int Minutes);

/// <summary>Where the boat is.</summary>
/// <param name="At">The moment.</param>
/// <param name="LatDeg">Latitude, degrees.</param>
/// <param name="LonDeg">Longitude, degrees.</param>
/// <param name="FishedH">Hours fished today by spot id.</param>
public sealed record HereAsk(DateTimeOffset At, double LatDeg, double LonDeg, IReadOnlyDictionary<string, double> FishedH);

/// <summary>An hour's wind.</summary>
public sealed record HourView(DateTimeOffset At, double WindMps, double? GustMps, double? FromDeg, bool Dark);
