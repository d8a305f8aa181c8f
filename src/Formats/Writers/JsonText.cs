using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace SecondShore.Formats.Writers;

/// <summary>Writes indented JSON with plain letters and LF, and leaves out what is not known.</summary>
internal static class JsonText
{
    public static string Write(Action<Utf8JsonWriter> body)
    {
        using MemoryStream stream = new();
        JsonWriterOptions options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (Utf8JsonWriter json = new(stream, options)) body(json);
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    public static void Known(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is double v && double.IsFinite(v)) json.WriteNumber(name, v);
    }

    public static void Known(this Utf8JsonWriter json, string name, string? value)
    {
        if (!string.IsNullOrEmpty(value)) json.WriteString(name, value);
    }
}
