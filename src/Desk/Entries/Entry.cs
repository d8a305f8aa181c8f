using System.Text.Json;
using System.Text.Json.Serialization;
using SecondShore.Records;

namespace SecondShore.Desk.Entries;

/// <summary>What a record says. SI; null where nothing is known.</summary>
public sealed record Entry
{
    /// <summary>The value: m, degC, mg/L by kind; grams for a fish; null for the rest.</summary>
    public double? Value { get; init; }

    /// <summary>Depth of a temperature or oxygen reading, or of the bottom at a bite, m.</summary>
    public double? DepthM { get; init; }

    /// <summary>Latitude, degrees.</summary>
    public double? LatDeg { get; init; }

    /// <summary>Longitude, degrees.</summary>
    public double? LonDeg { get; init; }

    /// <summary>How far off the place may be, m.</summary>
    public double? AccuracyM { get; init; }

    /// <summary>Speed over ground, m/s.</summary>
    public double? SpeedMps { get; init; }

    /// <summary>Name of the stop.</summary>
    public string? Spot { get; init; }

    /// <summary>Bottom form at the place, as the engine calls it.</summary>
    public string? Form { get; init; }

    /// <summary>Depth of the thermocline as reckoned then, m: no reading.</summary>
    public double? LayerM { get; init; }

    /// <summary>The jig's name in the tackle box.</summary>
    public string? Jig { get; init; }

    /// <summary>Jig's weight, g.</summary>
    public double? JigWeightG { get; init; }

    /// <summary>Trailer.</summary>
    public string? Trailer { get; init; }

    /// <summary>Colour.</summary>
    public string? Colour { get; init; }

    /// <summary>The line's name in the tackle box.</summary>
    public string? FishingLine { get; init; }

    /// <summary>Species of a fish.</summary>
    public string? Species { get; init; }

    /// <summary>Length of a fish, m.</summary>
    public double? LengthM { get; init; }

    /// <summary>What a fish had eaten.</summary>
    public string? Ate { get; init; }

    /// <summary>What the sounder showed: bait or fish.</summary>
    public string? Sighted { get; init; }

    /// <summary>Its depth, m.</summary>
    public double? SightedDepthM { get; init; }

    /// <summary>Where it stood: bottom, cover or layer.</summary>
    public string? SightedWhere { get; init; }

    /// <summary>Minutes of effort, or of nothing here.</summary>
    public double? Minutes { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";

    /// <summary>Made once a record, so that two equal entries stay two; see <see cref="RecordIds.NewMark"/>.</summary>
    public string? Mark { get; init; }

    /// <summary>The row of the lake's files that the record corrects or takes back, where it is named by no record's id.</summary>
    public string? Row { get; init; }

    /// <summary>What the record holds that cannot be used, by its key in the body; empty for nothing.</summary>
    [JsonIgnore]
    public IReadOnlyList<string> LeftOut { get; init; } = [];

    /// <summary>The entry of a record. Never throws, whatever the body holds: see <see cref="EntryReader"/>.</summary>
    public static Entry Of(RecordRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return EntryReader.Read(row.Kind, row.Json);
    }

    /// <summary>A record of this entry.</summary>
    public RecordRow ToRow(string lake, string kind, DateTimeOffset at, string? replaces = null) => Make(this, lake, kind, at, replaces, removed: false);

    /// <summary>A record that takes another back.</summary>
    public static RecordRow TakingBack(RecordRow row, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(row);
        return Make(new Entry(), row.Lake, row.Kind, at, row.Id, removed: true);
    }

    // A sensor or a field may give no number: JSON has none for it either.
    private static Entry Finite(Entry entry) => entry with
    {
        Value = Finite(entry.Value),
        DepthM = Finite(entry.DepthM),
        LatDeg = Finite(entry.LatDeg),
        LonDeg = Finite(entry.LonDeg),
        AccuracyM = Finite(entry.AccuracyM),
        LayerM = Finite(entry.LayerM),
        LengthM = Finite(entry.LengthM),
        SightedDepthM = Finite(entry.SightedDepthM),
        SpeedMps = Finite(entry.SpeedMps),
        JigWeightG = Finite(entry.JigWeightG),
        Minutes = Finite(entry.Minutes),
    };

    private static double? Finite(double? value) => value is { } v && double.IsFinite(v) ? v : null;

    private static RecordRow Make(Entry entry, string lake, string kind, DateTimeOffset at, string? replaces, bool removed)
    {
        string? row = replaces is null || RecordIds.IsWellFormed(replaces) ? null : replaces;
        string json = JsonSerializer.Serialize(Finite(entry) with { Mark = RecordIds.NewMark(), Row = row }, EntryJson.Default.Entry);
        return SharedRecords.ToRow(LakeRecord.Make(kind, at, row is null ? replaces : SharedRecords.IdOfRow(row), removed, json), lake);
    }
}

/// <summary>Entries read and written without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(Entry))]
public sealed partial class EntryJson : JsonSerializerContext;
