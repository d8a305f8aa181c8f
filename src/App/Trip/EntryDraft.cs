using SecondShore.App.Words;
using SecondShore.Desk.Entries;

namespace SecondShore.App.Trip;

/// <summary>An entry as it stands in a form, in the user's units: what is not touched keeps its value to the last digit.</summary>
public sealed class EntryDraft
{
    private static readonly double PoundG = 453.59237, OunceG = 28.349523125, InchM = 0.0254;
    private readonly Entry _was;
    private readonly Wording _words;
    private readonly bool _metric;
    private readonly DateTime _wasLocal;
    private readonly DateTimeOffset _wasAt;

    /// <summary>Opens an entry for changing.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="was">What it says.</param>
    /// <param name="at">When it happened.</param>
    /// <param name="words">The user's units and the lake's clock.</param>
    public EntryDraft(string kind, Entry was, DateTimeOffset at, Wording words)
    {
        ArgumentNullException.ThrowIfNull(was);
        ArgumentNullException.ThrowIfNull(words);
        (_was, _words, _metric, _wasAt) = (was, words, words.Units.IsMetric, at);
        _wasLocal = words.FieldTime(at);
        (Kind, When) = (kind, _wasLocal);
        (Spot, Species, Ate, Sighted, SightedWhere) = (was.Spot ?? "", was.Species ?? "", was.Ate ?? "", was.Sighted ?? "", was.SightedWhere ?? "");
        (Jig, Trailer, Colour, Note) = (was.Jig ?? "", was.Trailer ?? "", was.Colour ?? "", was.Note);
        (Depth, SightedDepth) = (Shown(was.DepthM, DepthUnitM, 2), Shown(was.SightedDepthM, DepthUnitM, 2));
        (Lat, Lon, Minutes) = (was.LatDeg, was.LonDeg, was.Minutes);
        Length = Shown(was.LengthM, LengthUnitM, 1);
        Weight = kind == RecordKinds.Fish ? Shown(was.Value, WeightUnitG, 3) : null;
        JigWeight = Shown(was.JigWeightG, JigUnitG, 3);
        Value = RecordKinds.Readings.Contains(kind) ? ReadingShown(kind, was.Value, words) : null;
    }

    /// <summary>Kind of the entry.</summary>
    public string Kind { get; set; }

    /// <summary>When, on the lake's clock.</summary>
    public DateTime When { get; set; }

    /// <summary>A reading's value, in the user's unit.</summary>
    public double? Value { get; set; }

    /// <summary>Name of the stop.</summary>
    public string Spot { get; set; }

    /// <summary>Latitude, degrees.</summary>
    public double? Lat { get; set; }

    /// <summary>Longitude, degrees.</summary>
    public double? Lon { get; set; }

    /// <summary>Depth of the bottom, or of the reading, ft or m.</summary>
    public double? Depth { get; set; }

    /// <summary>Minutes of effort.</summary>
    public double? Minutes { get; set; }

    /// <summary>The jig's name.</summary>
    public string Jig { get; set; }

    /// <summary>Its weight, oz or g.</summary>
    public double? JigWeight { get; set; }

    /// <summary>Trailer.</summary>
    public string Trailer { get; set; }

    /// <summary>Colour family.</summary>
    public string Colour { get; set; }

    /// <summary>Weight of a fish, lb or kg.</summary>
    public double? Weight { get; set; }

    /// <summary>Length of a fish, in or cm.</summary>
    public double? Length { get; set; }

    /// <summary>Species.</summary>
    public string Species { get; set; }

    /// <summary>What it had eaten.</summary>
    public string Ate { get; set; }

    /// <summary>What the sounder showed: bait, fish or nothing said.</summary>
    public string Sighted { get; set; }

    /// <summary>Its depth, ft or m.</summary>
    public double? SightedDepth { get; set; }

    /// <summary>Where it stood.</summary>
    public string SightedWhere { get; set; }

    /// <summary>The user's words.</summary>
    public string Note { get; set; }

    /// <summary>When, as an instant; the first of a doubled hour, the entry's own where the minute was not touched.</summary>
    public DateTimeOffset At => When == _wasLocal ? _wasAt : _words.FromField(When);

    /// <summary>Why it cannot be right, in one sentence; null when it can.</summary>
    /// <param name="maxDepthM">Greatest depth of the lake, m; null where it is not known.</param>
    /// <param name="words">The user's words.</param>
    public string? Complaint(double? maxDepthM, Wording words)
    {
        ArgumentNullException.ThrowIfNull(words);
        Entry entry = ToEntry(words);
        if (RecordKinds.Readings.Contains(Kind) && entry.Value is { } value) return EntryWords.Complaint(Kind, value, entry.DepthM, maxDepthM, words);
        if (entry.DepthM is { } depthM && (depthM < 0 || depthM > (maxDepthM ?? 1700))) return words["complaint.depth", words.Depth(maxDepthM ?? 1700)];
        if (Lat is null != Lon is null || Lat is < -90 or > 90 || Lon is < -180 or > 180) return words["complaint.place"];
        if (Minutes is <= 0 or > 1440) return words["complaint.minutes"];
        if (entry.LengthM is <= 0 or > 2.5) return words["complaint.length"];
        return Kind == RecordKinds.Fish && entry.Value is <= 0 or > 60_000 ? words["complaint.weight"] : null;
    }

    /// <summary>The entry as the form has it.</summary>
    public Entry ToEntry(Wording words)
    {
        bool isFish = Kind == RecordKinds.Fish, isReading = RecordKinds.Readings.Contains(Kind);
        return _was with
        {
            Value = isReading ? (Value == ReadingShown(Kind, _was.Value, words) ? _was.Value : Value is { } v ? ReadingSi(v, words) : null)
                : isFish ? Si(Weight, _was.Value, WeightUnitG, 3) : null,
            DepthM = Si(Depth, _was.DepthM, DepthUnitM, 2),
            LatDeg = Lat,
            LonDeg = Lon,
            AccuracyM = Lat == _was.LatDeg && Lon == _was.LonDeg ? _was.AccuracyM : null,
            Minutes = Minutes,
            Spot = Word(Spot),
            Form = Spot.Trim() == (_was.Spot ?? "") ? _was.Form : null,
            Jig = Word(Jig),
            JigWeightG = Si(JigWeight, _was.JigWeightG, JigUnitG, 3),
            Trailer = Word(Trailer),
            Colour = Word(Colour),
            LengthM = Si(Length, _was.LengthM, LengthUnitM, 1),
            Species = Word(Species),
            Ate = Word(Ate),
            Sighted = Word(Sighted),
            SightedDepthM = Si(SightedDepth, _was.SightedDepthM, DepthUnitM, 2),
            SightedWhere = Word(SightedWhere),
            Note = Note.Trim(),
        };
    }

    private double DepthUnitM => _words.Units.DepthUnitM;

    private double LengthUnitM => _metric ? 0.01 : InchM;

    private double WeightUnitG => _metric ? 1000 : PoundG;

    private double JigUnitG => _metric ? 1 : OunceG;

    private static double? Shown(double? si, double unit, int digits) => si is { } v ? Math.Round(v / unit, digits) : null;

    private static double? Si(double? shown, double? was, double unit, int digits) => shown == Shown(was, unit, digits) ? was : shown * unit;

    private double ReadingSi(double shown, Wording words) => Kind == RecordKinds.Oxygen ? shown : EntryWords.ToSi(Kind, shown, words);

    private static double? ReadingShown(string kind, double? si, Wording words) => si is not { } v ? null
        : kind == RecordKinds.Haze || kind == RecordKinds.Secchi ? Math.Round(words.Units.DepthFrom(v), 2)
        : kind == RecordKinds.Oxygen ? v : Math.Round(words.Units.TemperatureFrom(v), 1);

    private static string? Word(string text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
