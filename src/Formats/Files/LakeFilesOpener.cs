namespace SecondShore.Formats.Files;

/// <summary>Opens what a user names on the command line: a lake folder, a trip file, or one survey file.</summary>
public static class LakeFilesOpener
{
    /// <summary>Opens a path.</summary>
    /// <param name="path">A folder, a trip file (zip), or a survey file; its companions of the same stem are taken along.</param>
    /// <param name="problems">Told why, when nothing can be opened.</param>
    /// <param name="cancellation">Stops the unpacking.</param>
    /// <returns>The files, or null.</returns>
    public static ILakeFiles? Open(string path, ProblemLog problems, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problems);
        if (string.IsNullOrWhiteSpace(path))
        {
            problems.Error("(no name)", "no lake was named; give a lake folder, a trip file or a survey file.");
            return null;
        }

        try
        {
            if (Directory.Exists(path)) return new FolderFiles(path);
            if (!File.Exists(path))
            {
                problems.Error(path, "there is no such folder or file; give a lake folder, a trip file or a survey file.");
                return null;
            }

            return IsZip(path) && FileNames.Ending(path) != "kmz"
                ? TripFile.Read(Path.GetFileName(path), File.OpenRead(path), problems, cancellation: cancellation)
                : FolderFiles.OneFile(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            problems.Error(path, $"it cannot be opened: {e.Message}");
            return null;
        }
    }

    private static bool IsZip(string path)
    {
        // A pipe would be waited for without end.
        if (new FileInfo(path) is { Length: 0 }) return false;
        Span<byte> start = stackalloc byte[4];
        using FileStream stream = File.OpenRead(path);
        int got = stream.ReadAtLeast(start, 4, throwOnEndOfStream: false);
        return TripFile.LooksLikeOne(start[..got]);
    }
}
