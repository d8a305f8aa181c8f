using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace SecondShore.App.Store;

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

    /// <summary>Speed over ground, m/s.</summary>
    public double? SpeedMps { get; init; }

    /// <summary>Name of the stop.</summary>
    public string? Spot { get; init; }

    /// <summary>Jig's weight, g.</summary>
    public double? JigWeightG { get; init; }

    /// <summary>Trailer.</summary>
    public string? Trailer { get; init; }

    /// <summary>Colour.</summary>
    public string? Colour { get; init; }

    /// <summary>Minutes of effort, for nothing here.</summary>
    public double? Minutes { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";

    /// <summary>The entry of a record; an empty one where it cannot be read.</summary>
    public static Entry Of(RecordRow row)
    {
        try
        {
            return JsonSerializer.Deserialize(row.Json, EntryJson.Default.Entry) ?? new Entry();
        }
        catch (JsonException)
        {
            return new Entry { Note = row.Json };
        }
    }

    /// <summary>A record of this entry.</summary>
    public RecordRow ToRow(string lake, string kind, DateTimeOffset at, string? replaces = null) =>
        new(RecordId.New(at), lake, kind, at.UtcDateTime.ToString("O", CultureInfo.InvariantCulture), replaces, false, JsonSerializer.Serialize(this, EntryJson.Default.Entry));

    /// <summary>A record that takes another back.</summary>
    public static RecordRow TakingBack(RecordRow row, DateTimeOffset at) =>
        new(RecordId.New(at), row.Lake, row.Kind, row.At, row.Id, true, "{}");
}

/// <summary>Entries read and written without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(Entry))]
public sealed partial class EntryJson : JsonSerializerContext;
