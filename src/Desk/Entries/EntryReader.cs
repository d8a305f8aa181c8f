using System.Text.Json;

namespace SecondShore.Desk.Entries;

/// <summary>
/// The one gate through which a record becomes an entry. Records come from other devices, and a body may be any JSON object: a number
/// that is not finite or lies out of its range becomes absent, a text is never null, and what was left out is named, so that the
/// rest of the lake works. Whatever passes may be computed with, written to a file and said.
/// </summary>
internal static class EntryReader
{
    // The same ranges in which the lake's files are read.
    private const double DeepestM = 1700;
    private static readonly Dictionary<string, (double Low, double High)> ValueRanges = new(StringComparer.Ordinal)
    {
        [RecordKinds.Haze] = (0.3, 200),
        [RecordKinds.Surface] = (-1, 45),
        [RecordKinds.Temperature] = (-2, 45),
        [RecordKinds.Secchi] = (0.02, 60),
        [RecordKinds.Oxygen] = (0, 40),
        [RecordKinds.Fish] = (1, 200_000),
    };

    /// <summary>The entry of a body.</summary>
    /// <param name="kind">The record's kind: it tells what the value is.</param>
    /// <param name="body">Any text.</param>
    public static Entry Read(string kind, string? body)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(body ?? "");
            return document.RootElement.ValueKind == JsonValueKind.Object ? Of(kind, document.RootElement) : Words(body);
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            return Words(body);
        }
    }

    // No object: kept by an early version, or not by us. Its words are all there is.
    private static Entry Words(string? body) => new() { Note = body ?? "" };

    private static Entry Of(string kind, JsonElement body)
    {
        Fields fields = new(body);
        (double low, double high) = ValueRanges.GetValueOrDefault(kind, (-1e9, 1e9));
        double? latDeg = fields.Number("latDeg", -90, 90), lonDeg = fields.Number("lonDeg", -180, 180);
        bool placed = latDeg is not null && lonDeg is not null;
        return new Entry
        {
            Value = fields.Number("value", low, high),
            DepthM = fields.Number("depthM", 0, DeepestM),
            LatDeg = placed ? latDeg : null,
            LonDeg = placed ? lonDeg : null,
            AccuracyM = fields.Number("accuracyM", 0, 100_000),
            SpeedMps = fields.Number("speedMps", 0, 30),
            Spot = fields.Text("spot"),
            Form = fields.Text("form"),
            LayerM = fields.Number("layerM", 0, 200),
            Jig = fields.Text("jig"),
            JigWeightG = fields.Number("jigWeightG", 0.1, 2000),
            Trailer = fields.Text("trailer"),
            Colour = fields.Text("colour"),
            FishingLine = fields.Text("fishingLine"),
            Species = fields.Text("species"),
            LengthM = fields.Number("lengthM", 0.01, 3),
            Ate = fields.Text("ate"),
            Sighted = fields.Text("sighted"),
            SightedDepthM = fields.Number("sightedDepthM", 0, 500),
            SightedWhere = fields.Text("sightedWhere"),
            Minutes = fields.Number("minutes", 0, 2880),
            Note = fields.Text("note") ?? "",
            Mark = fields.Text("mark"),
            Row = fields.Text("row"),
            LeftOut = fields.LeftOut,
        };
    }

    private sealed class Fields(JsonElement body)
    {
        private readonly List<string> _leftOut = [];

        public IReadOnlyList<string> LeftOut => _leftOut;

        public double? Number(string key, double low, double high)
        {
            if (Find(key) is not { } found) return null;
            if (found.ValueKind == JsonValueKind.Number && found.TryGetDouble(out double value) && value >= low && value <= high) return value;
            _leftOut.Add(key);
            return null;
        }

        public string? Text(string key)
        {
            if (Find(key) is not { } found) return null;
            try
            {
                if (found.ValueKind == JsonValueKind.String) return found.GetString();
            }
            catch (InvalidOperationException)
            {
                // Half of a surrogate pair: no text.
            }

            _leftOut.Add(key);
            return null;
        }

        private JsonElement? Find(string key)
        {
            try
            {
                return body.TryGetProperty(key, out JsonElement found) && found.ValueKind != JsonValueKind.Null ? found : null;
            }
            catch (InvalidOperationException)
            {
                // Another key of the body is no text, so that no key can be told from it.
                if (!_leftOut.Contains("body")) _leftOut.Add("body");
                return null;
            }
        }
    }
}
