using System.IO.Compression;
using System.Text;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Files;

public class OddFileTests
{
    [Fact]
    public void A_zip_that_lists_a_million_files_is_refused_before_its_list_is_read()
    {
        using MemoryStream zip = new();
        using (BinaryWriter write = new(zip, Encoding.ASCII, leaveOpen: true))
        {
            for (int i = 0; i < 1_000_000; i++)
            {
                write.Write(0x02014b50u);
                write.Write(new byte[24]);
                write.Write((ushort)1);
                write.Write(new byte[16]);
                write.Write((byte)'a');
            }

            uint length = (uint)zip.Length;
            // The end record says four: it is not believed.
            write.Write(0x06054b50u);
            write.Write(new byte[4]);
            write.Write((ushort)4);
            write.Write((ushort)4);
            write.Write(length);
            write.Write(0u);
            write.Write((ushort)0);
        }

        zip.Position = 0;
        long before = GC.GetAllocatedBytesForCurrentThread();
        TripRefusedException refused = Assert.Throws<TripRefusedException>(() => TripArchive.Open(zip));
        Assert.Contains("at most 4000", refused.Message, StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1 << 20);
    }

    [Theory]
    [InlineData("Survey.csv", "survey.CSV")]
    [InlineData("s\u00e9e.csv", "se\u0301e.csv")]
    [InlineData("lake.json", "nul.csv")]
    [InlineData("lake.json", "climate/COM1.csv")]
    public void Names_that_other_systems_cannot_hold_apart_are_refused_in_a_trip_file(string one, string other)
    {
        using MemoryStream bytes = new();
        using (ZipArchive zip = new(bytes, ZipArchiveMode.Create, leaveOpen: true))
            foreach (string name in (string[])[one, other])
            {
                using Stream entry = zip.CreateEntry(name).Open();
                entry.WriteByte(1);
            }

        ProblemLog problems = new();
        Assert.Null(TripFile.Read("trip.zip", bytes.ToArray(), problems));
        Assert.Contains(other.Split('/')[^1], problems.ToList()[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pipe_or_an_endless_device_in_a_folder_holds_nobody_up()
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("Pipes and devices as files are tried on Linux.");
        string folder = Directory.CreateTempSubdirectory("second-shore-odd-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "lake.json"), """{"name":"Test","latitude_deg":40,"longitude_deg":-90}""");
            if (!Programs.Runs("mkfifo", Path.Combine(folder, "readings.csv"))) Assert.Skip("The command mkfifo is not here: install coreutils to run this test.");
            File.CreateSymbolicLink(Path.Combine(folder, "weather.csv"), "/dev/zero");
            File.CreateSymbolicLink(Path.Combine(folder, "level.csv"), Path.Combine(folder, "nowhere"));
            Directory.CreateDirectory(Path.Combine(folder, "log.csv"));
            using (FileStream huge = File.Create(Path.Combine(folder, "profiles.csv"))) huge.SetLength(FolderFiles.MaxFileBytes + 1);
            ProblemLog problems = new();
            ILakeFiles files = LakeFilesOpener.Open(folder, problems)!;
            LakeFolder lake = LakeFolderReader.Read(files);
            Assert.Equal("Test", lake.Site.Name);
            Assert.Contains(lake.Problems, p => p.File == "profiles.csv" && p.Message.Contains("MB", StringComparison.Ordinal));
            Assert.Null(Record.Exception(() => LakeFilesOpener.Open(Path.Combine(folder, "readings.csv"), problems)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1 on the point")]
    [InlineData("-2+3")]
    [InlineData("@sum")]
    [InlineData("'=already")]
    [InlineData("\uff1dwide")]
    [InlineData("-5")]
    [InlineData("plain, \"quoted\"; and\nmore")]
    public void Words_that_begin_like_a_formula_are_guarded_in_the_file_and_come_back_as_they_were(string note)
    {
        LogRow row = new() { At = new DateTimeOffset(2026, 10, 4, 17, 0, 0, TimeSpan.Zero), Kind = LogKind.Note, Note = note, Spot = note };
        ILakeFiles files = LakeFolderEdits.WithLogRow(new MemoryFiles("lake").With("lake.json", "{}"), row);
        string text = Encoding.UTF8.GetString(files.Read("log.csv"));
        foreach (string cell in text.Split('\n')[1].Split(',').Select(c => c.TrimStart('"')).Where(c => c.Length > 0 && !double.TryParse(c, System.Globalization.CultureInfo.InvariantCulture, out _)))
            Assert.DoesNotContain(cell[0], "=+-@\t\uff1d");
        LogRow back = Assert.Single(LakeFolderReader.Read(files).Log);
        Assert.Equal((note, note), (back.Note, back.Spot));
    }
}
