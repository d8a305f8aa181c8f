using System.Globalization;
using System.Text.Json;

namespace SecondShore.Weather;

/// <summary>The service's answer does not come or cannot be used.</summary>
/// <param name="sentence">Why, and what to do.</param>
/// <param name="inner">What led to it, for developers.</param>
public sealed class WeatherException(FindingForm sentence, Exception? inner = null) : RefusedException(sentence.ToFinding(), inner);

/// <summary>Reads an answer of the documented form: hourly arrays with their units beside them. Trusts neither.</summary>
internal static class ReplyReader
{
    private static readonly int MaxHours = 24 * 400;

    /// <summary>Reads an answer.</summary>
    /// <param name="json">The body.</param>
    /// <param name="notes">Told what was odd.</param>
    /// <exception cref="WeatherException">It is an error of the service, or not of the form.</exception>
    public static HourlyBlock Read(ReadOnlyMemory<byte> json, List<Finding> notes)
    {
        using JsonDocument document = Parse(json);
        JsonElement root = document.RootElement;
        if (root.ValueKind != JsonValueKind.Object) throw Odd("it is no JSON object");
        if (root.TryGetProperty("error", out JsonElement error) && error.ValueKind == JsonValueKind.True) throw new WeatherException($"The weather service says: {Reason(root)}");
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
    public static Finding ReasonOf(ReadOnlyMemory<byte> json)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 8 });
            return Reason(document.RootElement);
        }
        catch (JsonException)
        {
            return Finding.Of("no reason given.");
        }
    }

    private static Finding Reason(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("reason", out JsonElement reason) || reason.ValueKind != JsonValueKind.String) return Finding.Of("no reason given.");
        string plain = new([.. reason.GetString()!.Where(c => !char.IsControl(c)).Take(200)]);
        return Finding.Of($"{(plain.EndsWith('.') ? plain : plain + ".")}");
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

    private static double[]? Column(HourlyColumn column, JsonElement hourly, JsonElement units, long[] stamps, DateTimeOffset start, int hours, List<Finding> notes)
    {
        string? name = new[] { column.Name }.Concat(column.OtherNames).FirstOrDefault(n => hourly.TryGetProperty(n, out JsonElement e) && e.ValueKind == JsonValueKind.Array);
        if (name is null)
        {
            notes.Add($"The weather service sent no {column.Said}: the column is left out.");
            return null;
        }

        string unit = UnitOf(units, name);
        (string Unit, double Factor, double Offset) read = column.Units.FirstOrDefault(u => u.Unit == unit);
        if (read.Unit is null)
        {
            notes.Add($"The weather service gives {column.Said} in '{Short(unit)}', where {Known(column)} is known: the column is left out.");
            return null;
        }

        JsonElement array = hourly.GetProperty(name);
        if (array.GetArrayLength() != stamps.Length) throw Odd($"{column.Said} has {array.GetArrayLength()} values for {stamps.Length} times");
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

        if (impossible > 0) notes.Add($"{impossible} values of {column.Said} from the weather service are impossible and are taken as missing.");
        return values;
    }

    private static string UnitOf(JsonElement units, string name) =>
        units.ValueKind == JsonValueKind.Object && units.TryGetProperty(name, out JsonElement unit) && unit.ValueKind == JsonValueKind.String ? unit.GetString()! : "";

    private static string Short(string text) => new([.. text.Where(c => !char.IsControl(c)).Take(20)]);

    private static Finding Known(HourlyColumn column) => Alternatives([.. column.Units.Select(u => u.Unit)]);

    private static Finding Alternatives(string[] names) =>
        names.Length == 1 ? Finding.Of($"{names[0]}") : Finding.Of($"{string.Join(", ", names[..^1])} or {names[^1]}");

    private static WeatherException Odd(FindingForm what) => new($"The weather service's answer is not of the documented form: {what}. Nothing was changed.");
}
