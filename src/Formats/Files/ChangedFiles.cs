namespace SecondShore.Formats.Files;

/// <summary>A set of files with some replaced or added; the others stay where they are, byte for byte.</summary>
public sealed class ChangedFiles : ILakeFiles
{
    private readonly ILakeFiles _origin;
    private readonly Dictionary<string, byte[]> _changes;

    private ChangedFiles(ILakeFiles origin, Dictionary<string, byte[]> changes)
    {
        _origin = origin;
        _changes = changes;
        Entries = [.. origin.Entries.Where(e => !changes.ContainsKey(e.Name))
            .Concat(changes.Select(c => new LakeFileEntry(c.Key, c.Value.LongLength)))
            .OrderBy(e => e.Name, StringComparer.Ordinal)];
    }

    /// <summary>A set with one file replaced or added.</summary>
    /// <exception cref="ArgumentException">The name is not safe (<see cref="FileNames.IsSafe"/>).</exception>
    public static ChangedFiles Of(ILakeFiles files, string name, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (!FileNames.IsSafe(name)) throw new ArgumentException($"'{name}' is not a name inside a lake folder.", nameof(name));
        ChangedFiles? earlier = files as ChangedFiles;
        Dictionary<string, byte[]> changes = earlier is null ? [] : new Dictionary<string, byte[]>(earlier._changes);
        changes[name] = bytes;
        return new ChangedFiles(earlier?._origin ?? files, changes);
    }

    /// <summary>The files that were changed, as they were before any change.</summary>
    public ILakeFiles Origin => _origin;

    /// <inheritdoc/>
    public string Name => _origin.Name;

    /// <inheritdoc/>
    public IReadOnlyList<LakeFileEntry> Entries { get; }

    /// <summary>Names of the files that differ from the origin.</summary>
    public IReadOnlyCollection<string> ChangedNames => _changes.Keys;

    /// <inheritdoc/>
    public byte[] Read(string name) => _changes.TryGetValue(name, out byte[]? bytes) ? bytes : _origin.Read(name);
}
