using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public sealed class ClimateNormalsTests
{
    [Theory]
    [InlineData(51.7, 10.8, 445, 8.5, 9)] // hills inland in the west of a continent
    [InlineData(46.0, -89.6, 500, 5.1, 15)] // inland in the east of one
    [InlineData(61.8, 24.3, 142, 5.0, 11)] // far north, mild
    [InlineData(29.7, -82.0, 27, 20.9, 6.5)] // subtropics
    [InlineData(-36.9, 174.5, 23, 15.4, 4)] // an island of the south
    public void Air_by_the_calendar_stands_near_what_weather_records_of_the_place_say(double lat, double lon, double elevationM, double meanC, double swingK)
    {
        ClimateNormals normals = ClimateNormals.At(Site(lat, lon, elevationM));
        Assert.InRange(normals.MeanC, meanC - 1.5, meanC + 1.5);
        Assert.InRange(normals.SwingK, swingK - 1.5, swingK + 1.5);
    }

    [Fact]
    public void A_place_higher_up_is_colder_by_the_lapse_and_one_below_the_sea_is_not_warmer()
    {
        double low = ClimateNormals.At(Site(45, 8, 0)).MeanC;
        Assert.Equal(low - 5, ClimateNormals.At(Site(45, 8, 1000)).MeanC, 1e-9);
        Assert.Equal(low, ClimateNormals.At(Site(45, 8, -200)).MeanC, 1e-9);
    }

    [Fact]
    public void The_south_is_warmest_in_January_and_the_day_in_the_afternoon()
    {
        ClimateNormals south = ClimateNormals.At(Site(-37, 145, 100));
        Assert.True(south.DailyMeanC(20) > south.DailyMeanC(200) + 6);
        DateTimeOffset night = new(2024, 1, 10, 17, 0, 0, TimeSpan.Zero);
        Assert.True(south.AirTempC(night.AddHours(12)) > south.AirTempC(night) + 8);
    }

    private static LakeSite Site(double lat, double lon, double elevationM) =>
        new() { Name = "x", Position = new GeoPoint(lat, lon), TimeZoneId = "UTC", ElevationM = elevationM };
}
