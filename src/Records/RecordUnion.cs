namespace SecondShore.Records;

/// <summary>What a set of records says. Depends on the set alone: not on the order, nor on how often a record came.</summary>
public static class RecordUnion
{
    /// <summary>The records in force: not taken back, not corrected; newest first, equal times by id.</summary>
    public static IReadOnlyList<LakeRecord> Standing(IEnumerable<LakeRecord> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        Dictionary<string, LakeRecord> known = new(StringComparer.Ordinal);
        HashSet<string> replaced = new(StringComparer.Ordinal);
        foreach (LakeRecord record in all)
        {
            known[record.Id] = record;
            if (record.Replaces is not null) replaced.Add(record.Replaces);
        }

        return [.. known.Values.Where(r => !r.Removed && !replaced.Contains(r.Id))
            .OrderByDescending(r => r.At, StringComparer.Ordinal).ThenByDescending(r => r.Id, StringComparer.Ordinal)];
    }
}
