using System.Globalization;
using System.Text;
using System.Text.Json;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads values of one JSON object by name and unit, reporting what does not fit.</summary>
internal sealed class JsonFields(string file, string path, JsonElement element, ProblemLog log)
{
    private static readonly JsonDocumentOptions Options = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 32 };

    /// <summary>Parses a file whose root must be an object; null, with an error, when it is not.</summary>
    public static JsonDocument? Parse(string file, byte[] bytes, ProblemLog log)
    {
        string text = TextDecoding.Decode(bytes, out _);
        try
        {
            JsonDocument document = JsonDocument.Parse(text, Options);
            if (document.RootElement.ValueKind == JsonValueKind.Object) return document;
            document.Dispose();
            log.Error(file, "the file holds no JSON object; it must start with { and end with }.");
        }
        catch (JsonException e)
        {
            Tell(file, text, e, log);
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            log.Error(file, "the file is not JSON that can be read.");
        }

        return null;
    }

    /// <summary>Text of a key; empty when missing.</summary>
    public string Text(params ReadOnlySpan<string> names)
    {
        foreach (string name in names)
        {
            if (!element.TryGetProperty(name, out JsonElement value)) continue;
            if (value.ValueKind == JsonValueKind.String) return SafeString(value);
            if (value.ValueKind == JsonValueKind.Number) return value.GetRawText();
            if (value.ValueKind is not JsonValueKind.Null) Bad(name, value, "text");
        }

        return "";
    }

    /// <summary>Yes or no; null when missing.</summary>
    public bool? Flag(string name)
    {
        if (!element.TryGetProperty(name, out JsonElement value) || value.ValueKind == JsonValueKind.Null) return null;
        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False) return value.GetBoolean();
        Bad(name, value, "true or false");
        return null;
    }

    /// <summary>A number in SI by stem and unit, such as <c>secchi</c> in <c>secchi_m</c> or <c>secchi_ft</c>; null when missing or impossible.</summary>
    public double? Number(Quantity quantity, double low, double high, params ReadOnlySpan<string> stems)
    {
        foreach (string stem in stems)
        {
            foreach (JsonProperty property in element.EnumerateObject())
            {
                UnitSuffix? unit = UnitSuffix.Match(property.Name, stem, quantity);
                if (unit is null && !(property.NameEquals(stem) && quantity is (Quantity.Number or Quantity.Share))) continue;
                if (Number(property, unit, low, high) is double value) return value;
            }
        }

        return null;
    }

    /// <summary>A list of numbers; null when it is missing, longer than <paramref name="most"/>, or one of them is no number from <paramref name="low"/> to <paramref name="high"/>.</summary>
    public double[]? Numbers(string name, double low, double high, int most)
    {
        if (!element.TryGetProperty(name, out JsonElement list) || list.ValueKind != JsonValueKind.Array || list.GetArrayLength() > most) return null;
        double[] values = new double[list.GetArrayLength()];
        int i = 0;
        foreach (JsonElement item in list.EnumerateArray())
            if (item.ValueKind != JsonValueKind.Number || !item.TryGetDouble(out values[i]) || !(values[i] >= low && values[i++] <= high)) return null;
        return values;
    }

    /// <summary>A place from latitude_deg and longitude_deg (lat, lon are read too); null when missing or impossible.</summary>
    public GeoPoint? Place()
    {
        double? lat = Number(Quantity.Angle, -90, 90, "latitude", "lat") ?? Number(Quantity.Number, -90, 90, "latitude", "lat");
        double? lon = Number(Quantity.Angle, -360, 360, "longitude", "lon") ?? Number(Quantity.Number, -360, 360, "longitude", "lon", "lng");
        return lat is double a && lon is double o ? new GeoPoint(a, o) : null;
    }

    /// <summary>Objects of an array; reports members that are none. <c>units</c> of the path carry their number.</summary>
    public IEnumerable<JsonFields> Objects(string name)
    {
        if (!element.TryGetProperty(name, out JsonElement list) || list.ValueKind == JsonValueKind.Null) yield break;
        if (list.ValueKind != JsonValueKind.Array)
        {
            Bad(name, list, "a list");
            yield break;
        }

        int i = 0;
        foreach (JsonElement item in list.EnumerateArray())
        {
            i++;
            string itemPath = string.Create(CultureInfo.InvariantCulture, $"{Path(name)}[{i}]");
            if (item.ValueKind == JsonValueKind.Object) yield return new JsonFields(file, itemPath, item, log);
            else log.Row(file, 0, $"{name}", $"{itemPath} is {Shown(item)} where an object is expected; it is not used.");
        }
    }

    /// <summary>The objects that an object holds under names of their own; reports members that are none.</summary>
    public IEnumerable<(string Key, JsonFields Value)> Named(string name)
    {
        if (!element.TryGetProperty(name, out JsonElement group) || group.ValueKind == JsonValueKind.Null) yield break;
        if (group.ValueKind != JsonValueKind.Object)
        {
            Bad(name, group, "an object of named objects");
            yield break;
        }

        foreach (JsonProperty member in group.EnumerateObject())
        {
            string memberPath = $"{Path(name)}.{TextDecoding.Excerpt(member.Name)}";
            if (member.Value.ValueKind == JsonValueKind.Object) yield return (member.Name, new JsonFields(file, memberPath, member.Value, log));
            else log.Row(file, 0, $"{name}", $"{memberPath} is {Shown(member.Value)} where an object is expected; it is not used.");
        }
    }

    /// <summary>A nested object; null when missing.</summary>
    public JsonFields? Inner(string name)
    {
        if (!element.TryGetProperty(name, out JsonElement value) || value.ValueKind == JsonValueKind.Null) return null;
        if (value.ValueKind == JsonValueKind.Object) return new JsonFields(file, Path(name), value, log);
        Bad(name, value, "an object");
        return null;
    }

    /// <summary>Reports something about this object.</summary>
    public void Warn(FindingForm message)
    {
        if (path.Length == 0) log.Warn(file, message);
        else log.Warn(file, $"{path}: {message}");
    }

    private double? Number(JsonProperty property, UnitSuffix? unit, double low, double high)
    {
        JsonElement value = property.Value;
        double number;
        switch (value.ValueKind)
        {
            case JsonValueKind.Null: return null;
            case JsonValueKind.Number when value.TryGetDouble(out number) && double.IsFinite(number): break;
            case JsonValueKind.String when NumberText.TryParse(SafeString(value), false, out number): break;
            default:
                Bad(property.Name, value, "a number");
                return null;
        }

        double si = unit?.ToSi(number) ?? number;
        if (si >= low && si <= high) return si;
        double offset = unit?.Offset ?? 0, scale = unit?.Scale ?? 1;
        log.Warn(file, $"{Path(property.Name)} is {number} where {Limit((low - offset) / scale)} to {Limit((high - offset) / scale)} is possible; it is not used. Check its unit and sign.");
        return null;
    }

    // Three decimals, or three digits of a smaller number.
    private static string Limit(double value) =>
        value.ToString(value != 0 && Math.Abs(value) < 0.01 ? "G3" : "0.###", CultureInfo.InvariantCulture);

    private void Bad(string name, JsonElement value, FindingForm expected) =>
        log.Warn(file, $"{Path(name)} is {Shown(value)} where {expected} is expected; it is not used.");

    private string Path(string name) => path.Length == 0 ? name : $"{path}.{name}";

    private static string Shown(JsonElement value) => $"'{TextDecoding.Excerpt(value.GetRawText())}'";

    // A lone surrogate in an escape makes GetString throw.
    private static string SafeString(JsonElement value)
    {
        try
        {
            return value.GetString() ?? "";
        }
        catch (InvalidOperationException)
        {
            return "";
        }
    }

    // Only the place is taken of the exception: its words are for developers, and a published app has none.
    private static void Tell(string file, string text, JsonException e, ProblemLog log)
    {
        if (e.LineNumber is not long row || e.BytePositionInLine is not long bytes)
        {
            log.Error(file, "the file is not JSON that can be read.");
            return;
        }

        int line = (int)Math.Min(row + 1, int.MaxValue);
        string here = text.Split('\n').ElementAtOrDefault((int)row) ?? "";
        byte[] before = Encoding.UTF8.GetBytes(here)[..(int)Math.Min(bytes, Encoding.UTF8.GetByteCount(here))];
        int column = Encoding.UTF8.GetString(before).Length;
        string seen = TextDecoding.Excerpt(here.AsSpan(Math.Min(column, here.Length)).Trim(), 24);
        if (seen.Length > 0) log.Add(file, line, ProblemSeverity.Error, $"the file is not JSON that can be read from column {column + 1} on, at '{seen}'; look there for a missing quotation mark, comma or bracket, and correct it.");
        else log.Add(file, line, ProblemSeverity.Error, "the file is not JSON that can be read to its end: it ends before all brackets and quotation marks are closed. Correct it there.");
    }
}
