using System.Globalization;
using System.Text.Json;

namespace SecondShore.Weather;

/// <summary>The service's answer cannot be used; the message is one sentence.</summary>
public sealed class WeatherException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>Reads an answer of the documented form: hourly arrays with their units beside them. Trusts neither.</summary>
internal static class ReplyReader
{
    private static readonly int MaxHours = 24 * 400;

    /// <summary>Reads an answer.</summary>
    /// <param name="json">The body.</param>
    /// <param name="notes">Told what was odd.</param>
    /// <exception cref="WeatherException">It is an error of the service, or not of the form.</exception>
    public static HourlyBlock Read(ReadOnlyMemory<byte> json, List<string> notes)
    {
        using JsonDocument document = Parse(json);
        JsonElement root = document.RootElement;
        if (root.ValueKind != JsonValueKind.Object) throw Odd("it is no JSON object");
        if (root.TryGetProperty("error", out JsonElement error) && error.ValueKind == JsonValueKind.True) throw new WeatherException("The weather service says: " + Reason(root));
        if (!root.TryGetProperty("hourly", out JsonElement hourly) || hourly.ValueKind != JsonValueKind.Object) throw Odd("it has no 'hourly'");
        root.TryGetProperty("hourly_units", out JsonElement units);
        long[] stamps = Stamps(root, hourly, units);
        DateTimeOffset start = DateTimeOffset.FromUnixTimeSeconds(stamps.Min());
        long hours = ((stamps.Max() - stamps.Min()) / 3600) + 1;
        if (hours > MaxHours) throw Odd("it spans more than a year");

        double[]?[] values = new double[]?[HourlyColumn.All.Count];
        for (int c = 0; c < values.Length; c++)
            values[c] = Column(HourlyColumn.All[c], hourly, units, stamps, start, (int)hours, notes);
        if (values[0] is null) throw new WeatherException("The weather service sent no air temperature that can be read; without it the season cannot be run. Nothing was changed.");
        return new HourlyBlock(start, values, (int)hours);
    }

    /// <summary>The service's own words for an error; a plain one when it gives none.</summary>
    public static string ReasonOf(ReadOnlyMemory<byte> json)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 8 });
            return Reason(document.RootElement);
        }
        catch (JsonException)
        {
            return "no reason given.";
        }
    }

    private static string Reason(JsonElement root)
    {
        string text = root.ValueKind == JsonValueKind.Object && root.TryGetProperty("reason", out JsonElement reason) && reason.ValueKind == JsonValueKind.String ? reason.GetString()! : "no reason given.";
        string plain = new([.. text.Where(c => !char.IsControl(c)).Take(200)]);
        return plain.EndsWith('.') ? plain : plain + ".";
    }

    private static JsonDocument Parse(ReadOnlyMemory<byte> json)
    {
        try
        {
            return JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 8 });
        }
        catch (JsonException e)
        {
            throw new WeatherException("The weather service's answer breaks off or is no JSON. Try again later; nothing was changed.", e);
        }
    }

    private static long[] Stamps(JsonElement root, JsonElement hourly, JsonElement units)
    {
        if (!hourly.TryGetProperty("time", out JsonElement time) || time.ValueKind != JsonValueKind.Array || time.GetArrayLength() == 0) throw Odd("it has no times");
        bool unix = UnitOf(units, "time") is "unixtime" or "";
        long offsetS = root.TryGetProperty("utc_offset_seconds", out JsonElement offset) && offset.TryGetInt64(out long seconds) ? seconds : 0;
        long[] stamps = new long[time.GetArrayLength()];
        int i = 0;
        foreach (JsonElement stamp in time.EnumerateArray())
        {
            if (unix && stamp.ValueKind == JsonValueKind.Number && stamp.TryGetInt64(out long at)) stamps[i] = at;
            else if (stamp.ValueKind == JsonValueKind.String && DateTime.TryParse(stamp.GetString(), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out DateTime text))
                stamps[i] = new DateTimeOffset(text, TimeSpan.Zero).ToUnixTimeSeconds() - offsetS;
            else throw Odd("a time is neither a number of seconds nor ISO-8601");
            if (stamps[i] is < 0 or > 4_102_444_800 || stamps[i] % 3600 != 0) throw Odd("a time is no full hour of this century");
            i++;
        }

        return stamps;
    }

    private static double[]? Column(HourlyColumn column, JsonElement hourly, JsonElement units, long[] stamps, DateTimeOffset start, int hours, List<string> notes)
    {
        string? name = new[] { column.Name }.Concat(column.OtherNames).FirstOrDefault(n => hourly.TryGetProperty(n, out JsonElement e) && e.ValueKind == JsonValueKind.Array);
        if (name is null)
        {
            notes.Add($"The weather service sent no {column.What}: the column is left out.");
            return null;
        }

        string unit = UnitOf(units, name);
        (string Unit, double Factor, double Offset) read = column.Units.FirstOrDefault(u => u.Unit == unit);
        if (read.Unit is null)
        {
            notes.Add($"The weather service gives {column.What} in '{Short(unit)}', where {string.Join(" or ", column.Units.Select(u => u.Unit))} is known: the column is left out.");
            return null;
        }

        JsonElement array = hourly.GetProperty(name);
        if (array.GetArrayLength() != stamps.Length) throw Odd($"{column.What} has {array.GetArrayLength()} values for {stamps.Length} times");
        double[] values = new double[hours];
        Array.Fill(values, double.NaN);
        int impossible = 0, i = 0;
        foreach (JsonElement element in array.EnumerateArray())
        {
            long at = (stamps[i++] - start.ToUnixTimeSeconds()) / 3600;
            // What the service gives for the hour that ends at a stamp belongs to the hour that starts one earlier.
            if (column.OfHourBefore) at--;
            if (element.ValueKind == JsonValueKind.Null || at < 0) continue;
            double value = element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out double raw) ? (raw * read.Factor) + read.Offset : double.NaN;
            if (value >= column.Low && value <= column.High) values[at] = value;
            else impossible++;
        }

        if (impossible > 0) notes.Add(string.Create(CultureInfo.InvariantCulture, $"{impossible} values of {column.What} from the weather service are impossible and are taken as missing."));
        return values;
    }

    private static string UnitOf(JsonElement units, string name) =>
        units.ValueKind == JsonValueKind.Object && units.TryGetProperty(name, out JsonElement unit) && unit.ValueKind == JsonValueKind.String ? unit.GetString()! : "";

    private static string Short(string text) => new([.. text.Where(c => !char.IsControl(c)).Take(20)]);

    private static WeatherException Odd(string what) => new($"The weather service's answer is not of the documented form: {what}. Nothing was changed.");
}
