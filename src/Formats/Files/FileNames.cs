using SecondShore.Records;

namespace SecondShore.Formats.Files;

/// <summary>Which names may stand inside a lake's folder or trip file.</summary>
public static class FileNames
{
    /// <summary>Whether a name may stand there: the one rule of <see cref="LakeFileNames"/>.</summary>
    public static bool IsSafe(string name) => LakeFileNames.IsSafe(name);

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
