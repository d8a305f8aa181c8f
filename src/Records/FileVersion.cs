using System.Text.Json;

namespace SecondShore.Records;

/// <summary>The body of a record of kind <see cref="LakeRecord.FileKind"/>: which bytes a file of the lake holds.</summary>
/// <param name="Path">Name inside the lake's folder, such as <c>climate/2014.csv</c>.</param>
/// <param name="Sha256">SHA-256 of the bytes, lower-case hexadecimal.</param>
/// <param name="SizeBytes">Length in bytes.</param>
public sealed record FileVersion(string Path, string Sha256, long SizeBytes)
{
    /// <summary>Longest body of such a record, UTF-16 characters: a name of the longest, spelled out, and the rest.</summary>
    public static readonly int MaxBodyLength = 2048;

    /// <summary>The version a record names; null for other kinds, for a body that cannot be read, and for a name that is none (<see cref="LakeFileNames"/>).</summary>
    public static FileVersion? Of(LakeRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (!string.Equals(record.Kind, LakeRecord.FileKind, StringComparison.Ordinal) || record.Body.Length > MaxBodyLength) return null;
        try
        {
            FileVersion? version = JsonSerializer.Deserialize(record.Body, RecordsJson.Default.FileVersion);
            return version is { SizeBytes: >= 0 } && LakeFileNames.IsSafe(version.Path) && RecordIds.IsWellFormed(version.Sha256) ? version : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>The record of this version, in the place of earlier ones.</summary>
    public LakeRecord ToRecord(DateTimeOffset at, string? replaces) =>
        LakeRecord.Make(LakeRecord.FileKind, at, replaces, removed: false, JsonSerializer.Serialize(this, RecordsJson.Default.FileVersion));

    /// <summary>
    /// The version in force of each file, by <see cref="StandingRule"/>; of a file that two devices made apart the later one by
    /// time, then by id, the same everywhere. The others stay among the records with their bytes.
    /// </summary>
    public static IReadOnlyDictionary<string, (LakeRecord Record, FileVersion Version)> Standing(IEnumerable<LakeRecord> all)
    {
        Dictionary<string, (LakeRecord, FileVersion)> files = new(StringComparer.Ordinal);
        // A version that cannot be read, kept by looser rules, stands in nobody's way.
        foreach (LakeRecord record in RecordUnion.Standing(all.Where(r => r.Kind == LakeRecord.FileKind && (r.Removed || Of(r) is not null))))
            if (Of(record) is { } version) files.TryAdd(version.Path, (record, version));
        return files;
    }
}
