using System.Globalization;

namespace SecondShore.Formats.Text;

/// <summary>What had to be decided to turn a written time into an instant.</summary>
internal enum TimeDoubt
{
    /// <summary>Nothing: an offset was given, or the local time is plain.</summary>
    None,

    /// <summary>A date without a time.</summary>
    DateOnly,

    /// <summary>A local time that comes twice when the clock goes back.</summary>
    Twice,

    /// <summary>A local time that the clock leaps over when it goes forward.</summary>
    Skipped,
}

/// <summary>
/// Reads times of one file: ISO 8601 with an offset, or local to the lake's zone. A local time that comes twice takes
/// its first passage, unless the row before already lies at or past that instant: then the second.
/// </summary>
internal sealed class LakeClock(TimeZoneInfo zone, TimeSpan timeOfDateOnly)
{
    /// <summary>Earliest year taken: before it no lake was measured hourly, so the year is a slip.</summary>
    public static readonly int FirstYear = 1850;

    /// <summary>First year no longer taken.</summary>
    public static readonly int EndYear = 2200;

    private static readonly string[] LocalForms =
    [
        "yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd HH:mm",
        "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF", "yyyy-MM-dd HH:mm:ss.FFFFFFF", "yyyy-MM-dd'T'HH", "yyyy-MM-dd H:mm",
    ];

    private DateTimeOffset? _before;

    /// <summary>The lake's zone.</summary>
    public TimeZoneInfo Zone => zone;

    /// <summary>Reads a time; false with what is wrong in <paramref name="fault"/>.</summary>
    public bool TryRead(ReadOnlySpan<char> text, out DateTimeOffset instant, out TimeDoubt doubt, out FindingForm fault)
    {
        instant = default;
        doubt = TimeDoubt.None;
        fault = "";
        text = text.Trim();
        if (text.Length is < 8 or > 40) return Fail(out fault, "is not a time");
        if (TryFast(text, out instant)) return Accept(instant, out fault);
        if (HasOffset(text))
        {
            if (!DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out instant) || !LooksIso(text))
                return Fail(out fault, "is not a time");
            return Accept(instant, out fault);
        }

        if (DateTime.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime local))
        {
            doubt = TimeDoubt.DateOnly;
            local += timeOfDateOnly;
        }
        else if (!DateTime.TryParseExact(text, LocalForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out local))
        {
            return Fail(out fault, "is not a time");
        }

        if (local.Year < FirstYear || local.Year >= EndYear) return Fail(out fault, "has a year that cannot be right");
        instant = Resolve(local, ref doubt);
        return Accept(instant, out fault);
    }

    /// <summary>The instant of a local time of the lake's zone, with the doubt that the change of clocks raises.</summary>
    public DateTimeOffset Resolve(DateTime local, ref TimeDoubt doubt)
    {
        local = DateTime.SpecifyKind(local, DateTimeKind.Unspecified);
        if (zone.IsInvalidTime(local))
        {
            doubt = TimeDoubt.Skipped;
            TimeSpan offset = zone.GetUtcOffset(local.AddHours(-3));
            return new DateTimeOffset(local, offset).ToUniversalTime();
        }

        if (!zone.IsAmbiguousTime(local)) return new DateTimeOffset(local, zone.GetUtcOffset(local)).ToUniversalTime();
        doubt = doubt == TimeDoubt.DateOnly ? doubt : TimeDoubt.Twice;
        TimeSpan[] offsets = zone.GetAmbiguousTimeOffsets(local);
        DateTimeOffset first = new(local, offsets.Max()), second = new(local, offsets.Min());
        return (_before is DateTimeOffset before && first <= before ? second : first).ToUniversalTime();
    }

    private bool Accept(DateTimeOffset instant, out FindingForm fault)
    {
        if (instant.Year < FirstYear || instant.Year >= EndYear) return Fail(out fault, "has a year that cannot be right");
        _before = instant;
        fault = "";
        return true;
    }

    private static bool Fail(out FindingForm fault, FindingForm why)
    {
        fault = why;
        return false;
    }

    // Nearly every row of a weather file is 2014-05-14T17:00:00Z: read without the general parser.
    private static bool TryFast(ReadOnlySpan<char> text, out DateTimeOffset instant)
    {
        instant = default;
        if (text.Length != 20 || text[19] != 'Z' || text[10] != 'T' || text[4] != '-' || text[7] != '-' || text[13] != ':' || text[16] != ':') return false;
        if (!Whole(text[..4], out int year) || !Whole(text[5..7], out int month) || !Whole(text[8..10], out int day)
            || !Whole(text[11..13], out int hour) || !Whole(text[14..16], out int minute) || !Whole(text[17..19], out int second)) return false;
        if (year is < 1 or > 9998 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month) || hour > 23 || minute > 59 || second > 59) return false;
        instant = new DateTimeOffset(year, month, day, hour, minute, second, TimeSpan.Zero);
        return true;
    }

    private static bool Whole(ReadOnlySpan<char> digits, out int value)
    {
        value = 0;
        foreach (char c in digits)
        {
            if (c is < '0' or > '9') return false;
            value = (value * 10) + (c - '0');
        }

        return true;
    }

    private static bool HasOffset(ReadOnlySpan<char> text) =>
        text[^1] is 'Z' or 'z' || (text.Length > 16 && text[10..].IndexOfAny('+', '-') > 0);

    private static bool LooksIso(ReadOnlySpan<char> text) => text[4] == '-' && text[7] == '-' && text[10] is 'T' or ' ' or 't';
}
