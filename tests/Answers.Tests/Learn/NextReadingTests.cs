using SecondShore.Answers.Learn;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Tests.Learn;

public class NextReadingTests
{
    private static readonly ReadingWorth Haze = new(ReadingKind.HazeDepth, double.NaN, WorthOf.Thermocline, 2.0, 0.5);
    private static readonly ReadingWorth Deep = new(ReadingKind.Temperature, 20, WorthOf.Turnover, 10, 4);
    private static readonly ReadingWorth Meter = new(ReadingKind.Oxygen, 9, WorthOf.OxygenFloor, 3, 1);

    [Fact]
    public void Which_reading_when_and_how_much_it_narrows_best_first()
    {
        string[] said = [.. NextReading.Of(Of([Meter, Deep, Haze], OxygenState.Short), LearnLakes.With(""), UnitSystem.Metric)];
        Assert.StartsWith("The depth of the haze on the sounder over deep water, in a calm hour of the next days", said[0]);
        Assert.Contains("it would narrow the thermocline from 2.6 m either way to about 0.6 m", said[0]);
        Assert.StartsWith("An oxygen reading at 9.0 m, just under the thermocline", said[1]);
        Assert.StartsWith("A thermometer lowered to 20.0 m, while the lake is layered", said[2]);
        Assert.Contains("from 13 days either way to about 5", said[2]);
        Assert.Equal(4, said.Length);
        Assert.StartsWith("A Secchi depth", said[3]);
    }

    [Fact]
    public void What_narrows_next_to_nothing_is_not_asked_for()
    {
        Outlook little = Of([Haze with { AfterSd = 1.9 }, Deep with { AfterSd = 9.5 }], OxygenState.Short);
        string[] said = [.. NextReading.Of(little, LearnLakes.With(""), UnitSystem.Metric)];
        Assert.StartsWith("A Secchi depth", Assert.Single(said));
    }

    [Fact]
    public void Where_nobody_knows_whether_oxygen_reaches_the_bottom_a_meter_is_asked_for_and_a_mixed_lake_needs_nothing()
    {
        Outlook unknown = Of([], OxygenState.NotKnown);
        string[] said = [.. NextReading.Of(unknown, LearnLakes.With(""), UnitSystem.Metric)];
        Assert.Contains(said, s => s.StartsWith("An oxygen reading at 24.0 m, over the deepest water", StringComparison.Ordinal));
        Outlook mixed = unknown with { Lake = unknown.Lake with { State = LayerState.Mixed } };
        Assert.Empty(NextReading.Of(mixed, LearnLakes.With(""), UnitSystem.Metric));
        Assert.Empty(NextReading.Of(null, LearnLakes.With(""), UnitSystem.Metric));
    }

    private static Outlook Of(ReadingWorth[] worth, OxygenState oxygen)
    {
        ArmOutlook lake = new()
        {
            Name = "Lake",
            State = LayerState.Stratified,
            ChanceStratified = 1,
            ThermoclineM = SampleDistribution.Of([8]),
            OxygenFloorM = null,
            Oxygen = oxygen,
            TurnoverInDays = null,
            Profile = [new ProfilePoint(24, new Spread(8, 9, 10), null)],
            Days = [],
            Layers = [],
            Worth = worth,
        };
        return new Outlook { At = DateTimeOffset.UnixEpoch, Lake = lake, Arms = [lake], Assumed = [], Doubted = [] };
    }
}
