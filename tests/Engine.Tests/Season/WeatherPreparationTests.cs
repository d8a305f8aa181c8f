using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public class WeatherPreparationTests
{
    private static readonly LakeSite Site = new() { Name = "Test", Position = new GeoPoint(45, -90), TimeZoneId = "UTC", ElevationM = 200, WindHeightM = 10 };
    private static readonly DateTimeOffset Start = new(2024, 6, 1, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Short_and_long_gaps_are_filled_and_said()
    {
        RawWeather raw = Hourly(20 * 24);
        for (int i = 100; i < 103; i++) raw.AirTempC![i] = double.NaN;
        for (int i = 200; i < 248; i++) raw.WindMps![i] = double.NaN;
        PreparedWeather prepared = WeatherPreparation.Prepare(raw, Site);
        WeatherSeries series = Assert.Single(prepared.Segments);
        Assert.All(series.AirTempC, v => Assert.True(double.IsFinite(v)));
        Assert.InRange(series.AirTempC[101], Math.Min(series.AirTempC[99], series.AirTempC[103]) - 1e-9, Math.Max(series.AirTempC[99], series.AirTempC[103]) + 1e-9);
        Assert.Equal(series.WindMps[200 - 24], series.WindMps[200], 0.5);
        Assert.Contains(prepared.Notes, n => n.StartsWith("3 of 480 hours of air temperature", StringComparison.Ordinal));
        Assert.Contains(prepared.Notes, n => n.Contains("48 of them from the days around", StringComparison.Ordinal));
    }

    [Fact]
    public void A_gap_too_long_to_fill_splits_the_record_and_says_so()
    {
        RawWeather a = Hourly(10 * 24);
        RawWeather both = a with
        {
            TimeUtc = [.. a.TimeUtc, .. a.TimeUtc.Select(t => t.AddDays(200))],
            AirTempC = [.. a.AirTempC!, .. a.AirTempC!],
            RelativeHumidity = [.. a.RelativeHumidity!, .. a.RelativeHumidity!],
            WindMps = [.. a.WindMps!, .. a.WindMps!],
            ShortwaveWPerM2 = [.. a.ShortwaveWPerM2!, .. a.ShortwaveWPerM2!],
        };
        PreparedWeather prepared = WeatherPreparation.Prepare(both, Site);
        Assert.Equal(2, prepared.Segments.Count);
        Assert.Contains(prepared.Notes, n => n.Contains("too long to fill", StringComparison.Ordinal));
    }

    [Fact]
    public void Longwave_is_found_from_the_light_and_warmer_under_cloud()
    {
        RawWeather clear = Hourly(5 * 24), dull = clear with { ShortwaveWPerM2 = [.. clear.ShortwaveWPerM2!.Select(v => 0.3 * v)] };
        double a = WeatherPreparation.Prepare(clear, Site).Latest!.LongwaveWPerM2.Average(), b = WeatherPreparation.Prepare(dull, Site).Latest!.LongwaveWPerM2.Average();
        Assert.InRange(a, 270, 400);
        Assert.True(b > a + 25);
    }

    [Fact]
    public void Daily_means_become_hours_that_keep_them_and_stir_with_the_strength_of_hourly_records_of_their_kind()
    {
        RawWeather daily = new()
        {
            TimeUtc = [.. Enumerable.Range(0, 30).Select(d => Start.AddDays(d))],
            AirTempC = [.. Enumerable.Repeat(15.0, 30)],
            RelativeHumidity = [.. Enumerable.Repeat(0.7, 30)],
            WindMps = [.. Enumerable.Repeat(5.0, 30)],
            ShortwaveWPerM2 = [.. Enumerable.Repeat(220.0, 30)],
        };
        PreparedWeather prepared = WeatherPreparation.Prepare(daily, Site);
        WeatherSeries s = prepared.Latest!;
        Assert.Equal(WeatherSource.Station, prepared.Source);
        Assert.Equal(720, s.Count);
        Assert.Equal(220, s.ShortwaveWPerM2[..24].Average(), 1e-6);
        Assert.Equal(15, s.AirTempC[..24].Average(), 0.05);
        Assert.Equal(5, s.WindMps[..24].Average(), 1e-9);
        Assert.InRange(s.WindMps.Average(u => u * u * u) / 125.0, 1.4, 2.0);
        double night = s.WindMps.Where((_, i) => s.TimeAt(i).Hour is 8 or 9 or 10).Average(), noon = s.WindMps.Where((_, i) => s.TimeAt(i).Hour is 19 or 20 or 21).Average();
        Assert.True(noon > 1.7 * night, $"noon {noon}, night {night}");
        double[] cell = WeatherPreparation.Prepare(daily with { LongwaveWPerM2 = [.. Enumerable.Repeat(320.0, 30)] }, Site).Latest!.WindMps;
        Assert.InRange(cell.Average(u => u * u * u) / 125.0, 1.12, 1.35);
        Assert.NotEqual(cell[..24], cell[24..48]);
        Assert.True(s.ShortwaveWPerM2[..24].Max() > 500);
    }

    [Fact]
    public void Wind_of_two_metres_is_carried_to_ten()
    {
        RawWeather raw = Hourly(48) with { WindHeightM = 2 };
        double factor = WeatherPreparation.Prepare(raw, Site).Latest!.WindMps[10] / raw.WindMps![10];
        Assert.Equal(1.16945, factor, 1e-4);
    }

    [Fact]
    public void Nothing_but_temperatures_still_makes_weather()
    {
        RawWeather raw = Hourly(72) with { RelativeHumidity = null, WindMps = null, ShortwaveWPerM2 = null };
        PreparedWeather prepared = WeatherPreparation.Prepare(raw, Site);
        WeatherSeries s = prepared.Latest!;
        Assert.All(Enumerable.Range(0, s.Count), i => Assert.True(double.IsFinite(s.LongwaveWPerM2[i] + s.ShortwaveWPerM2[i] + s.WindMps[i] + s.RelativeHumidity[i])));
        Assert.InRange(s.ShortwaveWPerM2.Average(), 120, 380);
        Assert.True(prepared.Notes.Count >= 3);
    }

    [Fact]
    public void Empty_weather_is_said_not_thrown()
    {
        PreparedWeather prepared = WeatherPreparation.Prepare(new RawWeather { TimeUtc = [] }, Site);
        Assert.Null(prepared.Latest);
        Assert.Equal("There is no weather.", Assert.Single(prepared.Notes));
    }

    private static RawWeather Hourly(int hours)
    {
        double Sun(int i) => Math.Max(0, 880 * Math.Cos(2 * Math.PI * (i - 18) / 24.0));
        return new RawWeather
        {
            TimeUtc = [.. Enumerable.Range(0, hours).Select(i => Start.AddHours(i))],
            AirTempC = [.. Enumerable.Range(0, hours).Select(i => 18 + (6 * Math.Cos(2 * Math.PI * (i - 21) / 24.0)))],
            RelativeHumidity = [.. Enumerable.Repeat(0.6, hours)],
            WindMps = [.. Enumerable.Range(0, hours).Select(i => 3 + Math.Sin(2 * Math.PI * i / 24.0))],
            ShortwaveWPerM2 = [.. Enumerable.Range(0, hours).Select(Sun)],
        };
    }
}
