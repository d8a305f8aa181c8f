using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Motion;

/// <summary>Weather for motion tests: only the wind matters.</summary>
internal static class TestWeather
{
    public static readonly DateTimeOffset Start = new(2031, 9, 20, 0, 0, 0, TimeSpan.Zero);

    public static WeatherSeries Of(int hours, Func<int, double> windMps, Func<int, double> fromDeg, Func<int, double>? gustMps = null,
        Func<int, double>? rain = null, Func<int, double>? airC = null)
    {
        double[] Column(Func<int, double> f)
        {
            double[] values = new double[hours];
            for (int i = 0; i < hours; i++) values[i] = f(i);
            return values;
        }

        return new WeatherSeries(Start, 3600, Column(airC ?? (_ => 15)), Column(_ => 0.7), Column(windMps), Column(fromDeg), Column(_ => 100),
            Column(_ => 300), Column(_ => 0.5), Column(rain ?? (_ => 0)), Column(gustMps ?? (_ => double.NaN)));
    }

    /// <summary>Five days of plausible wind: a daily breeze, and a front that turns it on the third day.</summary>
    public static WeatherSeries FiveDays() => Of(130,
        i => 3 + (2.5 * Math.Sin(i * Math.PI / 12)) + (i is > 60 and < 84 ? 6 : 0),
        i => i < 66 ? 200 + (10 * Math.Sin(i)) : 320);
}
