using SecondShore.Engine.Core;

namespace SecondShore.Engine.Learn;

/// <summary>What to try next of a factor, with honest odds and the reason.</summary>
/// <param name="Factor">The factor, such as <c>trailer</c>.</param>
/// <param name="Choice">The level to try.</param>
/// <param name="BestChance">Chance that it is the best of the choices.</param>
/// <param name="Why">The reason.</param>
/// <param name="MoreH">Hours more on the two leading choices that would likely settle it, H; null when over 20 or when there is nothing to compare.</param>
/// <param name="Rates">All choices with their rates, best mean first.</param>
public sealed record TryAdvice(string Factor, string Choice, double BestChance, Finding Why, double? MoreH, IReadOnlyList<ChoiceRate> Rates)
{
    /// <summary>Chooses what to fish with next so that the hours ahead bring most: what it gives now and what it teaches for later (decision 0073).</summary>
    /// <param name="rates">What is believed.</param>
    /// <param name="factor">The factor to choose in.</param>
    /// <param name="choices">What the angler has.</param>
    /// <param name="remainingH">Hours of fishing ahead: with few, less is tried and more is harvested.</param>
    /// <param name="priors">For the reason, when the log says nothing yet.</param>
    /// <param name="conditions">Conditions for the priors.</param>
    /// <exception cref="ArgumentException">There is no choice.</exception>
    public static TryAdvice For(CatchRates rates, string factor, IReadOnlyList<string> choices, double remainingH = 8,
        CatchPriors? priors = null, IReadOnlyCollection<string>? conditions = null)
    {
        Require.NotNull(rates);
        Require.NotNull(choices);
        if (choices.Count == 0) throw new ArgumentException("There is nothing to choose from.", nameof(choices));
        IReadOnlyList<ChoiceRate> by = rates.By(factor, choices);
        string chosen = choices[LookAhead.Best(rates.RateDraws(factor, choices), remainingH)];
        ChoiceRate own = by[0];
        foreach (ChoiceRate one in by)
            if (one.Level == chosen) own = one;
        return new TryAdvice(factor, chosen, own.BestChance, Reason(own, by, priors, conditions, factor), MoreHours(by), by);
    }

    /// <summary>The choice with the best mean: what to tie on when nothing is to be tried out.</summary>
    /// <param name="rates">What is believed.</param>
    /// <param name="factor">The factor to choose in.</param>
    /// <param name="choices">What the angler has.</param>
    /// <param name="priors">For the reason, when the log says nothing yet.</param>
    /// <param name="conditions">Conditions for the priors.</param>
    /// <exception cref="ArgumentException">There is no choice.</exception>
    public static TryAdvice Best(CatchRates rates, string factor, IReadOnlyList<string> choices, CatchPriors? priors = null, IReadOnlyCollection<string>? conditions = null)
    {
        Require.NotNull(rates);
        Require.NotNull(choices);
        if (choices.Count == 0) throw new ArgumentException("There is nothing to choose from.", nameof(choices));
        IReadOnlyList<ChoiceRate> by = rates.By(factor, choices);
        return new TryAdvice(factor, by[0].Level, by[0].BestChance, Reason(by[0], by, priors, conditions, factor), MoreHours(by), by);
    }

    private static Finding Reason(ChoiceRate own, IReadOnlyList<ChoiceRate> by, CatchPriors? priors, IReadOnlyCollection<string>? conditions, string factor)
    {
        Finding odds = Finding.Of($"it is the best of the {by.Count} with a chance of about {Tenths(own.BestChance)} in 10");
        if (own.HoursH < 0.05)
        {
            foreach (PriorRule rule in priors?.Holding(factor, own.Level, conditions ?? []) ?? [])
                if (rule.TimesFactor > 1) return Finding.Of($"{Finding.Of(rule.Because)}, though nothing in the log says so yet; {odds}");
            return by.Count == 1 ? Finding.Of("it is all you have") : Finding.Of($"it has not been tried; {odds}");
        }

        ChoiceRate? other = null;
        foreach (ChoiceRate one in by)
            if (one.Level != own.Level && (other is null || one.HoursH > other.HoursH)) other = one;
        Finding bites = Bites(own.BitesCount), drew = other is { HoursH: > 0.05 }
            ? Finding.Of($"it drew {bites} in {own.HoursH:0.#} h against {Bites(other.BitesCount)} in {other.HoursH:0.#} h with {other.Level}")
            : Finding.Of($"it drew {bites} in {own.HoursH:0.#} h");
        if (own.BitesCount <= 3 && own.BestChance < 0.8)
            drew = own.BitesCount == 1 ? Finding.Of($"{drew}, and {bites} is only {bites}") : Finding.Of($"{drew}, and {bites} are only {bites}");
        return by.Count == 1 ? drew : Finding.Of($"{drew}; {odds}");
    }

    // Roots of counts have nearly one spread whatever the rate: hours for four in five odds between two rates.
    private static double? MoreHours(IReadOnlyList<ChoiceRate> by)
    {
        if (by.Count < 2) return null;
        double difference = Math.Sqrt(by[0].MeanPerH) - Math.Sqrt(by[1].MeanPerH);
        double eachH = 0.84 * 0.84 / (2.0 * Math.Max(1e-6, difference * difference));
        double moreH = Math.Max(0, eachH - by[0].HoursH) + Math.Max(0, eachH - by[1].HoursH);
        return moreH <= 20 ? moreH : null;
    }

    private static Finding Bites(int count) => count switch
    {
        0 => Finding.Of("no bite"),
        1 => Finding.Of("one bite"),
        2 => Finding.Of("two bites"),
        3 => Finding.Of("three bites"),
        _ => Finding.Of($"{count} bites"),
    };

    private static int Tenths(double chance) => (int)Math.Clamp(Math.Round(10 * chance), 0, 10);
}
