using System.Text.Json;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public sealed class OxygenTests
{
    private static readonly LakeSite Site =
        new() { Name = "Test", Position = new GeoPoint(42, -90), TimeZoneId = "UTC", ElevationM = 200, SecchiM = 3 };

    private static readonly DateTimeOffset At = new(2024, 8, 25, 15, 0, 0, TimeSpan.Zero);
    private static readonly double[] Depths = [0, 2, 4, 6, 7, 8, 10, 14, 18, 22], Temps = [25, 25, 24.8, 24.5, 22, 18, 14, 11, 10, 9.8];

    [Fact]
    public void A_cast_of_that_day_that_runs_out_under_the_thermocline_is_believed()
    {
        double[] oxygen = [8.5, 8.5, 8.4, 8, 5, 0.4, 0.3, 0.3, 0.2, 0.2];
        ArmOutlook lake = Outlook(Site with { SecchiM = 10 }, [Cast(At.AddHours(-3), oxygen)]).Lake;
        Assert.Equal(OxygenState.Short, lake.Oxygen);
        Assert.InRange(lake.OxygenFloorM!.Quantile(0.5), 6.5, 8.5);
    }

    [Fact]
    public void A_cast_that_holds_to_the_bottom_is_believed_too_where_the_reckoning_alone_sees_none_left()
    {
        LakeSite green = Site with { SecchiM = 1 };
        Assert.Equal(OxygenState.Short, Outlook(green, []).Lake.Oxygen);
        ArmOutlook lake = Outlook(green, [Cast(At.AddHours(-3), [8.5, 8.5, 8.4, 8, 8, 7.5, 7.5, 7.5, 7.5, 7])]).Lake;
        Assert.Equal(OxygenState.Enough, lake.Oxygen);
        Assert.Null(lake.OxygenFloorM);
    }

    [Fact]
    public void Without_a_reading_a_clear_lake_early_in_summer_is_not_known_and_never_enough()
    {
        ArmOutlook lake = OutlookModel.Compute(Request(Site with { SecchiM = 12 }, []) with { At = At.AddDays(-80) }).Lake;
        Assert.Equal(LayerState.Stratified, lake.State);
        Assert.True(lake.ChanceOxygenShort < 0.5, $"{lake.ChanceOxygenShort}");
        Assert.Equal(OxygenState.NotKnown, lake.Oxygen);
    }

    [Fact]
    public void A_productive_reservoir_in_September_is_told_to_have_none_below()
    {
        ArmOutlook lake = OutlookModel.Compute(Request(Site with { SecchiM = 1.5 }, []) with { At = At.AddDays(15) }).Lake;
        Assert.Equal(OxygenState.Short, lake.Oxygen);
        Assert.True(lake.OxygenFloorM!.Quantile(0.5) < 20, $"{lake.OxygenFloorM.Spread}");
    }

    [Fact]
    public void One_reading_under_the_thermocline_moves_the_floor_up_or_down()
    {
        double Median(double mgPerL) => OutlookModel.Compute(Request(Site, []) with
        {
            Readings = [new Reading(At.AddHours(-3), null, ReadingKind.Oxygen, mgPerL, 12, "r")],
        }).Lake is { OxygenFloorM: { } floor } ? floor.Quantile(0.5) : 24;
        Assert.True(Median(0.3) < 12.5, $"{Median(0.3)}");
        Assert.True(Median(8) > 13, $"{Median(8)}");
    }

    [Fact]
    public void A_single_reading_scales_what_is_missing_below_and_leaves_the_mixed_water_alone()
    {
        OxygenColumn oxygen = Layered(out LakeColumn column);
        oxygen.Age(40);
        double top = oxygen.AtMgPerL(1);
        oxygen.Follow(15, 2, 1);
        Assert.Equal(2, oxygen.AtMgPerL(15), 0.5);
        Assert.Equal(top, oxygen.AtMgPerL(1));
        Assert.True(oxygen.OxygenMgPerL[^1] <= oxygen.AtMgPerL(15) + 0.5 && oxygen.OxygenMgPerL[^1] >= 0);
        double deep = oxygen.OxygenMgPerL[^1];
        oxygen.Follow(0.3, 1, 1);
        Assert.Equal(deep, oxygen.OxygenMgPerL[^1]);
        Assert.True(column.Top == 0);
    }

    [Fact]
    public void Days_shut_off_before_a_cast_use_what_they_would_have_used()
    {
        OxygenColumn fresh = Layered(out _), shut = Layered(out _);
        shut.Age(60);
        Assert.True(shut.OxygenMgPerL[^1] < fresh.OxygenMgPerL[^1] - 1, $"{fresh.OxygenMgPerL[^1]} {shut.OxygenMgPerL[^1]}");
        Assert.Equal(fresh.OxygenMgPerL[0], shut.OxygenMgPerL[0], 0.01);
    }

    [Fact]
    public void The_days_since_the_lake_was_shut_off_come_from_the_air_and_the_deep_water()
    {
        WeatherSeries weather = ClimateWeather.Make(Site, new(2024, 3, 1, 0, 0, 0, TimeSpan.Zero), 200 * 24, new(3));
        int late = 150 * 24;
        Assert.Equal(0, OxygenStart.DaysShut(weather, late, 15, 14.5));
        int cold = OxygenStart.DaysShut(weather, late, 24, 6), warm = OxygenStart.DaysShut(weather, late, 24, 14);
        Assert.True(cold > warm && warm > 10 && cold <= 120, $"{cold} {warm}");
    }

    [Fact]
    public void The_floor_of_a_cast_lies_between_the_depths_that_bracket_it_and_gaps_are_no_zeros()
    {
        OxygenCast cast = OxygenCast.Of(new WaterProfile(At, [0, 4, 6, 8], [20, 20, 15, 10], [8, double.NaN, 5, 1], "c"), 30)!;
        Assert.Equal([0.0, 6, 8], cast.DepthM);
        Assert.Equal(7, cast.FloorM, 1e-9);
        Assert.Equal(2, cast.FloorGapM, 1e-9);
        Assert.True(double.IsNaN(OxygenCast.Of(new WaterProfile(At, [0, 4], [20, 20], [2, 4], "c"), 30)!.FloorM));
        Assert.Null(OxygenCast.Of(new WaterProfile(At, [0, 4], [20, 20], [double.NaN, -1], "c"), 30));
        Assert.Null(OxygenCast.Of(new WaterProfile(At, [0, 4], [20, 20], null, "c"), 30));
    }

    [Fact]
    public void The_learned_demand_holds_every_number_says_its_lakes_and_refuses_a_gap_by_name()
    {
        using var file = JsonDocument.Parse(OxygenNumbers.EmbeddedText());
        Assert.Equal(OxygenNumbers.All.Select(n => n.Name), file.RootElement.GetProperty("numbers").EnumerateObject().Select(p => p.Name));
        Assert.True(file.RootElement.GetProperty("learned").GetProperty("lakes").GetArrayLength() >= 5);
        foreach (OxygenNumber n in OxygenNumbers.All) Assert.Equal(0.123, n.Of(n.With(OxygenNumbers.Learned, 0.123)));
        string gap = OxygenNumbers.EmbeddedText().Replace("\"secchi_power\"", "\"power\"", StringComparison.Ordinal);
        FormatException e = Assert.Throws<FormatException>(() => OxygenNumbers.Parse(gap));
        Assert.Contains("'secchi_power'", e.Message, StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => OxygenNumbers.Parse("{"));
        double green = OxygenNumbers.Learned.Demand(2).ArealGPerM2DayValue, clear = OxygenNumbers.Learned.Demand(0.2).ArealGPerM2DayValue;
        Assert.True(green >= clear, "greener water uses no less");
    }

    private static OxygenColumn Layered(out LakeColumn column)
    {
        Hypsography basin = Hypsography.FromShape(4e6, 24, 9);
        column = new LakeColumn(new ColumnGrid(basin, 0.5, 0), LakePriors.For(Site, basin, WeatherSource.Grid).Centre, 10);
        column.SetProfile(Depths, Temps);
        return new OxygenColumn(column, new OxygenDemand(0.4), 101325);
    }

    private static WaterProfile Cast(DateTimeOffset at, double[] oxygen) => new(at, Depths, Temps, oxygen, "cast");

    private static Outlook Outlook(LakeSite site, WaterProfile[] casts) => OutlookModel.Compute(Request(site, casts));

    private static OutlookRequest Request(LakeSite site, WaterProfile[] casts) => new()
    {
        Site = site,
        Arms = [new ArmShape("Main lake", Hypsography.FromShape(4e6, 24, 9))],
        At = At,
        Weather = ClimateWeather.Make(site, new(2024, 3, 1, 0, 0, 0, TimeSpan.Zero), 300 * 24, new(7)),
        Profiles = casts,
        Members = 40,
    };
}
