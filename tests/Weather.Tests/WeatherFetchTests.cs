using System.Globalization;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Weather.Tests;

public sealed class WeatherFetchTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 9, 20, 14, 25, 0, TimeSpan.Zero);
    private static readonly WeatherPatience Quick = new(3, TimeSpan.FromMilliseconds(1), TimeSpan.FromSeconds(20), TimeSpan.Zero);
    private static readonly HashSet<int> NoYears = [];
    private readonly WeatherStandIn _service = new(DateOnly.FromDateTime(Now.UtcDateTime));
    private readonly HttpClient _http = new();

    public void Dispose()
    {
        _http.Dispose();
        _service.Dispose();
    }

    [Fact]
    public async Task The_season_the_forecast_and_past_years_come_as_files_the_lake_folder_reads()
    {
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(44.91234, -84.5678, 3, new HashSet<int> { 2024 }));
        Assert.Equal(new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero), weather.Season.TimesUtc[0]);
        Assert.Equal(new DateTimeOffset(2026, 10, 5, 23, 0, 0, TimeSpan.Zero), weather.Season.TimesUtc[^1]);
        Assert.Equal(new DateTimeOffset(2026, 9, 20, 14, 0, 0, TimeSpan.Zero), weather.MeasuredUntil);
        Assert.Equal([2023, 2025], weather.Climate.Keys.Order());
        Assert.All(_service.Asked, q => Assert.Contains("latitude=44.91&longitude=-84.57", q, StringComparison.Ordinal));

        ILakeFiles files = WeatherFiles.Into(new MemoryFiles("lake").With("lake.json", """{"name":"x","latitude_deg":44.9,"longitude_deg":-84.5,"of_mine":7}"""), weather, Now);
        LakeFolder folder = LakeFolderReader.Read(files);
        Assert.Equal(weather.Season.Count, folder.Weather!.Count);
        Assert.Equal(weather.Season.AirTempC, folder.Weather.AirTempC);
        Assert.Equal([2023, 2025], folder.Climate.Keys.Order());
        Assert.Equal(weather.MeasuredUntil, folder.MeasuredUntil);
        Assert.DoesNotContain(folder.Problems, p => p.File.Contains("weather", StringComparison.Ordinal));
        Assert.StartsWith("# " + weather.Attribution, System.Text.Encoding.UTF8.GetString(files.Read("climate/2023.csv")), StringComparison.Ordinal);
        Assert.Contains("of_mine", System.Text.Encoding.UTF8.GetString(files.Read("lake.json")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_holds_for_the_hour_before_a_stamp_is_moved_to_where_that_hour_starts()
    {
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears));
        int noon = (int)(new DateTimeOffset(2026, 6, 1, 12, 0, 0, TimeSpan.Zero) - weather.Season.TimesUtc[0]).TotalHours;
        // The service's 700 at 13 h is the mean from 12 to 13; temperature belongs to its stamp.
        Assert.Equal(700, weather.Season.ShortwaveWPerM2![noon]);
        Assert.Equal(WeatherStandIn.AirTempC(weather.Season.TimesUtc[noon]), weather.Season.AirTempC![noon]);
    }

    [Fact]
    public async Task Other_units_and_older_names_are_read_and_unknown_units_are_left_out_aloud()
    {
        _service.Faults.Enqueue(WeatherStandIn.Changed(b => b.Replace("\"wind_speed_10m\":\"m/s\"", "\"wind_speed_10m\":\"km/h\"").Replace("relative_humidity_2m", "relativehumidity_2m").Replace("\"cloud_cover\":\"%\"", "\"cloud_cover\":\"okta\"")));
        _service.Faults.Enqueue(WeatherStandIn.Changed(b => b.Replace("\"wind_speed_10m\":\"m/s\"", "\"wind_speed_10m\":\"km/h\"").Replace("\"cloud_cover\":\"%\"", "\"cloud_cover\":\"okta\"")));
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears));
        Assert.Equal(2 / 3.6, weather.Season.WindMps![0], 9);
        Assert.Equal(0.60, weather.Season.RelativeHumidity![0], 9);
        Assert.Null(weather.Season.CloudFraction);
        Assert.Contains(weather.Notes, n => n.Say(UnitSystem.Metric).Contains("'okta'", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Gaps_are_filled_as_far_as_is_sound_and_said()
    {
        // Three hours of temperature, and a day and a half of humidity.
        _service.Faults.Enqueue(WeatherStandIn.Changed(b => Nulls(Nulls(b, "temperature_2m", 100, 3), "relative_humidity_2m", 1000, 36)));
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears));
        double before = weather.Season.AirTempC![99], after = weather.Season.AirTempC[103];
        Assert.Equal(before + ((after - before) / 4), weather.Season.AirTempC[100], 9);
        Assert.Equal(weather.Season.RelativeHumidity![1010 - 24], weather.Season.RelativeHumidity[1010], 9);
        Assert.Contains(weather.Notes, n => n.Say(UnitSystem.Metric).StartsWith("3 missing hours of air temperature", StringComparison.Ordinal));
        Assert.Contains(weather.Notes, n => n.Say(UnitSystem.Metric).StartsWith("36 missing hours of humidity", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_long_gap_stays_open_and_is_said()
    {
        _service.Faults.Enqueue(WeatherStandIn.Changed(b => Nulls(b, "temperature_2m", 500, 100)));
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears));
        Assert.True(double.IsNaN(weather.Season.AirTempC![550]));
        Assert.Contains(weather.Notes, n => n.Say(UnitSystem.Metric).StartsWith("100 hours of air temperature are missing", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Impossible_values_are_missing_values_and_said()
    {
        _service.Faults.Enqueue(WeatherStandIn.Changed(b => b.Replace("\"temperature_2m\":[" + Value(b, "temperature_2m"), "\"temperature_2m\":[999.9")));
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears));
        Assert.True(double.IsNaN(weather.Season.AirTempC![0]));
        Assert.Contains(weather.Notes, n => n.Say(UnitSystem.Metric).StartsWith("1 values of air temperature", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_service_that_is_busy_for_a_while_is_asked_again()
    {
        _service.Faults.Enqueue(WeatherStandIn.Error(429, "Minutely API request limit exceeded. Please try again in one minute.", "0"));
        _service.Faults.Enqueue(WeatherStandIn.Error(503, "down"));
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears));
        Assert.True(weather.Season.Count > 6000);
        Assert.Equal(4, _service.Asked.Count);
    }

    [Fact]
    public async Task A_day_s_limit_and_a_bad_question_are_not_asked_again()
    {
        foreach ((int status, string reason) in ((int, string)[])[(429, "Daily API request limit exceeded. Please try again tomorrow."), (400, "Latitude must be in range of -90 to 90.")])
        {
            _service.Asked.Clear();
            _service.Faults.Enqueue(WeatherStandIn.Error(status, reason));
            _service.Faults.Enqueue(WeatherStandIn.Error(status, reason));
            WeatherException refused = await Assert.ThrowsAsync<WeatherException>(() => Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears)));
            Assert.Contains(reason, refused.Finding.Say(UnitSystem.Metric), StringComparison.Ordinal);
            Assert.Equal(2, _service.Asked.Count);
        }
    }

    [Fact]
    public async Task Years_that_do_not_come_are_named_and_the_others_are_kept()
    {
        _service.Faults.Enqueue(WeatherStandIn.Changed(b => b));
        _service.Faults.Enqueue(WeatherStandIn.Changed(b => b));
        _service.Faults.Enqueue(WeatherStandIn.Error(400, "No data."));
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(45, -84, 3, NoYears));
        Assert.Equal([2024, 2025], weather.Climate.Keys.Order());
        Assert.Contains(weather.Notes, n => n.Say(UnitSystem.Metric).StartsWith("The year 2023 did not come", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_server_that_drips_is_left_in_time()
    {
        using CancellationTokenSource end = new();
        for (int i = 0; i < 4; i++) _service.Faults.Enqueue(WeatherStandIn.Drip(end.Token));
        WeatherFetch fetch = new(_http, WeatherService.At(_service.Forecast, _service.Archive), new NoWeatherCache(), TimeProvider.System, Quick with { Attempts = 1, AttemptTimeout = TimeSpan.FromMilliseconds(250) });
        WeatherException slow = await Assert.ThrowsAsync<WeatherException>(() => fetch.RunAsync(new WeatherWish(45, -84, 0, NoYears)));
        await end.CancelAsync();
        Assert.Contains("took longer than", slow.Finding.Say(UnitSystem.Metric), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("<html>busy</html>")]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("{\"hourly\":{\"time\":[]}}")]
    [InlineData("{\"hourly\":{\"time\":[0,3600],\"temperature_2m\":[1]},\"hourly_units\":{\"temperature_2m\":\"°C\"}}")]
    [InlineData("{\"hourly\":{\"time\":[0,9999999996000],\"temperature_2m\":[1,2]},\"hourly_units\":{\"temperature_2m\":\"°C\"}}")]
    [InlineData("{\"hourly\":{\"time\":[0,3601],\"temperature_2m\":[1,2]},\"hourly_units\":{\"temperature_2m\":\"°C\"}}")]
    [InlineData("{\"hourly\":{\"time\":[0,3600],\"temperature_2m\":[1,2]},\"hourly_units\":{\"temperature_2m\":\"furlong\"}}")]
    public async Task An_answer_of_another_form_is_told_in_a_sentence(string body)
    {
        _service.Faults.Enqueue(WeatherStandIn.Changed(_ => body));
        _service.Faults.Enqueue(WeatherStandIn.Changed(_ => body));
        WeatherException odd = await Assert.ThrowsAsync<WeatherException>(() => Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears)));
        Assert.Contains("thing was changed.", odd.Finding.Say(UnitSystem.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_cut_of_an_answer_is_told_and_never_thrown_otherwise()
    {
        string whole = "";
        _service.Faults.Enqueue(WeatherStandIn.Changed(b => whole = b));
        await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears));
        byte[] bytes = System.Text.Encoding.UTF8.GetBytes(whole);
        for (int cut = 0; cut < bytes.Length; cut += 1 + (bytes.Length / 150))
            Assert.Throws<WeatherException>(() => ReplyReader.Read(bytes.AsMemory(0, cut), []));
    }

    [Fact]
    public async Task What_was_asked_a_moment_ago_is_not_asked_again()
    {
        string folder = Path.Combine(Path.GetTempPath(), "second-shore-weather-" + Guid.NewGuid().ToString("N"));
        FolderWeatherCache cache = new(folder);
        await Fetch(cache).RunAsync(new WeatherWish(45, -84, 1, NoYears));
        int asked = _service.Asked.Count;
        FetchedWeather again = await Fetch(cache).RunAsync(new WeatherWish(45, -84, 1, NoYears));
        Assert.Equal(asked, _service.Asked.Count);
        Assert.Equal([2025], again.Climate.Keys);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task An_archive_that_fails_leaves_the_last_three_months_and_says_so()
    {
        _service.Faults.Enqueue(WeatherStandIn.Error(400, "Archive closed."));
        FetchedWeather weather = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears));
        Assert.Equal(Now.Date.AddDays(-92), weather.Season.TimesUtc[0].UtcDateTime);
        Assert.Contains(weather.Notes, n => n.Say(UnitSystem.Metric).Contains("Archive closed.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Winds_of_places_come_one_by_one_and_one_that_does_not_come_is_said()
    {
        WindStation[] places = [Place(1, 45.10), Place(2, 45.30), Place(3, 45.302), Place(4, 45.50)];
        // The season's two requests, then the first place; the second and third are one for the service.
        FetchedWeather whole = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears) { Winds = places });
        Assert.Equal(["forecast-1", "forecast-2", "forecast-4"], whole.Winds.Select(w => w.At.Name));
        Assert.Equal(3, _service.Asked.Count(q => q.Contains("past_days=8", StringComparison.Ordinal)));
        ILakeFiles files = WeatherFiles.Into(new MemoryFiles("lake").With("lake.json", """{"name":"x","latitude_deg":45,"longitude_deg":-84,"of_mine":7}"""), whole, Now);
        LakeFolder folder = LakeFolderReader.Read(files);
        Assert.Equal(["forecast-1", "forecast-2", "forecast-4"], folder.Winds.Select(w => w.Station.Name).Order());
        Assert.All(folder.Winds, w => Assert.True(w.Station is { HeightM: 10, OnLand: false } && w.Table.Count > 15 * 24 && w.Table.AirTempC is null));
        Assert.Equal(45.1, folder.Winds.Single(w => w.Station.Name == "forecast-1").Station.Place.LatDeg, 9);
        Assert.Contains("of_mine", System.Text.Encoding.UTF8.GetString(files.Read("lake.json")), StringComparison.Ordinal);

        for (int i = 0; i < 3; i++) _service.Faults.Enqueue(i < 2 ? WeatherStandIn.Changed(b => b) : WeatherStandIn.Error(400, "no such place"));
        FetchedWeather some = await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears) { Winds = places });
        Assert.Equal(["forecast-2", "forecast-4"], some.Winds.Select(w => w.At.Name));
        Assert.Contains(some.Notes, n => n.Say(UnitSystem.Metric).Contains("forecast-1", StringComparison.Ordinal));

        for (int i = 0; i < 4; i++) _service.Faults.Enqueue(i < 2 ? WeatherStandIn.Changed(b => b) : WeatherStandIn.Error(400, "no such place"));
        Assert.Empty((await Fetch().RunAsync(new WeatherWish(45, -84, 0, NoYears) { Winds = places })).Winds);

        static WindStation Place(int n, double latDeg) => new(FormattableString.Invariant($"forecast-{n}"), new(latDeg, -84), 10, false);
    }

    private WeatherFetch Fetch(IWeatherCache? cache = null) =>
        new(_http, WeatherService.At(_service.Forecast, _service.Archive), cache ?? new NoWeatherCache(), new FixedClock(Now), Quick);

    private static string Value(string body, string column)
    {
        int start = body.IndexOf($"\"{column}\":[", StringComparison.Ordinal) + column.Length + 4;
        return body[start..body.IndexOf(',', start)];
    }

    private static string Nulls(string body, string column, int from, int count)
    {
        int start = body.IndexOf($"\"{column}\":[", StringComparison.Ordinal) + column.Length + 4, end = body.IndexOf(']', start);
        string[] values = body[start..end].Split(',');
        Array.Fill(values, "null", from, count);
        return string.Create(CultureInfo.InvariantCulture, $"{body[..start]}{string.Join(',', values)}{body[end..]}");
    }
}
