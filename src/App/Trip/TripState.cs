using System.Text.Json;
using System.Text.Json.Serialization;

namespace SecondShore.App.Trip;

/// <summary>What is under way on a lake, as this device keeps it: a closed tab or a flat battery loses none of it.</summary>
public sealed record TripState
{
    /// <summary>The stretch under way; null on the run.</summary>
    public Stretch? Open { get; init; }

    /// <summary>What is tied on.</summary>
    public RigOn Rig { get; init; } = RigOn.Nothing;

    /// <summary>When the boat should reach the stop it goes to; null when it goes to none.</summary>
    public DateTimeOffset? Expected { get; init; }

    /// <summary>The stop left last: it is not arrived at again before the boat was away from it.</summary>
    public string? Left { get; init; }

    /// <summary>The stretch closed last and the record that closed it, so that taking the record back opens the stretch again.</summary>
    public Stretch? Closed { get; init; }

    /// <summary>Id of that record.</summary>
    public string? ClosedBy { get; init; }

    /// <summary>The state as text.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, TripJson.Default.TripState);

    /// <summary>The state of a text; an empty one where it cannot be read.</summary>
    public static TripState Of(string? json)
    {
        if (string.IsNullOrEmpty(json)) return new TripState();
        try
        {
            return JsonSerializer.Deserialize(json, TripJson.Default.TripState) ?? new TripState();
        }
        catch (JsonException)
        {
            return new TripState();
        }
    }
}

/// <summary>The state of a trip read and written without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(TripState))]
public sealed partial class TripJson : JsonSerializerContext;
