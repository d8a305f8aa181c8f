namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Which unit of depth the free words of a file name: that which stands nearest after a word for depth, or the only one.</summary>
internal static class UnitWords
{
    private const int Reach = 5;

    /// <summary>The unit; and whether both feet and metres are named with none of them clearly the depth's.</summary>
    public static (DepthUnit? Unit, bool Both) In(string words)
    {
        List<string> all = HeaderWords.Split(words.Length > 4000 ? words[..4000] : words, 4000);
        HashSet<DepthUnit> any = [], depths = [];
        for (int i = 0; i < all.Count; i++)
        {
            if (Unit(all[i]) is not DepthUnit unit) continue;
            any.Add(unit);
            if (OfDepth(all, i)) depths.Add(unit);
        }

        if (depths.Count == 1) return (depths.First(), false);
        return any.Count == 1 ? (any.First(), false) : (null, any.Count > 1);
    }

    // A letter alone may be anything in a sentence.
    private static DepthUnit? Unit(string word) => word switch
    {
        "feet" or "ft" or "foot" => DepthUnit.Feet,
        "metres" or "meters" or "meter" or "metre" => DepthUnit.Metres,
        _ => null,
    };

    // The last word before that says what it measures is a depth.
    private static bool OfDepth(List<string> all, int at)
    {
        for (int i = at - 1; i >= Math.Max(0, at - Reach); i--)
        {
            if (Unit(all[i]) is not null) return false;
            ColumnRole role = WordList.RoleOf(all[i]).Role;
            if (role is ColumnRole.Depth or ColumnRole.Height) return true;
            if (role is ColumnRole.East or ColumnRole.North or ColumnRole.Lat or ColumnRole.Lon || all[i] is "positions" or "position" or "grid" or "utm") return false;
        }

        return false;
    }
}
