using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Motion.Layers;
using SecondShore.Engine.Season;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

public class LivingLayersTests
{
    private static readonly TwoLayers[] Layers = [new(6.5, 998.3, 999.7, 1), new(7.5, 998.3, 999.7, 1)];

    [Fact]
    public void Classes_follow_their_members_and_keep_their_last_pair_when_all_are_gone()
    {
        TwoLayers deep = Layers[1] with { UpperM = 9, UpperDensityKgPerM3 = 998.9 };
        IReadOnlyList<IReadOnlyList<TwoLayers?>> hours = [[Layers[0] with { UpperM = 7 }, Layers[1]], [null, deep]];
        IReadOnlyList<LayerPair[]> courses = LayerMembers.Courses(Layers, hours, 2);
        Assert.Equal([6.5, 7, 7], courses[0].Select(p => p.UpperM));
        Assert.Equal([7.5, 7.5, 9], courses[1].Select(p => p.UpperM));
        Assert.True(courses[1][2].ReducedGravityMps2 < 0.6 * courses[1][1].ReducedGravityMps2);
        Assert.Equal(1, courses.Sum(c => c[0].Weight), 12);
        LayerPair[] one = LayerMembers.Courses(Layers, hours, 1).Single();
        Assert.Equal([7, 7.25, 9], one.Select(p => p.UpperM));
        Assert.Equal(LayerMembers.Reduce(Layers, 2), courses.Select(c => c[0]));
    }

    [Fact]
    public void Still_water_stays_level_while_its_layers_deepen()
    {
        WindField field = Field(TestWeather.Of(60, _ => 0, _ => 0), Deepening(0.1, 24));
        PlanePoint place = new(1000, 400);
        Assert.Equal(0, field.ThermoclineOffsetM(place, field.Hours[24]), 9);
        Assert.Equal(7 + 2.4, field.ThermoclineM(place, field.Hours[24])!.Mean, 6);
        Assert.Equal(7 + 1.25, field.ThermoclineM(place, field.Hours[12].AddMinutes(30))!.Mean, 6);
    }

    [Fact]
    public void Layers_that_do_not_change_move_as_if_they_were_not_followed()
    {
        WeatherSeries weather = TestWeather.FiveDays();
        WindField still = Field(weather, []), followed = Field(weather, Deepening(0, 24));
        for (int hour = 0; hour <= 24; hour += 4) Assert.Equal(still.OffsetsM(hour), followed.OffsetsM(hour));
    }

    [Fact]
    public void A_weaker_step_tilts_more_and_the_tilt_stays_about_the_new_rest()
    {
        WeatherSeries weather = TestWeather.Of(90, _ => 5, _ => 270);
        TwoLayers?[][] weaker = Hours(40, (l, h) => l with { UpperDensityKgPerM3 = 998.3 + (0.7 * Math.Min(1, h / 12.0)) });
        WindField same = Field(weather, [], 40), other = Field(weather, weaker, 40);
        PlanePoint east = new(3800, 400);
        Assert.True(other.ThermoclineOffsetM(east, other.Hours[40]) > 1.5 * same.ThermoclineOffsetM(east, same.Hours[40]));
        Assert.Equal(0, other.OffsetsM(40).Average(), 1e-4);
        Assert.True(other.DensityStepKgPerM3(other.Hours[40]) < 0.55 * other.DensityStepKgPerM3(other.Hours[0]));
    }

    [Fact]
    public void A_model_that_takes_over_keeps_the_velocity_and_leaves_both_layers_water()
    {
        CoarseDepths depths = CoarseDepths.Of(TestBasins.Winding(3, 40, 26, 75), 1);
        InterfaceModel old = new(depths, new LayerPair(7, 0.014), 45);
        old.SetStress(0.12, 0.05);
        old.Advance(20 * 3600);
        InterfaceModel next = new(depths, new LayerPair(8, 0.012), 45);
        InterfaceState.TakeOver(next, old);
        int cell = Enumerable.Range(0, depths.Frame.Count).MaxBy(i => depths.WaterShare[i] >= 0.5f ? depths.DepthM[i] : 0);
        Current before = InterfaceState.Difference(old, cell), after = InterfaceState.Difference(next, cell);
        Assert.True(before.SpeedMps > 1e-3);
        Assert.Equal(before.EastMps, after.EastMps, 1e-9);
        Assert.Equal(before.NorthMps, after.NorthMps, 1e-9);
        Assert.True(InterfaceState.ThinnestM(next) > 0);
        (double upperM3, double lowerM3) = InterfaceState.VolumesM3(next);
        next.Advance(10 * 3600);
        Assert.Equal(upperM3, InterfaceState.VolumesM3(next).UpperM3, 1e-9 * upperM3);
        Assert.Equal(lowerM3, InterfaceState.VolumesM3(next).LowerM3, 1e-9 * lowerM3);
        Assert.True(InterfaceState.ThinnestM(next) > 0);
    }

    private static TwoLayers?[][] Deepening(double mPerHour, int hours) =>
        Hours(hours, (l, h) => l with { UpperM = l.UpperM + (h * mPerHour) });

    private static TwoLayers?[][] Hours(int hours, Func<TwoLayers, int, TwoLayers?> of) =>
        [.. Enumerable.Range(1, hours).Select(h => Array.ConvertAll(Layers, l => of(l, h)))];

    private static WindField Field(WeatherSeries weather, TwoLayers?[][] ahead, int hours = 24)
    {
        DepthGrid grid = TestBasins.Box(40, 8, 100, 20);
        WindFieldOptions options = new() { Members = 2, Ahead = ahead };
        DateTimeOffset from = TestWeather.Start.AddHours(30);
        return WindField.Compute(grid, Layers, weather, from, hours, options, null, TestContext.Current.CancellationToken);
    }
}
