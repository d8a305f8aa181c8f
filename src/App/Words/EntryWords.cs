using SecondShore.Desk.Entries;
using SecondShore.Desk.Views;
using SecondShore.Records;

namespace SecondShore.App.Words;

/// <summary>Records as sentences, and values between the user's units and SI.</summary>
internal static class EntryWords
{
    /// <summary>A value from the user's unit: depths to m, temperatures to degC.</summary>
    public static double ToSi(string kind, double shown, Wording w)
    {
        if (w.Units.IsMetric) return shown;
        return kind == RecordKinds.Haze || kind == RecordKinds.Secchi ? shown * 0.3048 : (shown - 32) / 1.8;
    }

    /// <summary>Why a value cannot be right, in one sentence; null when it can.</summary>
    public static string? Complaint(string kind, double value, double? depthM, double? maxDepthM, Wording w)
    {
        if (kind == RecordKinds.Haze && (value < 0.3 || value > (maxDepthM ?? 200))) return w["complaint.haze", w.Depth(0.3), w.Depth(maxDepthM ?? 200)];
        if (kind == RecordKinds.Secchi && value is < 0.02 or > 60) return w["complaint.secchi"];
        if ((kind == RecordKinds.Surface || kind == RecordKinds.Temperature) && (value < LeastTempC(kind) || value > 45)) return w["complaint.temp", w.TempNumber(LeastTempC(kind)), w.TempNumber(45), w.Units.TemperatureUnit];
        if (kind == RecordKinds.Oxygen && value is < 0 or > 40) return w["complaint.oxygen"];
        return depthM is { } d && (d < 0 || d > (maxDepthM ?? 1700)) ? w["complaint.depth", w.Depth(maxDepthM ?? 1700)] : null;
    }

    private static double LeastTempC(string kind) => kind == RecordKinds.Surface ? -1 : -2;

    /// <summary>The record as one line.</summary>
    public static string Sentence(RecordRow row, Wording w)
    {
        Entry e = Entry.Of(row);
        string value = e.Value is not { } v ? ""
            : row.Kind == RecordKinds.Haze || row.Kind == RecordKinds.Secchi ? w.Depth(v)
            : row.Kind == RecordKinds.Oxygen ? $"{w.Number(v, "0.0")} mg/L"
            : row.Kind == RecordKinds.Fish ? Weight(v, w)
            : row.Kind == RecordKinds.Surface || row.Kind == RecordKinds.Temperature ? $"{w.TempNumber(v)} {w.Units.TemperatureUnit}"
            : w.Number(v, "0.#");
        List<string> parts = [Kind(row.Kind, w)];
        if (value.Length > 0) parts.Add(value);
        if (e.DepthM is { } d) parts.Add(w["entry.at", w.Depth(d)]);
        if (e.Minutes is { } minutes) parts.Add(w["entry.minutes", w.Number(minutes, "0")]);
        if (e.LengthM is { } length) parts.Add(Length(length, w));
        if (e.Species is { Length: > 0 } species) parts.Add(species);
        if (e.Ate is { Length: > 0 } ate) parts.Add(w["entry.ate.said", ate]);
        if (e.Sighted is { Length: > 0 } seen) parts.Add(w["entry.sighted.said", w["sighted." + (seen == "fish" ? "fish" : "bait")]]);
        if (e.Note.Length > 0) parts.Add(e.Note);
        if (LeftOut(row, e, w) is { Length: > 0 } left) parts.Add(w["entry.leftout", left]);
        return string.Join(", ", parts);
    }

    /// <summary>What an entry is; a kind that a newer version made is called as it is.</summary>
    public static string Kind(string kind, Wording w) => w["kind." + kind] is { } said && said != "kind." + kind ? said : w["entry.otherkind", kind];

    // The device's own marks are nothing to read about.
    private static string LeftOut(RecordRow row, Entry entry, Wording w)
    {
        IEnumerable<string> parts = entry.LeftOut.Where(key => key is not ("mark" or "row")).Select(key => w["entry.part." + key]).Distinct();
        if (!RecordTimes.TryRead(row.At, out _)) parts = parts.Append(w["entry.part.at"]);
        return string.Join(", ", parts);
    }

    /// <summary>The last moment that a record tells of: a stretch is written at its end.</summary>
    public static DateTimeOffset LastAt(RecordRow row) => RecordSet.At(row).AddMinutes(Entry.Of(row).Minutes ?? 0);

    /// <summary>A jig in the box, in a few words.</summary>
    public static string Jig(TackleJig jig, Wording w) => string.Join(", ", new[] { w.Units.JigWeight(jig.WeightG / 1000), jig.Colour }.Where(s => s.Length > 0));

    /// <summary>What is tied on, in a few words.</summary>
    public static string Rig(Trip.RigOn rig, Wording w) => string.Join(", ",
        new[] { rig.WeightG is { } grams ? w.Units.JigWeight(grams / 1000) : "", rig.Jig ?? "", rig.Trailer ?? "" }.Where(s => s.Length > 0));

    /// <summary>Where and with what: stop, jig, speed.</summary>
    public static string Where(RecordRow row, Wording w)
    {
        Entry e = Entry.Of(row);
        List<string> parts = [];
        if (e.Spot is { Length: > 0 } spot) parts.Add(spot);
        if (Rig(new Trip.RigOn(e.Jig, e.JigWeightG, e.Trailer), w) is { Length: > 0 } rig) parts.Add(rig);
        if (e.SpeedMps is { } speed) parts.Add(w.Pace(speed));
        return string.Join(", ", parts);
    }

    /// <summary>A fish's length.</summary>
    public static string Length(double lengthM, Wording w) => w.Units.IsMetric ? $"{w.Number(lengthM * 100, "0")} cm" : $"{w.Number(lengthM / 0.0254, "0.#")} in";

    private static string Weight(double grams, Wording w)
    {
        if (w.Units.IsMetric) return $"{w.Number(grams / 1000, "0.00")} kg";
        int ounces = (int)Math.Round(grams / 28.349523125);
        return $"{ounces / 16} lb {ounces % 16} oz";
    }
}
