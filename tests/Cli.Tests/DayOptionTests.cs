namespace SecondShore.Cli.Tests;

public class DayOptionTests
{
    [Theory]
    [InlineData("--break", "noon", "11:30-12:30/20")]
    [InlineData("--break", "12:30-11:30/20", "11:30-12:30/20")]
    [InlineData("--from", "somewhere", "LAT")]
    [InlineData("--from", "41.5,-81.2", "--now")]
    [InlineData("--fished", "A", "A=40")]
    [InlineData("--launch", "dawn", "06:30")]
    [InlineData("--days", "40", "1 to 7")]
    public void A_slip_is_told_before_the_lake_is_read(string option, string value, string says)
    {
        Terminal.Run run = Terminal.Do("day", "no-such-lake", option, value);
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains(says.Replace("LAT", "41.503", StringComparison.Ordinal), run.Err, StringComparison.Ordinal);
        Assert.Empty(run.Out);
    }

    [Fact]
    public void Help_names_everything_a_day_can_be_asked()
    {
        string help = Terminal.Do("day", "--help").Out;
        foreach (string option in (string[])["--must", "--never", "--break", "--reserve", "--wind-limit", "--days", "--practice", "--from", "--now", "--fished", "--cruise", "--draft", "--fuel", "--ramp", "--launch", "--home", "--out", "day.pdf", "day.kml"])
            Assert.Contains(option, help, StringComparison.Ordinal);
    }
}
