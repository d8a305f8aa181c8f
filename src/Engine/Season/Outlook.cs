using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Season;

/// <summary>State of a lake or an arm.</summary>
public enum LayerState
{
    /// <summary>Layered: a thermocline stands.</summary>
    Stratified,

    /// <summary>The step is dissolving, or dissolved within the last days.</summary>
    Turning,

    /// <summary>One temperature from top to bottom.</summary>
    Mixed,
}

/// <summary>The season forecast of a lake: what is known of its layers at one instant, and when they go. Immutable.</summary>
public sealed record Outlook
{
    /// <summary>The instant the state stands for.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The whole lake (its deepest arm).</summary>
    public required ArmOutlook Lake { get; init; }

    /// <summary>Each arm, deepest first; at least one.</summary>
    public required IReadOnlyList<ArmOutlook> Arms { get; init; }

    /// <summary>Whether all rests on a made-up climate, as neither weather nor a reading is on file: a rough guess from latitude.</summary>
    public bool IsRoughGuess { get; init; }

    /// <summary>That a warm skin lies over the lake, and that it is not the thermocline; null without a strong one.</summary>
    public Finding? SkinNamed => Lake.Skin is not { } skin || Lake.Profile is not [{ TempC.P50: var topC }, ..] ? null
        : SeasonFindings.WarmSkin.Of(Told.Depth(skin.DepthM.P50), Told.Temperature(topC), Told.Temperature(topC - skin.WarmerK.P50));

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<Finding> Assumed { get; init; }

    /// <summary>Readings not followed, with the reason.</summary>
    public required IReadOnlyList<Finding> Doubted { get; init; }
}

/// <summary>The season forecast of one arm.</summary>
public sealed record ArmOutlook
{
    /// <summary>The arm's name.</summary>
    public required string Name { get; init; }

    /// <summary>State at the outlook's instant.</summary>
    public required LayerState State { get; init; }

    /// <summary>Share of members in which a thermocline stands, 0 to 1.</summary>
    public required double ChanceStratified { get; init; }

    /// <summary>Thermocline depth at rest below today's surface, m, over the members that have one; null when fewer than a tenth have.</summary>
    public required SampleDistribution? ThermoclineM { get; init; }

    /// <summary>Top of the metalimnion, m; null without a thermocline.</summary>
    public SampleDistribution? MetalimnionTopM { get; init; }

    /// <summary>Bottom of the metalimnion, m; null without a thermocline.</summary>
    public SampleDistribution? MetalimnionBottomM { get; init; }

    /// <summary>The warm skin of the day above the lasting layers; null where half of the members have none to be named.</summary>
    public WarmSkin? Skin { get; init; }

    /// <summary>Depth below which oxygen is likely under 3 mg/L, m; null when there is enough to the bottom.</summary>
    public required SampleDistribution? OxygenFloorM { get; init; }

    /// <summary>Days from <see cref="Outlook.At"/> to turnover (negative when it lies behind); null when no member turns over within its weather.</summary>
    public required SampleDistribution? TurnoverInDays { get; init; }

    /// <summary>Share of members that turned over within their weather, 0 to 1.</summary>
    public double ChanceTurnoverSeen { get; init; }

    /// <summary>Days from <see cref="Outlook.At"/> until the arm has settled after turnover (five days within a quarter kelvin); null when too few members see it.</summary>
    public SampleDistribution? SettledInDays { get; init; }

    /// <summary>Profile now.</summary>
    public required IReadOnlyList<ProfilePoint> Profile { get; init; }

    /// <summary>Daily course of the season, for charts and for plans on later days.</summary>
    public required IReadOnlyList<OutlookDay> Days { get; init; }

    /// <summary>Members' equivalent two layers now, for the motion of the water; empty without a thermocline.</summary>
    public required IReadOnlyList<TwoLayers> Layers { get; init; }

    /// <summary>The layers hour by hour from <see cref="Outlook.At"/> on, as far as they were followed; the lake's own alone.</summary>
    public IReadOnlyList<LayerHour> Ahead { get; init; } = [];
}

/// <summary>The warm skin of a day (season.md, "The day's skin").</summary>
/// <param name="DepthM">How far down half of the day's warming reaches, m.</param>
/// <param name="WarmerK">How much warmer the surface is than at its coolest within a day, K.</param>
public sealed record WarmSkin(Spread DepthM, Spread WarmerK);

/// <summary>Temperature (and oxygen) at a depth.</summary>
/// <param name="DepthM">Depth, m.</param>
/// <param name="TempC">Temperature, degC.</param>
/// <param name="OxygenMgPerL">Oxygen, mg/L; null when not modelled.</param>
public sealed record ProfilePoint(double DepthM, Spread TempC, Spread? OxygenMgPerL);

/// <summary>One day of the season.</summary>
/// <param name="Date">The lake's local date.</param>
/// <param name="SurfaceTempC">Surface temperature, degC.</param>
/// <param name="BottomTempC">Bottom temperature, degC.</param>
/// <param name="ThermoclineM">Thermocline depth, m, over members that have one; null when fewer than a tenth have.</param>
/// <param name="ChanceStratified">Share of members with a thermocline, 0 to 1.</param>
/// <param name="MedianTempC">Median temperature at <see cref="ArmOutlook.Profile"/>'s depths, degC, for the season chart; empty but for the lake itself.</param>
public sealed record OutlookDay(DateOnly Date, Spread SurfaceTempC, Spread BottomTempC,
    SampleDistribution? ThermoclineM, double ChanceStratified, float[] MedianTempC);

/// <summary>The layers of one hour to come.</summary>
/// <param name="ThermoclineM">Thermocline depth at rest, m, over the members that have one; null when fewer than a tenth have.</param>
/// <param name="Layers">Two layers of each member of <see cref="ArmOutlook.Layers"/>, in that order; null where it has none any more.</param>
public sealed record LayerHour(SampleDistribution? ThermoclineM, IReadOnlyList<TwoLayers?> Layers);

/// <summary>A column reduced to two layers.</summary>
/// <param name="UpperM">Thickness of the upper layer, m.</param>
/// <param name="UpperDensityKgPerM3">Mean density above, kg m-3.</param>
/// <param name="LowerDensityKgPerM3">Mean density below, kg m-3.</param>
/// <param name="Weight">Weight of the member.</param>
public sealed record TwoLayers(double UpperM, double UpperDensityKgPerM3, double LowerDensityKgPerM3, double Weight);
