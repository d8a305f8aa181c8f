using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Lake;

namespace SecondShore.Formats.Tests.Lake;

public class ForecastPlacesTests
{
    [Fact]
    public void Places_are_told_in_a_line_and_read_again()
    {
        IReadOnlyList<WindStation> places = ForecastPlaces.Of([new GeoPoint(44.914, -84.566), new GeoPoint(-12.5, 179.5)]);
        Assert.Equal("44.91,-84.57;-12.50,179.50", ForecastPlaces.Text(places));
        IReadOnlyList<WindStation> read = ForecastPlaces.Parse(ForecastPlaces.Text(places))!;
        Assert.Equal(["forecast-1", "forecast-2"], read.Select(p => p.Name));
        Assert.Equal(44.91, read[0].Place.LatDeg, 9);
        Assert.All(read, p => Assert.True(ForecastPlaces.IsOne(p) && p is { HeightM: 10, OnLand: false }));
        Assert.False(ForecastPlaces.IsOne(new WindStation("PIER", new GeoPoint(1, 1), null, null)));
        Assert.Empty(ForecastPlaces.Parse(null)!);
        Assert.Equal("", ForecastPlaces.Text([]));
    }

    [Theory]
    [InlineData("45")]
    [InlineData("45,-84;")]
    [InlineData("45,-84;91,0")]
    [InlineData("45,-84;0,181")]
    [InlineData("45,NaN")]
    [InlineData("45,-84,3")]
    [InlineData("1,1;2,2;3,3;4,4;5,5;6,6;7,7;8,8;9,9")]
    public void What_is_no_such_line_is_none(string text) => Assert.Null(ForecastPlaces.Parse(text));
}
