using System.Globalization;
using System.Text;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Wind;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Tests.Wind;

public class WindPointsTests
{
    [Fact]
    public void A_lake_that_one_wind_serves_asks_for_no_other() => Assert.Empty(WindPoints.Of(Lake(24)));

    [Fact]
    public void On_a_long_lake_no_water_is_further_than_ten_kilometres_from_a_place()
    {
        PreparedLake lake = Lake(80);
        IReadOnlyList<WindStation> places = WindPoints.Of(lake);
        Assert.InRange(places.Count, 3, 8);
        Assert.Equal(places.Count, places.Select(p => p.Name).Distinct().Count());
        Assert.All(places, p => Assert.True(p is { HeightM: 10, OnLand: false } && lake.FullPool!.DepthAtM(lake.FullPool.Projection.ToPlane(p.Place)) > 0));
        PlanePoint[] at = [.. places.Select(p => lake.FullPool!.Projection.ToPlane(p.Place))];
        for (int i = 0; i < lake.FullPool!.Frame.Count; i++)
        {
            if (!(lake.FullPool.DepthM[i] > 0)) continue;
            PlanePoint water = lake.FullPool.Frame.Centre(i);
            Assert.True(at.Min(p => Math.Sqrt(Math.Pow(p.XM - water.XM, 2) + Math.Pow(p.YM - water.YM, 2))) < 10_800);
        }
    }

    [Fact]
    public void Winds_of_the_users_own_stand_and_fetched_ones_are_fetched_anew()
    {
        Assert.Empty(WindPoints.Of(Lake(80, "PIER")));
        Assert.NotEmpty(WindPoints.Of(Lake(80, "forecast-1")));
    }

    // A trough of cells of 400 m.
    private static PreparedLake Lake(int cells, string? station = null)
    {
        StringBuilder grid = new(FormattableString.Invariant($"ncols {cells}\nnrows 6\nxllcorner 310000\nyllcorner 4318080\ncellsize 400\nNODATA_value -9999\n"));
        for (int row = 0; row < 6; row++)
            grid.AppendLine(string.Join(' ', Enumerable.Range(0, cells).Select(x => (20 - Math.Pow(row - 2.5, 2) - (0.01 * x)).ToString("0.00", CultureInfo.InvariantCulture))));
        string also = station is null ? "" : ",\"wind_stations\":{\"" + station + "\":{\"latitude_deg\":39.0,\"longitude_deg\":-95.0}}";
        LakeFolder folder = LakeFolderReader.Read(new MemoryFiles("trough").With("survey.asc", grid.ToString()).With("lake.json",
            "{\"name\":\"Trough\",\"latitude_deg\":39.0,\"longitude_deg\":-95.0,\"elevation_m\":300,\"time_zone\":\"UTC\","
            + "\"survey\":{\"crs\":\"EPSG:32615\",\"unit\":\"m\",\"sense\":\"depth\"}" + also + "}"));
        Assert.True(folder.IsUsable, string.Join("; ", folder.Problems.Select(p => p.Say(UnitSystem.Metric))));
        return PreparedLake.From(folder, null, TestContext.Current.CancellationToken);
    }
}
