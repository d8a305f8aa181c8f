namespace SecondShore.Formats.Files;

/// <summary>A set of named files: a folder on disk, an unpacked trip file, or files held by the browser.</summary>
public interface ILakeFiles
{
    /// <summary>What the user calls the set: the folder's or the trip file's name, for messages.</summary>
    string Name { get; }

    /// <summary>Every file, in ordinal order of name.</summary>
    IReadOnlyList<LakeFileEntry> Entries { get; }

    /// <summary>The bytes of a file. The caller must not change them.</summary>
    /// <exception cref="IOException">The file is not there or cannot be read.</exception>
    byte[] Read(string name);
}

/// <summary>One file of a lake.</summary>
/// <param name="Name">Name relative to the lake's folder, with <c>/</c> between parts, such as <c>climate/2014.csv</c>.</param>
/// <param name="LengthBytes">Length in bytes.</param>
public sealed record LakeFileEntry(string Name, long LengthBytes);

/// <summary>Shorthands over <see cref="ILakeFiles"/>.</summary>
public static class LakeFilesExtensions
{
    /// <summary>The name as filed of a file looked up without regard to case; null when there is none.</summary>
    public static string? Find(this ILakeFiles files, string name)
    {
        ArgumentNullException.ThrowIfNull(files);
        foreach (LakeFileEntry entry in files.Entries)
            if (string.Equals(entry.Name, name, StringComparison.OrdinalIgnoreCase)) return entry.Name;
        return null;
    }
}
