namespace SecondShore.Records;

/// <summary>What the rule of standing asks of an entry, whatever holds it: a record, a row of a file.</summary>
/// <param name="Id">Its id; null or empty for an entry that nothing can name.</param>
/// <param name="Replaces">Id of the entry it corrects or takes back; null or empty for none.</param>
/// <param name="Removed">Whether it takes that one back without putting anything in its place.</param>
/// <param name="At">Its time in a form that sorts as text.</param>
public readonly record struct EntryLink(string? Id, string? Replaces, bool Removed, string At);

/// <summary>
/// The one rule of what stands. Entries that correct one another, however indirectly, are one entry, and one of them has the last
/// word: the one at the end of the longest chain of corrections; of equally long ones a correction before a removal, then the later
/// by its time, then the greater id. A removal that has the last word leaves nothing standing.
/// </summary>
/// <remarks>
/// Depends on the set alone: not on the order, nor on how often an entry came. Whoever corrects what stands, having seen it, makes
/// the longest chain, and so has the last word on every device. A ring of corrections, which only files can hold, counts as one entry.
/// Linear in the number of entries, however long the chains.
/// </remarks>
public static class StandingRule
{
    /// <summary>Of each entry the one with the last word, removals included; in the order in which each entry was first met.</summary>
    /// <param name="all">Entries. Of two with one id the first counts.</param>
    /// <param name="linkOf">What the rule asks of each.</param>
    public static IReadOnlyList<T> LastWords<T>(IEnumerable<T> all, Func<T, EntryLink> linkOf)
    {
        ArgumentNullException.ThrowIfNull(all);
        ArgumentNullException.ThrowIfNull(linkOf);
        List<T> items = [];
        List<EntryLink> links = [];
        Dictionary<string, int> byId = new(StringComparer.Ordinal);
        foreach (T item in all)
        {
            EntryLink link = linkOf(item);
            if (link.Id is { Length: > 0 } id && !byId.TryAdd(id, items.Count)) continue;
            items.Add(item);
            links.Add(link);
        }

        (string Root, int Depth)[] places = Places(links, byId);
        Dictionary<string, int> last = new(StringComparer.Ordinal);
        List<string> met = [];
        for (int i = 0; i < items.Count; i++)
        {
            if (!last.TryGetValue(places[i].Root, out int standing)) met.Add(places[i].Root);
            else if (!HasLastWord(i, standing, links, places)) continue;
            last[places[i].Root] = i;
        }

        return [.. met.Select(root => items[last[root]])];
    }

    /// <summary>What stands: the last words that are no removals, newest first, equal times by id.</summary>
    public static IReadOnlyList<T> Of<T>(IEnumerable<T> all, Func<T, EntryLink> linkOf) =>
        [.. LastWords(all, linkOf).Where(item => !linkOf(item).Removed)
            .OrderByDescending(item => linkOf(item).At, StringComparer.Ordinal).ThenByDescending(item => linkOf(item).Id, StringComparer.Ordinal)];

    private static bool HasLastWord(int one, int other, List<EntryLink> links, (string Root, int Depth)[] places)
    {
        if (places[one].Depth != places[other].Depth) return places[one].Depth > places[other].Depth;
        if (links[one].Removed != links[other].Removed) return !links[one].Removed;
        int byTime = string.CompareOrdinal(links[one].At, links[other].At);
        return byTime != 0 ? byTime > 0 : string.CompareOrdinal(links[one].Id, links[other].Id) > 0;
    }

    // Of each entry the first one of its chain, and how many corrections lie between. Walked without recursion: chains may be long.
    private static (string Root, int Depth)[] Places(List<EntryLink> links, Dictionary<string, int> byId)
    {
        (string Root, int Depth)[] places = new (string, int)[links.Count];
        bool[] known = new bool[links.Count], walked = new bool[links.Count];
        List<int> walk = [];
        for (int start = 0; start < links.Count; start++)
        {
            walk.Clear();
            (string Root, int Depth) end = ("", -1);
            for (int at = start; ;)
            {
                if (known[at]) { end = places[at]; break; }
                if (walked[at]) { end = Ring(walk, at, links, places, known); break; }
                walked[at] = true;
                walk.Add(at);
                if (links[at].Replaces is not { Length: > 0 } older || older == links[at].Id)
                {
                    // Nothing can name an entry without an id, so it shares its root with no other.
                    end = (links[at].Id is { Length: > 0 } id ? id : FormattableString.Invariant($"\0{at}"), -1);
                    break;
                }

                if (!byId.TryGetValue(older, out at)) { end = (older, 0); break; }
            }

            for (int i = walk.Count - 1; i >= 0; i--)
            {
                if (known[walk[i]]) continue;
                end = (end.Root, end.Depth + 1);
                (places[walk[i]], known[walk[i]]) = (end, true);
            }
        }

        return places;
    }

    // The entries of a ring are all first: the ring is called by its least id, and what hangs on it is deeper.
    private static (string Root, int Depth) Ring(List<int> walk, int at, List<EntryLink> links, (string Root, int Depth)[] places, bool[] known)
    {
        int[] ring = [.. walk.Skip(walk.IndexOf(at))];
        string least = ring.Select(i => links[i].Id!).Min(StringComparer.Ordinal)!;
        foreach (int i in ring) (places[i], known[i]) = ((least, 0), true);
        return (least, 0);
    }
}
