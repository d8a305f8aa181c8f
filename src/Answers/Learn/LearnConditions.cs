using SecondShore.Engine.Learn;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Learn;

/// <summary>Conditions of the day ahead, as the rules of the priors name them.</summary>
internal sealed record LearnConditions(IReadOnlyCollection<string> Words)
{
    private static readonly string[] Foods = ["crayfish", "baitfish", "sunfish"];

    /// <summary>Clarity, surface temperature, light and food: as asked, else as last read, else as reckoned.</summary>
    public static LearnConditions Of(LakeFolder folder, IReadOnlyList<LogEntry> entries, Outlook? outlook, LearnWish wish, List<string> assumed)
    {
        double? secchiM = Latest(folder, ReadingKind.Secchi, r => r.SecchiM) ?? folder.SiteOrNull?.SecchiM;
        double? surfaceC = outlook?.Lake.Profile is { Count: > 0 } profile ? profile[0].TempC.P50 : Latest(folder, ReadingKind.SurfaceTemperature, r => r.SurfaceTempC);
        IReadOnlyList<string> eats = wish.Eats.Count > 0 ? wish.Eats : Eaten(entries);
        if (secchiM is null) assumed.Add("Clarity is not known: no belief that hangs on it is used. A Secchi reading would change that.");
        if (surfaceC is null) assumed.Add("Surface temperature is not known: no belief that hangs on it is used.");
        if (eats.Count == 0) assumed.Add("What the fish eat is not known: colour and trailer are not matched to food. Log what was eaten, or say it with --eats.");
        return new LearnConditions(CatchFactors.Conditions(secchiM, surfaceC, wish.LowLight, eats));
    }

    private static double? Latest(LakeFolder folder, ReadingKind kind, Func<LogRow, double?> ofRow)
    {
        IEnumerable<(DateTimeOffset At, double Value)> read = folder.Readings.Concat(folder.Secchi).Where(r => r.Kind == kind).Select(r => (r.At, r.Value));
        IEnumerable<(DateTimeOffset At, double Value)> logged = folder.Log.Where(r => ofRow(r) is not null).Select(r => (r.At, ofRow(r)!.Value));
        (DateTimeOffset At, double Value)[] all = [.. read.Concat(logged).OrderBy(r => r.At)];
        return all.Length > 0 ? all[^1].Value : null;
    }

    // What the log says was eaten, where it says it more than any other food.
    private static IReadOnlyList<string> Eaten(IReadOnlyList<LogEntry> entries)
    {
        string? most = null;
        int count = 0;
        foreach (string food in Foods)
        {
            int seen = entries.Count(e => e.Ate is { } ate && ate.Contains(food[..4], StringComparison.OrdinalIgnoreCase));
            if (seen > count) (most, count) = (food, seen);
        }

        return most is null ? [] : [most];
    }
}
