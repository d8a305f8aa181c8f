using System.Text;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>What the words of a header say a column is.</summary>
internal enum ColumnRole
{
    /// <summary>Nothing that is known here.</summary>
    Unknown,

    /// <summary>Latitude.</summary>
    Lat,

    /// <summary>Longitude.</summary>
    Lon,

    /// <summary>Easting.</summary>
    East,

    /// <summary>Northing.</summary>
    North,

    /// <summary>Depth below the surface.</summary>
    Depth,

    /// <summary>Height or elevation.</summary>
    Height,

    /// <summary>A third number of no stated sense.</summary>
    Bare,

    /// <summary>Time, a counter, a speed, or anything else that is no place and no depth.</summary>
    Other,
}

/// <summary>What a header's words say: a role, how surely (log-odds), and a unit. Words in any case, with any separator, in several languages.</summary>
/// <param name="Role">The role.</param>
/// <param name="Weight">Log-odds for the role.</param>
/// <param name="Unit">The unit named, or null.</param>
internal readonly record struct HeaderWords(ColumnRole Role, double Weight, DepthUnit? Unit)
{
    /// <summary>Whether a measure is named that is not known here, such as <c>(famnar)</c>: it must be asked about.</summary>
    public bool OddUnit { get; private init; }

    /// <summary>Whether the role hangs on a letter or two, which only hints: <c>h</c> is often a height.</summary>
    public bool IsLetter { get; private init; }

    /// <summary>Reads a header.</summary>
    public static HeaderWords Of(string header)
    {
        List<string> words = Split(header);
        bool scaled = IsScaled(header, words);
        DepthUnit? unit = scaled ? null : UnitOf(words) ?? (FeetMark(header) ? DepthUnit.Feet : null);
        (ColumnRole role, double weight) = (ColumnRole.Unknown, 0);
        bool other = false, letter = false;
        int plain = 0;
        foreach (string word in words)
        {
            if (WordList.IsUnit(word) || WordList.Filler.Contains(word)) continue;
            plain++;
            (ColumnRole found, double surely) = WordList.RoleOf(word);
            other |= found == ColumnRole.Other && surely >= WordList.Veto;
            if (found != ColumnRole.Unknown && surely > weight) (role, weight, letter) = (found, surely, word.Length < 2);
            else if (found == ColumnRole.Lat || found == ColumnRole.Lon) (role, weight) = (found, Math.Max(surely, weight));
        }

        if (other && role is not (ColumnRole.Lat or ColumnRole.Lon)) return new HeaderWords(ColumnRole.Other, WordList.Veto, unit);
        // A name that says nothing else is surer: "Depth" beside "BT Beam1 Depth".
        if (role is ColumnRole.Depth or ColumnRole.Height or ColumnRole.Bare && plain == 1) weight += 3.5;
        return new HeaderWords(role, weight, unit) { IsLetter = letter, OddUnit = unit is null && role is ColumnRole.Depth or ColumnRole.Height or ColumnRole.Bare && (scaled || NamesOddUnit(header, words)) };
    }

    // Depth (') and Depth'; a name in quotes is none.
    private static bool FeetMark(string header)
    {
        string name = header.Trim();
        if (name.Length < 2 || name[0] is '\'' or '′') return false;
        return name[^1] is '\'' or '′' || name.Contains("(')", StringComparison.Ordinal) || name.Contains("[']", StringComparison.Ordinal);
    }

    // (0.1 m), [1/10 m], x 100: a multiple of what the unit says, in words of no fixed form.
    private static bool IsScaled(string header, List<string> words)
    {
        if (words.Exists(w => w is "tenths" or "hundredths" or "zehntel" or "hundertstel")) return true;
        int open = header.IndexOfAny(['(', '[']);
        if (open >= 0 && open + 1 < header.Length && header[(open + 1)..].TrimStart() is [>= '0' and <= '9', ..] inside
            && inside.IndexOfAny([')', ']']) is int close and > 0 && Split(inside[..close]).Exists(WordList.IsUnit)) return true;
        int times = header.IndexOfAny(['*', '×']);
        if (times < 0 && words.IndexOf("x") is > 0) times = header.LastIndexOf('x');
        return times >= 0 && header[(times + 1)..].TrimStart() is ['1', '0', ..];
    }

    // An old measure anywhere, or a short word in brackets that nothing else explains.
    private static bool NamesOddUnit(string header, List<string> words)
    {
        if (words.Exists(WordList.OldUnits.Contains)) return true;
        int open = header.IndexOfAny(['(', '[']), close = header.LastIndexOfAny([')', ']']);
        if (open < 1 || close < open + 2 || close - open > 10) return false;
        List<string> inside = Split(header[(open + 1)..close]);
        return inside.Count == 1 && !WordList.IsUnit(inside[0]) && !WordList.Filler.Contains(inside[0]) && WordList.RoleOf(inside[0]).Role == ColumnRole.Unknown;
    }

    /// <summary>The unit that a header or any short text names.</summary>
    public static DepthUnit? UnitIn(string text) => UnitOf(Split(text));

    /// <summary>The words of a name: lower case without accents, parted at signs, at digits and where a capital follows a small letter.</summary>
    public static List<string> Split(string name, int longest = 200)
    {
        List<string> words = [];
        StringBuilder word = new();
        char before = '\0';
        foreach (char c in name.Length > longest ? name.AsSpan(0, longest) : name)
        {
            bool letter = char.IsLetter(c), turn = letter && char.IsUpper(c) && char.IsLower(before);
            if ((!letter || turn) && word.Length > 0) End();
            if (letter) Fold(word, c);
            before = c;
        }

        if (word.Length > 0) End();
        return words;

        void End()
        {
            words.Add(word.ToString());
            word.Clear();
        }
    }

    private static void Fold(StringBuilder word, char c)
    {
        char small = char.ToLowerInvariant(c);
        switch (small)
        {
            case 'ä' or 'æ': word.Append("ae"); break;
            case 'ö' or 'ø' or 'œ': word.Append("oe"); break;
            case 'ü': word.Append("ue"); break;
            case 'ß': word.Append("ss"); break;
            case 'å' or 'á' or 'à' or 'â' or 'ã' or 'ą': word.Append('a'); break;
            case 'é' or 'è' or 'ê' or 'ë' or 'ě' or 'ę': word.Append('e'); break;
            case 'í' or 'ì' or 'î' or 'ï' or 'ı': word.Append('i'); break;
            case 'ó' or 'ò' or 'ô' or 'õ' or 'ő': word.Append('o'); break;
            case 'ú' or 'ù' or 'û' or 'ů' or 'ű': word.Append('u'); break;
            case 'ý' or 'ÿ': word.Append('y'); break;
            case 'ł': word.Append('l'); break;
            case 'ś' or 'š' or 'ş': word.Append('s'); break;
            case 'ć' or 'č' or 'ç': word.Append('c'); break;
            case 'ń' or 'ň' or 'ñ': word.Append('n'); break;
            case 'ź' or 'ż' or 'ž': word.Append('z'); break;
            case 'ř': word.Append('r'); break;
            case 'ğ': word.Append('g'); break;
            default: word.Append(small); break;
        }
    }

    private static DepthUnit? UnitOf(List<string> words)
    {
        DepthUnit? found = null;
        foreach (string word in words)
        {
            if (WordList.Units.TryGetValue(word, out DepthUnit unit)) found = unit;
            else if (found is null && WordList.UnitAtEnd(word) is DepthUnit end) found = end;
        }

        return found;
    }
}
