namespace SecondShore.Formats.Files;

/// <summary>A folder on disk, two levels deep; names that start with a dot are left alone.</summary>
public sealed class FolderFiles : ILakeFiles
{
    /// <summary>Most files taken from one folder.</summary>
    public static readonly int MaxFiles = 4000;

    /// <summary>Longest file read, bytes.</summary>
    public static readonly long MaxFileBytes = TripFileLimits.Default.MaxFileBytes;

    private readonly string _path;
    private readonly HashSet<string>? _only;

    /// <summary>Opens a folder.</summary>
    /// <exception cref="IOException">The folder is not there, cannot be listed, or holds over <see cref="MaxFiles"/> files.</exception>
    public FolderFiles(string path)
        : this(path, null)
    {
    }

    private FolderFiles(string path, HashSet<string>? only)
    {
        _path = Path.GetFullPath(path);
        _only = only;
        Name = Path.GetFileName(Path.TrimEndingDirectorySeparator(_path));
        Entries = List();
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public IReadOnlyList<LakeFileEntry> Entries { get; }

    /// <summary>One file of a folder together with the files of the same stem that belong to it (.prj, .dbf and so on).</summary>
    public static FolderFiles OneFile(string path)
    {
        string full = Path.GetFullPath(path);
        string folder = Path.GetDirectoryName(full) ?? ".";
        string leaf = Path.GetFileName(full), stem = FileNames.Stem(leaf);
        HashSet<string> only = new(StringComparer.OrdinalIgnoreCase) { leaf };
        foreach (string ending in SidecarEndings)
        {
            only.Add($"{stem}.{ending}");
            only.Add($"{leaf}.{ending}");
        }

        return new FolderFiles(folder, only);
    }

    /// <summary>Endings of files that describe another file of the same stem.</summary>
    public static IReadOnlyList<string> SidecarEndings { get; } = ["prj", "dbf", "shx", "cpg", "tfw", "tifw", "qpj", "aux.xml"];

    /// <summary>Whether a folder stands where a file of this name is looked for.</summary>
    public bool HasFolder(string name) => FileNames.IsSafe(name) && Directory.Exists(Path.Combine(_path, name));

    /// <inheritdoc/>
    public byte[] Read(string name)
    {
        if (!FileNames.IsSafe(name)) throw new IOException($"'{name}' is not a name inside a lake folder.");
        string path = Path.Combine(_path, name.Replace('/', Path.DirectorySeparatorChar));
        long length = LengthOf(new FileInfo(path));
        // What has no length is an empty file, or a pipe or device that would give bytes without end, or none for ever.
        if (length == 0) return [];
        if (length > MaxFileBytes)
            throw new TripRefusedException($"the file has {(int)(length >> 20)} MB, and files of at most {(int)(MaxFileBytes >> 20)} MB are read; thin it, or take it out of the folder.");
        return File.ReadAllBytes(path);
    }

    // Of a link, what it leads to.
    private static long LengthOf(FileInfo file) => file.LinkTarget is null ? file.Length
        : file.ResolveLinkTarget(returnFinalTarget: true) is FileInfo { Exists: true } target ? target.Length : 0;

    private List<LakeFileEntry> List()
    {
        EnumerationOptions options = new()
        {
            RecurseSubdirectories = _only is null,
            MaxRecursionDepth = 1,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System,
            IgnoreInaccessible = false,
        };
        List<LakeFileEntry> entries = [];
        foreach (FileInfo file in new DirectoryInfo(_path).EnumerateFiles("*", options))
        {
            string name = Path.GetRelativePath(_path, file.FullName).Replace(Path.DirectorySeparatorChar, '/');
            if (_only is not null ? !_only.Contains(name) : name.StartsWith('.') || !FileNames.IsSafe(name)) continue;
            entries.Add(new LakeFileEntry(name, LengthOf(file)));
            if (entries.Count > MaxFiles)
                throw new TripRefusedException($"{_path} holds over {MaxFiles} files: it does not look like a lake folder.");
        }

        entries.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        return entries;
    }
}
