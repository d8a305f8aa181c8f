using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Learn;

/// <summary>The wind of an hour in the lake's weather, and how long ago it last changed.</summary>
internal sealed class WindChanges
{
    private static readonly double TurnDeg = 45;
    private static readonly double LeastMps = 1.5;
    private static readonly int LookBackHours = 48;
    private readonly WeatherTable? _weather;

    private WindChanges(WeatherTable? weather) => _weather = weather?.WindMps is null || weather.Count == 0 ? null : weather;

    /// <summary>Of a lake's weather; null gives nothing.</summary>
    public static WindChanges Of(WeatherTable? weather) => new(weather);

    /// <summary>Wind of an instant and hours since it turned by more than 45 degrees or doubled; null where the weather does not say.</summary>
    public (double? WindMps, double? FromDeg, double? SinceChangeH) At(DateTimeOffset at)
    {
        if (_weather is null) return (null, null, null);
        int row = Array.BinarySearch(_weather.TimesUtc, at);
        if (row < 0) row = ~row - 1;
        if (row < 0 || (at - _weather.TimesUtc[row]).TotalHours > 3) return (null, null, null);
        double windMps = _weather.WindMps![row], fromDeg = _weather.WindFromDeg?[row] ?? double.NaN;
        if (double.IsNaN(windMps)) return (null, null, null);
        return (windMps, double.IsNaN(fromDeg) ? null : fromDeg, SinceH(row, at));
    }

    // Back from now to the first hour whose wind differs from the wind now; light airs have no direction to change.
    private double? SinceH(int row, DateTimeOffset at)
    {
        double nowMps = _weather!.WindMps![row];
        for (int k = row - 1; k >= 0 && (at - _weather.TimesUtc[k]).TotalHours <= LookBackHours; k--)
        {
            double thenMps = _weather.WindMps[k];
            if (double.IsNaN(thenMps)) return null;
            bool doubled = nowMps > LeastMps && nowMps > 2 * Math.Max(thenMps, 0.5);
            bool turned = nowMps > LeastMps && thenMps > LeastMps && _weather.WindFromDeg is { } from
                && Math.Abs(Math.IEEERemainder(from[row] - from[k], 360)) > TurnDeg;
            if (doubled || turned) return Math.Max(0, (at - _weather.TimesUtc[k + 1]).TotalHours);
        }

        return LookBackHours;
    }
}
