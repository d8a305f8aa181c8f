using System.Globalization;

namespace SecondShore.Formats.Surveys.Nmea;

/// <summary>How a sentence's checksum stands.</summary>
internal enum NmeaChecksum
{
    /// <summary>There is none.</summary>
    None,

    /// <summary>It is right.</summary>
    Right,

    /// <summary>It is wrong: the sentence is damaged.</summary>
    Wrong,
}

/// <summary>One NMEA 0183 sentence: its three letters and its fields.</summary>
internal readonly ref struct NmeaSentence
{
    private readonly ReadOnlySpan<char> _body;

    private NmeaSentence(ReadOnlySpan<char> body, NmeaChecksum checksum)
    {
        _body = body;
        Checksum = checksum;
    }

    /// <summary>How the checksum stands.</summary>
    public NmeaChecksum Checksum { get; }

    /// <summary>The sentence's kind, the last three letters of its head; empty for those of one maker.</summary>
    public ReadOnlySpan<char> Kind => _body.Length >= 5 && _body[0] != 'P' ? _body[2..5] : [];

    /// <summary>Takes the sentence that starts after a dollar sign, up to the next one or the line's end.</summary>
    public static NmeaSentence Parse(ReadOnlySpan<char> text)
    {
        int star = text.LastIndexOf('*');
        if (star < 0) return new NmeaSentence(text.TrimEnd(), NmeaChecksum.None);
        ReadOnlySpan<char> body = text[..star], hex = text[(star + 1)..].Trim();
        int sum = 0;
        foreach (char c in body) sum ^= c & 0xFF;
        bool right = hex.Length >= 2 && int.TryParse(hex[..2], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out int stated) && stated == sum;
        return new NmeaSentence(body, right ? NmeaChecksum.Right : NmeaChecksum.Wrong);
    }

    /// <summary>A field, counted from 1 after the head; empty when there is none.</summary>
    public ReadOnlySpan<char> Field(int number)
    {
        ReadOnlySpan<char> rest = _body;
        for (int i = 0; i < number; i++)
        {
            int comma = rest.IndexOf(',');
            if (comma < 0) return [];
            rest = rest[(comma + 1)..];
        }

        int end = rest.IndexOf(',');
        return (end < 0 ? rest : rest[..end]).Trim();
    }

    /// <summary>A field as a number; NaN when empty or none.</summary>
    public double Number(int number) =>
        double.TryParse(Field(number), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : double.NaN;

    /// <summary>Degrees from fields such as 4446.9570,N; NaN when they are none.</summary>
    public double Angle(int number)
    {
        double packed = Number(number);
        ReadOnlySpan<char> side = Field(number + 1);
        if (double.IsNaN(packed) || packed < 0 || side.Length != 1) return double.NaN;
        double degrees = Math.Floor(packed / 100), minutes = packed - (degrees * 100);
        double angle = degrees + (minutes / 60);
        bool isLat = side[0] is 'N' or 'S';
        if (minutes >= 60 || angle > (isLat ? 90 : 180) || side[0] is not ('N' or 'S' or 'E' or 'W')) return double.NaN;
        return side[0] is 'S' or 'W' ? -angle : angle;
    }

    /// <summary>Seconds of the day from a field such as 121923.00; NaN when it is none.</summary>
    public double DaySeconds(int number)
    {
        double packed = Number(number);
        if (!(packed is >= 0 and < 240000)) return double.NaN;
        double h = Math.Floor(packed / 10000), m = Math.Floor(packed / 100) % 100, s = packed % 100;
        return m < 60 && s < 61 ? (h * 3600) + (m * 60) + s : double.NaN;
    }
}
