using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using SecondShore.Engine.Basin.Forms;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>
/// What counts how much in a spot's value: the one file a person may change. The defaults are the project's own judgement
/// from what the trade holds (docs/science/spots.md), not fitted to any lake. Points add up; 100 is a very good place.
/// </summary>
public sealed record SpotWeights
{
    /// <summary>The defaults.</summary>
    public static readonly SpotWeights Default = new();

    /// <summary>Points for a bend of a channel.</summary>
    public double ChannelBend { get; init; } = 34;

    /// <summary>More points when the bend swings against a flat.</summary>
    public double BendByFlat { get; init; } = 10;

    /// <summary>Points for a channel's edge.</summary>
    public double ChannelEdge { get; init; } = 22;

    /// <summary>Points for a junction of channels.</summary>
    public double Junction { get; init; } = 28;

    /// <summary>Points for a point in the main lake.</summary>
    public double MainPoint { get; init; } = 32;

    /// <summary>Points for a point in an arm.</summary>
    public double SecondaryPoint { get; init; } = 24;

    /// <summary>Points for the end of a bluff.</summary>
    public double BluffEnd { get; init; } = 30;

    /// <summary>Points for a bluff wall.</summary>
    public double BluffWall { get; init; } = 16;

    /// <summary>Points for a hump.</summary>
    public double Hump { get; init; } = 34;

    /// <summary>Points for a saddle.</summary>
    public double Saddle { get; init; } = 28;

    /// <summary>Points for a ledge.</summary>
    public double Ledge { get; init; } = 28;

    /// <summary>Points for a hole's rim.</summary>
    public double Hole { get; init; } = 10;

    /// <summary>Points for even slope.</summary>
    public double Slope { get; init; } = 8;

    /// <summary>Points for a bare flat.</summary>
    public double Flat { get; init; } = 4;

    /// <summary>Share of a second, different form's points that is added.</summary>
    public double SecondFormShare { get; init; } = 0.5;

    /// <summary>Points for cover right there.</summary>
    public double Cover { get; init; } = 16;

    /// <summary>Distance at which cover no longer counts, m.</summary>
    public double CoverReachM { get; init; } = 80;

    /// <summary>Points for an edge of 25 degrees or more.</summary>
    public double EdgeSharpness { get; init; } = 10;

    /// <summary>Points for a change of depth of 6 m or more within the yardstick.</summary>
    public double DepthChange { get; init; } = 8;

    /// <summary>Points for water at least 5 m deeper close by.</summary>
    public double DeepWater { get; init; } = 8;

    /// <summary>Distance at which deeper water no longer counts, m.</summary>
    public double DeepWaterReachM { get; init; } = 150;

    /// <summary>Least chance in reach for a place to be looked at.</summary>
    public double LeastChance { get; init; } = 0.15;

    /// <summary>Least distance between spots in yardsticks.</summary>
    public double ApartYardsticks { get; init; } = 4;

    /// <summary>Most spots on one form.</summary>
    public int MostPerForm { get; init; } = 2;

    /// <summary>Without a thermocline: factor for an arm that has settled.</summary>
    public double SettledArm { get; init; } = 1.0;

    /// <summary>Without a thermocline: factor for an arm that is turning.</summary>
    public double TurningArm { get; init; } = 0.45;

    /// <summary>Without a thermocline: factor for shallow places (backs of arms, wind-blown flats by a channel).</summary>
    public double Shallow { get; init; } = 0.6;

    /// <summary>Without a thermocline: factor for steep forms that cross many depths.</summary>
    public double Steep { get; init; } = 0.8;

    /// <summary>Points of a form class.</summary>
    public double Of(FormClass form) => form switch
    {
        FormClass.MainChannel or FormClass.SideChannel => ChannelEdge,
        FormClass.ChannelBend => ChannelBend,
        FormClass.Junction => Junction,
        FormClass.MainPoint => MainPoint,
        FormClass.SecondaryPoint => SecondaryPoint,
        FormClass.BluffWall => BluffWall,
        FormClass.BluffEnd => BluffEnd,
        FormClass.Hump => Hump,
        FormClass.Saddle => Saddle,
        FormClass.Ledge => Ledge,
        FormClass.Hole => Hole,
        FormClass.Slope => Slope,
        _ => Flat,
    };

    /// <summary>Reads weights; keys left out keep their defaults.</summary>
    /// <param name="json">A JSON object with keys such as <c>channel_bend</c>.</param>
    /// <param name="weights">The weights; the defaults when reading fails.</param>
    /// <param name="problem">One sentence on what is wrong; empty when nothing is.</param>
    public static bool TryRead(string json, out SpotWeights weights, out string problem)
    {
        (weights, problem) = (Default, "");
        try
        {
            // Laid over the defaults key by key: what is left out keeps its default, and a misspelt key is told.
            JsonObject merged = JsonSerializer.SerializeToNode(Default, SpotWeightsJson.Default.SpotWeights)!.AsObject();
            JsonNode? given = JsonNode.Parse(json, null, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = 8 });
            if (given is not JsonObject keys)
            {
                problem = "The weights file holds no JSON object; write { \"channel_bend\": 34 } with the weights to change.";
                return false;
            }

            foreach ((string key, JsonNode? value) in keys)
            {
                if (!merged.ContainsKey(key)) problem = $"The weights file has the key '{(key.Length > 40 ? key[..40] : key)}', which is not a weight; take it out or correct it (such as channel_bend).";
                merged[key] = value?.DeepClone();
            }

            if (problem.Length > 0) return false;
            SpotWeights? read = merged.Deserialize(SpotWeightsJson.Default.SpotWeights);
            if (read is null || !read.IsSensible()) problem = "A weight is negative or not a number, or most_per_form is below 1; use numbers of 0 or more.";
            else weights = read;
        }
        catch (JsonException e)
        {
            problem = FormattableString.Invariant($"The weights file is not JSON that can be read near line {(e.LineNumber ?? 0) + 1}; correct it there.");
        }
        catch (ArgumentException)
        {
            problem = "The weights file gives a key twice; keep one of them.";
        }

        return problem.Length == 0;
    }

    /// <summary>The weights as the file that a person edits.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, SpotWeightsJson.Default.SpotWeights);

    private bool IsSensible()
    {
        double[] all =
        [
            ChannelBend, BendByFlat, ChannelEdge, Junction, MainPoint, SecondaryPoint, BluffEnd, BluffWall, Hump, Saddle, Ledge, Hole, Slope, Flat, SecondFormShare,
            Cover, EdgeSharpness, DepthChange, DeepWater, LeastChance, ApartYardsticks, SettledArm, TurningArm, Shallow, Steep,
        ];
        return Array.TrueForAll(all, v => v >= 0 && v < 1e6) && CoverReachM > 0 && DeepWaterReachM > 0 && MostPerForm >= 1;
    }
}

[JsonSourceGenerationOptions(WriteIndented = true, PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower)]
[JsonSerializable(typeof(SpotWeights))]
internal sealed partial class SpotWeightsJson : JsonSerializerContext;
