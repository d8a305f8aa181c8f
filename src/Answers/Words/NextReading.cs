using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Words;

/// <summary>The one reading that would sharpen the outlook most, and why.</summary>
public static class NextReading
{
    private const int FreshDays = 10;

    /// <summary>What to measure next, in a sentence; null when the season's readings leave little to ask for.</summary>
    /// <param name="folder">The lake, with what was measured so far.</param>
    /// <param name="outlook">Its outlook.</param>
    public static string? Ask(LakeFolder folder, Outlook outlook)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(outlook);
        DateTimeOffset at = outlook.At, since = at.AddDays(-75);
        if (outlook.Lake.State == LayerState.Mixed) return null;
        double deep = 0.6 * (outlook.Lake.Profile.Count > 0 ? outlook.Lake.Profile[^1].DepthM : 0);
        bool Recent(DateTimeOffset when, DateTimeOffset from) => when > from && when <= at;
        bool deepTemp = folder.Readings.Any(r => r.Kind == ReadingKind.Temperature && r.DepthM >= deep && Recent(r.At, since))
            || folder.Profiles.Any(p => p.DepthM.Length > 0 && p.DepthM[^1] >= deep && Recent(p.At, since));
        if (!deepTemp)
        {
            return "Most useful next: one temperature near the bottom of the deepest water, in August or September if you can. "
                + "How cold the deep water is decides when the lake turns (each degree is about four days), and no forecast tells it.";
        }

        if (!folder.Readings.Any(r => r.Kind == ReadingKind.HazeDepth && Recent(r.At, at.AddDays(-FreshDays))))
            return "Most useful next: the depth of the haze on your sounder. The last one is more than ten days old or missing, and the thermocline has moved since.";
        if (folder.Document.SecchiM is null && folder.Document.LightExtinctionPerM is null && folder.Secchi.Count == 0 && !folder.Readings.Any(r => r.Kind == ReadingKind.Secchi))
            return "Most useful next: how deep you can still see a white disc (Secchi depth). How clear the water is sets how deep the sun warms it.";
        return null;
    }
}
