using SecondShore.Formats.Files;

namespace SecondShore.Cli;

/// <summary>Writes a verb's files into a folder, and says which of its files were replaced.</summary>
internal static class OutFolder
{
    public static void Write(ILakeFiles files, string folder, Surroundings surroundings, CancellationToken stop)
    {
        string[] there = [.. files.Entries.Select(e => e.Name).Where(n => File.Exists(Path.Combine(folder, n)))];
        FilesWriter.WriteFolder(files, folder, cancellation: stop);
        if (there.Length > 0) surroundings.Err.WriteLine($"Replaced in {folder}: {string.Join(", ", there)}.");
    }
}
