using System.Globalization;
using System.Text;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Wind;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
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
        PlanePoint[] at = [.. places.Select(p => lake.FullPool!.Projection.ToPlane(p.Place))];
        Assert.All(places, p => Assert.True(p is { HeightM: 10, OnLand: false }));
        Assert.All(at, p => Assert.True(lake.FullPool!.DepthAtM(p) > 0));
        for (int i = 0; i < lake.FullPool!.Frame.Count; i++)
        {
            if (!(lake.FullPool.DepthM[i] > 0)) continue;
            PlanePoint water = lake.FullPool.Frame.Centre(i);
            Assert.True(at.Min(p => p.DistanceToM(water)) < 10_800);
        }
    }

    [Fact]
    public void Each_arm_of_a_branched_lake_has_a_place()
    {
        PreparedLake lake = Twin(0);
        Assert.True(lake.Arms!.Arms.Count >= 2);
        string[] arms = [.. WindPoints.Of(lake).Select(p => lake.Arms.ArmAt(p.Place)!.Name)];
        Assert.Equal(lake.Arms.Arms.Select(a => a.Name).Order(), arms.Distinct().Order());
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void One_wind_over_several_arms_is_said_and_widens_the_spread(int stations, bool oneWind)
    {
        List<Finding> assumed = [];
        DateTimeOffset at = new(2031, 9, 21, 0, 0, 0, TimeSpan.Zero);
        WindFieldOptions options = WindForces.With(Twin(stations), at, new WindFieldOptions(), assumed);
        Assert.Equal(oneWind, assumed.Exists(f => f.Kind == AnswerFindings.OneWind));
        Assert.Equal(oneWind ? MotionError.ShareOfRmsOneWind : MotionError.ShareOfRms, options.ErrorShare);
        Assert.Equal(stations, options.Stations.Count);
    }

    [Fact]
    public void Winds_of_the_users_own_stand_and_fetched_ones_are_fetched_anew()
    {
        Assert.Empty(WindPoints.Of(Lake(80, "PIER")));
        Assert.NotEmpty(WindPoints.Of(Lake(80, "forecast-1")));
    }

    // Whole metres: deeper away from the basin's edge, 4 in the strait, none on land.
    private static int TwinDepth(int x, int row)
    {
        int across = Math.Min(x, 79 - x), inside = Math.Min(Math.Min(across, 25 - across), Math.Min(row, 17 - row));
        return inside >= 0 ? 6 + (2 * inside) : row is 8 or 9 ? 4 : -9999;
    }

    // Two basins of five kilometres with a long shallow strait between them.
    private static PreparedLake Twin(int stations)
    {
        StringBuilder grid = new("ncols 80\nnrows 18\nxllcorner 310000\nyllcorner 4318080\ncellsize 200\nNODATA_value -9999\n");
        for (int row = 0; row < 18; row++)
            grid.AppendLine(CultureInfo.InvariantCulture, $"{string.Join(' ', Enumerable.Range(0, 80).Select(x => TwinDepth(x, row)))}");

        MemoryFiles files = new MemoryFiles("twin").With("survey.asc", grid.ToString());
        string rows = "time,wind_speed_m_s,wind_dir_deg\n2031-09-20T00:00Z,4,270\n2031-09-22T00:00Z,4,270\n";
        for (int s = 0; s < stations; s++) files = files.With($"wind/S{s}.csv", rows);
        string place = "\":{\"latitude_deg\":39.0,\"longitude_deg\":-95.0}", places = string.Join(',', Enumerable.Range(0, stations).Select(s => "\"S" + s + place));
        return Prepared(files, stations == 0 ? "" : ",\"wind_stations\":{" + places + "}");
    }

    private static PreparedLake Prepared(MemoryFiles files, string also)
    {
        LakeFolder folder = LakeFolderReader.Read(files.With("lake.json",
            "{\"name\":\"Trough\",\"latitude_deg\":39.0,\"longitude_deg\":-95.0,\"elevation_m\":300,\"time_zone\":\"UTC\","
            + "\"survey\":{\"crs\":\"EPSG:32615\",\"unit\":\"m\",\"sense\":\"depth\"}" + also + "}"));
        Assert.True(folder.IsUsable, string.Join("; ", folder.Problems.Select(p => p.Say(UnitSystem.Metric))));
        return PreparedLake.From(folder, null, TestContext.Current.CancellationToken);
    }

    // A trough of cells of 400 m.
    private static PreparedLake Lake(int cells, string? station = null)
    {
        StringBuilder grid = new(FormattableString.Invariant($"ncols {cells}\nnrows 6\nxllcorner 310000\nyllcorner 4318080\n"));
        grid.Append("cellsize 400\nNODATA_value -9999\n");
        for (int row = 0; row < 6; row++)
        {
            double deepestM = 20 - Math.Pow(row - 2.5, 2);
            grid.AppendLine(string.Join(' ', Enumerable.Range(0, cells).Select(x => (deepestM - (0.01 * x)).ToString("0.00", CultureInfo.InvariantCulture))));
        }

        string also = station is null ? "" : ",\"wind_stations\":{\"" + station + "\":{\"latitude_deg\":39.0,\"longitude_deg\":-95.0}}";
        return Prepared(new MemoryFiles("trough").With("survey.asc", grid.ToString()), also);
    }
}
