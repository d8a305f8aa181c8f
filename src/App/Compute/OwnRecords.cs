using SecondShore.App.Store;
using SecondShore.App.Words;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.App.Compute;

/// <summary>This device's readings and log entries, joined to what the lake's files hold.</summary>
internal static class OwnRecords
{
    /// <summary>The lake with the records added in memory.</summary>
    public static LakeFolder Into(LakeFolder folder, IReadOnlyList<RecordRow> records)
    {
        HashSet<string> filed = [.. folder.Log.Select(r => r.Id).Where(id => id.Length > 0)];
        return folder with
        {
            Readings = [.. folder.Readings, .. records.Select(ReadingOf).OfType<Reading>().Where(own => !IsFiled(folder, own))],
            Log = [.. folder.Log, .. records.Where(r => !filed.Contains(r.Id)).Select(LogRowOf).OfType<LogRow>()],
        };
    }

    /// <summary>The files with the records written into readings.csv and log.csv; a record already there is not written twice.</summary>
    public static ILakeFiles IntoFiles(ILakeFiles files, IReadOnlyList<RecordRow> records)
    {
        LakeFolder folder = LakeFolderReader.Read(files);
        HashSet<string> filed = [.. folder.Log.Select(r => r.Id).Where(id => id.Length > 0)];
        foreach (RecordRow record in records.OrderBy(r => r.At, StringComparer.Ordinal))
        {
            if (ReadingOf(record) is { } reading && !IsFiled(folder, reading))
                files = LakeFolderEdits.WithReading(files, reading, Entry.Of(record).Note, Entry.Of(record).AccuracyM);
            if (LogRowOf(record) is { } row && !filed.Contains(record.Id)) files = LakeFolderEdits.WithLogRow(files, row);
        }

        return files;
    }

    /// <summary>The reading a record holds; null for log entries.</summary>
    public static Reading? ReadingOf(RecordRow record)
    {
        ReadingKind? kind = KindOf(record.Kind);
        Entry entry = Entry.Of(record);
        if (kind is null || record.Removed || entry.Value is not { } value) return null;
        return new Reading(EntryWords.At(record), PlaceOf(entry), kind.Value, value, entry.DepthM, record.Id);
    }

    // A trip file may carry what this device, or another in step with it, kept as a record.
    private static bool IsFiled(LakeFolder folder, Reading own) => folder.Readings.Concat(folder.Secchi).Any(r =>
        r.At == own.At && r.Kind == own.Kind && Math.Abs(r.Value - own.Value) < 1e-6 && Math.Abs((r.DepthM ?? 0) - (own.DepthM ?? 0)) < 1e-6);

    private static LogRow? LogRowOf(RecordRow record)
    {
        LogKind? kind = LogKindOf(record.Kind);
        if (kind is null) return null;
        // A row that came with the files is taken back by another row: files are never rewritten.
        if (record.Removed) return new LogRow { Id = record.Id, Replaces = record.Replaces ?? "", At = EntryWords.At(record), Kind = LogKind.Withdrawn };
        Entry entry = Entry.Of(record);
        return new LogRow
        {
            Id = record.Id,
            Replaces = record.Replaces ?? "",
            At = EntryWords.At(record),
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
