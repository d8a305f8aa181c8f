using System.Globalization;
using System.Text;

namespace SecondShore.Records;

/// <summary>
/// The one rule of names inside a lake's folder: for records, trip files, the host and the app alike. What it takes may be written
/// on any system's disk and stays inside the folder.
/// </summary>
public static class LakeFileNames
{
    /// <summary>Longest name taken, UTF-16 characters.</summary>
    public static readonly int MaxLength = 200;

    /// <summary>Most parts between slashes.</summary>
    public static readonly int MaxParts = 4;

    // Some systems keep these for devices, whatever stands behind a dot.
    private static readonly HashSet<string> Devices = new(
        ["con", "prn", "aux", "nul", .. Enumerable.Range(1, 9).SelectMany(n => (string[])[$"com{n}", $"lpt{n}"])], StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Whether a name is relative and stays inside: no <c>..</c>, no drive or root, no backslash, no control or direction
    /// character, no half of a surrogate pair, no part that ends in a dot or blank (some systems drop those, and two names would
    /// become one) or is called like a device.
    /// </summary>
    public static bool IsSafe(string? name)
    {
        if (string.IsNullOrEmpty(name) || name.Length > MaxLength) return false;
        foreach (Rune rune in name.EnumerateRunes())
            if (rune == Rune.ReplacementChar || IsOdd(rune)) return false;
        string[] parts = name.Split('/');
        if (parts.Length > MaxParts) return false;
        foreach (string part in parts)
            if (part.Length == 0 || part[^1] is '.' or ' ' || part[0] == ' ' || Devices.Contains(part.Split('.')[0].TrimEnd())) return false;
        return true;
    }

    /// <summary>Names with one key are one file on some systems: they differ in case, or in how accents are written.</summary>
    public static string TwinKey(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        StringBuilder key = new(name.Length);
        foreach (char c in Composed(name)) key.Append(char.ToLowerInvariant(char.ToUpperInvariant(c)));
        return key.ToString();
    }

    private static string Composed(string name)
    {
        try
        {
            return name.Normalize(NormalizationForm.FormC);
        }
        catch (Exception e) when (e is ArgumentException or PlatformNotSupportedException)
        {
            return name;
        }
    }

    private static bool IsOdd(Rune rune) => rune.Value is '\\' or ':' or '*' or '?' or '"' or '<' or '>' or '|'
        || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator
            or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate;
}
