using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Tests.Surveys;

public class WebMercatorTests
{
    // The worked example of EPSG guidance note 7-2 for method 1024.
    private static readonly GeoPoint Example = new(24 + (22 / 60.0) + (54.433 / 3600), -(100 + (20 / 60.0)));

    [Theory]
    [InlineData("EPSG:3857")]
    [InlineData("102100")]
    [InlineData("""PROJCS["m",GEOGCS["g",DATUM["d",SPHEROID["s",6378137,298.257223563]],PRIMEM["p",0],UNIT["degree",0.0174532925199433]],PROJECTION["Mercator_Auxiliary_Sphere"],UNIT["metre",1]]""")]
    public void The_plane_of_web_maps_agrees_with_its_worked_example(string crs)
    {
        CoordinateSystem system = CoordinateSystems.Parse(crs, out _)!;
        (double x, double y) = system.FromGeo(Example);
        Assert.Equal(-11_169_055.58, x, 0.02);
        Assert.Equal(2_800_000.00, y, 0.02);
        Assert.True(system.TryToGeo(x, y, out double lat, out double lon));
        Assert.Equal(Example.LatDeg, lat, 1e-9);
        Assert.Equal(Example.LonDeg, lon, 1e-9);
    }

    [Fact]
    public void Numbers_beyond_its_square_have_no_place() => Assert.False(CoordinateSystems.Parse("EPSG:3857", out _)!.TryToGeo(0, 3e7, out _, out _));
}
