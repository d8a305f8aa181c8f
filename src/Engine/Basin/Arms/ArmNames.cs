using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>Names arms by their place against the main lake, unless the user named them.</summary>
internal static class ArmNames
{
    private static readonly string[] Compass = ["North", "North-east", "East", "South-east", "South", "South-west", "West", "North-west"];

    /// <summary>All names that an arm can have by its place.</summary>
    public static readonly IReadOnlySet<string> ByPlace = new HashSet<string>(
        [WholeLake, MainLake, .. Compass.Select(Arm), .. Compass.Select(FarArm)], StringComparer.Ordinal);

    /// <summary>Names by arm.</summary>
    /// <param name="centroids">Middle of each arm.</param>
    /// <param name="volumesM3">Volume of each arm, m3: the largest is the main lake.</param>
    /// <param name="given">Name the user gave, or null.</param>
    public static string[] For(IReadOnlyList<PlanePoint> centroids, IReadOnlyList<double> volumesM3, IReadOnlyList<string?> given)
    {
        int main = 0;
        for (int a = 1; a < volumesM3.Count; a++)
            if (volumesM3[a] > volumesM3[main]) main = a;
        string[] names = new string[centroids.Count];
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
        for (int a = 0; a < names.Length; a++)
            if (given[a] is { } name) names[a] = Free(name, taken);
        names[main] ??= Free(names.Length == 1 ? WholeLake : MainLake, taken);
        int[] nearFirst = [.. Enumerable.Range(0, names.Length)];
        Array.Sort(nearFirst, (a, b) => centroids[a].DistanceToM(centroids[main]).CompareTo(centroids[b].DistanceToM(centroids[main])));
        foreach (int a in nearFirst)
        {
            if (names[a] is not null) continue;
            string side = Compass[(int)Math.Round(centroids[main].BearingToDeg(centroids[a]) / 45.0) % 8];
            names[a] = taken.Contains(Arm(side)) ? Free(FarArm(side), taken) : Free(Arm(side), taken);
        }

        return names;
    }

    private static string WholeLake => "Whole lake";

    private static string MainLake => "Main lake";

    private static string Arm(string side) => $"{side} arm";

    private static string FarArm(string side) => $"Far {char.ToLowerInvariant(side[0])}{side[1..]} arm";

    private static string Free(string name, HashSet<string> taken)
    {
        string free = name;
        for (int k = 2; !taken.Add(free); k++) free = $"{name} {k}";
        return free;
    }
}
