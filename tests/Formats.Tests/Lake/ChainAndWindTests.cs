using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Writers;
using SecondShore.Words;
using Xunit;

namespace SecondShore.Formats.Tests.Lake;

public class ChainAndWindTests
{
    [Fact]
    public void A_file_of_chains_is_read_site_by_site_in_order_of_time_and_depth()
    {
        IReadOnlyList<MeasuredChain> chains = Read("time,site,depth_ft,temp_f\n2031-08-01T01:00Z,B,10,68\n2031-08-01T00:00Z,B,20,50\n2031-08-01T00:00Z,B,10,68\n2031-08-01T00:00Z,A,10,59\n", out string said);
        Assert.Equal(["A", "B"], chains.Select(c => c.Site));
        Assert.Equal(2, chains[1].Casts.Count);
        Assert.Equal([3.048, 6.096], chains[1].Casts[0].DepthM.Select(z => Math.Round(z, 6)));
        Assert.Equal([20.0, 10.0], chains[1].Casts[0].TempC.Select(t => Math.Round(t, 6)));
        Assert.Equal("", said);
    }

    [Fact]
    public void A_chain_without_its_columns_or_rows_says_what_it_needs()
    {
        Assert.Empty(Read("time,site,height\n2031-08-01T00:00Z,A,3\n", out string missing));
        Assert.Contains("depth_m", missing, StringComparison.Ordinal);
        Assert.Empty(Read("time,depth_m,temp_c\n2031-08-01T00:00Z,,3\n", out string empty));
        Assert.Contains("no row", empty, StringComparison.Ordinal);
        Assert.Single(Read("time,depth_m,temp_c\n2031-08-01T00:00Z,3,9\n2031-08-01T00:00Z,3,8\n", out string twice)[0].Casts[0].DepthM);
        Assert.Contains("line 3", twice, StringComparison.Ordinal);
    }

    [Fact]
    public void Winds_by_place_are_read_where_lake_json_gives_their_place_and_told_where_it_does_not()
    {
        const string wind = "time,wind_speed_mph,wind_dir_deg\n2031-08-01T00:00Z,10,200\n";
        LakeDocument document = new()
        {
            Name = "Two winds",
            Position = new(39, -95),
            WindStations = [new WindStation("NORTH", new(39.1, -95), 2.5, true), new WindStation("GONE", new(39.2, -95), null, null)],
            Moorings = [new Mooring("DEEP", new(39.05, -95.01))],
        };
        LakeFolder folder = LakeFolderReader.Read(new MemoryFiles("two").With("lake.json", LakeJson.Lake(document))
            .With("wind/north.csv", wind).With("wind/SOUTH.csv", wind).With("weather.csv", "time,air_temp_c,wind_speed_m_s\n2031-08-01T00:00Z,20,3\n"));
        PlacedWeather placed = Assert.Single(folder.Winds);
        Assert.Equal(document.WindStations[0], placed.Station);
        Assert.Equal(4.4704, placed.Table.WindMps![0], 1e-9);
        Assert.Equal(document.WindStations, folder.Document.WindStations);
        Assert.Equal(document.Moorings, folder.Document.Moorings);
        string[] said = [.. folder.Problems.Select(p => p.Say(UnitSystem.Metric))];
        Assert.Contains(said, s => s.Contains("wind_stations.SOUTH", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("wind/GONE.csv", StringComparison.Ordinal));
        Assert.DoesNotContain(said, s => s.Contains("air_temp_c", StringComparison.Ordinal));
    }

    [Fact]
    public void A_wind_without_direction_a_station_without_place_and_a_list_for_an_object_are_told()
    {
        string[] said = Problems("\"wind_stations\":{\"A\":{\"latitude_deg\":39,\"longitude_deg\":-95,\"over\":\"sand\"},\"B\":{\"height_m\":2},\"C\":5}", "time,wind_speed_m_s\n2031-08-01T00:00Z,3\n");
        Assert.Contains(said, s => s.Contains("wind_dir_deg", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("'sand'", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("wind_stations.B", StringComparison.Ordinal) && s.Contains("latitude_deg", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("wind_stations.C", StringComparison.Ordinal));
        Assert.Contains(Problems("\"moorings\":[1]", "time\n"), s => s.Contains("moorings", StringComparison.Ordinal) && s.Contains("named objects", StringComparison.Ordinal));
    }

    private static string[] Problems(string keys, string wind)
    {
        MemoryFiles files = new MemoryFiles("odd").With("lake.json", "{\"latitude_deg\":39,\"longitude_deg\":-95," + keys + "}").With("wind/A.csv", wind);
        return [.. LakeFolderReader.Read(files).Problems.Select(p => p.Say(UnitSystem.Metric))];
    }

    private static IReadOnlyList<MeasuredChain> Read(string text, out string said)
    {
        IReadOnlyList<MeasuredChain> chains = ChainReader.Read("chain.csv", System.Text.Encoding.UTF8.GetBytes(text), TimeZoneInfo.Utc, out IReadOnlyList<Problem> problems);
        said = string.Join("; ", problems.Select(p => p.Say(UnitSystem.Metric)));
        return chains;
    }
}
