using System.Text;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Tests.Learn;

/// <summary>Lakes with a log and some tackle, and nothing else.</summary>
internal static class LearnLakes
{
    private const string Lake = """{"name":"Made Lake","invented":true,"latitude_deg":44.1,"longitude_deg":-90.2,"time_zone":"America/Chicago"}""";
    private const string Tackle = """{"jigs":[{"name":"drag 3/4","weight_g":21.3}]"""
        + ""","trailers":[{"name":"slim craw","colour":"green"},{"name":"bulky craw","colour":"brown"}]}""";

    public static LakeFolder With(string log)
    {
        List<KeyValuePair<string, byte[]>> files = [new("lake.json", Encoding.UTF8.GetBytes(Lake)), new("tackle.json", Encoding.UTF8.GetBytes(Tackle))];
        if (log.Length > 0) files.Add(new("log.csv", Encoding.UTF8.GetBytes(log)));
        LakeFolder folder = LakeFolderReader.Read(new MemoryFiles("made", files));
        Assert.DoesNotContain(folder.Problems, p => p.Severity == Formats.ProblemSeverity.Error);
        return folder;
    }
}
