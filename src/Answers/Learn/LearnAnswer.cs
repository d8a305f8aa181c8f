using SecondShore.Engine.Learn;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Learn;

/// <summary>What do the bites say: what to tie on, what to try next, when to leave, what was learned?</summary>
public static class LearnAnswer
{
    // The factors an angler chooses in, in the order they are thought of.
    private static readonly (string Factor, string Heading)[] Headings =
    [
        ("trailer", "Trailer"), ("colour", "Colour"), ("weight", "Weight of the head"), ("layer", "Depth off the thermocline"),
        ("form", "Kind of bottom"), ("speed", "Speed"), ("wind change", "Time since the wind changed"), ("spot", "Place"),
    ];

    /// <summary>Learns from a lake's log.</summary>
    /// <param name="folder">The lake.</param>
    /// <param name="outlook">The lake as it stands, for what a reading would teach; null leaves that out.</param>
    /// <param name="wish">What is asked.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="cancel">Stops the work.</param>
    public static LearnResult Of(LakeFolder folder, Outlook? outlook, LearnWish wish, UnitSystem units, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentNullException.ThrowIfNull(units);
        IReadOnlyList<LogEntry> entries = LogMapper.Entries(folder);
        (IReadOnlyList<EffortSpan> spans, IReadOnlyList<LogEntry> without) = EffortSpans.Of(entries);
        List<Finding> assumed = [];
        LearnConditions conditions = LearnConditions.Of(folder, entries, outlook, wish, assumed);
        CatchRates rates = CatchRates.Learn(spans, wish.Priors, conditions.Words, wish.Seed);
        cancel.ThrowIfCancellationRequested();
        LearnChoices choices = LearnChoices.Of(folder.Tackle, rates);
        List<FactorRates> tables = [];
        foreach ((string factor, string heading) in Headings)
            if (choices.In(factor) is { Count: > 1 } among) tables.Add(Table(factor, units.Speech.Plain(heading), rates.By(factor, among), units));

        LeaveTable leave = LeaveTables.Of(rates, spans, wish, units, assumed);
        LogTotals totals = LearnSums.Of(spans, without.Count);
        return new LearnResult
        {
            Lake = folder.HasSite ? folder.Site.Name : folder.Files.Name,
            Units = units,
            Invented = folder.Document.IsInvented,
            Totals = totals,
            RatePerH = rates.BasePerH,
            Conditions = conditions.Words,
            Choices = tables,
            TieOn = [.. Advice(rates, choices, conditions, wish, harvest: true)],
            NextTry = [.. Advice(rates, choices, conditions, wish, harvest: false)],
            Leave = leave,
            TeachesMost = [.. NextReading.Of(outlook, folder, units), .. NextReading.Trials(tables, units)],
            Learned = [.. LakeLessons.Of(tables, folder, outlook, units)],
            LastTrip = LastTrips.Of(spans, rates, choices, conditions, wish, units),
            Trust = LearnWords.Trust(totals, units),
            Assumed = assumed,
        };
    }

    private static FactorRates Table(string factor, string heading, IReadOnlyList<ChoiceRate> rates, UnitSystem units) =>
        new(factor, heading, [.. rates.OrderByDescending(r => r.RatePerH.P50).Select(r => new LevelRate(LearnWords.Level(factor, r.Level, units), r))], rates.Any(r => r.BestChance >= 0.9 && r.BitesCount > 3));

    // The head's weight is not chosen here: it follows from depth, speed and wind (the rig answer). Harvest
    // asks for the best on average, else for what brings most over the hours ahead, learning included.
    private static IEnumerable<TryAdvice> Advice(CatchRates rates, LearnChoices choices, LearnConditions conditions, LearnWish wish, bool harvest)
    {
        foreach (string factor in (string[])["trailer", "colour"])
        {
            if (choices.Own(factor) is not { Count: > 0 } among) continue;
            yield return harvest
                ? TryAdvice.Best(rates, factor, among, wish.Priors, conditions.Words)
                : TryAdvice.For(rates, factor, among, wish.HoursAheadH, wish.Priors, conditions.Words);
        }
    }
}
