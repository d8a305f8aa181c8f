using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public class SeasonBiasTests
{
    private static readonly double[] Depths = [0, 3, 6, 9, 12];

    [Fact]
    public void What_every_season_misses_is_found_and_what_one_adds_is_not()
    {
        SeededRandom random = new(3);
        // Every season misses +1 K at the top and -1 K at the bottom, and one has a year of its own besides.
        IReadOnlyList<CastMiss>[] seasons = [.. Enumerable.Range(0, 6).Select(s => Season(d => 1 - (d / 6) + (0.1 * random.NextNormal()) + (s == 0 ? 1.5 : 0)))];
        SeasonBias bias = SeasonBiasFit.Of(seasons, 12)!;
        Assert.InRange(bias.AtK(0, 200, 10), 0.8, 1.3);
        Assert.InRange(bias.AtK(12, 200, 10), -1.0, -0.4);
        SeasonBias alone = SeasonBiasFit.Of([seasons[0]], 12)!;
        Assert.InRange(alone.AtK(0, 200, 10), 0.7, 2.0);
    }

    [Fact]
    public void Seasons_that_disagree_are_believed_less_than_seasons_that_agree()
    {
        SeasonBias agree = SeasonBiasFit.Of([Season(_ => 1), Season(_ => 1), Season(_ => 1), Season(_ => 1)], 12)!;
        SeasonBias differ = SeasonBiasFit.Of([Season(_ => 3), Season(_ => -1), Season(_ => 3), Season(_ => -1)], 12)!;
        Assert.InRange(agree.AtK(6, 200, 10), 0.85, 1.0);
        Assert.InRange(differ.AtK(6, 200, 10), 0.0, 0.75);
    }

    [Fact]
    public void Where_no_cast_was_made_nothing_is_added()
    {
        Assert.Null(SeasonBiasFit.Of([], 12));
        Assert.Null(SeasonBiasFit.Of([[]], 12));
        SeasonBias summer = SeasonBiasFit.Of([Season(_ => 2)], 12)!;
        Assert.Equal(0, summer.AtK(6, 70, 10), 1e-12);
        Assert.True(summer.AtK(6, 200, 10) > 0.5);
    }

    [Fact]
    public void A_mixed_lake_gets_the_mean_and_a_layered_one_the_whole()
    {
        SeasonBias bias = new([0, 10], [100, 200], [1, 1, -2, -2]);
        double[] mixed = [15, 15], layered = [20, 8];
        bias.Correct([0, 10], mixed, 150);
        bias.Correct([0, 10], layered, 150);
        Assert.Equal([14.5, 14.5], mixed);
        Assert.Equal([21.0, 6.0], layered);
        Assert.Equal(-0.5, bias.AtK(5, 150, 10), 1e-12);
        Assert.Equal(bias.AtK(10, 200, 10), bias.AtK(50, 300, 10), 1e-12);
    }

    [Fact]
    public void An_outlook_adds_it_to_temperatures_and_leaves_the_step()
    {
        LakeSite site = new() { Name = "Test", Position = new GeoPoint(42, -90), TimeZoneId = "UTC", ElevationM = 200, SecchiM = 3 };
        ArmShape arm = new("lake", Hypsography.FromShape(4e6, 24, 9));
        LakePriors priors = LakePriors.For(site, arm.Basin, WeatherSource.Climate);
        OutlookRequest request = new() { Site = site, Arms = [arm], At = new(2024, 8, 25, 15, 0, 0, TimeSpan.Zero), Members = 20, Fitted = priors };
        Outlook plain = OutlookModel.Compute(request);
        Outlook corrected = OutlookModel.Compute(request with { Fitted = priors with { Bias = new SeasonBias([0, 24], [1, 366], [0.5, 0.5, 0.5, 0.5]) } });
        for (int i = 0; i < plain.Lake.Profile.Count; i++)
            Assert.Equal(plain.Lake.Profile[i].TempC.P50 + 0.5, corrected.Lake.Profile[i].TempC.P50, 1e-3);
        Assert.Equal(plain.Lake.ThermoclineM!.Quantile(0.5), corrected.Lake.ThermoclineM!.Quantile(0.5), 1e-9);
    }

    [Fact]
    public void A_mixture_lies_between_its_parts_and_is_wider_where_they_part()
    {
        FitEstimate prior = FitEstimate.Prior, moved = new([.. Enumerable.Repeat(1.0, LakePriors.Dimensions)], [.. Enumerable.Repeat(0.2, LakePriors.Dimensions)]);
        FitEstimate even = FitEstimate.Mix([prior, moved], [10, 10]), sure = FitEstimate.Mix([prior, moved], [40, 0]);
        Assert.Equal(0.5, even.Z[0], 1e-12);
        Assert.Equal(Math.Sqrt((0.5 * (1 + 0.25)) + (0.5 * (0.04 + 0.25))), even.Sd[0], 1e-12);
        Assert.Equal(1, sure.Z[0], 1e-6);
        Assert.Equal(0.2, sure.Sd[0], 1e-6);
    }

    private static IReadOnlyList<CastMiss> Season(Func<double, double> missK) =>
        [.. Enumerable.Range(0, 12).Select(i => new CastMiss(140 + (12 * i), Depths, [.. Depths.Select(missK)]))];
}
