using SecondShore.Records;

namespace SecondShore.Desk.Entries;

/// <summary>The records that stand, by the one rule of <see cref="StandingRule"/>: newest first, each once.</summary>
public static class RecordSet
{
    /// <summary>When a record happened; the first second of 1970 where its time is none, which other devices may hold.</summary>
    public static DateTimeOffset At(RecordRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return RecordTimes.TryRead(row.At, out DateTimeOffset at) ? at : DateTimeOffset.UnixEpoch;
    }

    /// <summary>Records in force. The order in which they came does not matter.</summary>
    public static IReadOnlyList<RecordRow> Standing(IEnumerable<RecordRow> all) => StandingRule.Of(all, LinkOf);

    /// <summary>What the rule of standing asks of a record.</summary>
    public static EntryLink LinkOf(RecordRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return new EntryLink(row.Id, row.Replaces, row.Removed, row.At);
    }

    /// <summary>This device's records joined to the rows of the lake's files; what both hold stands once, as the record.</summary>
    public static IReadOnlyList<RecordRow> Joined(IReadOnlyList<RecordRow> records, IReadOnlyList<RecordRow> filed)
    {
        // Rows of readings.csv have no ids: the same kind, time and value is the same reading.
        HashSet<(string, string, double, double)> known = [.. records.Where(r => RecordKinds.Readings.Contains(r.Kind)).Select(Sight)];
        return Standing(records.Concat(filed.Where(row => !RecordKinds.Readings.Contains(row.Kind) || !known.Contains(Sight(row)))));
    }

    private static (string Kind, string At, double Value, double DepthM) Sight(RecordRow row)
    {
        Entry entry = Entry.Of(row);
        return (row.Kind, row.At, Math.Round(entry.Value ?? 0, 5), Math.Round(entry.DepthM ?? 0, 5));
    }
}
