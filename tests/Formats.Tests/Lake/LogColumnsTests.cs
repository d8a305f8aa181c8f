using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Writers;

namespace SecondShore.Formats.Tests.Lake;

public class LogColumnsTests
{
    private static readonly LogRow Full = new()
    {
        Line = 2,
        Id = "a1",
        Replaces = "a0",
        At = new DateTimeOffset(2026, 10, 3, 13, 0, 0, TimeSpan.Zero),
        Kind = LogKind.Sighting,
        Minutes = 25,
        Count = 2,
        Bites = 3,
        Place = new GeoPoint(41.5, -81.25),
        Spot = "B",
        Pass = 2,
        Form = "hump",
        BottomDepthM = 9.5,
        StepDepthM = 8.5,
        LayerDepthM = 8.1,
        SurfaceTempC = 19.5,
        SecchiM = 2.5,
        WindMps = 4,
        WindFromDeg = 270,
        SinceWindChangeH = 3.5,
        Sky = "cloudy",
        Bait = "much",
        Sighted = "fish",
        SightedDepthM = 8,
        SightedWhere = "layer",
        Ate = "crayfish",
        Jig = "drag 3/4",
        JigWeightG = 21.3,
        Trailer = "slim craw",
        Colour = "green",
        FishingLine = "15",
        Presentation = "drag",
        SpeedMps = 0.3,
        Species = "black bass",
        FishLengthM = 0.42,
        FishWeightG = 1200,
        Note = "said, \"twice\"",
    };

    [Fact]
    public void Every_column_of_the_log_reads_back_as_written()
    {
        LakeFolder lake = LakeFolderReader.Read(new MemoryFiles("made").With("lake.json", """{"latitude_deg":41.5,"longitude_deg":-81.25,"max_depth_m":20}""").With("log.csv", LakeCsv.Log([Full])));
        Assert.Empty(lake.Problems);
        Assert.Equal(Full, Assert.Single(lake.Log));
    }

    [Fact]
    public void A_row_added_to_an_older_log_brings_its_new_columns_and_moves_nothing()
    {
        MemoryFiles old = new MemoryFiles("made").With("lake.json", """{"latitude_deg":41.5,"longitude_deg":-81.25}""").With("log.csv", "time,kind,mine\n2026-10-01T12:00:00Z,bite,kept\n");
        ILakeFiles added = LakeFolderEdits.WithLogRow(old, Full with { Replaces = "" });
        LakeFolder lake = LakeFolderReader.Read(added);
        Assert.Equal(2, lake.Log.Count);
        Assert.Equal(("layer", 8.1), (lake.Log[1].SightedWhere, lake.Log[1].LayerDepthM!.Value));
        Assert.Contains("bite,kept", System.Text.Encoding.UTF8.GetString(added.Read("log.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_withdrawal_takes_its_row_back_and_a_row_that_names_itself_stays()
    {
        LakeFolder lake = LakeFolderReader.Read(new MemoryFiles("made").With("lake.json", """{"latitude_deg":41.5,"longitude_deg":-81.25}""")
            .With("log.csv", "time,kind,id,replaces\n2026-10-01T12:00:00Z,bite,a,\n2026-10-01T13:00:00Z,bite,b,b\n2026-10-01T12:30:00Z,withdrawn,w,a\n"));
        Assert.Equal("b", Assert.Single(lake.Log).Id);
    }
}
