using SecondShore.Cli.Console;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Cli.Tests.Console;

public class ChartTests
{
    [Fact]
    public void The_profile_marks_the_thermocline_at_its_depth()
    {
        ProfilePoint[] profile = [.. Enumerable.Range(0, 21).Select(i => new ProfilePoint(i, Around(i < 9 ? 20 : 8), null))];
        string[] lines = [.. ProfileChart.Draw(profile, new Spread(8, 9, 10), UnitSystem.Metric, 21)];
        Assert.Equal(22, lines.Length);
        Assert.Contains("thermocline 9.0 (8.0 to 10.0) m", lines[10], StringComparison.Ordinal);
        Assert.True(lines[1].IndexOf('o', StringComparison.Ordinal) > lines[21].IndexOf('o', StringComparison.Ordinal), "warm water lies right of cold");
    }

    [Fact]
    public void The_season_shows_the_thermocline_going_down()
    {
        DateOnly start = new(2025, 8, 1);
        OutlookDay[] days = [.. Enumerable.Range(0, 60).Select(i => new OutlookDay(start.AddDays(i), Around(20), Around(8),
            SampleDistribution.Normal(6 + (i * 0.1), 0.5), 1, []))];
        string[] lines = [.. SeasonChart.Draw(days, start.AddDays(30), UnitSystem.Metric)];
        int firstRow = Array.FindIndex(lines, l => l.Length > 8 && l[8] is 'o' or '·');
        int lastRow = Array.FindIndex(lines, l => l.Length >= 68 && l[67] is 'o' or '·');
        Assert.InRange(firstRow, 0, lastRow - 1);
        Assert.Contains("1 Sep", lines[^2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_season_without_layers_draws_nothing() =>
        Assert.Empty(SeasonChart.Draw([new OutlookDay(new DateOnly(2025, 1, 1), Around(4), Around(4), null, 0, [])], new DateOnly(2025, 1, 1), UnitSystem.Feet));

    private static Spread Around(double value) => new(value - 0.5, value, value + 0.5);
}
