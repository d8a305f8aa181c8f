using SecondShore.Formats.Lake;

namespace SecondShore.Bench;

/// <summary>The measured lakes beside the repository, or in the folder SECONDSHORE_SHARED names.</summary>
internal static class MeasuredLakes
{
    /// <summary>All of them in order of name; empty, with a word why, where there are none.</summary>
    public static LakeFolder[] Read()
    {
        string shared = Environment.GetEnvironmentVariable("SECONDSHORE_SHARED") ?? Path.GetFullPath(Path.Combine("..", "shared"));
        string folder = Path.Combine(shared, "validation");
        if (Directory.Exists(folder))
            return [.. Directory.GetDirectories(folder).Order(StringComparer.Ordinal).Where(d => File.Exists(Path.Combine(d, "lake.json"))).Select(d => LakeFolderReader.ReadPath(d))];
        Console.Error.WriteLine($"There are no measured lakes at {folder}; set SECONDSHORE_SHARED.");
        return [];
    }
}
