using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads log.csv: every row, corrected ones and withdrawals too; <see cref="LogRow.Standing"/> says which hold.</summary>
internal static class LogReader
{
    public static List<LogRow> Read(string file, byte[] bytes, ReadContext context)
    {
        TimedRows? rows = TimedRows.Open(file, bytes, context);
        if (rows is null) return [];
        Columns columns = new(rows.Sheet);
        if (columns.Kind < 0)
        {
            context.Log.Error(file, "the file needs the columns time and kind (effort, bite, fish, snag, nothing, sighting or note).");
            return [];
        }

        List<LogRow> log = [];
        foreach ((int row, DateTimeOffset at) in rows.Rows())
        {
            string word = rows.Sheet.TextOf(row, columns.Kind);
            if (KindOf(word) is LogKind kind) log.Add(columns.Row(row, at, kind, rows.Place(row)));
            else context.Log.Row(file, rows.Sheet.Line(row), "kind of entry", $"kind is '{TextDecoding.Excerpt(word)}' where effort, bite, fish, snag, nothing, sighting, note or withdrawn is expected; the row is kept in the file and not used.");
        }
        return log;
    }

    /// <summary>The kind a word names; null when none.</summary>
    public static LogKind? KindOf(string word) => word.Trim().ToLowerInvariant() switch
    {
        "effort" or "fishing" => LogKind.Effort,
        "bite" or "bites" => LogKind.Bite,
        "fish" or "catch" => LogKind.Fish,
        "snag" or "snags" => LogKind.Snag,
        "nothing" or "blank" or "nothing here" => LogKind.Nothing,
        "note" => LogKind.Note,
        "sighting" or "seen" => LogKind.Sighting,
        "withdrawn" or "removed" => LogKind.Withdrawn,
        _ => null,
    };

    private sealed class Columns(CsvSheet sheet)
    {
        private readonly int _id = sheet.Find("id"), _replaces = sheet.Find("replaces"), _spot = sheet.Find("spot"), _form = sheet.Find("form");
        private readonly int _sky = sheet.Find("sky"), _bait = sheet.Find("bait"), _jig = sheet.Find("jig"), _trailer = sheet.Find("trailer");
        private readonly int _colour = sheet.Find("colour", "color"), _line = sheet.Find("line"), _presentation = sheet.Find("presentation");
        private readonly int _species = sheet.Find("species"), _note = sheet.Find("note", "notes");
        private readonly int _sighted = sheet.Find("sighted", "seen"), _sightedWhere = sheet.Find("sighted_where"), _ate = sheet.Find("ate", "stomach");
        private readonly CsvColumn? _pass = sheet.Find(Quantity.Number, 1, 1000, "pass"), _bites = sheet.Find(Quantity.Number, 0, 1000, "bites");
        private readonly CsvColumn? _layer = sheet.Find(Quantity.Length, 0, 200, "layer_depth"), _sightedDepth = sheet.Find(Quantity.Length, 0, 500, "sighted_depth");
        private readonly CsvColumn? _accuracy = sheet.Find(Quantity.Length, 0, 100_000, "accuracy");
        private readonly CsvColumn? _windChange = sheet.Find(Quantity.Number, 0, 1000, "wind_change_h");
        private readonly CsvColumn? _minutes = sheet.Find(Quantity.Minutes, 0, 2880, "effort", "duration") ?? sheet.Find(Quantity.Number, 0, 2880, "minutes");
        private readonly CsvColumn? _count = sheet.Find(Quantity.Number, 0, 1000, "count");
        private readonly CsvColumn? _bottom = sheet.Find(Quantity.Length, 0, 500, "bottom_depth", "depth");
        private readonly CsvColumn? _step = sheet.Find(Quantity.Length, 0, 200, "step_depth", "haze_depth");
        private readonly CsvColumn? _surface = sheet.Find(Quantity.Temperature, -1, 45, "surface_temp", "water_temp");
        private readonly CsvColumn? _secchi = sheet.Find(Quantity.Length, 0.02, 60, "secchi");
        private readonly CsvColumn? _wind = sheet.Find(Quantity.Speed, 0, 60, "wind_speed", "wind"), _windDir = sheet.Find(Quantity.Angle, 0, 360, "wind_dir");
        private readonly CsvColumn? _jigWeight = sheet.Find(Quantity.Mass, 0.1, 2000, "jig_weight", "weight");
        private readonly CsvColumn? _speed = sheet.Find(Quantity.Speed, 0, 10, "speed");
        private readonly CsvColumn? _length = sheet.Find(Quantity.Length, 0.01, 3, "fish_length", "length");
        private readonly CsvColumn? _weight = sheet.Find(Quantity.Mass, 1, 200000, "fish_weight");

        public int Kind { get; } = sheet.Find("kind", "type", "what");

        public LogRow Row(int row, DateTimeOffset at, LogKind kind, GeoPoint? place) => new()
        {
            Line = sheet.Line(row),
            Id = sheet.TextOf(row, _id),
            Replaces = sheet.TextOf(row, _replaces),
            At = at,
            Kind = kind,
            Minutes = sheet.Optional(row, _minutes),
            Count = (int)(sheet.Optional(row, _count) ?? 1),
            Bites = (int?)sheet.Optional(row, _bites),
            Place = place,
            AccuracyM = sheet.Optional(row, _accuracy),
            Pass = (int?)sheet.Optional(row, _pass),
            Spot = sheet.TextOf(row, _spot),
            Form = sheet.TextOf(row, _form),
            BottomDepthM = sheet.Optional(row, _bottom),
            StepDepthM = sheet.Optional(row, _step),
            LayerDepthM = sheet.Optional(row, _layer),
            SurfaceTempC = sheet.Optional(row, _surface),
            SecchiM = sheet.Optional(row, _secchi),
            WindMps = sheet.Optional(row, _wind),
            WindFromDeg = sheet.Optional(row, _windDir),
            SinceWindChangeH = sheet.Optional(row, _windChange),
            Sky = sheet.TextOf(row, _sky),
            Bait = sheet.TextOf(row, _bait),
            Sighted = sheet.TextOf(row, _sighted),
            SightedDepthM = sheet.Optional(row, _sightedDepth),
            SightedWhere = sheet.TextOf(row, _sightedWhere),
            Ate = sheet.TextOf(row, _ate),
            Jig = sheet.TextOf(row, _jig),
            JigWeightG = sheet.Optional(row, _jigWeight),
            Trailer = sheet.TextOf(row, _trailer),
            Colour = sheet.TextOf(row, _colour),
            FishingLine = sheet.TextOf(row, _line),
            Presentation = sheet.TextOf(row, _presentation),
            SpeedMps = sheet.Optional(row, _speed),
            Species = sheet.TextOf(row, _species),
            FishLengthM = sheet.Optional(row, _length),
            FishWeightG = sheet.Optional(row, _weight),
            Note = sheet.TextOf(row, _note),
        };
    }
}
