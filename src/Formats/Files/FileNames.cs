namespace SecondShore.Formats.Files;

/// <summary>Which names may stand inside a lake's folder or trip file.</summary>
public static class FileNames
{
    /// <summary>Longest name taken.</summary>
    public static readonly int MaxLength = 200;

    /// <summary>Most parts between slashes.</summary>
    public static readonly int MaxParts = 4;

    /// <summary>
    /// Whether a name is relative and stays inside: no <c>..</c>, no drive or root, no backslash, no control character,
    /// no part that ends in a dot or blank (some systems drop those, and two names would become one).
    /// </summary>
    public static bool IsSafe(string name)
    {
        if (string.IsNullOrEmpty(name) || name.Length > MaxLength) return false;
        foreach (char c in name)
            if (c is '\\' or ':' or '*' or '?' or '"' or '<' or '>' or '|' || char.IsControl(c)) return false;
        string[] parts = name.Split('/');
        if (parts.Length > MaxParts) return false;
        foreach (string part in parts)
            if (part.Length == 0 || part[^1] is '.' or ' ' || part[0] == ' ') return false;
        return true;
    }

    /// <summary>The last part of a name.</summary>
    public static string Leaf(string name) => name[(name.LastIndexOf('/') + 1)..];

    /// <summary>The ending without its dot, in lower case; empty when there is none.</summary>
    public static string Ending(string name)
    {
        string leaf = Leaf(name);
        int dot = leaf.LastIndexOf('.');
        return dot < 0 ? "" : leaf[(dot + 1)..].ToLowerInvariant();
    }

    /// <summary>The name without its ending.</summary>
    public static string Stem(string name)
    {
        string ending = Ending(name);
        return ending.Length == 0 ? name : name[..^(ending.Length + 1)];
    }
}
