using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Learn;

/// <summary>What a log entry says happened.</summary>
public enum LogKind
{
    /// <summary>The jig was in the water from <see cref="LogEntry.At"/> to <see cref="LogEntry.Until"/>.</summary>
    Effort,

    /// <summary>A bite without a fish in the boat.</summary>
    Bite,

    /// <summary>A fish in the boat.</summary>
    Fish,

    /// <summary>A snag.</summary>
    Snag,

    /// <summary>Nothing here: effort from <see cref="LogEntry.At"/> to <see cref="LogEntry.Until"/> that drew no bite.</summary>
    Nothing,

    /// <summary>Something seen on the sounder; see <see cref="LogEntry.Sighting"/>.</summary>
    Sighting,

    /// <summary>Words only.</summary>
    Note,
}

/// <summary>
/// One immutable line of the log as it stands: corrections and removals are worked out before it comes here.
/// </summary>
/// <remarks>Null means not known. Entries made in the boat fill in what the plan knows: spot, pass, rig, form, wind.</remarks>
public sealed record LogEntry
{
    /// <summary>The entry's own id, unique over all devices.</summary>
    public required string Id { get; init; }

    /// <summary>What happened.</summary>
    public required LogKind Kind { get; init; }

    /// <summary>When, or when the effort began.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>End of an effort or a nothing; null for the rest.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>Where.</summary>
    public GeoPoint? Place { get; init; }

    /// <summary>Id of the spot.</summary>
    public string? Spot { get; init; }

    /// <summary>Number of the pass at the spot, from 1.</summary>
    public int? Pass { get; init; }

    /// <summary>What was tied on.</summary>
    public RigUsed Rig { get; init; } = RigUsed.Unknown;

    /// <summary>Depth of the bottom, m.</summary>
    public double? BottomDepthM { get; init; }

    /// <summary>How far the bottom lay below the thermocline at that place and hour, m; negative above it.</summary>
    public double? BelowThermoclineM { get; init; }

    /// <summary>Speed over ground, m/s.</summary>
    public double? SpeedMps { get; init; }

    /// <summary>Name of the bottom form, such as <c>point</c>.</summary>
    public string? Form { get; init; }

    /// <summary>Mean wind, m/s.</summary>
    public double? WindMps { get; init; }

    /// <summary>Where the wind came from, degrees clockwise from north.</summary>
    public double? WindFromDeg { get; init; }

    /// <summary>Hours since the wind last turned by more than 45 degrees or doubled, H.</summary>
    public double? SinceWindChangeH { get; init; }

    /// <summary>Temperature of the surface water, degC.</summary>
    public double? SurfaceTempC { get; init; }

    /// <summary>Length of a fish, m.</summary>
    public double? LengthM { get; init; }

    /// <summary>Weight of a fish, G (grams).</summary>
    public double? WeightG { get; init; }

    /// <summary>What the fish had eaten, such as <c>crayfish</c>.</summary>
    public string? Ate { get; init; }

    /// <summary>What the sounder showed.</summary>
    public SounderSighting? Sighting { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";

    /// <summary>Whether the entry is a bite, in the boat or not.</summary>
    public bool IsBite => Kind is LogKind.Bite or LogKind.Fish;

    /// <summary>Whether the entry carries effort.</summary>
    public bool IsEffort => Kind is LogKind.Effort or LogKind.Nothing && Until > At;
}

/// <summary>What was tied on. Null means not known.</summary>
/// <param name="Slot">Name of the rod or slot in the tackle file.</param>
/// <param name="Trailer">Trailer, such as <c>twin tail</c>.</param>
/// <param name="Colour">Colour family, such as <c>brown</c>.</param>
/// <param name="WeightG">Weight of the head, g.</param>
public sealed record RigUsed(string? Slot, string? Trailer, string? Colour, double? WeightG)
{
    /// <summary>Nothing is known.</summary>
    public static readonly RigUsed Unknown = new(null, null, null, null);
}

/// <summary>What stood on the sounder.</summary>
/// <param name="What">Bait or fish.</param>
/// <param name="DepthM">Its depth, m; null when not read.</param>
/// <param name="Where">Where it stood.</param>
public sealed record SounderSighting(SightedKind What, double? DepthM, SightedWhere Where);

/// <summary>What was seen.</summary>
public enum SightedKind
{
    /// <summary>Baitfish.</summary>
    Bait,

    /// <summary>Single larger fish.</summary>
    Fish,
}

/// <summary>Where it was seen.</summary>
public enum SightedWhere
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>On the bottom.</summary>
    OnBottom,

    /// <summary>On or in cover.</summary>
    OnCover,

    /// <summary>Hanging at the layer, off the bottom.</summary>
    AtLayer,
}
