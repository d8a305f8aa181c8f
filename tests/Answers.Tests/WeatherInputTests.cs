using SecondShore.Answers.Lake;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Tests;

public class WeatherInputTests
{
    [Fact]
    public void Years_filed_apart_join_at_new_year_and_keep_gaps_open()
    {
        WeatherTable later = Table(new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero), 3, withWind: false);
        WeatherTable earlier = Table(new DateTimeOffset(2019, 12, 31, 21, 0, 0, TimeSpan.Zero), 3, withWind: true);
        RawWeather joined = WeatherInput.Join([later, earlier]);
        Assert.Equal(6, joined.TimeUtc.Count);
        Assert.Equal(TimeSpan.FromHours(1), joined.TimeUtc[3] - joined.TimeUtc[2]);
        Assert.Equal([2, 2, 2], joined.WindMps![..3]);
        Assert.All(joined.WindMps[3..], w => Assert.True(double.IsNaN(w)));
        Assert.Null(joined.GustMps);
    }

    private static WeatherTable Table(DateTimeOffset start, int hours, bool withWind) => new()
    {
        File = "x.csv",
        TimesUtc = [.. Enumerable.Range(0, hours).Select(h => start.AddHours(h))],
        AirTempC = [.. Enumerable.Repeat(10.0, hours)],
        WindMps = withWind ? [.. Enumerable.Repeat(2.0, hours)] : null,
    };
}
