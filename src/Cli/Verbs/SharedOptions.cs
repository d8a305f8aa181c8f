using System.CommandLine;
using System.Globalization;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary>Arguments and options that several verbs share, made anew for each.</summary>
internal static class SharedOptions
{
    public static Argument<string> Lake() => new("LAKE") { Description = "A lake folder, a zipped trip file, or a single survey file." };

    public static Option<bool> Json() => new("--json") { Description = "Print one JSON document on standard output." };

    public static Option<string?> At() => new("--at")
    {
        Description = "Instant, such as 2025-10-10T18:00 (the lake's clock) or with an offset; left out, the end of the measured weather or the newest reading after it, else now.",
    };

    public static Option<string?> Date() => new("--date")
    {
        Description = "Day to plan, such as 2025-10-11; left out, the day after the measured weather ends, else tomorrow.",
    };

    public static Option<string?> Units() => new("--units") { Description = "feet or metric; left out, as lake.json asks." };

    public static Option<int> Members() => new("--members")
    {
        Description = "Members of the ensemble: more is smoother and slower. The app has as many as are taken here when none are named.",
        DefaultValueFactory = _ => EnsembleOptions.UsualMembers,
    };

    public static Option<ulong> Seed() => new("--seed")
    {
        Description = "Seed of the ensemble: the same seed gives the same answer.",
        DefaultValueFactory = _ => 1,
    };

    /// <summary>Members and seed as given.</summary>
    /// <exception cref="BadUsageException">The number of members is out of range.</exception>
    public static EnsembleOptions Ensemble(ParseResult parsed, Option<int> members, Option<ulong> seed)
    {
        int count = parsed.GetValue(members);
        if (count is < 20 or > 5000) throw new BadUsageException($"--members {count} is out of range; use 20 to 5000.");
        return new EnsembleOptions(count, parsed.GetValue(seed));
    }

    /// <summary>The instant that an option names, on the lake's clock.</summary>
    /// <exception cref="BadUsageException">The text is no instant.</exception>
    public static DateTimeOffset Instant(string? text, LakeFolder folder, TimeProvider clock)
    {
        if (text is null) return AnswerTime.Default(folder, clock);
        bool hasOffset = text.EndsWith('Z') || text.LastIndexOfAny(['+', '-']) > 10;
        if (hasOffset && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTimeOffset instant))
            return AnswerTime.ToLocal(instant, folder);
        if (!hasOffset && DateTime.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime local))
            return AnswerTime.At(DateOnly.FromDateTime(local), TimeOnly.FromDateTime(local), folder);
        throw new BadUsageException($"--at {text} is not an instant; write it like 2025-10-10T18:00 or 2025-10-10T18:00-05:00.");
    }

    /// <summary>The place that an option names.</summary>
    /// <exception cref="BadUsageException">The text is no place.</exception>
    public static GeoPoint Point(string text)
    {
        string[] parts = text.Split(',');
        if (parts.Length == 2 && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double lat) && lat is >= -90 and <= 90
            && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double lon) && lon is >= -360 and <= 360) return new GeoPoint(lat, lon);
        throw new BadUsageException($"--point {text} is no place; write it like 39.0127,-95.2045.");
    }

    /// <summary>The day that an option names.</summary>
    /// <exception cref="BadUsageException">The text is no date.</exception>
    public static DateOnly Day(string? text, LakeFolder folder, TimeProvider clock)
    {
        if (text is null) return AnswerTime.DefaultDay(folder, clock);
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)) return day;
        throw new BadUsageException($"--date {text} is not a day; write it like 2025-10-11.");
    }

    /// <summary>The units that an option names, else the lake's.</summary>
    /// <exception cref="BadUsageException">The text is neither.</exception>
    public static UnitSystem UnitsOf(string? text, PreparedLake lake) => UnitsOf(text, lake.Folder);

    /// <summary>The units that an option names, else the folder's.</summary>
    /// <exception cref="BadUsageException">The text is neither.</exception>
    public static UnitSystem UnitsOf(string? text, LakeFolder folder) => text switch
    {
        null => folder.DisplayUnits == DisplayUnits.UsCustomary ? UnitSystem.Feet : UnitSystem.Metric,
        "feet" or "ft" => UnitSystem.Feet,
        "metric" or "m" => UnitSystem.Metric,
        _ => throw new BadUsageException($"--units {text} is not known; use feet or metric."),
    };
}
