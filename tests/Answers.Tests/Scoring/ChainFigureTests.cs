using SecondShore.Answers.Scoring.Chains;
using SecondShore.Engine.Basin;
using SecondShore.Formats.Lake;
using Xunit;

namespace SecondShore.Answers.Tests.Scoring;

public class ChainFigureTests
{
    [Fact]
    public void A_course_half_as_large_and_three_hours_late_is_told_as_that()
    {
        double[] measured = Swing(1.0, 0), late = Swing(0.5, 3);
        CourseFigures same = CourseFigures.Of(measured, measured, null)!, half = CourseFigures.Of(late, measured, null)!;
        Assert.Equal((1.0, 1.0, 0), (Math.Round(same.R, 9), Math.Round(same.AmplitudeRatio, 9), same.LagH));
        Assert.Equal(0, same.RmseM, 1e-12);
        Assert.Equal(Math.Sqrt(0.5), same.NoneM, 1e-2);
        Assert.Equal(3, half.LagH);
        Assert.Equal(0.5, half.AmplitudeRatio, 0.01);
        Assert.InRange(half.OfNone, 0.5, 0.9);
        Assert.Null(half.Coverage80);
    }

    [Fact]
    public void Coverage_counts_the_hours_within_the_interval_and_hours_not_measured_count_nowhere()
    {
        double[] measured = [0, 1, double.NaN, 2, -1], computed = [0, 0, 0, 0, double.NaN];
        CourseFigures figures = CourseFigures.Of(computed, measured, [0.1, 1.1, 1, 1.9, 1])!;
        Assert.Equal(3, figures.Hours);
        Assert.Equal(2.0 / 3, figures.Coverage80!.Value, 1e-12);
    }

    [Fact]
    public void Trend_and_slow_and_quick_swings_are_taken_out()
    {
        double[] day = Swing(1, 0), course = [.. day.Select((v, i) => v + 4 + (0.02 * i) + (0.4 * Math.Cos(2 * Math.PI * i / 3)) + Math.Cos(2 * Math.PI * i / 120))];
        double[] flat = CourseFilter.Detrended(course), band = CourseFilter.Band(flat, 5, 60);
        Assert.Equal(0, flat.Average(), 1e-9);
        Assert.Equal(1.0, CourseFigures.Of(band, day, null)!.R, 0.03);
        Assert.Equal(1.0, CourseFigures.Of(band, day, null)!.AmplitudeRatio, 0.08);
    }

    [Fact]
    public void Short_gaps_are_bridged_and_long_ones_stay()
    {
        double nan = double.NaN;
        double[] bridged = CourseFilter.Bridged([1, nan, nan, 4, nan, nan, nan, nan, 9, nan]);
        Assert.Equal([1, 2, 3, 4], bridged[..4]);
        Assert.All(bridged[4..8], v => Assert.True(double.IsNaN(v)));
        Assert.True(double.IsNaN(bridged[9]));
    }

    [Fact]
    public void The_depth_of_a_temperature_lies_between_its_loggers_and_nowhere_outside_the_chain()
    {
        ChainCast cast = new(DateTimeOffset.UnixEpoch, [1, 5, 9, 13], [20, 20, 12, 8]);
        Assert.Equal(6.5, ChainCourse.DepthM(cast, 17), 1e-9);
        Assert.True(double.IsNaN(ChainCourse.DepthM(cast, 7)));
        Assert.True(double.IsNaN(ChainCourse.DepthM(cast, 21)));
    }

    [Fact]
    public void The_mean_profile_gives_two_layers_and_the_temperature_between_them()
    {
        double[] depths = [.. Enumerable.Range(0, 81).Select(i => 0.25 * i)], temps = [.. depths.Select(z => 14 - (6 * Math.Tanh((z - 8) / 1.5)))];
        ChainLayers layers = ChainLayers.Of(depths, temps, Hypsography.FromShape(1e6, 20))!;
        Assert.Equal(8, layers.Layers.UpperM, 0.7);
        Assert.Equal(14, layers.IsothermC, 3.0);
        Assert.True(layers.Layers.LowerDensityKgPerM3 - layers.Layers.UpperDensityKgPerM3 is > 1 and < 2);
        Assert.Null(ChainLayers.Of(depths, [.. depths.Select(_ => 15.0)], Hypsography.FromShape(1e6, 20)));
    }

    // A swing of a day over five days.
    private static double[] Swing(double size, int lateH) => [.. Enumerable.Range(0, 120).Select(i => size * Math.Sin(2 * Math.PI * (i - lateH) / 24))];
}
