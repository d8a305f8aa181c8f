using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Answers.Learn;

/// <summary>What the log says, with how sure that is. Treated as immutable.</summary>
public sealed record LearnResult
{
    /// <summary>The lake's name.</summary>
    public required string Lake { get; init; }

    /// <summary>Units and language of its words.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Feet;

    /// <summary>Whether the lake is invented.</summary>
    public bool Invented { get; init; }

    /// <summary>Effort, bites, days of the whole log.</summary>
    public required LogTotals Totals { get; init; }

    /// <summary>Believed bites an hour of an ordinary hour.</summary>
    public required Spread RatePerH { get; init; }

    /// <summary>Conditions that the priors were asked under, such as <c>clear</c>.</summary>
    public required IReadOnlyCollection<string> Conditions { get; init; }

    /// <summary>Rates by choice, one entry a factor that the log or the tackle knows two levels of.</summary>
    public required IReadOnlyList<FactorRates> Choices { get; init; }

    /// <summary>What to tie on first: the best on average now.</summary>
    public required IReadOnlyList<TryAdvice> TieOn { get; init; }

    /// <summary>What to try next: may be less than the best on average, because it may teach.</summary>
    public required IReadOnlyList<TryAdvice> NextTry { get; init; }

    /// <summary>When to leave a stop.</summary>
    public required LeaveTable Leave { get; init; }

    /// <summary>Which reading or trial would teach most, best first, in sentences.</summary>
    public required IReadOnlyList<string> TeachesMost { get; init; }

    /// <summary>What was learned about the lake and the season, in sentences.</summary>
    public required IReadOnlyList<string> Learned { get; init; }

    /// <summary>The last day on the water; null for an empty log.</summary>
    public LastTrip? LastTrip { get; init; }

    /// <summary>How far all this may be trusted, in one sentence.</summary>
    public required string Trust { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<Finding> Assumed { get; init; }
}

/// <summary>Sums over a log.</summary>
/// <param name="HoursH">Time with the jig in the water, H.</param>
/// <param name="Bites">Bites in it, fish included.</param>
/// <param name="Fish">Fish in the boat.</param>
/// <param name="Snags">Snags.</param>
/// <param name="Blanks">Stretches without a bite.</param>
/// <param name="Stretches">Stretches in all.</param>
/// <param name="Days">Days fished.</param>
/// <param name="From">First day; null for an empty log.</param>
/// <param name="To">Last day.</param>
/// <param name="WithoutEffort">Bites, fish and snags outside any stretch: they teach no rate.</param>
public sealed record LogTotals(double HoursH, int Bites, int Fish, int Snags, int Blanks, int Stretches, int Days, DateOnly? From, DateOnly? To, int WithoutEffort);

/// <summary>Rates of a factor's levels.</summary>
/// <param name="Factor">The factor's key, such as <c>trailer</c>.</param>
/// <param name="Heading">What it is called.</param>
/// <param name="Rows">Levels, best mean first.</param>
/// <param name="Settled">Whether one level is the best with at least nine chances in ten.</param>
public sealed record FactorRates(string Factor, string Heading, IReadOnlyList<LevelRate> Rows, bool Settled);

/// <summary>A level with its words.</summary>
public sealed record LevelRate(string Words, ChoiceRate Rate);

/// <summary>When to leave a stop, by bites so far.</summary>
/// <param name="ElsewherePerH">What going on to the next stop gives, running included, bites per hour.</param>
/// <param name="TravelH">Time to the next stop, H.</param>
/// <param name="Rows">Minutes without a further bite by bites so far.</param>
/// <param name="Words">In a sentence.</param>
public sealed record LeaveTable(double ElsewherePerH, double TravelH, IReadOnlyList<LeaveRow> Rows, string Words);

/// <summary>Leave after so many minutes at the stop in all, if it has given so many bites and no more.</summary>
public sealed record LeaveRow(int Bites, int AfterMinutes);

/// <summary>The last day on the water and what it changed.</summary>
/// <param name="Day">The day.</param>
/// <param name="Totals">Its sums.</param>
/// <param name="BestStretch">Its best stretch in words; empty without a bite.</param>
/// <param name="Changed">What the belief was before and is now, in sentences.</param>
public sealed record LastTrip(DateOnly Day, LogTotals Totals, string BestStretch, IReadOnlyList<string> Changed);
