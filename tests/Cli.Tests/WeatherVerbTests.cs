using System.Text.Json;
using SecondShore.TestKit;

namespace SecondShore.Cli.Tests;

public sealed class WeatherVerbTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly WeatherStandIn _service = new(DateOnly.FromDateTime(Terminal.Now.UtcDateTime));

    public void Dispose()
    {
        _service.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void Weather_and_past_years_come_into_the_folder_and_nothing_else_changes()
    {
        _folder.Write("lake.json", """{"latitude_deg": 44.25, "longitude_deg": -83.75, "max_depth_m": 20, "note_of_mine": 1}""");
        _folder.Write("log.csv", "time,kind\n2026-09-01T08:00:00Z,bite\n");
        Terminal.Run run = Fetch("--years", "1", "--json");
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        Assert.Equal(["climate/2025.csv", "lake.json", "weather.csv"], document.RootElement.GetProperty("files").EnumerateArray().Select(f => f.GetString()));
        Assert.Equal("time,kind\n2026-09-01T08:00:00Z,bite\n", File.ReadAllText(_folder.File("log.csv")));
        Assert.Contains("note_of_mine", File.ReadAllText(_folder.File("lake.json")), StringComparison.Ordinal);
        Assert.Contains("climate", Terminal.Do("doctor", _folder.Path).Out, StringComparison.Ordinal);
        Assert.DoesNotContain("weather.csv", Terminal.Do("doctor", _folder.Path).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refusal_of_the_service_is_told_and_leaves_the_folder_as_it_was()
    {
        string lake = _folder.Write("lake.json", """{"latitude_deg": 43.21, "longitude_deg": -82.75}""");
        string before = File.ReadAllText(lake);
        _service.Faults.Enqueue(WeatherStandIn.Error(400, "No."));
        _service.Faults.Enqueue(WeatherStandIn.Error(400, "No."));
        Terminal.Run run = Fetch("--years", "0");
        Assert.Equal(ExitCodes.CouldNotCompute, run.Code);
        Assert.Contains("The weather service refuses (status 400): No.", run.Err, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(lake));
        Assert.Single(Directory.GetFiles(_folder.Path));
    }

    [Fact]
    public void Without_weather_the_doctor_says_what_to_do()
    {
        _folder.Write("lake.json", """{"latitude_deg": 43.21, "longitude_deg": -82.75}""");
        Terminal.Run run = Terminal.Do("doctor", _folder.Path, "--host", "http://127.0.0.1:9");
        Assert.Contains("'secondshore weather' fetches it", run.Out, StringComparison.Ordinal);
        Assert.Contains("http://127.0.0.1:9 does not answer", run.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.BadInput, run.Code);
    }

    private Terminal.Run Fetch(params string[] more) =>
        Terminal.Do(["weather", _folder.Path, "--service", _service.Forecast.AbsoluteUri, "--archive", _service.Archive.AbsoluteUri, .. more]);
}
