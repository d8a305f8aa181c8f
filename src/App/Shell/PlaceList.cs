namespace SecondShore.App.Shell;

/// <summary>The places of the menu, in order: address and the text key of its word.</summary>
internal static class PlaceList
{
    /// <summary>All places.</summary>
    public static IReadOnlyList<(string Path, string Key)> All { get; } =
    [
        ("", "place.lake"),
        ("shore", "place.shore"),
        ("wind", "place.wind"),
        ("rig", "place.rig"),
        ("day", "place.day"),
        ("log", "place.log"),
        ("aboard", "place.aboard"),
    ];
}
