using SecondShore.Formats.Surveys;
using SecondShore.Formats.Text;
using SecondShore.TestKit.Synthetic;
using SecondShore.TestKit.Synthetic.Odd;

namespace SecondShore.Formats.Tests.Surveys;

public class OddSurveyTests(ITestOutputHelper output)
{
    public static TheoryData<int> Kinds => [.. Enumerable.Range(0, OddKinds.All.Count)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void An_awkward_file_is_read_rightly_asked_about_or_refused(int kind)
    {
        foreach (ulong seed in new ulong[] { 1, 2 })
        {
            (SurveyOutcome outcome, string words) = OddJudge.Judge(OddKinds.Make(kind, seed));
            output.WriteLine($"{OddKinds.All[kind].Name}: {outcome}: {words}");
            Assert.True(outcome is not (SurveyOutcome.WrongInSilence or SurveyOutcome.AskedInVain), $"{OddKinds.All[kind].Name}: {outcome}: {words}");
        }
    }

    [Theory]
    [InlineData("2-4 m", 2, 4, DepthUnit.Metres)]
    [InlineData("2 bis 4", 2, 4, null)]
    [InlineData("0 – 2,5 m", 0, 2.5, DepthUnit.Metres)]
    [InlineData(">8 m", 8, double.NaN, DepthUnit.Metres)]
    [InlineData("12.3 m", 12.3, double.NaN, DepthUnit.Metres)]
    [InlineData("10'", 10, double.NaN, DepthUnit.Feet)]
    [InlineData("15 ft.", 15, double.NaN, DepthUnit.Feet)]
    [InlineData("-4 to -2", -4, -2, null)]
    [InlineData("over 20 feet", 20, double.NaN, DepthUnit.Feet)]
    public void A_written_depth_or_band_is_read(string text, double first, double second, DepthUnit? unit)
    {
        Assert.True(DepthText.TryParse(text, out DepthText depth));
        Assert.Equal((first, second, unit), (depth.First, depth.Second, depth.Unit));
    }

    [Theory]
    [InlineData("2019-05-14")]
    [InlineData("Line 7")]
    [InlineData("2 4 6")]
    [InlineData("m")]
    [InlineData("North Pond 3")]
    public void What_is_no_depth_is_not_read_as_one(string text) => Assert.False(DepthText.TryParse(text, out _));

    [Fact]
    public void A_band_begins_at_its_end_nearer_to_the_surface()
    {
        Assert.True(DepthText.TryParse("-4 to -2", out DepthText depth));
        Assert.Equal(-2, depth.Begin);
        Assert.True(DepthText.TryParse("2-4", out depth));
        Assert.Equal(2, depth.Begin);
    }
}
