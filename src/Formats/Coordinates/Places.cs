using System.Runtime.CompilerServices;
using SecondShore.Atlas;

namespace SecondShore.Formats.Coordinates;

/// <summary>What the atlas tells of places and of coordinate systems; nothing where it was not fetched.</summary>
internal static class Places
{
    /// <summary>The country a place lies in or near (within half a degree); empty at sea, null when there is no atlas.</summary>
    public static string? Country(double latDeg, double lonDeg) => Ask(() => Lookup(latDeg, lonDeg));

    /// <summary>Whether there is sea within half a degree; null when there is no atlas.</summary>
    public static bool? NearSea(double latDeg, double lonDeg) => Ask<bool?>(() => Sea(latDeg, lonDeg));

    /// <summary>Whether the atlas is there. What names its types must be called only where it is.</summary>
    public static bool IsThere => Ask<bool?>(() => Probe()) == true;

    /// <summary>Whether a place lies in the area of use of a system, with a margin in degrees; null when that is not known.</summary>
    public static bool? Covers(int code, double latDeg, double lonDeg, double marginDeg) => Ask(() => InArea(code, latDeg, lonDeg, marginDeg));

    /// <summary>Codes of the systems in whose area of use a place lies and a pair of numbers can lie; those on datums of today first.</summary>
    public static IReadOnlyList<int> CodesNear(double x, double y, double latDeg, double lonDeg) => Ask(() => Near(x, y, latDeg, lonDeg)) ?? [];

    // The app fetches the atlas only for files of the user's own; without it the evidence is missing, not the reading.
    private static T? Ask<T>(Func<T?> question)
    {
        try
        {
            return question();
        }
        catch (Exception e) when (e is FileNotFoundException or FileLoadException or TypeInitializationException or TypeLoadException)
        {
            return default;
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static string Lookup(double latDeg, double lonDeg) => LandTable.CountryAt(latDeg, lonDeg);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static bool? Sea(double latDeg, double lonDeg) => LandTable.NearSea(latDeg, lonDeg);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static bool? Probe() => EpsgBook.Count > 0;

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static bool? InArea(int code, double latDeg, double lonDeg, double marginDeg) => EpsgBook.Find(code)?.Covers(latDeg, lonDeg, marginDeg);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static IReadOnlyList<int> Near(double x, double y, double latDeg, double lonDeg) =>
        [.. EpsgBook.Around(x, y).Where(e => e.Covers(latDeg, lonDeg)).OrderByDescending(e => e.ShiftAccuracyM < 3).Select(e => e.Code)];
}
