using SecondShore.Engine.Core;

namespace SecondShore.Engine.Learn;

/// <summary>The log as it stands after corrections: a view over immutable entries.</summary>
public static class LogBook
{
    /// <summary>The entries that hold: those no later entry supersedes, withdrawals left out, ordered by time, then id.</summary>
    /// <remarks>
    /// Entries given twice (joined logs) count once. Of two corrections of one entry both stand against it, and the later
    /// by <see cref="LogEntry.At"/> of writing order cannot be known, so the one with the greater id wins: the same on
    /// every device. A ring of corrections keeps its greatest id.
    /// </remarks>
    public static IReadOnlyList<LogEntry> Current(IEnumerable<LogEntry> entries)
    {
        Require.NotNull(entries);
        Dictionary<string, LogEntry> byId = [];
        foreach (LogEntry entry in entries) byId[entry.Id] = entry;

        Dictionary<string, LogEntry> winnerOfRoot = [];
        foreach (LogEntry entry in byId.Values)
        {
            (string root, int depth) = RootOf(entry, byId);
            if (!winnerOfRoot.TryGetValue(root, out LogEntry? standing)) { winnerOfRoot[root] = entry; continue; }
            int standingDepth = RootOf(standing, byId).Depth;
            if (depth > standingDepth || (depth == standingDepth && string.CompareOrdinal(entry.Id, standing.Id) > 0))
                winnerOfRoot[root] = entry;
        }

        List<LogEntry> current = [];
        foreach (LogEntry entry in winnerOfRoot.Values)
            if (!entry.Withdrawn) current.Add(entry);
        current.Sort(static (a, b) => a.At != b.At ? a.At.CompareTo(b.At) : string.CompareOrdinal(a.Id, b.Id));
        return current;
    }

    // The first entry of a chain of corrections and the number of corrections up to this entry.
    private static (string Root, int Depth) RootOf(LogEntry entry, Dictionary<string, LogEntry> byId)
    {
        HashSet<string> seen = [entry.Id];
        LogEntry at = entry;
        while (at.Supersedes is string older)
        {
            if (!seen.Add(older)) return (Least(seen), 0);
            if (!byId.TryGetValue(older, out LogEntry? next)) return (older, seen.Count - 1);
            at = next;
        }

        return (at.Id, seen.Count - 1);
    }

    private static string Least(HashSet<string> ids)
    {
        string least = "";
        foreach (string id in ids)
            if (least.Length == 0 || string.CompareOrdinal(id, least) < 0) least = id;
        return least;
    }
}
