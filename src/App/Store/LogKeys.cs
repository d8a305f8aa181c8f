using SecondShore.App.Shell;

namespace SecondShore.App.Store;

/// <summary>One-tap log entries, filled with what the phone and the plan know.</summary>
internal static class LogKeys
{
    /// <summary>The four keys.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [RecordKinds.Bite, RecordKinds.Fish, RecordKinds.Snag, RecordKinds.Nothing];

    /// <summary>A record of an entry made now; null without a lake.</summary>
    public static RecordRow? Make(Session session, string kind, Entry entry)
    {
        if (session.Lake is null) return null;
        BoatFix? fix = session.Fix is { } last && TimeProvider.System.GetUtcNow() - last.At < TimeSpan.FromMinutes(2) ? session.Fix : null;
        return (entry with
        {
            LatDeg = fix?.Place.LatDeg,
            LonDeg = fix?.Place.LonDeg,
            SpeedMps = session.Speeds.MeanMps,
            Spot = session.Stop?.Name,
            JigWeightG = session.Stop?.JigWeightG ?? (session.Rig is { } rig ? rig.MassKg * 1000 : null),
            DepthM = RecordKinds.Readings.Contains(kind) ? entry.DepthM : fix is not null ? session.DepthHereM : session.Stop?.DepthM,
        }).ToRow(session.Lake.Id, kind, TimeProvider.System.GetUtcNow());
    }
}
