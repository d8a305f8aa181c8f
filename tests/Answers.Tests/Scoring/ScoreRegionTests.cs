using SecondShore.Answers.Scoring;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Answers.Tests.Scoring;

public sealed class ScoreRegionTests
{
    [Fact]
    public void Lakes_near_each_other_are_one_region_through_a_third_and_far_ones_are_not()
    {
        GeoPoint a = new(46.0, -89.0), b = new(46.4, -89.0), c = new(46.8, -89.0), far = new(46.0, -95.0);
        Assert.Equal([0, 1, 0, 0], ScoreRegions.Of([a, far, c, b]));
    }

    [Fact]
    public void A_median_over_regions_counts_a_region_once_however_many_lakes_it_has()
    {
        LakeScore Of(string region, double kelvin) => new() { Lake = "x", Mode = "blind", Region = region, TemperatureRmseC = kelvin };
        LakeScore[] lakes = [Of("a", 1), Of("a", 1), Of("a", 1), Of("b", 2), Of("c", 3)];
        Assert.Equal(1, ScoreSummary.Of("blind", lakes).TemperatureRmseC);
        Assert.Equal(2, ScoreSummary.OfRegions("blind", lakes).TemperatureRmseC);
        Assert.Null(ScoreSummary.OfRegions("blind", lakes).OverturnMaeDays);
    }

    [Fact]
    public void Lakes_that_taught_the_priors_are_marked_and_others_are_not()
    {
        string? path = SharedData.Find("validation", "marion-reservoir");
        Assert.SkipWhen(path is null, SharedData.Missing);
        ScoredLake lake = ScoredLakeReader.From(LakeFolderReader.ReadPath(path!));
        Assert.True(ScoreRunner.Run([lake], ScoreMode.Blind).Lakes[0].InSample);
        ScoredLake far = lake with { Name = "elsewhere", Site = lake.Site with { Position = new GeoPoint(36, -95) } };
        Assert.False(ScoreRunner.Run([far], ScoreMode.Blind).Lakes[0].InSample);
    }

    [Fact]
    public void A_southern_season_runs_from_spring_to_the_turnover_of_the_next_calendar_year()
    {
        string? path = SharedData.Find("validation", "lake-wainamu");
        Assert.SkipWhen(path is null, SharedData.Missing);
        List<SeasonCase> cases = SeasonCase.Of(ScoredLakeReader.From(LakeFolderReader.ReadPath(path!)));
        SeasonCase season = cases.First(c => c.Overturn?.FirstMixed is not null);
        Assert.Equal(season.Overturn!.FirstMixed!.Value.Year, season.Year);
        Assert.Equal(new DateOnly(season.Year - 1, 7, 1), season.FirstDay);
        Assert.All(season.Observed, p => Assert.InRange(p.At, season.Instant(4, 1), season.Instant(12, 1)));
        SeasonTrace trace = SeasonTrace.Run(season, ScoreRunner.PriorsOf(season.Lake).Centre);
        Assert.InRange(trace.Overturn!.Value, new DateOnly(season.Year, 2, 1), new DateOnly(season.Year, 6, 30));
    }
}
