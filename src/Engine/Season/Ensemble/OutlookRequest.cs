using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Season;

/// <summary>A lake or an arm of it, as the season sees it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Basin">Its own areas by depth below full pool.</param>
public sealed record ArmShape(string Name, Hypsography Basin)
{
    /// <summary>Longest open stretch of water, m; null takes it from the area.</summary>
    public double? FetchM { get; init; }

    /// <summary>Neighbours this arm trades water with, and the depth of the sill between, m below full pool.</summary>
    public IReadOnlyList<(string Arm, double SillM)> Neighbours { get; init; } = [];
}

/// <summary>Everything an outlook may be made from. Only the lake, one arm and the instant are needed; the rest sharpens it.</summary>
public sealed record OutlookRequest
{
    /// <summary>The lake.</summary>
    public required LakeSite Site { get; init; }

    /// <summary>The whole lake, or its arms, each with its own shape; at least one.</summary>
    public required IReadOnlyList<ArmShape> Arms { get; init; }

    /// <summary>The instant the outlook stands for.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Weather so far and the forecast; may hold earlier years too, which then serve as past years. Null without weather.</summary>
    public WeatherSeries? Weather { get; init; }

    /// <summary>What kind of weather it is.</summary>
    public WeatherSource Source { get; init; } = WeatherSource.Grid;

    /// <summary>Weather of past years, for the time beyond the forecast.</summary>
    public IReadOnlyList<WeatherSeries> PastYears { get; init; } = [];

    /// <summary>Pool levels; may be empty.</summary>
    public IReadOnlyList<PoolLevel> Levels { get; init; } = [];

    /// <summary>Daily flows; may be empty.</summary>
    public IReadOnlyList<DailyFlow> Flows { get; init; } = [];

    /// <summary>Single readings; those after <see cref="At"/> are left out.</summary>
    public IReadOnlyList<Reading> Readings { get; init; } = [];

    /// <summary>Casts; those after <see cref="At"/> are left out.</summary>
    public IReadOnlyList<WaterProfile> Profiles { get; init; } = [];

    /// <summary>Which arm a place lies in, by name; null counts every reading for the deepest arm.</summary>
    public Func<GeoPoint, string?>? ArmOf { get; init; }

    /// <summary>Numbers to make the general beliefs of; null takes the learned ones. Set to score a region left out.</summary>
    public PriorNumbers? Numbers { get; init; }

    /// <summary>Beliefs fitted to this lake before; null takes the general ones.</summary>
    public LakePriors? Fitted { get; init; }

    /// <summary>The seasons run no further than this day's end; null runs them past every turnover.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>Members of the ensemble, 5 to 5000; percentiles want 20 or more, a median serves with fewer.</summary>
    public int Members { get; init; } = 200;

    /// <summary>Seed of all chance.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Mean wind of the weather's whole record at 10 m, m s-1: tells a station in the lee; null takes it from <see cref="Weather"/>.</summary>
    public double? MeanWindMps { get; init; }

    /// <summary>Mixing the columns run; null takes the better of the two (season.md).</summary>
    public MixingStructure? Structure { get; init; }

    /// <summary>Whether past-year weather may stand in after <see cref="Weather"/> ends only from years other than this one; set to test hindcasts.</summary>
    public int? ExcludeYear { get; init; }
}
