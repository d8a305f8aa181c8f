using System.Globalization;

namespace SecondShore.Formats.Text;

/// <summary>Finds the lake's time zone by its IANA name, or makes one of a fixed offset.</summary>
internal static class TimeZones
{
    /// <summary>The zone of an IANA name; false when this machine knows none of that name.</summary>
    public static bool TryFind(string id, out TimeZoneInfo zone)
    {
        zone = TimeZoneInfo.Utc;
        if (string.IsNullOrWhiteSpace(id) || id.Length > 64) return false;
        try
        {
            zone = TimeZoneInfo.FindSystemTimeZoneById(id);
            return true;
        }
        catch (Exception e) when (e is TimeZoneNotFoundException or InvalidTimeZoneException or System.Security.SecurityException or ArgumentException or IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>A zone without summer time, named as the IANA list names it (its sign is reversed there).</summary>
    public static TimeZoneInfo Fixed(double offsetHours)
    {
        double rounded = Math.Round(Math.Clamp(offsetHours, -12, 14) * 4) / 4;
        string id = rounded == 0 ? "Etc/UTC" : string.Create(CultureInfo.InvariantCulture, $"Etc/GMT{(rounded > 0 ? "-" : "+")}{Math.Abs(rounded)}");
        return TimeZoneInfo.CreateCustomTimeZone(id, TimeSpan.FromHours(rounded), id, id);
    }

    /// <summary>The zone of the sun at a longitude, whole hours.</summary>
    public static TimeZoneInfo Solar(double lonDeg) => Fixed(Math.Round(lonDeg / 15.0));
}
