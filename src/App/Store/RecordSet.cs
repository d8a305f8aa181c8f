namespace SecondShore.App.Store;

/// <summary>The records that stand: those not replaced and not taken back, newest first.</summary>
public static class RecordSet
{
    /// <summary>Records in force. The order in which they came does not matter.</summary>
    public static IReadOnlyList<RecordRow> Standing(IEnumerable<RecordRow> all)
    {
        List<RecordRow> rows = [.. all];
        HashSet<string> replaced = new(StringComparer.Ordinal);
        foreach (RecordRow row in rows)
            if (row.Replaces is not null) replaced.Add(row.Replaces);
        return [.. rows.Where(row => !row.Removed && !replaced.Contains(row.Id))
            .OrderByDescending(row => row.At, StringComparer.Ordinal).ThenByDescending(row => row.Id, StringComparer.Ordinal)];
    }
}
