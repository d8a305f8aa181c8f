namespace SecondShore.Records;

/// <summary>What a set of records says, by the one rule of <see cref="StandingRule"/>.</summary>
public static class RecordUnion
{
    /// <summary>The records in force: one of each entry, none of those taken back; newest first, equal times by id.</summary>
    public static IReadOnlyList<LakeRecord> Standing(IEnumerable<LakeRecord> all) =>
        StandingRule.Of(all, record => new EntryLink(record.Id, record.Replaces, record.Removed, record.At));
}
