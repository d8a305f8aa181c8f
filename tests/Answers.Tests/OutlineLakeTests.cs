using System.Text;
using SecondShore.Answers.Lake;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Tests;

/// <summary>A lake of which only the outline is known.</summary>
public class OutlineLakeTests
{
    [Fact]
    public void An_outline_without_depths_is_a_bowl_of_its_area_and_says_so()
    {
        PreparedLake lake = Lake("""{"name":"Pond","max_depth_m":9}""", [Square(-90, 45, 0.01)]);
        Assert.Null(lake.FullPool);
        // A hundredth of a degree each way at 45 degrees north, less an island of a tenth of its side.
        Assert.Equal(1112.0 * 788.0 * 0.99, lake.Hypsography.SurfaceAreaM2, 0.01 * 1112 * 788);
        Assert.Equal(9, lake.Hypsography.MaxDepthM, 1e-9);
        Assert.Contains(lake.Assumed, a => a.Say(UnitSystem.Metric).StartsWith("The outline has no depths", StringComparison.Ordinal));
        CouldNotComputeException none = Assert.Throws<CouldNotComputeException>(() => lake.RequireGrid());
        Assert.Contains("only an outline", none.Finding.Say(UnitSystem.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_many_waters_the_one_at_the_lakes_position_is_taken_else_the_largest()
    {
        string[] waters = [Square(-90, 45, 0.01), Square(-89, 45, 0.02)];
        PreparedLake largest = Lake("""{"name":"Ponds"}""", waters), chosen = Lake("""{"name":"Ponds","latitude_deg":45.001,"longitude_deg":-89.999}""", waters);
        Assert.Equal(4, largest.Hypsography.SurfaceAreaM2 / chosen.Hypsography.SurfaceAreaM2, 0.02);
        Assert.Contains(largest.Assumed, a => a.Say(UnitSystem.Metric).Contains("2 waters", StringComparison.Ordinal));
        Assert.DoesNotContain(chosen.Assumed, a => a.Say(UnitSystem.Metric).Contains("2 waters", StringComparison.Ordinal));
    }

    private static PreparedLake Lake(string json, string[] polygons) => PreparedLake.From(LakeFolderReader.Read(new MemoryFiles("pond")
        .With("lake.json", json).With("survey.geojson", Encoding.UTF8.GetBytes($$"""{"type":"MultiPolygon","coordinates":[{{string.Join(',', polygons)}}]}"""))));

    // A square with an island of a tenth of its side in the middle.
    private static string Square(double lon, double lat, double side) => $"[{Ring(lon, lat, side)},{Ring(lon + (0.45 * side), lat + (0.45 * side), 0.1 * side)}]";

    private static string Ring(double lon, double lat, double side) => FormattableString.Invariant(
        $"[[{lon},{lat}],[{lon + side},{lat}],[{lon + side},{lat + side}],[{lon},{lat + side}],[{lon},{lat}]]");
}
