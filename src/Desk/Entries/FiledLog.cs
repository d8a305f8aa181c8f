using System.Globalization;
using System.Text.Json;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Desk.Entries;

/// <summary>The log that came with a lake's files, as records: shown beside this device's own, corrected by new ones.</summary>
internal static class FiledLog
{
    /// <summary>Rows of the lake's log.csv and readings.csv; corrected and withdrawn ones too, for the rule of what stands.</summary>
    public static IReadOnlyList<RecordRow> Of(LakeFolder folder) => [.. Log(folder), .. Readings(folder)];

    private static IEnumerable<RecordRow> Readings(LakeFolder folder) => folder.Readings.Concat(folder.Secchi).Select((reading, i) => new RecordRow(
        $"line-r{i}", "", KindOf(reading.Kind), reading.At.UtcDateTime.ToString("O", CultureInfo.InvariantCulture), null, false,
        JsonSerializer.Serialize(new Entry { Value = reading.Value, DepthM = reading.DepthM }, EntryJson.Default.Entry)));

    /// <summary>Rows of the lake's log.csv, corrected ones and withdrawals too.</summary>
    public static IEnumerable<RecordRow> Log(LakeFolder folder) =>
        folder.LogRows.Select((row, i) => new RecordRow(row.Id.Length > 0 ? row.Id : $"line-{i}", "", KindOf(row.Kind),
            row.At.UtcDateTime.ToString("O", CultureInfo.InvariantCulture), row.Replaces.Length > 0 ? row.Replaces : null, row.Kind == LogKind.Withdrawn, Json(row)));

    private static string Json(LogRow row) => JsonSerializer.Serialize(new Entry
    {
        Value = row.FishWeightG,
        DepthM = row.BottomDepthM,
        LatDeg = row.Place?.LatDeg,
        LonDeg = row.Place?.LonDeg,
        AccuracyM = row.AccuracyM,
        SpeedMps = row.SpeedMps,
        Spot = Word(row.Spot),
        Form = Word(row.Form),
        LayerM = row.LayerDepthM,
        FishingLine = Word(row.FishingLine),
        Species = Word(row.Species),
        LengthM = row.FishLengthM,
        Ate = Word(row.Ate),
        Sighted = Word(row.Sighted),
        SightedDepthM = row.SightedDepthM,
        SightedWhere = Word(row.SightedWhere),
        Jig = Word(row.Jig),
        JigWeightG = row.JigWeightG,
        Trailer = Word(row.Trailer),
        Colour = Word(row.Colour),
        Minutes = row.Minutes,
        Note = row.Note,
    }, EntryJson.Default.Entry);

    private static string? Word(string text) => text.Length > 0 ? text : null;

    private static string KindOf(ReadingKind kind) => kind switch
    {
        ReadingKind.HazeDepth => RecordKinds.Haze,
        ReadingKind.SurfaceTemperature => RecordKinds.Surface,
        ReadingKind.Secchi => RecordKinds.Secchi,
        ReadingKind.Oxygen => RecordKinds.Oxygen,
        _ => RecordKinds.Temperature,
    };

    private static string KindOf(LogKind kind) => kind switch
    {
        LogKind.Bite => RecordKinds.Bite,
        LogKind.Fish => RecordKinds.Fish,
        LogKind.Snag => RecordKinds.Snag,
        LogKind.Nothing => RecordKinds.Nothing,
        LogKind.Effort => RecordKinds.Effort,
        LogKind.Sighting => RecordKinds.Sighting,
        _ => RecordKinds.Note,
    };
}
