using System.Globalization;
using System.Text.Json;

namespace SecondShore.Cli.Tests;

/// <summary>Readings made after the measured weather ends: they count, or it is said that they do not.</summary>
public sealed class FreshReadingTests(DemoLake demo) : IDisposable
{
    private static readonly DateTimeOffset Measured = Terminal.Now;
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_haze_seen_after_the_measured_weather_moves_the_answer_in_time_and_depth()
    {
        JsonElement before = Outlook(demo.Lake);
        Assert.Equal(Measured, before.GetProperty("at").GetDateTimeOffset());
        double wasM = P50(before), seenM = wasM + 2;
        JsonElement after = Outlook(With(Measured.AddHours(1.5), seenM));
        Assert.Equal(Measured.AddHours(1.5), after.GetProperty("at").GetDateTimeOffset());
        Assert.InRange(P50(after), wasM + 0.7, seenM + 0.7);
        Assert.Empty(after.GetProperty("unused").EnumerateArray());
    }

    [Fact]
    public void Past_the_forecast_past_years_carry_the_answer_with_a_wider_spread()
    {
        string seen = With(Measured.AddHours(1), 9);
        JsonElement near = Outlook(seen), far = Outlook(seen, "--at", "2026-10-22T12:00Z");
        Assert.True(Width(far) > Width(near), $"{Width(near)} to {Width(far)} m");
    }

    [Fact]
    public void A_reading_that_is_left_aside_is_told_as_a_value_and_in_a_sentence()
    {
        foreach ((string path, string[] more) in (((string, string[])[])
            [(With(Measured.AddDays(400), 9), []), (With(Measured.AddHours(3), 9), ["--at", "2026-10-06T13:00Z"])]))
        {
            JsonElement outlook = Outlook(path, more);
            JsonElement left = Assert.Single(outlook.GetProperty("unused").EnumerateArray());
            Assert.Equal("haze_depth_m", left.GetProperty("kind").GetString());
            Assert.Equal("after_the_answer", left.GetProperty("why").GetString());
            Assert.Equal(9, left.GetProperty("value").GetDouble());
            Assert.Contains(outlook.GetProperty("assumed").EnumerateArray(), a => a.GetString()!.Contains("not used", StringComparison.Ordinal));
        }
    }

    private static JsonElement Outlook(string lake, params string[] more)
    {
        Terminal.Run run = Terminal.Do(["outlook", lake, "--json", "--members", "20", .. more]);
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        return document.RootElement.Clone();
    }

    private static double P50(JsonElement outlook) => outlook.GetProperty("thermocline_m").GetProperty("p50").GetDouble();

    private static double Width(JsonElement outlook) =>
        outlook.GetProperty("thermocline_m").GetProperty("p90").GetDouble() - outlook.GetProperty("thermocline_m").GetProperty("p10").GetDouble();

    // The demo lake with one more reading.
    private string With(DateTimeOffset at, double hazeM)
    {
        string lake = _folder.File("lake" + at.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture));
        foreach (string file in Directory.EnumerateFiles(demo.Lake, "*", SearchOption.AllDirectories))
        {
            string to = Path.Combine(lake, Path.GetRelativePath(demo.Lake, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to, overwrite: true);
        }

        string readings = Path.Combine(lake, "readings.csv"), header = File.ReadLines(readings).First();
        string row = string.Join(',', header.Split(',').Select(h => h switch
        {
            "time" => at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture),
            "haze_depth_m" => hazeM.ToString("0.000", CultureInfo.InvariantCulture),
            _ => "",
        }));
        File.AppendAllText(readings, row + "\n");
        return lake;
    }
}
