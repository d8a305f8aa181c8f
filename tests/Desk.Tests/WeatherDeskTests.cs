using System.Text;
using SecondShore.Answers;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Formats.Files;
using SecondShore.TestKit;
using SecondShore.Weather;

namespace SecondShore.Desk.Tests;

/// <summary>The desk puts weather among a lake's files, from the service itself and from what a host packed.</summary>
public class WeatherDeskTests
{
    private static readonly DateTimeOffset Now = new(2026, 9, 10, 14, 30, 0, TimeSpan.Zero);

    [Fact]
    public async Task Weather_of_the_service_stands_in_the_lakes_files_and_the_rest_stays()
    {
        using WeatherStandIn service = new(DateOnly.FromDateTime(Now.UtcDateTime));
        using HttpClient http = new();
        (LakeDesk desk, KeptTray tray) = Opened();
        WeatherView view = await desk.FetchWeatherAsync(Ask(service, years: 2), http);
        Assert.Equal("Weather data by 127.0.0.1; its licence applies", view.Source);
        Assert.Equal(["climate/2024.csv", "lake.json", "weather.csv"], tray.Files.Keys.Order(StringComparer.Ordinal));
        Assert.Contains("\"mine\":7", Flat(tray.Files["lake.json"]), StringComparison.Ordinal);
        Assert.Contains("\"measured_until\":\"2026-09-10T14:00:00Z\"", Flat(tray.Files["lake.json"]), StringComparison.Ordinal);
        LakeView opened = Open(new LakeDesk(new KeptTray(), new Clock()), Files(tray));
        Assert.Equal(view.Source, opened.WeatherSource);
        Assert.Equal(new DateTimeOffset(2026, 9, 10, 14, 0, 0, TimeSpan.Zero), opened.WeatherUntil);
        Assert.Equal(2, opened.PastYears);
    }

    [Fact]
    public async Task What_a_host_packed_gives_the_same_files()
    {
        using WeatherStandIn service = new(DateOnly.FromDateTime(Now.UtcDateTime));
        using HttpClient http = new();
        FetchedWeather weather = await new WeatherFetch(http, WeatherService.At(service.Forecast, service.Archive), new NoWeatherCache(), new Clock())
            .RunAsync(new WeatherWish(45, -90, 2, new HashSet<int>()), null, TestContext.Current.CancellationToken);
        ILakeFiles packed = ChangedFiles.Of(WeatherFiles.Into(new MemoryFiles("weather"), weather, Now), "notes.txt", Encoding.UTF8.GetBytes("one note\nanother"));
        (LakeDesk desk, KeptTray tray) = Opened();
        WeatherView view = desk.Ask(new TakeWeather(), new Dictionary<string, byte[]> { ["weather.zip"] = TripFile.ToBytes(packed) });
        Assert.Equal(["one note", "another"], view.Notes);
        (LakeDesk other, KeptTray direct) = Opened();
        await other.FetchWeatherAsync(Ask(service, years: 2), http);
        Assert.Equal(direct.Files.Keys.Order(), tray.Files.Keys.Order());
        foreach (string name in direct.Files.Keys) Assert.Equal(Encoding.UTF8.GetString(direct.Files[name]), Encoding.UTF8.GetString(tray.Files[name]));
    }

    [Fact]
    public async Task A_service_that_refuses_or_an_odd_address_changes_nothing_and_is_told_in_a_sentence()
    {
        using WeatherStandIn service = new(DateOnly.FromDateTime(Now.UtcDateTime));
        for (int i = 0; i < 2; i++) service.Faults.Enqueue(WeatherStandIn.Error(400, "Parameter is out of range."));
        using HttpClient http = new();
        (LakeDesk desk, KeptTray tray) = Opened();
        SaidException refused = await Assert.ThrowsAsync<SaidException>(() => desk.FetchWeatherAsync(Ask(service, years: 0), http));
        Assert.Contains("Parameter is out of range.", refused.Sentence, StringComparison.Ordinal);
        SaidException odd = await Assert.ThrowsAsync<SaidException>(() =>
            desk.FetchWeatherAsync(new FetchWeather(new WeatherAsk(0, "my service")), http));
        Assert.Contains("'my service' is no web address", odd.Sentence, StringComparison.Ordinal);
        Assert.Throws<SaidException>(() => desk.Ask(new TakeWeather(), new Dictionary<string, byte[]> { ["weather.zip"] = [1, 2, 3] }));
        Assert.Empty(tray.Files);
    }

    private static FetchWeather Ask(WeatherStandIn service, int years) => new(new WeatherAsk(years, service.Forecast.AbsoluteUri, service.Archive.AbsoluteUri));

    private static (LakeDesk Desk, KeptTray Tray) Opened()
    {
        KeptTray tray = new();
        LakeDesk desk = new(tray, new Clock());
        Open(desk, Files(tray));
        return (desk, tray);
    }

    private static LakeView Open(LakeDesk desk, Dictionary<string, byte[]> files)
    {
        desk.Lay("x", files);
        return desk.Ask(new OpenLake([]));
    }

    private static Dictionary<string, byte[]> Files(KeptTray tray)
    {
        Dictionary<string, byte[]> files = new()
        {
            ["lake.json"] = Encoding.UTF8.GetBytes("""{"name":"Pond","latitude_deg":45,"longitude_deg":-90,"time_zone":"UTC","mine":7}"""),
            ["hypsography.csv"] = Encoding.UTF8.GetBytes("depth_m,area_m2\n0,100000\n10,20000\n"),
            ["climate/2025.csv"] = Encoding.UTF8.GetBytes("time,air_temp_c\n2025-01-01T00:00Z,1\n"),
        };
        foreach ((string name, byte[] bytes) in tray.Files) files[name] = bytes;
        return files;
    }

    private static string Flat(byte[] json) => string.Concat(Encoding.UTF8.GetString(json).Where(c => !char.IsWhiteSpace(c)));

    // Stands still, and lets nobody wait.
    private sealed class Clock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Now;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            base.CreateTimer(callback, state, dueTime > TimeSpan.Zero ? TimeSpan.Zero : dueTime, period);
    }
}
