namespace SecondShore.App.Places;

/// <summary>What of the water's motion is worth a word, for the whole lake and for a place alike (choices).</summary>
internal static class WindWording
{
    /// <summary>Whether a current is none to speak of: under a twentieth of a mile an hour the water does nothing that a drag would feel.</summary>
    public static bool IsStill(double currentMps) => currentMps < 0.022;

    /// <summary>Whether the thermocline lies as at rest, to half a foot.</summary>
    public static bool IsAtRest(double displacementM) => Math.Abs(displacementM) < 0.15;
}
