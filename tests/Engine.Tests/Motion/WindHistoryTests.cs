using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

public class WindHistoryTests
{
    [Fact]
    public void Missing_directions_keep_the_last_known_and_say_so()
    {
        WindHistory wind = new(TestWeather.Of(5, _ => 5, i => i is 1 or 2 ? double.NaN : 90 * i));
        Assert.Equal(0, wind.FromDeg(1));
        Assert.Equal(270, wind.FromDeg(3));
        Assert.Contains(wind.Assumed, s => s.Say(UnitSystem.Metric).Contains("2 of 5", StringComparison.Ordinal));
        Assert.Contains("west", new WindHistory(TestWeather.Of(3, _ => 5, _ => double.NaN)).Assumed[0].Say(UnitSystem.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Gusts_are_given_or_guessed_and_stronger_in_the_showers_of_a_front()
    {
        WindHistory wind = new(TestWeather.Of(8, _ => 6, _ => 0, i => i == 0 ? 11 : double.NaN, i => i >= 5 ? 1 : 0, i => i < 4 ? 18 : 12));
        Assert.Equal(11, wind.GustMps(0));
        Assert.Equal(6 * 1.45, wind.GustMps(2), 1e-12);
        Assert.Equal(6 * 1.8, wind.GustMps(5), 1e-12);
    }

    [Fact]
    public void Stress_pushes_downwind_and_runs_evenly_between_the_middles_of_the_hours()
    {
        WindHistory wind = new(TestWeather.Of(3, i => i == 0 ? 4 : 8, _ => 270));
        (double east, double north) = wind.StressAt(TestWeather.Start.AddHours(1.5));
        Assert.Equal(WindStress.StressPa(8), east, 1e-12);
        Assert.Equal(0, north, 1e-12);
        Assert.Equal(0.5 * (WindStress.StressPa(4) + WindStress.StressPa(8)), wind.StressAt(TestWeather.Start.AddHours(1)).EastPa, 1e-12);
    }

    [Fact]
    public void A_young_wind_has_lower_waves_than_an_old_one_and_an_old_sea_outlives_its_wind()
    {
        var grid = TestBasins.Box(400, 60, 50, 20);
        FetchField fetch = FetchField.Of(grid, null, TestContext.Current.CancellationToken);
        WindWaves waves = new(grid, fetch, new WindHistory(TestWeather.Of(30, i => i is >= 4 and < 16 ? 10 : 0.5, _ => 270)));
        PlanePoint east = new(19_000, 1500);
        double Height(int hour) => waves.At(east, TestWeather.Start.AddHours(hour + 0.5)).HeightM;
        Assert.True(Height(4) > 0.1);
        Assert.True(Height(4) < 0.8 * Height(12));
        Assert.True(Height(16) > 0.5 * Height(15));
        Assert.True(Height(25) < 0.1 * Height(15));
        // Full grown: the plain law at the true fetch.
        double fetchM = fetch.FetchM(east, 270);
        Assert.Equal(WaveGrowth.HeightM(10, fetchM, 20), Height(14), 0.03);
        Assert.Equal(default, waves.At(new PlanePoint(-50, 0), TestWeather.Start));
    }

    [Fact]
    public void The_depth_caps_the_waves_and_says_that_they_break()
    {
        var grid = TestBasins.Of(300, 60, 50, (x, _) => x > 14_000 ? 0.4 : 15);
        FetchField fetch = FetchField.Of(grid, null, TestContext.Current.CancellationToken);
        WaveState state = new WindWaves(grid, fetch, new WindHistory(TestWeather.Of(12, _ => 14, _ => 270))).At(new PlanePoint(14_500, 1500), TestWeather.Start.AddHours(10));
        Assert.True(state.BreaksOnBottom);
        Assert.InRange(state.HeightM, 0.1, 0.2201);
        Assert.True(state.BedSpeedMps > 0.2);
    }

    [Fact]
    public void Weather_without_an_hour_is_refused() => Assert.Throws<ArgumentException>(() => new WindHistory(TestWeather.Of(0, _ => 0, _ => 0)));

    [Fact]
    public void Fewer_members_keep_the_ensembles_weight_mean_and_order()
    {
        List<TwoLayers> members = [];
        for (int i = 0; i < 37; i++) members.Add(new TwoLayers(6 + (0.1 * ((i * 17) % 37)), 998.2, 999.6 + (0.01 * (i % 5)), 1 + (i % 3)));
        members.Add(new TwoLayers(20, 999, 999, 4));
        var pairs = Engine.Motion.Layers.LayerMembers.Reduce(members, 5);
        Assert.Equal(5, pairs.Count);
        double weight = 0, mean = 0, expected = 0, layered = 0;
        for (int k = 0; k < 5; k++)
        {
            weight += pairs[k].Weight;
            mean += pairs[k].Weight * pairs[k].UpperM;
            if (k > 0) Assert.True(pairs[k].UpperM > pairs[k - 1].UpperM);
        }

        for (int i = 0; i < 37; i++)
        {
            layered += members[i].Weight;
            expected += members[i].Weight * members[i].UpperM;
        }

        Assert.Equal(layered / (layered + 4), weight, 1e-9);
        Assert.Equal(expected / layered, mean / weight, 1e-9);
        Assert.Empty(Engine.Motion.Layers.LayerMembers.Reduce([]));
    }
}
