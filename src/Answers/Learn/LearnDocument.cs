using SecondShore.Answers.Documents;

namespace SecondShore.Answers.Learn;

/// <summary>The document that <c>learn --json</c> prints and that the app shows after the trip.</summary>
public sealed record LearnDocument
{
    /// <summary>The lake's name.</summary>
    public required string Lake { get; init; }

    /// <summary>First day of the log; null for an empty one.</summary>
    public required DateOnly? From { get; init; }

    /// <summary>Last day of the log.</summary>
    public required DateOnly? To { get; init; }

    /// <summary>Days fished.</summary>
    public required int Days { get; init; }

    /// <summary>Hours with the jig in the water.</summary>
    public required double HoursH { get; init; }

    /// <summary>Bites in them, fish included.</summary>
    public required int Bites { get; init; }

    /// <summary>Fish in the boat.</summary>
    public required int Fish { get; init; }

    /// <summary>Snags.</summary>
    public required int Snags { get; init; }

    /// <summary>Stretches without a bite.</summary>
    public required int Blanks { get; init; }

    /// <summary>Bites, fish and snags outside any stretch.</summary>
    public required int WithoutEffort { get; init; }

    /// <summary>How far all this may be trusted.</summary>
    public required string Trust { get; init; }

    /// <summary>Bites per hour of an ordinary hour.</summary>
    public required SpreadDocument RatePerH { get; init; }

    /// <summary>Conditions the beliefs were asked under.</summary>
    public required IReadOnlyList<string> Conditions { get; init; }

    /// <summary>Rates by choice.</summary>
    public required IReadOnlyList<ChoiceTable> Choices { get; init; }

    /// <summary>What to tie on first.</summary>
    public required IReadOnlyList<AdviceRow> TieOn { get; init; }

    /// <summary>What to try next.</summary>
    public required IReadOnlyList<AdviceRow> NextTry { get; init; }

    /// <summary>When to leave a stop.</summary>
    public required LeaveRows Leave { get; init; }

    /// <summary>What would teach most next time.</summary>
    public required IReadOnlyList<string> TeachesMost { get; init; }

    /// <summary>What was learned about lake and season.</summary>
    public required IReadOnlyList<string> Learned { get; init; }

    /// <summary>The last day on the water; null for an empty log.</summary>
    public required TripRow? LastTrip { get; init; }

    /// <summary>Names of the files written.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>Rates of one factor's levels.</summary>
    /// <param name="Factor">Key.</param>
    /// <param name="Heading">Name.</param>
    /// <param name="Rates">Levels, best mean first.</param>
    public sealed record ChoiceTable(string Factor, string Heading, IReadOnlyList<RateRow> Rates);

    /// <summary>A level's rate.</summary>
    /// <param name="Choice">Key of the level.</param>
    /// <param name="Words">The level in words.</param>
    /// <param name="HoursH">Hours fished with it.</param>
    /// <param name="Bites">Bites it drew.</param>
    /// <param name="RatePerH">Believed bites per hour.</param>
    /// <param name="BestChance">Chance that it is the best.</param>
    public sealed record RateRow(string Choice, string Words, double HoursH, int Bites, SpreadDocument RatePerH, double BestChance);

    /// <summary>Advice in a factor.</summary>
    /// <param name="Factor">Key.</param>
    /// <param name="Choice">What to use.</param>
    /// <param name="BestChance">Chance that it is the best.</param>
    /// <param name="MoreHoursH">Hours more that would likely settle it; null when over 20.</param>
    /// <param name="Why">Reason.</param>
    public sealed record AdviceRow(string Factor, string Choice, double BestChance, double? MoreHoursH, string Why);

    /// <summary>When to leave.</summary>
    /// <param name="ElsewherePerH">Bites per hour of going on.</param>
    /// <param name="TravelMin">Minutes to the next stop.</param>
    /// <param name="Rows">By bites so far.</param>
    /// <param name="Words">In a sentence.</param>
    public sealed record LeaveRows(double ElsewherePerH, double TravelMin, IReadOnlyList<LeaveRow> Rows, string Words);

    /// <summary>The last day.</summary>
    /// <param name="Date">The day.</param>
    /// <param name="HoursH">Hours fished.</param>
    /// <param name="Bites">Bites.</param>
    /// <param name="Fish">Fish.</param>
    /// <param name="BestStretch">Best stretch in words.</param>
    /// <param name="Changed">What the day changed.</param>
    public sealed record TripRow(DateOnly Date, double HoursH, int Bites, int Fish, string BestStretch, IReadOnlyList<string> Changed);

    /// <summary>The document of a result.</summary>
    public static LearnDocument Of(LearnResult result, IReadOnlyList<string> files)
    {
        ArgumentNullException.ThrowIfNull(result);
        LogTotals t = result.Totals;
        return new LearnDocument
        {
            Lake = result.Lake,
            From = t.From,
            To = t.To,
            Days = t.Days,
            HoursH = Round(t.HoursH),
            Bites = t.Bites,
            Fish = t.Fish,
            Snags = t.Snags,
            Blanks = t.Blanks,
            WithoutEffort = t.WithoutEffort,
            Trust = result.Trust,
            RatePerH = SpreadDocument.From(result.RatePerH),
            Conditions = [.. result.Conditions],
            Choices = [.. result.Choices.Select(c => new ChoiceTable(c.Factor, c.Heading, [.. c.Rows.Select(r => new RateRow(r.Rate.Level, r.Words,
                Round(r.Rate.HoursH), r.Rate.BitesCount, SpreadDocument.From(r.Rate.RatePerH), Round(r.Rate.BestChance)))]))],
            TieOn = [.. result.TieOn.Select(Row)],
            NextTry = [.. result.NextTry.Select(Row)],
            Leave = new LeaveRows(Round(result.Leave.ElsewherePerH), Math.Round(60 * result.Leave.TravelH), result.Leave.Rows, result.Leave.Words),
            TeachesMost = result.TeachesMost,
            Learned = result.Learned,
            LastTrip = result.LastTrip is { } trip ? new TripRow(trip.Day, Round(trip.Totals.HoursH), trip.Totals.Bites, trip.Totals.Fish, trip.BestStretch, trip.Changed) : null,
            Files = files,
            Assumed = result.Assumed.Say(result.Units),
        };

        AdviceRow Row(Engine.Learn.TryAdvice a) => new(a.Factor, a.Choice, Round(a.BestChance), a.MoreH is { } h ? Round(h) : null, a.Why.Say(result.Units));
        static double Round(double value) => Math.Round(value, 2);
    }
}
