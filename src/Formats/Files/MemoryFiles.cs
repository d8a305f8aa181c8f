using System.Text;

namespace SecondShore.Formats.Files;

/// <summary>Files held in memory. Immutable: each change gives a new set that shares the unchanged bytes.</summary>
public sealed class MemoryFiles : ILakeFiles
{
    private readonly SortedDictionary<string, byte[]> _bytes;

    /// <summary>Makes a set of files.</summary>
    /// <param name="name">What the user calls it.</param>
    /// <param name="files">Names and bytes; kept, not copied.</param>
    /// <exception cref="ArgumentException">A name is not safe (<see cref="FileNames.IsSafe"/>) or comes twice.</exception>
    public MemoryFiles(string name, IEnumerable<KeyValuePair<string, byte[]>> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        Name = name;
        _bytes = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        foreach ((string file, byte[] bytes) in files)
        {
            if (!FileNames.IsSafe(file)) throw new ArgumentException($"'{file}' is not a name inside a lake folder.", nameof(files));
            _bytes.Add(file, bytes);
        }

        Entries = [.. _bytes.Select(f => new LakeFileEntry(f.Key, f.Value.LongLength))];
    }

    /// <summary>An empty set.</summary>
    public MemoryFiles(string name)
        : this(name, [])
    {
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public IReadOnlyList<LakeFileEntry> Entries { get; }

    /// <inheritdoc/>
    public byte[] Read(string name) => _bytes.TryGetValue(name, out byte[]? bytes)
        ? bytes
        : throw new FileNotFoundException($"There is no file '{name}' in {Name}.", name);

    /// <summary>The set with one file added or replaced.</summary>
    public MemoryFiles With(string name, byte[] bytes) =>
        new(Name, _bytes.Where(f => f.Key != name).Append(KeyValuePair.Create(name, bytes)));

    /// <summary>The set with one text file (UTF-8, no mark) added or replaced.</summary>
    public MemoryFiles With(string name, string text) => With(name, Encoding.UTF8.GetBytes(text));
}
