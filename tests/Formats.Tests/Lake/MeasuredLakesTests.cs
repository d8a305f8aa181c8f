using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Lake;

public class MeasuredLakesTests
{
    // Weather rows, and profiles at least; without the whole lakes one row stands for all of them, and skips.
    public static TheoryData<string, int, int> Lakes => SharedData.Folder is null ? new() { { "beaverdam-reservoir", 52589, 141 } } : new()
    {
        { "beaverdam-reservoir", 52589, 141 },
        { "langtjern", 46235, 1000 },
        { "lough-feeagh", 4749, 4000 },
        { "lake-sunapee", 43848, 100 },
        { "pleasant-lake", 16620, 4000 },
        { "lake-mendota", 35064, 400 },
    };

    [Theory]
    [MemberData(nameof(Lakes))]
    public void Every_measured_lake_reads_without_a_warning(string name, int weatherRows, int profilesAtLeast)
    {
        string? path = SharedData.Find("validation", name);
        Assert.SkipWhen(path is null, SharedData.Missing);
        ReadsWithoutAWarning(path!, weatherRows, profilesAtLeast);
    }

    [Fact]
    public void A_year_of_a_measured_lake_reads_without_a_warning() => ReadsWithoutAWarning(SharedData.Copy("lakes", "pleasant-lake-2019"), 768, 40);

    private static void ReadsWithoutAWarning(string path, int weatherRows, int profilesAtLeast)
    {
        LakeFolder lake = LakeFolderReader.ReadPath(path);
        Assert.DoesNotContain(lake.Problems, p => p.Severity != ProblemSeverity.Note);
        Assert.True(lake.IsUsable);
        Assert.Equal(weatherRows, lake.Weather!.Count);
        Assert.True(lake.Profiles.Count >= profilesAtLeast, $"{lake.Profiles.Count} profiles");
        Assert.NotNull(lake.Hypsography);
        Assert.NotEmpty(lake.Overturns);
        Assert.True(lake.Site.MaxDepthM > 5);
    }

    [Fact]
    public void A_measured_lake_survives_the_trip_file_byte_for_byte()
    {
        FolderFiles folder = new(SharedData.Copy("lakes", "pleasant-lake-2019"));
        ProblemLog log = new();
        MemoryFiles? back = TripFile.Read("trip.zip", TripFile.ToBytes(folder), log);
        Assert.Empty(log.ToList());
        Assert.Equal(folder.Entries, back!.Entries);
        foreach (LakeFileEntry entry in folder.Entries) Assert.Equal(folder.Read(entry.Name), back.Read(entry.Name));
    }
}
