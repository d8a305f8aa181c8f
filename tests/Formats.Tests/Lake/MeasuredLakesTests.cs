using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Lake;

public class MeasuredLakesTests
{
    [Theory]
    [InlineData("beaverdam-reservoir", 52589, 141)]
    [InlineData("langtjern", 46235, 1000)]
    [InlineData("lough-feeagh", 4749, 4000)]
    [InlineData("lake-sunapee", 43848, 100)]
    [InlineData("pleasant-lake", 16620, 4000)]
    [InlineData("lake-mendota", 35064, 400)]
    public void Every_measured_lake_reads_without_a_warning(string name, int weatherRows, int profilesAtLeast)
    {
        if (SharedData.Find("validation", name) is not string path)
        {
            Assert.Skip("The measured lakes are not beside this checkout.");
            return;
        }

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
        if (SharedData.Find("validation", "pleasant-lake") is not string path)
        {
            Assert.Skip("The measured lakes are not beside this checkout.");
            return;
        }

        FolderFiles folder = new(path);
        ProblemLog log = new();
        MemoryFiles? back = TripFile.Read("trip.zip", TripFile.ToBytes(folder), log);
        Assert.Empty(log.ToList());
        Assert.Equal(folder.Entries, back!.Entries);
        foreach (LakeFileEntry entry in folder.Entries) Assert.Equal(folder.Read(entry.Name), back.Read(entry.Name));
    }
}
