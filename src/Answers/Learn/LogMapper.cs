using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Learn;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;
using FiledKind = SecondShore.Formats.Lake.LogKind;
using LogKind = SecondShore.Engine.Learn.LogKind;

namespace SecondShore.Answers.Learn;

/// <summary>Hands the log as filed to the engine's learning.</summary>
public static class LogMapper
{
    // A haze read within a day of an entry tells how deep the layer lay then, to the metre that readings are good for.
    private static readonly TimeSpan HazeHolds = TimeSpan.FromHours(24);
    private const double HighestHazeM = 0.2;

    /// <summary>Entries of the lake's log, on the lake's own clock, in order of file.</summary>
    /// <param name="folder">The lake.</param>
    /// <remarks>
    /// A row that counts several bites becomes as many entries; bites written on an effort's own row are spread over its
    /// time. What a row leaves open and the folder knows is filled in: the layer's depth from the nearest haze, weight
    /// and colour from tackle.json by name, wind and its last change from weather.csv.
    /// </remarks>
    public static IReadOnlyList<LogEntry> Entries(LakeFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        (DateTimeOffset At, double DepthM)[] haze = Haze(folder);
        WindChanges wind = WindChanges.Of(folder.Weather);
        List<LogEntry> entries = [];
        foreach (LogRow row in folder.Log) Add(entries, row, folder, haze, wind);
        return entries;
    }

    /// <summary>Depths of the haze seen on the sounder, from the log and the readings, in order of time; without those no layer of this lake can have.</summary>
    public static (DateTimeOffset At, double DepthM)[] Haze(LakeFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        double deepestM = DeepestM(folder);
        return
        [
            .. folder.Log.Where(r => r.StepDepthM is not null).Select(r => (r.At, r.StepDepthM!.Value))
                .Concat(folder.Readings.Where(r => r.Kind == ReadingKind.HazeDepth).Select(r => (r.At, r.Value)))
                .Where(h => h.Item2 > HighestHazeM && h.Item2 <= deepestM).OrderBy(h => h.At),
        ];
    }

    // The bounds that the season holds readings to.
    private static double DeepestM(LakeFolder folder)
    {
        double[] told = [folder.Document.MaxDepthM ?? double.NaN, .. folder.SurveyFiles.Select(s => s.MaxDepthM), folder.Hypsography is { } curve ? curve.MaxDepthM : double.NaN];
        double[] known = [.. told.Where(double.IsFinite)];
        return known.Length == 0 ? double.PositiveInfinity : known.Max();
    }

    private static void Add(List<LogEntry> entries, LogRow row, LakeFolder folder, (DateTimeOffset At, double DepthM)[] haze, WindChanges wind)
    {
        LogEntry entry = Entry(row, folder, haze, wind);
        bool isEffort = row.Kind is FiledKind.Effort or FiledKind.Nothing;
        int more = isEffort ? row.Bites ?? 0 : row.Kind is FiledKind.Bite or FiledKind.Fish or FiledKind.Snag ? row.Count : 1;
        if (isEffort) entries.Add(entry with { Kind = more > 0 ? LogKind.Effort : entry.Kind });
        for (int k = 0; k < more; k++)
        {
            entries.Add(isEffort
                ? entry with { Id = $"{entry.Id}#bite{k + 1}", Kind = LogKind.Bite, Until = null, At = row.At.AddMinutes((row.Minutes ?? 0) * (k + 0.5) / more) }
                : k == 0 ? entry : entry with { Id = $"{entry.Id}#{k + 1}" });
        }
    }

    private static LogEntry Entry(LogRow row, LakeFolder folder, (DateTimeOffset At, double DepthM)[] haze, WindChanges wind)
    {
        double? layerM = row.StepDepthM ?? row.LayerDepthM ?? Nearest(haze, row.At);
        (double? windMps, double? fromDeg, double? sinceH) = wind.At(row.At);
        return new LogEntry
        {
            Id = row.Id.Length > 0 ? row.Id : $"row{row.Line}",
            Kind = KindOf(row.Kind),
            At = TimeZoneInfo.ConvertTime(row.At, folder.TimeZone),
            Until = row.Kind is FiledKind.Effort or FiledKind.Nothing && row.Minutes is { } minutes ? TimeZoneInfo.ConvertTime(row.At, folder.TimeZone).AddMinutes(minutes) : null,
            Place = row.Place,
            Spot = Word(row.Spot),
            Pass = row.Pass,
            Rig = new RigUsed(Word(row.Jig), Word(row.Trailer), Colour(row, folder.Tackle), row.JigWeightG ?? JigOf(row, folder.Tackle)?.WeightG),
            BottomDepthM = row.BottomDepthM,
            BelowThermoclineM = row.BottomDepthM - layerM,
            SpeedMps = row.SpeedMps,
            Form = FormOf(row.Form),
            WindMps = row.WindMps ?? windMps,
            WindFromDeg = row.WindFromDeg ?? fromDeg,
            SinceWindChangeH = row.SinceWindChangeH ?? sinceH,
            SurfaceTempC = row.SurfaceTempC,
            LengthM = row.FishLengthM,
            WeightG = row.FishWeightG,
            Ate = Word(row.Ate),
            Sighting = SightingOf(row),
            Note = row.Note,
        };
    }

    private static LogKind KindOf(FiledKind kind) => kind switch
    {
        FiledKind.Effort => LogKind.Effort,
        FiledKind.Bite => LogKind.Bite,
        FiledKind.Fish => LogKind.Fish,
        FiledKind.Snag => LogKind.Snag,
        FiledKind.Nothing => LogKind.Nothing,
        FiledKind.Sighting => LogKind.Sighting,
        _ => LogKind.Note,
    };

    private static SounderSighting? SightingOf(LogRow row)
    {
        string what = row.Sighted.Length > 0 ? row.Sighted : row.Kind == FiledKind.Sighting ? "bait" : "";
        if (what.Length == 0) return null;
        string where = row.SightedWhere.ToLowerInvariant();
        return new SounderSighting(what.Contains("fish", StringComparison.OrdinalIgnoreCase) && !what.Contains("bait", StringComparison.OrdinalIgnoreCase) ? SightedKind.Fish : SightedKind.Bait,
            row.SightedDepthM,
            where.Contains("bottom", StringComparison.Ordinal) ? SightedWhere.OnBottom
                : where.Contains("cover", StringComparison.Ordinal) ? SightedWhere.OnCover
                : where.Contains("layer", StringComparison.Ordinal) || where.Contains("hang", StringComparison.Ordinal) ? SightedWhere.AtLayer : SightedWhere.Unknown);
    }

    private static double? Nearest((DateTimeOffset At, double DepthM)[] haze, DateTimeOffset at)
    {
        double? depthM = null;
        TimeSpan least = HazeHolds;
        foreach ((DateTimeOffset seen, double hazeM) in haze)
        {
            if ((seen - at).Duration() > least) continue;
            (least, depthM) = ((seen - at).Duration(), hazeM);
        }

        return depthM;
    }

    private static string? Colour(LogRow row, TackleDocument? tackle)
    {
        if (row.Colour.Length > 0) return row.Colour;
        string? trailer = tackle?.Trailers.FirstOrDefault(t => Same(t.Name, row.Trailer))?.Colour;
        return Word(trailer ?? "") ?? Word(JigOf(row, tackle)?.Colour ?? "");
    }

    private static JigItem? JigOf(LogRow row, TackleDocument? tackle) => row.Jig.Length == 0 ? null : tackle?.Jigs.FirstOrDefault(j => Same(j.Name, row.Jig));

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    // A form as files key it (main_point) or as the tool says it (main-lake point) is one form.
    private static string? FormOf(string text)
    {
        if (Word(text) is not { } word) return null;
        string plain = word.Replace('_', ' ').ToLowerInvariant();
        foreach (FormClass form in Enum.GetValues<FormClass>())
        {
            string key = string.Concat(form.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));
            if (key == plain) return FormWords.Of(form);
        }

        return plain;
    }

    private static string? Word(string text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
