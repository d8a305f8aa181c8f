using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Records;

namespace SecondShore.Desk.Entries;

/// <summary>This device's readings and log entries, joined to what the lake's files hold.</summary>
internal static class OwnRecords
{
    /// <summary>The lake with the records added in memory. What a record holds that cannot be used is not; the rest of the lake is.</summary>
    /// <param name="folder">The lake as filed.</param>
    /// <param name="records">This device's records, corrected and removed ones too: what stands is worked out together with the files' rows.</param>
    public static LakeFolder Into(LakeFolder folder, IReadOnlyList<RecordRow> records)
    {
        // What both hold counts once, as the record: it alone knows what it corrected on this device.
        HashSet<string> own = [.. records.Select(r => r.Id)];
        HashSet<(DateTimeOffset, ReadingKind, double, double)> filed = [.. folder.Readings.Concat(folder.Secchi).Select(Sight)];
        return folder with
        {
            Readings = [.. folder.Readings, .. RecordSet.Standing(records).Select(ReadingOf).OfType<Reading>().Where(r => !filed.Contains(Sight(r)))],
            LogRows = [.. folder.LogRows.Where(r => r.Id.Length == 0 || !own.Contains(r.Id)), .. records.Select(LogRowOf).OfType<LogRow>()],
        };
    }

    /// <summary>
    /// The files with what stands of the records written into readings.csv and log.csv; what is there already is not written twice.
    /// A record that is no row of either is written as a note that says what it is.
    /// </summary>
    public static ILakeFiles IntoFiles(ILakeFiles files, IReadOnlyList<RecordRow> records)
    {
        LakeFolder folder = LakeFolderReader.Read(files);
        Dictionary<string, RecordRow> own = [];
        foreach (RecordRow record in records) own.TryAdd(record.Id, record);
        HashSet<string> filed = [.. folder.LogRows.Select(r => r.Id).Where(id => id.Length > 0)];
        List<(Reading, string, double?)> readings = [];
        List<LogRow> rows = [];
        HashSet<(DateTimeOffset, ReadingKind, double, double)> filedReadings = [.. folder.Readings.Concat(folder.Secchi).Select(Sight)];
        foreach (RecordRow record in StandingRule.LastWords(records.Concat(FiledLog.Log(folder).Where(r => !own.ContainsKey(r.Id))), RecordSet.LinkOf).OrderBy(r => r.At, StringComparer.Ordinal))
        {
            if (!own.ContainsKey(record.Id) || filed.Contains(record.Id)) continue;
            string filedBefore = FiledBefore(record, own, filed);
            // A removal is worth a row only where the file holds what it takes back.
            if (record.Removed && filedBefore.Length == 0) continue;
            if (ReadingOf(record) is { } reading)
            {
                if (!filedReadings.Contains(Sight(reading))) readings.Add((reading, Entry.Of(record).Note, Entry.Of(record).AccuracyM));
            }
            else
            {
                rows.Add((LogRowOf(record) ?? NoteOf(record)) with { Replaces = filedBefore });
            }
        }

        // All at once: a long log is not read and written anew for each of its entries.
        return LakeFolderEdits.WithRows(files, readings, rows);
    }

    // The nearest entry that this one corrects, however indirectly, and that the file holds: the rows between stay on the device.
    private static string FiledBefore(RecordRow record, Dictionary<string, RecordRow> own, HashSet<string> filed)
    {
        HashSet<string> seen = [];
        for (string? id = record.Replaces; id is not null && seen.Add(id); id = own.GetValueOrDefault(id)?.Replaces)
            if (filed.Contains(id)) return id;
        return "";
    }

    /// <summary>The reading a record holds; null for log entries, and where its value, depth or time cannot be used.</summary>
    public static Reading? ReadingOf(RecordRow record)
    {
        ReadingKind? kind = KindOf(record.Kind);
        if (kind is null || record.Removed || !RecordTimes.TryRead(record.At, out DateTimeOffset at)) return null;
        Entry entry = Entry.Of(record);
        // A temperature or oxygen of no depth tells nothing.
        if (entry.DepthM is null && kind is (ReadingKind.Temperature or ReadingKind.Oxygen)) return null;
        return entry.Value is { } value ? new Reading(at, PlaceOf(entry), kind.Value, value, entry.DepthM, record.Id) : null;
    }

    // Of a kind that a newer version knows, or a reading whose value cannot be used.
    private static LogRow NoteOf(RecordRow record)
    {
        Entry entry = Entry.Of(record);
        string left = entry.LeftOut.Count > 0 ? $" ({string.Join(", ", entry.LeftOut)}: not usable)" : "";
        return new LogRow { Id = record.Id, At = RecordSet.At(record), Kind = LogKind.Note, Note = $"{record.Kind}{left}: {entry.Note}" };
    }

    // A trip file may carry what this device, or another in step with it, kept as a record: the same kind, time, value and depth are the
    // same reading.
    private static (DateTimeOffset At, ReadingKind Kind, double Value, double DepthM) Sight(Reading r) => (r.At, r.Kind, Math.Round(r.Value, 5), Math.Round(r.DepthM ?? 0, 5));

    private static LogRow? LogRowOf(RecordRow record)
    {
        LogKind? kind = LogKindOf(record.Kind);
        if (!RecordTimes.TryRead(record.At, out DateTimeOffset at)) return null;
        // A row that came with the files is taken back by another row: files are never rewritten.
        if (record.Removed) return new LogRow { Id = record.Id, Replaces = record.Replaces ?? "", At = at, Kind = LogKind.Withdrawn };
        if (kind is null) return null;
        Entry entry = Entry.Of(record);
        return new LogRow
        {
            Id = record.Id,
            Replaces = record.Replaces ?? "",
            At = at,
            Kind = kind.Value,
            Minutes = entry.Minutes,
            Place = PlaceOf(entry),
            AccuracyM = entry.AccuracyM,
            Spot = entry.Spot ?? "",
            Form = entry.Form ?? "",
            BottomDepthM = entry.DepthM,
            LayerDepthM = entry.LayerM,
            Jig = entry.Jig ?? "",
            JigWeightG = entry.JigWeightG,
            Trailer = entry.Trailer ?? "",
            Colour = entry.Colour ?? "",
            FishingLine = entry.FishingLine ?? "",
            SpeedMps = entry.SpeedMps,
            Species = entry.Species ?? "",
            FishLengthM = entry.LengthM,
            FishWeightG = kind == LogKind.Fish ? entry.Value : null,
            Ate = entry.Ate ?? "",
            Sighted = entry.Sighted ?? "",
            SightedDepthM = entry.SightedDepthM,
            SightedWhere = entry.SightedWhere ?? "",
            Note = entry.Note,
        };
    }

    private static GeoPoint? PlaceOf(Entry entry) => entry.LatDeg is { } lat && entry.LonDeg is { } lon ? new GeoPoint(lat, lon) : null;

    private static ReadingKind? KindOf(string kind)
    {
        if (kind == RecordKinds.Haze) return ReadingKind.HazeDepth;
        if (kind == RecordKinds.Surface) return ReadingKind.SurfaceTemperature;
        if (kind == RecordKinds.Temperature) return ReadingKind.Temperature;
        if (kind == RecordKinds.Secchi) return ReadingKind.Secchi;
        return kind == RecordKinds.Oxygen ? ReadingKind.Oxygen : null;
    }

    private static LogKind? LogKindOf(string kind)
    {
        if (kind == RecordKinds.Bite) return LogKind.Bite;
        if (kind == RecordKinds.Fish) return LogKind.Fish;
        if (kind == RecordKinds.Snag) return LogKind.Snag;
        if (kind == RecordKinds.Nothing) return LogKind.Nothing;
        if (kind == RecordKinds.Effort) return LogKind.Effort;
        if (kind == RecordKinds.Sighting) return LogKind.Sighting;
        return kind == RecordKinds.Note ? LogKind.Note : null;
    }
}
