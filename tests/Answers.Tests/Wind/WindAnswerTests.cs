using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Wind;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;
using Xunit;

namespace SecondShore.Answers.Tests.Wind;

public class WindAnswerTests
{
    private static readonly DateTimeOffset Start = new(2031, 9, 20, 0, 0, 0, TimeSpan.FromHours(-5));
    private static readonly LocalProjection Plane = new(new GeoPoint(39, -95));

    [Fact]
    public void A_west_wind_is_told_as_a_tip_to_the_east_with_its_spread_and_what_it_means_for_fish()
    {
        WindResult result = Ask(Layered(), i => 7, 12);
        IReadOnlyList<string> words = WindWords.Say(result, UnitSystem.Feet);
        Assert.Contains(words, w => w.Contains("the layer tips", StringComparison.Ordinal) && w.Contains("at the east end", StringComparison.Ordinal)
            && w.Contains("at the west end", StringComparison.Ordinal) && w.Contains("ft (", StringComparison.Ordinal));
        Assert.Contains(words, w => w.StartsWith("Water short of oxygen is pushed up", StringComparison.Ordinal) && w.Contains("west", StringComparison.Ordinal));
        Assert.Contains(words, w => w.StartsWith("Waves reach", StringComparison.Ordinal) && w.Contains("east", StringComparison.Ordinal));
        HourSummary last = result.Hours[^1];
        Assert.True(last.Deepest!.DepthM.P50 > last.Shallowest!.DepthM.P50 + 0.5);
        Assert.True(last.Deepest.DepthM.IsOrdered);
    }

    [Fact]
    public void The_document_lists_places_and_hours_in_one_order_and_writes_as_snake_case()
    {
        WindResult result = Ask(Layered(), i => 5, 6, q => q with { MaxPlaces = 40 });
        WindDocument document = WindDocuments.Of("Invented", result, Plane, UnitSystem.Metric);
        Assert.InRange(document.Places.Count, 5, 40);
        Assert.Equal(7, document.Hours.Count);
        foreach (WindDocument.HourRow hour in document.Hours)
        {
            Assert.Equal(document.Places.Count, hour.ThermoclineP50M!.Count);
            Assert.Equal(document.Places.Count, hour.WaveHeightM.Count);
            Assert.Equal(document.Places.Count, hour.CurrentToDeg.Count);
            for (int i = 0; i < document.Places.Count; i++) Assert.True(hour.ThermoclineP10M![i] <= hour.ThermoclineP90M![i]);
        }

        using JsonDocument json = JsonDocument.Parse(JsonSerializer.Serialize(document, AnswersJson.Default.WindDocument));
        Assert.Equal("Invented", json.RootElement.GetProperty("lake").GetString());
        foreach (string key in new[] { "thermocline_p10_m", "thermocline_p50_m", "thermocline_p90_m", "wave_height_m", "wind_from_deg", "current_mps", "worst_comfort" })
            Assert.True(json.RootElement.GetProperty("hours")[0].TryGetProperty(key, out _), key);
        Assert.Contains(document.Cautions, c => c == BoatLimits.Notice);
    }

    [Fact]
    public void A_gale_says_do_not_go_and_cold_water_says_wear_the_jacket()
    {
        WindResult result = Ask(Layered(surfaceC: 11), i => i > 52 ? 17 : 4, 8);
        IReadOnlyList<string> cautions = WindWords.Cautions(result, UnitSystem.Feet);
        Assert.Contains(cautions, c => c.Contains("do not go", StringComparison.Ordinal));
        Assert.Contains(cautions, c => c.Contains("life jacket", StringComparison.Ordinal));
        Assert.Equal(Comfort.DoNotGo, result.Hours[^1].Comfort);
    }

    [Fact]
    public void A_mixed_lake_says_that_there_is_nothing_to_tip()
    {
        Outlook mixed = Layered() with { Lake = Layered().Lake with { Layers = [], ThermoclineM = null } };
        WindResult result = Ask(mixed, i => 6, 4);
        Assert.Contains(WindWords.Say(result, UnitSystem.Metric), w => w.Contains("no layers", StringComparison.Ordinal));
        Assert.Null(WindDocuments.Of("Invented", result, Plane, UnitSystem.Metric).Hours[0].ThermoclineP50M);
    }

    [Fact]
    public void Hours_beyond_the_weather_are_cut_and_said_and_weather_of_another_time_is_refused()
    {
        WindResult result = Ask(Layered(), i => 5, 400);
        Assert.Contains(result.Assumed, a => a.Say(UnitSystem.Metric).StartsWith("The weather ends", StringComparison.Ordinal));
        Assert.True(result.Hours.Count < 60);
        WindQuestion late = new() { At = Start.AddYears(1) };
        CouldNotComputeException refused = Assert.Throws<CouldNotComputeException>(() =>
            WindAnswer.Prepare(Basin(), Layered(), [Weather(_ => 5)], late, out _, out _, TestContext.Current.CancellationToken));
        Assert.Contains("weather.csv", refused.Finding.Say(UnitSystem.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Clock_times_read_as_people_say_them()
    {
        Assert.Equal("3 pm", WindWords.Clock(Start.AddHours(15), UnitSystem.Feet));
        Assert.Equal("15:00", WindWords.Clock(Start.AddHours(15), UnitSystem.Metric));
    }

    private static WindResult Ask(Outlook outlook, Func<int, double> windMps, int hours, Func<WindQuestion, WindQuestion>? also = null)
    {
        WindQuestion question = new() { At = Start.AddHours(50), Hours = hours, Field = new WindFieldOptions { Members = 3, Interface = new() { CellM = 100 } } };
        WindRun run = WindAnswer.Prepare(Basin(), outlook, [Weather(windMps)], also?.Invoke(question) ?? question, out WindQuestion asked, out List<Finding> assumed,
            TestContext.Current.CancellationToken);
        return new WindResult(run.Compute(null, TestContext.Current.CancellationToken), outlook, asked, assumed);
    }

    private static DepthGrid Basin()
    {
        GridFrame frame = new(0, 0, 100, 50, 14);
        float[] depthM = new float[frame.Count];
        for (int i = 0; i < depthM.Length; i++)
        {
            double across = ((i / 50) - 6.5) / 7;
            depthM[i] = (float)(24 * (1 - (across * across)));
        }

        return new DepthGrid(Plane, frame, depthM);
    }

    private static WeatherSeries Weather(Func<int, double> windMps)
    {
        double[] Column(Func<int, double> f) => [.. Enumerable.Range(0, 100).Select(f)];
        return new WeatherSeries(Start, 3600, Column(_ => 15), Column(_ => 0.7), Column(windMps), Column(_ => 270), Column(_ => 100),
            Column(_ => 300), Column(_ => 0.5), Column(_ => 0), Column(_ => double.NaN));
    }

    private static Outlook Layered(double surfaceC = 19)
    {
        ArmOutlook arm = new()
        {
            Name = "Invented",
            State = LayerState.Stratified,
            ChanceStratified = 1,
            ThermoclineM = SampleDistribution.Normal(8, 0.6, 30),
            OxygenFloorM = SampleDistribution.Normal(8.5, 0.8, 30),
            TurnoverInDays = null,
            Profile = [new ProfilePoint(0, new Spread(surfaceC - 1, surfaceC, surfaceC + 1), null)],
            Days = [],
            Layers = [.. Enumerable.Range(0, 9).Select(i => new TwoLayers(7 + (0.25 * i), 998.3, 999.7, 1))],
        };
        return new Outlook { At = Start, Lake = arm, Arms = [arm], Assumed = [], Doubted = [] };
    }
}
