namespace SecondShore.Formats.Files;

/// <summary>
/// Writes files to disk so that nothing is left half written: everything is first written beside its place, and only
/// then renamed into it.
/// </summary>
public static class FilesWriter
{
    /// <summary>Writes a set of files into a folder, which is made when missing. Other files there are left alone.</summary>
    /// <exception cref="IOException">A file cannot be read or written; files already renamed are whole, the rest unchanged.</exception>
    public static void WriteFolder(ILakeFiles files, string path, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(files);
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        string stage = $"{target}.part-{Path.GetRandomFileName()}";
        try
        {
            for (int i = 0; i < files.Entries.Count; i++)
            {
                cancellation.ThrowIfCancellationRequested();
                string name = files.Entries[i].Name;
                if (!FileNames.IsSafe(name)) throw new IOException($"'{name}' is not a name inside a lake folder.");
                string staged = Path.Combine(stage, name);
                Directory.CreateDirectory(Path.GetDirectoryName(staged)!);
                File.WriteAllBytes(staged, files.Read(name));
                progress?.Report((i + 1.0) / files.Entries.Count);
            }

            Install(files, stage, target);
        }
        finally
        {
            if (Directory.Exists(stage)) Directory.Delete(stage, recursive: true);
        }
    }

    /// <summary>Writes one file whole or not at all.</summary>
    /// <exception cref="IOException">It cannot be written; an earlier file of the name is unchanged.</exception>
    public static void WriteFile(string path, ReadOnlySpan<byte> bytes)
    {
        string full = Path.GetFullPath(path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        string part = $"{full}.part-{Path.GetRandomFileName()}";
        try
        {
            File.WriteAllBytes(part, bytes);
            File.Move(part, full, overwrite: true);
        }
        finally
        {
            if (File.Exists(part)) File.Delete(part);
        }
    }

    private static void Install(ILakeFiles files, string stage, string target)
    {
        Directory.CreateDirectory(stage);
        if (!Directory.Exists(target))
        {
            Directory.Move(stage, target);
            return;
        }

        foreach (LakeFileEntry file in files.Entries)
        {
            string place = Path.Combine(target, file.Name);
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.Move(Path.Combine(stage, file.Name), place, overwrite: true);
        }
    }
}
