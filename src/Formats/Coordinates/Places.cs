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

    /// <summary>A coordinate system of the atlas; null when it is not there.</summary>
    public static EpsgEntry? System(int code) => Ask(() => Book(code));

    /// <summary>Systems in whose area of use a pair of numbers can lie.</summary>
    public static IReadOnlyList<EpsgEntry> Systems(double x, double y) => Ask(() => Around(x, y)) ?? [];

    // The app fetches the atlas only for files of the user's own; without it the evidence is missing, not the reading.
    private static T? Ask<T>(Func<T?> question)
    {
        try
        {
            return question();
        }
        catch (Exception e) when (e is FileNotFoundException or FileLoadException or TypeInitializationException)
        {
            return default;
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static string Lookup(double latDeg, double lonDeg) => LandTable.CountryAt(latDeg, lonDeg);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static bool? Sea(double latDeg, double lonDeg) => LandTable.NearSea(latDeg, lonDeg);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static EpsgEntry? Book(int code) => EpsgBook.Find(code);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static IReadOnlyList<EpsgEntry> Around(double x, double y) => [.. EpsgBook.Around(x, y)];
}
