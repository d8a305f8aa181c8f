using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using SecondShore.Records;

namespace SecondShore.Desk.Entries;

/// <summary>
/// Records as devices and hosts share them, and as this device keeps them. They differ in one thing: a shared record names what it
/// replaces by a record's id, while a row of a lake's files may be called anything. Such a row is named by a hash, and its own name
/// travels in the entry.
/// </summary>
public static class SharedRecords
{
    /// <summary>The id that stands for a row of a lake's files.</summary>
    public static string IdOfRow(string row) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes("second-shore-row\n" + row)));

    /// <summary>The record as it is shared.</summary>
    public static LakeRecord ToShared(RecordRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        string? replaces = row.Replaces is null || RecordIds.IsWellFormed(row.Replaces) ? row.Replaces : IdOfRow(row.Replaces);
        return new LakeRecord(row.Id, row.Kind, row.At, replaces, row.Removed, row.Json);
    }

    /// <summary>The record as this device keeps it.</summary>
    public static RecordRow ToRow(LakeRecord record, string lake)
    {
        ArgumentNullException.ThrowIfNull(record);
        string? replaces = record.Replaces is { } id && RowOf(record) is { } row && IdOfRow(row) == id ? row : record.Replaces;
        return new RecordRow(record.Id, lake, record.Kind, record.At, replaces, record.Removed, record.Body);
    }

    /// <summary>
    /// The same records with ids of their content, for those kept before ids were made so. The old id becomes the mark, so that
    /// every device that holds such a record gives it the same new id.
    /// </summary>
    public static IReadOnlyList<RecordRow> WithContentIds(IReadOnlyList<RecordRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        Dictionary<string, RecordRow> old = rows.ToDictionary(r => r.Id, StringComparer.Ordinal), renewed = new(StringComparer.Ordinal);
        return [.. rows.Select(Renewed)];

        RecordRow Renewed(RecordRow row)
        {
            if (RecordIds.IsWellFormed(row.Id)) return row;
            if (renewed.TryGetValue(row.Id, out RecordRow? done)) return done;
            // A ring of corrections has no first one: it is opened where it is met.
            renewed[row.Id] = row;
            string? replaces = row.Replaces is { } id && id != row.Id && old.TryGetValue(id, out RecordRow? before) ? Renewed(before).Id : row.Replaces;
            string? file = replaces is null || RecordIds.IsWellFormed(replaces) ? null : replaces;
            string json = JsonSerializer.Serialize(Entry.Of(row) with { Mark = row.Id, Row = file }, EntryJson.Default.Entry);
            LakeRecord record = LakeRecord.Make(row.Kind, RecordSet.At(row), file is null ? replaces : IdOfRow(file), row.Removed, json);
            return renewed[row.Id] = ToRow(record, row.Lake);
        }
    }

    private static string? RowOf(LakeRecord record) => EntryReader.Read(record.Kind, record.Body).Row;
}
