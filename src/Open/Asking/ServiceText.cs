using System.Text.Json;

namespace SecondShore.Open.Asking;

/// <summary>What services write, as far as it may be shown and used: no control characters, no more than fits a line.</summary>
internal static class ServiceText
{
    private static readonly JsonDocumentOptions Options = new() { MaxDepth = 32 };

    /// <summary>A text cut to a length, without control characters.</summary>
    public static string Plain(string? text, int most = 120)
    {
        if (text is null) return "";
        return new string([.. text[..Math.Min(text.Length, most)].Where(IsShown)]).Trim();
    }

    // Neither what moves the cursor nor what turns the direction of reading; halves of characters beyond the usual are none by themselves.
    private static bool IsShown(char c) => !char.IsControl(c) && !char.IsSurrogate(c)
        && c is not ('\u2028' or '\u2029' or (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069'));

    /// <summary>JSON of bounded depth in whole UTF-8; null where it is none.</summary>
    public static JsonDocument? Json(ReadOnlyMemory<byte> body)
    {
        if (!System.Text.Unicode.Utf8.IsValid(body.Span)) return null;
        try
        {
            return JsonDocument.Parse(body, Options);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>A member's text, fit to be shown; empty where there is none.</summary>
    public static string Text(this JsonElement element, string name, int most = 120) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out JsonElement value) ? value.AsText(most) : "";

    /// <summary>A text, fit to be shown; empty where it is none, or no whole one.</summary>
    public static string AsText(this JsonElement value, int most = 120)
    {
        if (value.ValueKind != JsonValueKind.String) return "";
        try
        {
            return Plain(value.GetString(), most);
        }
        catch (InvalidOperationException)
        {
            // Escapes of half a character, or bytes that are no UTF-8.
            return "";
        }
    }

    /// <summary>A member's number between two bounds; null where there is none.</summary>
    public static double? Number(this JsonElement element, string name, double low, double high) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out JsonElement value)
            && value.ValueKind == JsonValueKind.Number
            && value.TryGetDouble(out double number) && number >= low && number <= high ? number : null;

    /// <summary>A member that is an array; empty where there is none.</summary>
    public static IEnumerable<JsonElement> Items(this JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out JsonElement value)
            && value.ValueKind == JsonValueKind.Array
            ? value.EnumerateArray()
            : [];
}
