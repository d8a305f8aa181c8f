using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public class StepHistoryTests
{
    private static readonly double[] Wide = [6, 7, 8, 9, 10], Even = [0.2, 0.2, 0.2, 0.2, 0.2];

    [Fact]
    public void Without_casts_of_other_years_a_forecast_stays_as_it_is()
    {
        StepHistory history = StepHistory.Of([Cast(2024, 9, 1, 8)], 2024);
        (double[] samples, _) = history.Join(Wide, Even, 1, 245, null, 30);
        Assert.Same(Wide, samples);
    }

    [Fact]
    public void Years_that_agree_draw_a_wide_forecast_to_themselves_and_narrow_it()
    {
        StepHistory history = StepHistory.Of([Cast(2020, 9, 1, 6), Cast(2021, 9, 2, 6.2), Cast(2022, 8, 30, 5.9), Cast(2023, 9, 4, 6.1)], 2024);
        (double[] samples, double[] weights) = history.Join(Wide, Even, 1, 245, null, 30);
        Assert.Equal(1, weights.Sum(), 1e-9);
        Assert.InRange(samples.Average(), 5.8, 6.6);
        Assert.True(samples.Max() - samples.Min() < 3);
    }

    [Fact]
    public void A_year_that_stands_deeper_than_the_others_is_expected_to_stay_so()
    {
        StepHistory history = StepHistory.Of([Cast(2021, 8, 20, 6), Cast(2021, 9, 15, 8), Cast(2022, 8, 22, 6.2), Cast(2022, 9, 14, 8.1)], 2024);
        double plain = history.Join(Wide, Even, 1, 258, null, 30).Samples.Average();
        double deeper = history.Join(Wide, Even, 1, 258, new SeenStep(234, 8), 30).Samples.Average();
        Assert.InRange(deeper - plain, 0.4, 2.0);
    }

    [Fact]
    public void A_forecast_that_hardly_sees_a_step_leaves_its_depth_to_the_other_years()
    {
        StepHistory history = StepHistory.Of([Cast(2021, 9, 1, 4), Cast(2022, 9, 1, 4.2)], 2024);
        double seen = history.Join(Wide, Even, 1, 245, null, 30).Samples.Average(), hardly = history.Join(Wide, Even, 0.02, 245, null, 30).Samples.Average();
        Assert.True(hardly < seen);
        Assert.Equal(4.1, hardly, 0.2);
    }

    [Fact]
    public void The_last_step_of_a_season_comes_from_its_own_casts_before_the_outlook()
    {
        WaterProfile[] casts = [Cast(2023, 9, 1, 5), Cast(2024, 8, 1, 6), Cast(2024, 8, 20, 7), Cast(2024, 9, 20, 9)];
        SeenStep seen = StepHistory.Last(casts, new DateTimeOffset(2024, 9, 1, 0, 0, 0, TimeSpan.Zero))!.Value;
        Assert.Equal(7, seen.DepthM, 0.3);
        Assert.Equal(233, seen.DayOfYear);
        Assert.Null(StepHistory.Last(casts, new DateTimeOffset(2022, 9, 1, 0, 0, 0, TimeSpan.Zero)));
    }

    private static WaterProfile Cast(int year, int month, int day, double stepM)
    {
        // Warm water's density changes faster with temperature, so the steepest place of the density lies a little above the middle.
        double middleM = stepM + 0.3;
        double[] z = [.. Enumerable.Range(0, 41).Select(i => 0.5 * i)];
        return new WaterProfile(new DateTimeOffset(year, month, day, 12, 0, 0, TimeSpan.Zero), z, [.. z.Select(d => 14 - (7 * Math.Tanh((d - middleM) / 1.2)))], null, "cast");
    }
}
