using System.Globalization;
using System.Text;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Scoring.Chains;
using SecondShore.Answers.Wind;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using Xunit;

namespace SecondShore.Answers.Tests.Scoring;

/// <summary>A trough of 6 by 1.2 km in a wind of daily breezes, and chains made to order.</summary>
public class WindScorerTests
{
    private static readonly DateTimeOffset Start = new(2031, 8, 1, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_chain_that_swings_as_the_breeze_drives_it_is_followed_and_its_mirror_is_not()
    {
        PreparedLake lake = Lake("");
        WindScoreQuestion question = new() { From = Start.AddDays(5), WindowDays = 6, Field = new() { Members = 1 } };
        double[] tilt = Course(lake);
        WindScoreSite with = Score(lake, tilt, 1, question), against = Score(lake, tilt, -1, question);
        Assert.InRange(with.Whole!.R, 0.8, 1);
        Assert.InRange(with.Whole.AmplitudeRatio, 0.6, 1.5);
        Assert.True(with.Whole.OfNone < 0.7, $"{with.Whole}");
        Assert.True(with.Whole.Coverage80 > 0.8);
        Assert.True(against.Whole!.R < -0.5);
        Assert.True(against.Whole.OfNone > 1.2);
    }

    [Fact]
    public void A_chain_without_a_place_or_of_a_few_hours_is_refused_and_mixed_water_says_why()
    {
        PreparedLake lake = Lake("");
        WindScoreQuestion question = new() { From = Start.AddDays(5), Field = new() { Members = 1 } };
        MeasuredChain nowhere = new("X", Casts(_ => 0, 200));
        Assert.Contains("moorings", Refused(lake, nowhere, question), StringComparison.Ordinal);
        MeasuredChain brief = new("END", Casts(_ => 0, 6));
        Assert.Contains("less than a day", Refused(lake, brief, question), StringComparison.Ordinal);
        MeasuredChain mixed = new("END", [.. Casts(_ => 0, 100).Select(c => c with { TempC = [.. c.TempC.Select(_ => 9.0)] })]);
        WindScore score = WindScorer.Run(lake, [mixed], question, UnitSystem.Metric, null, TestContext.Current.CancellationToken);
        Assert.Null(score.Summary);
        Assert.All(score.Windows.SelectMany(w => w.Sites), s => Assert.Contains("no thermocline", s.Why!, StringComparison.Ordinal));
    }

    [Fact]
    public void Winds_by_place_are_read_with_their_stations_and_said()
    {
        PreparedLake lake = Lake(",\"wind_stations\":{\"A\":{\"latitude_deg\":39.0,\"longitude_deg\":-95.03,\"height_m\":10,\"over\":\"water\"},\"B\":{\"latitude_deg\":39.0,\"longitude_deg\":-94.97}}");
        WindScore score = WindScorer.Run(lake, [new MeasuredChain("END", Casts(_ => 0.1, 100))], new WindScoreQuestion { From = Start.AddDays(5) }, UnitSystem.Metric, null, TestContext.Current.CancellationToken);
        Assert.Equal(2, score.Winds);
        Assert.Contains(score.Assumed, a => a.Contains("A, B", StringComparison.Ordinal) || a.Contains("A and B", StringComparison.Ordinal));
        Assert.Contains(score.Assumed, a => a.Contains("height_m", StringComparison.Ordinal));
        Assert.Contains(score.Assumed, a => a.Contains("Wind of A", StringComparison.Ordinal) && a.Contains("calm", StringComparison.Ordinal));
    }

    private static string Refused(PreparedLake lake, MeasuredChain chain, WindScoreQuestion question) => Assert.Throws<CouldNotComputeException>(() =>
        WindScorer.Run(lake, [chain], question, UnitSystem.Metric, null, TestContext.Current.CancellationToken)).Finding.Say(UnitSystem.Metric);

    private static WindScoreSite Score(PreparedLake lake, double[] tiltM, double times, WindScoreQuestion question)
    {
        MeasuredChain chain = new("END", Casts(h => times * tiltM[Math.Min(h, tiltM.Length - 1)], 144));
        return Assert.Single(Assert.Single(WindScorer.Run(lake, [chain], question, UnitSystem.Metric, null, TestContext.Current.CancellationToken).Windows).Sites);
    }

    // What the wind does to layers a little stronger than those of the chain's mean: the truth need not be the model's own run.
    private static double[] Course(PreparedLake lake)
    {
        WindForces forces = WindForces.Of(lake, Start.AddDays(5), new() { Members = 1 }, out _);
        var field = forces.Field(lake, [new(7.5, 997.9, 999.6, 1)], Start.AddDays(5), 144, TestContext.Current.CancellationToken);
        var place = lake.RequireGrid().Projection.ToPlane(39.0, -94.975);
        return [.. field.Hours.Select(at => field.ThermoclineOffsetM(place, at))];
    }

    private static List<ChainCast> Casts(Func<int, double> tiltM, int hours)
    {
        double[] depths = [.. Enumerable.Range(0, 20).Select(i => 0.5 + (double)i)];
        return [.. Enumerable.Range(0, hours).Select(h => new ChainCast(Start.AddDays(5).AddHours(h), depths,
            [.. depths.Select(z => 15 - (6 * Math.Tanh((z - 8 - tiltM(h)) / 1.2)))]))];
    }

    private static PreparedLake Lake(string also)
    {
        StringBuilder grid = new("ncols 60\nnrows 12\nxllcorner 0\nyllcorner 0\ncellsize 100\nNODATA_value -9999\n"), wind = new("time,wind_speed_m_s,wind_dir_deg,air_temp_c\n");
        for (int row = 0; row < 12; row++)
            grid.AppendLine(string.Join(' ', Enumerable.Range(0, 60).Select(x => (24 - (0.4 * Math.Pow(row - 5.5, 2)) - (0.02 * x)).ToString("0.00", CultureInfo.InvariantCulture))));
        for (int h = 0; h < 12 * 24; h++)
            wind.Append(CultureInfo.InvariantCulture, $"{Start.AddHours(h):yyyy-MM-ddTHH:mm}Z,{(h % 24 is > 9 and < 21 ? 7 - (h / 24 % 3) : 0)},{(h / 24 % 2 == 0 ? 270 : 240)},15\n");
        // The corner in UTM zone 15 of the lake's middle.
        grid.Replace("xllcorner 0", "xllcorner 323800").Replace("yllcorner 0", "yllcorner 4318080");
        MemoryFiles files = new MemoryFiles("trough").With("survey.asc", grid.ToString()).With("weather.csv", wind.ToString())
            .With("lake.json", "{\"name\":\"Trough\",\"latitude_deg\":39.0,\"longitude_deg\":-95.0,\"elevation_m\":300,\"time_zone\":\"UTC\",\"wind_measurement_height_m\":10,"
                + "\"survey\":{\"crs\":\"EPSG:32615\",\"unit\":\"m\",\"sense\":\"depth\"},\"moorings\":{\"END\":{\"latitude_deg\":39.0,\"longitude_deg\":-94.975}}" + also + "}");
        if (also.Length > 0) files = files.With("wind/A.csv", wind.ToString()).With("wind/B.csv", wind.ToString());
        LakeFolder folder = LakeFolderReader.Read(files);
        Assert.True(folder.IsUsable, string.Join("; ", folder.Problems.Select(p => p.Say(UnitSystem.Metric))));
        return PreparedLake.From(folder, null, TestContext.Current.CancellationToken);
    }
}
