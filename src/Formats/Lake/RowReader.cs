using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>What the readers of the folder's tables share: the zone, full pool, and where problems go.</summary>
internal sealed record ReadContext(ProblemLog Log, TimeZoneInfo Zone, double? FullPoolElevationM)
{
    /// <summary>Hour of the day that a date without a time stands for.</summary>
    public static readonly TimeSpan Noon = TimeSpan.FromHours(12);
}

/// <summary>The rows of a timed CSV file: opens it, finds its time column, hands out rows whose time can be read.</summary>
internal sealed class TimedRows
{
    private readonly LakeClock _clock;
    private readonly int _timeColumn;

    private TimedRows(CsvSheet sheet, int timeColumn, LakeClock clock)
    {
        Sheet = sheet;
        _timeColumn = timeColumn;
        _clock = clock;
        Lat = sheet.Find(Quantity.Angle, -90, 90, "latitude", "lat");
        Lon = sheet.Find(Quantity.Angle, -360, 360, "longitude", "lon", "lng");
    }

    public CsvSheet Sheet { get; }

    private CsvColumn? Lat { get; }

    private CsvColumn? Lon { get; }

    /// <summary>Opens a file; null, with an error, when it cannot serve.</summary>
    public static TimedRows? Open(string file, byte[] bytes, ReadContext context, TimeSpan? timeOfDateOnly = null)
    {
        CsvSheet? sheet = CsvSheet.Open(file, bytes, context.Log);
        if (sheet is null) return null;
        int time = sheet.Find("time", "datetime", "date_time", "timestamp", "time_utc", "date");
        if (time < 0)
        {
            context.Log.Error(file, "the file has no column named time; its header row must name one, with times such as 2026-10-04T17:00:00Z.");
            return null;
        }

        if (sheet.Count == 0) context.Log.Warn(file, "the file has a header and no rows.");
        return new TimedRows(sheet, time, new LakeClock(context.Zone, timeOfDateOnly ?? ReadContext.Noon));
    }

    /// <summary>Rows with a readable time, in order of file.</summary>
    public IEnumerable<(int Row, DateTimeOffset At)> Rows()
    {
        for (int row = 0; row < Sheet.Count; row++)
            if (Sheet.TryTime(row, _timeColumn, _clock, out DateTimeOffset at)) yield return (row, at.ToUniversalTime());
    }

    /// <summary>The place of a row; null when it has none.</summary>
    public GeoPoint? Place(int row)
    {
        double latDeg = Sheet.Number(row, Lat), lonDeg = Sheet.Number(row, Lon);
        return double.IsNaN(latDeg) || double.IsNaN(lonDeg) ? null : new GeoPoint(latDeg, lonDeg);
    }
}
