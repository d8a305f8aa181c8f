using System.Text.Json;

namespace SecondShore.Records;

/// <summary>The body of a record of kind <see cref="LakeRecord.FileKind"/>: which bytes a file of the lake holds.</summary>
/// <param name="Path">Name inside the lake's folder, such as <c>climate/2014.csv</c>.</param>
/// <param name="Sha256">SHA-256 of the bytes, lower-case hexadecimal.</param>
/// <param name="SizeBytes">Length in bytes.</param>
public sealed record FileVersion(string Path, string Sha256, long SizeBytes)
{
    /// <summary>The version a record names; null for other kinds and for a body that cannot be read.</summary>
    public static FileVersion? Of(LakeRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (!string.Equals(record.Kind, LakeRecord.FileKind, StringComparison.Ordinal)) return null;
        try
        {
            FileVersion? version = JsonSerializer.Deserialize(record.Body, RecordsJson.Default.FileVersion);
            return version is { Path.Length: > 0, SizeBytes: >= 0 } && RecordIds.IsWellFormed(version.Sha256) ? version : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The record of this version, in the place of earlier ones.</summary>
    public LakeRecord ToRecord(DateTimeOffset at, string? replaces) =>
        LakeRecord.Make(LakeRecord.FileKind, at, replaces, removed: false, JsonSerializer.Serialize(this, RecordsJson.Default.FileVersion));

    /// <summary>
    /// The version in force of each file. Where two devices changed a file apart, the later one by time, then by id, is
    /// taken, the same everywhere; the other stays among the records with its bytes.
    /// </summary>
    public static IReadOnlyDictionary<string, (LakeRecord Record, FileVersion Version)> Standing(IEnumerable<LakeRecord> all)
    {
        Dictionary<string, (LakeRecord, FileVersion)> files = new(StringComparer.Ordinal);
        foreach (LakeRecord record in RecordUnion.Standing(all))
            if (Of(record) is { } version) files.TryAdd(version.Path, (record, version));
        return files;
    }
}
