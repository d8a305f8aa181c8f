using System.Buffers;
using System.Globalization;

namespace SecondShore.Records;

/// <summary>Times of records: ISO-8601 with date and time in UTC, in a range that every calendar and time zone can take.</summary>
public static class RecordTimes
{
    private static readonly DateTimeOffset First = new(1900, 1, 1, 0, 0, 0, TimeSpan.Zero), End = new(2200, 1, 1, 0, 0, 0, TimeSpan.Zero);

    // Seven digits are the runtime's own finest step.
    private static readonly string[] Forms = ["yyyy-MM-dd'T'HH:mm:ss'Z'", .. Enumerable.Range(1, 7).Select(n => $"yyyy-MM-dd'T'HH:mm:ss.{new string('f', n)}'Z'")];

    private static readonly SearchValues<char> Letters = SearchValues.Create("0123456789-:.TZ");

    /// <summary>Reads a time; whether it is one: <c>2026-10-04T17:00:00Z</c>, with up to seven digits of a second, of the years 1900 to 2199.</summary>
    public static bool TryRead(string? text, out DateTimeOffset at)
    {
        at = default;
        return text is { Length: >= 20 and <= 28 } && !text.AsSpan().ContainsAnyExcept(Letters)
            && DateTimeOffset.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out at)
            && at >= First && at < End;
    }
}
