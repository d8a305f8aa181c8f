using SecondShore.Engine.Season;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Lake;

/// <summary>Units a user wants to see.</summary>
public enum DisplayUnits
{
    /// <summary>Metres, grams, degrees Celsius.</summary>
    Metric,

    /// <summary>Feet, ounces, degrees Fahrenheit, miles per hour.</summary>
    UsCustomary,
}

/// <summary>A place to put a boat in.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Place">Where it is.</param>
/// <param name="ToeBelowFullPoolM">How far below full pool the ramp's lower end lies, m: out of water when the pool drops further; null when not known.</param>
/// <param name="Note">The user's words.</param>
public sealed record RampMark(string Name, GeoPoint Place, double? ToeBelowFullPoolM, string Note);

/// <summary>Water where boats must go at idle speed.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Outline">Its ring, no point repeated.</param>
public sealed record NoWakeArea(string Name, IReadOnlyList<GeoPoint> Outline);

/// <summary>Kinds of mark the user sets for planning.</summary>
public enum PlaceMarkKind
{
    /// <summary>A place of the user's own, offered as a spot.</summary>
    Spot,

    /// <summary>Names the arm of the lake it lies in.</summary>
    Arm,

    /// <summary>The plan must stop here.</summary>
    MustVisit,

    /// <summary>The plan must keep away: off limits, or no wish to.</summary>
    NeverVisit,
}

/// <summary>A place marked by the user.</summary>
/// <param name="Kind">What the plan shall do with it.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Place">Where it is.</param>
/// <param name="RadiusM">How far the mark reaches, m.</param>
/// <param name="Note">The user's words.</param>
public sealed record PlaceMark(PlaceMarkKind Kind, string Name, GeoPoint Place, double RadiusM, string Note);

/// <summary>Where a wind of <c>wind/NAME.csv</c> was measured or is forecast.</summary>
/// <param name="Name">The file's name without its ending.</param>
/// <param name="Place">Where it is.</param>
/// <param name="HeightM">Height of the wind over ground or water, m; null when not said.</param>
/// <param name="OnLand">Whether land lies around it; false for a buoy or a grid point of 10 m wind, null when not said.</param>
public sealed record WindStation(string Name, GeoPoint Place, double? HeightM, bool? OnLand);

/// <summary>A place that carries a name, such as a chain of thermometers.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where it is.</param>
public sealed record Mooring(string Name, GeoPoint Place);

/// <summary>A parameter of the lake column fitted to this lake's own readings.</summary>
/// <param name="Name">The engine's name of the parameter.</param>
/// <param name="P10">Tenth percentile.</param>
/// <param name="P50">Median.</param>
/// <param name="P90">Ninetieth percentile.</param>
public sealed record FittedParameter(string Name, double P10, double P50, double P90);

/// <summary>What was fitted to this lake's own readings.</summary>
/// <param name="Parameters">Parameters of the lake column; may be empty.</param>
/// <param name="Bias">What the fitted column keeps missing; null where nothing was fitted.</param>
public sealed record FittedLake(IReadOnlyList<FittedParameter> Parameters, SeasonBias? Bias)
{
    /// <summary>Nothing was fitted.</summary>
    public static FittedLake None { get; } = new([], null);
}

/// <summary>What <c>lake.json</c> says, each value in SI; null where it says nothing. Immutable.</summary>
public sealed record LakeDocument
{
    /// <summary>The lake's name.</summary>
    public string? Name { get; init; }

    /// <summary>A place on the lake.</summary>
    public GeoPoint? Position { get; init; }

    /// <summary>Elevation of full pool above sea level, m.</summary>
    public double? ElevationM { get; init; }

    /// <summary>IANA time zone, as written.</summary>
    public string? TimeZoneId { get; init; }

    /// <summary>Offset of standard time from UTC, hours, where no zone is named.</summary>
    public double? StandardOffsetH { get; init; }

    /// <summary>Area of the surface at full pool, m2.</summary>
    public double? SurfaceAreaM2 { get; init; }

    /// <summary>Greatest depth at full pool, m.</summary>
    public double? MaxDepthM { get; init; }

    /// <summary>Mean depth at full pool, m.</summary>
    public double? MeanDepthM { get; init; }

    /// <summary>Typical Secchi depth, m.</summary>
    public double? SecchiM { get; init; }

    /// <summary>Measured light extinction, m-1.</summary>
    public double? LightExtinctionPerM { get; init; }

    /// <summary>Depth of a dam's deep outlet below full pool, m.</summary>
    public double? OutletDepthM { get; init; }

    /// <summary>Whether a dam holds the lake; null when not said.</summary>
    public bool? IsReservoir { get; init; }

    /// <summary>Where the dam stands; null when not said.</summary>
    public GeoPoint? Dam { get; init; }

    /// <summary>How clear the water is in a word, where no Secchi depth is known; null when not said.</summary>
    public WaterClarity? Clarity { get; init; }

    /// <summary>Height over ground at which the weather's wind was measured, m.</summary>
    public double? WindHeightM { get; init; }

    /// <summary>End of the measured weather; what follows in weather.csv is forecast. Null when not said.</summary>
    public DateTimeOffset? MeasuredUntil { get; init; }

    /// <summary>How far the surface lay below full pool when the survey was made, m; null when not said.</summary>
    public double? SurveyBelowFullPoolM { get; init; }

    /// <summary>Units to show.</summary>
    public DisplayUnits? Units { get; init; }

    /// <summary>Whether the lake is made up.</summary>
    public bool IsInvented { get; init; }

    /// <summary>Launch ramps.</summary>
    public IReadOnlyList<RampMark> Ramps { get; init; } = [];

    /// <summary>No-wake areas.</summary>
    public IReadOnlyList<NoWakeArea> NoWakeAreas { get; init; } = [];

    /// <summary>Marks of the user.</summary>
    public IReadOnlyList<PlaceMark> Marks { get; init; } = [];

    /// <summary>Places of the winds in <c>wind/NAME.csv</c>.</summary>
    public IReadOnlyList<WindStation> WindStations { get; init; } = [];

    /// <summary>Places of chains of thermometers.</summary>
    public IReadOnlyList<Mooring> Moorings { get; init; } = [];

    /// <summary>What was fitted to this lake.</summary>
    public FittedLake Fitted { get; init; } = FittedLake.None;

    /// <summary>How the survey is to be read, by file name; the empty name holds for every survey file.</summary>
    public IReadOnlyDictionary<string, Surveys.SurveyOptions> SurveyOptions { get; init; } = new Dictionary<string, Surveys.SurveyOptions>();
}
