using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SecondShore.Formats.Files;
using SecondShore.Formats.Text;
using SecondShore.Formats.Writers;

namespace SecondShore.Formats.Lake;

/// <summary>Changes to tackle.json that leave every other key as it stands.</summary>
public static class TackleEdits
{
    private static readonly string[] OtherWeights = ["weight_oz", "weight_lb", "weight_kg"];

    /// <summary>The tackle of a lake's files; null where they have none that can be read.</summary>
    public static TackleDocument? Read(ILakeFiles files) => Read(files, new ProblemLog());

    /// <summary>The tackle of a lake's files; null where they have none that can be read.</summary>
    /// <param name="files">The files.</param>
    /// <param name="log">Told of what is odd in it.</param>
    public static TackleDocument? Read(ILakeFiles files, ProblemLog log)
    {
        ArgumentNullException.ThrowIfNull(files);
        return files.Find("tackle.json") is { } name ? TackleReader.Read(name, files.Read(name), log) : null;
    }

    /// <summary>The files with a jig put in, or changed.</summary>
    /// <param name="files">The files.</param>
    /// <param name="was">Its name so far; one that names none puts in a new jig.</param>
    /// <param name="name">Its name from now on.</param>
    /// <param name="weightG">Its weight, g; null keeps it.</param>
    /// <param name="colour">Its colour family; empty keeps it.</param>
    /// <exception cref="RefusedException">tackle.json is there and is no JSON object, or a new jig has no weight.</exception>
    public static ILakeFiles WithJig(ILakeFiles files, string was, string name, double? weightG, string colour) => With(files, "jigs", was, jig =>
    {
        Set(jig, name, colour);
        if (weightG is { } grams)
        {
            foreach (string other in OtherWeights) jig.Remove(other);
            jig["weight_g"] = grams;
        }
        else if (!jig.Any(key => key.Key.StartsWith("weight", StringComparison.Ordinal)))
        {
            throw new RefusedException(Finding.Of("A jig needs its weight: give it, then keep the jig."));
        }
    });

    /// <summary>The files with a trailer put in, or changed.</summary>
    /// <inheritdoc cref="WithJig"/>
    public static ILakeFiles WithTrailer(ILakeFiles files, string was, string name, string colour) => With(files, "trailers", was, trailer => Set(trailer, name, colour));

    /// <summary>The files with a timed drop written to a jig: what was seen of it, by which its drag is corrected.</summary>
    /// <param name="files">The files.</param>
    /// <param name="jig">The jig's name.</param>
    /// <param name="depthM">How deep it fell on slack line, m.</param>
    /// <param name="seconds">How long that took, s.</param>
    /// <param name="line">Name of the line it fell on; empty for the first of the box.</param>
    /// <param name="at">When; empty where that is not known.</param>
    /// <exception cref="RefusedException">tackle.json is there and is no JSON object, or has no such jig.</exception>
    public static ILakeFiles WithDrop(ILakeFiles files, string jig, double depthM, double seconds, string line, string at) => With(files, "jigs", jig, item =>
    {
        if (!Named(item, jig)) throw new RefusedException(Finding.Of($"The tackle box has no jig called {jig}: put it in first."));
        if (item["observations"] is not JsonArray seen) item["observations"] = seen = [];
        JsonObject drop = new() { ["kind"] = "fall", ["depth_m"] = depthM, ["seconds"] = seconds };
        if (line.Length > 0) drop["line"] = line;
        if (at.Length > 0) drop["time"] = at;
        seen.Add((JsonNode)drop);
    });

    private static void Set(JsonObject item, string name, string colour)
    {
        item["name"] = name;
        if (colour.Length == 0) return;
        item.Remove("color");
        item["colour"] = colour;
    }

    private static ChangedFiles With(ILakeFiles files, string list, string was, Action<JsonObject> change)
    {
        ArgumentNullException.ThrowIfNull(files);
        string file = files.Find("tackle.json") ?? "tackle.json";
        JsonObject root = files.Find("tackle.json") is null ? [] : Root(files.Read(file));
        if (root[list] is not JsonArray items) root[list] = items = [];
        JsonObject? item = was.Length > 0 ? items.OfType<JsonObject>().FirstOrDefault(i => Named(i, was)) : null;
        if (item is null) items.Add((JsonNode)(item = []));
        change(item);
        return ChangedFiles.Of(files, file, Encoding.UTF8.GetBytes(JsonText.Write(json => root.WriteTo(json))));
    }

    private static bool Named(JsonObject item, string name) =>
        item["name"] is JsonValue value && value.TryGetValue(out string? text) && string.Equals(text.Trim(), name, StringComparison.Ordinal);

    private static JsonObject Root(byte[] bytes)
    {
        try
        {
            JsonDocumentOptions options = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 32 };
            return JsonNode.Parse(TextDecoding.Decode(bytes, out _), null, options) as JsonObject
                ?? throw new RefusedException(Finding.Of("tackle.json is no JSON object and is not changed."));
        }
        catch (JsonException e)
        {
            throw new RefusedException(Finding.Of("tackle.json is not JSON that can be read and is not changed."), e);
        }
    }
}
