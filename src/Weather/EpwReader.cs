using System.Globalization;
using System.Text;
using SecondShore.Formats;
using SecondShore.Formats.Lake;

namespace SecondShore.Weather;

/// <summary>
/// Reads EPW weather files: eight header lines, then an hour a line with 35 fields, local standard time, hour 1 being the first
/// of the day. The years of such a file may be stitched together from several; each year becomes a table of its own.
/// </summary>
public static class EpwReader
{
    private static readonly int HeaderLines = 8;
    private static readonly long MaxBytes = 64L << 20;

    // Field, value that stands for missing, least and greatest possible, factor, column.
    private static readonly (int Field, double Missing, double Low, double High, double Factor)[] Fields =
    [
        (6, 99.9, -65, 60, 1), (8, 999, 0, 106, 0.01), (12, 9999, 0, 750, 1), (13, 9999, 0, 1500, 1),
        (20, 999, 0, 360, 1), (21, 999, 0, 90, 1), (22, 99, 0, 10, 0.1),
    ];

    /// <summary>Reads a file.</summary>
    /// <param name="name">Its name, for messages.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="problems">Told what was odd.</param>
    /// <returns>A table by year, named climate/YYYY.csv; empty when nothing can be used.</returns>
    public static IReadOnlyDictionary<int, WeatherTable> Read(string name, byte[] bytes, ProblemLog problems)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(problems);
        string[] lines = bytes.LongLength > MaxBytes ? [] : Encoding.UTF8.GetString(bytes).Split('\n');
        string[] location = lines.Length > 0 ? lines[0].Trim().TrimStart('\ufeff').Split(',') : [];
        if (location.Length < 10 || !string.Equals(location[0], "LOCATION", StringComparison.OrdinalIgnoreCase) || !TryNumber(location[8], out double zoneH) || Math.Abs(zoneH) > 14)
        {
            problems.Error(name, "it is no EPW weather file: the first line must begin with LOCATION and give the time zone in its ninth field. Export it again, or use weather.csv.");
            return new Dictionary<int, WeatherTable>();
        }

        SortedDictionary<int, SortedDictionary<DateTimeOffset, double[]>> years = [];
        for (int i = HeaderLines; i < lines.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(lines[i])) continue;
            if (Row(lines[i].Split(','), zoneH) is not { } row) problems.Row(name, i + 1, "row", "the line is no hour of 35 fields with year, month, day and hour; it is left out.");
            else Of(years, row.Year).TryAdd(row.At, row.Values);
        }

        if (years.Count == 0) problems.Error(name, "no line of the file can be used.");
        return years.ToDictionary(y => y.Key, y => Table(y.Key, y.Value));
    }

    private static (int Year, DateTimeOffset At, double[] Values)? Row(string[] cells, double zoneH)
    {
        if (cells.Length < 23 || !Whole(cells[0], 1900, 2100, out int year) || !Whole(cells[1], 1, 12, out int month)
            || !Whole(cells[2], 1, DateTime.DaysInMonth(year, month), out int day) || !Whole(cells[3], 1, 24, out int hour)) return null;
        // Hour 1 is the hour from midnight to one: its values hold from its start on.
        DateTimeOffset at = new DateTimeOffset(year, month, day, 0, 0, 0, TimeSpan.Zero).AddHours(hour - 1 - zoneH);
        double[] values = new double[Fields.Length];
        for (int f = 0; f < Fields.Length; f++)
        {
            (int field, double missing, double low, double high, double factor) = Fields[f];
            values[f] = TryNumber(cells[field], out double value) && value < missing && value >= low && value <= high ? value * factor : double.NaN;
        }

        return (year, at, values);
    }

    private static WeatherTable Table(int year, SortedDictionary<DateTimeOffset, double[]> rows) => new()
    {
        File = string.Create(CultureInfo.InvariantCulture, $"climate/{year}.csv"),
        TimesUtc = [.. rows.Keys],
        AirTempC = Column(rows, 0),
        RelativeHumidity = Column(rows, 1),
        LongwaveWPerM2 = Column(rows, 2),
        ShortwaveWPerM2 = Column(rows, 3),
        WindFromDeg = Column(rows, 4),
        WindMps = Column(rows, 5),
        CloudFraction = Column(rows, 6),
    };

    private static double[]? Column(SortedDictionary<DateTimeOffset, double[]> rows, int field)
    {
        double[] values = [.. rows.Values.Select(v => v[field])];
        return Array.TrueForAll(values, double.IsNaN) ? null : values;
    }

    private static SortedDictionary<DateTimeOffset, double[]> Of(SortedDictionary<int, SortedDictionary<DateTimeOffset, double[]>> years, int year)
    {
        if (!years.TryGetValue(year, out SortedDictionary<DateTimeOffset, double[]>? rows)) years[year] = rows = [];
        return rows;
    }

    private static bool TryNumber(string text, out double value) => double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static bool Whole(string text, int low, int high, out int value) => int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out value) && value >= low && value <= high;
}
