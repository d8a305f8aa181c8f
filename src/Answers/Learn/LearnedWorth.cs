using SecondShore.Engine.Day;
using SecondShore.Engine.Learn;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Learn;

/// <summary>What the log makes of tomorrow's places: the ordinary rate, and how kinds of bottom and named places differ from it.</summary>
internal sealed class LearnedWorth
{
    // The stops' rates are compared, not scored: 200 draws hold a mean factor to a few percent.
    private static readonly int Draws = 200;
    private static readonly double TellFromH = 1.0;
    private readonly CatchRates? _rates;
    private readonly double _baseShare = 1;

    private LearnedWorth(CatchRates? rates, CatchPriors priors)
    {
        if (rates is null) return;
        _rates = rates;
        _baseShare = Math.Clamp(rates.BaseMeanPerH / priors.MeanPerH, 0.2, 5);
    }

    /// <summary>Of a lake's log; an empty log changes nothing.</summary>
    public static LearnedWorth Of(LakeFolder folder, ulong seed)
    {
        (IReadOnlyList<EffortSpan> spans, _) = EffortSpans.Of(LogMapper.Entries(folder));
        return new LearnedWorth(spans.Count == 0 ? null : CatchRates.Learn(spans, CatchPriors.Default, [], seed, Draws), CatchPriors.Default);
    }

    /// <summary>The stop with its rates as the log leaves them.</summary>
    public StopCandidate Apply(StopCandidate stop)
    {
        if (_rates is null) return stop;
        double form = _rates.FactorDraws("form", stop.Form).Mean, place = Place(stop);
        double share = _baseShare * form * place;
        return stop with
        {
            Bites = stop.Bites.Map((_, perH) => share * perH),
            BitesIfMixed = stop.BitesIfMixed?.Map((_, perH) => share * perH),
            Why = Words(stop, form) is { } words ? $"{stop.Why}{(stop.Why.Length > 0 ? "; " : "")}{words}" : stop.Why,
        };
    }

    // A place is known by its id, else by its name.
    private double Place(StopCandidate stop)
    {
        foreach (string name in (string[])[stop.Id, stop.Name])
            if (_rates!.KnownLevels("spot").Contains(name.Trim().ToLowerInvariant())) return _rates.FactorDraws("spot", name).Mean;
        return 1;
    }

    private string? Words(StopCandidate stop, double form)
    {
        ChoiceRate seen = _rates!.By("form", [stop.Form])[0];
        if (seen.HoursH < TellFromH || Math.Abs(form - 1) < 0.15) return null;
        return $"{LearnWords.Bites(seen.BitesCount)} in {LearnWords.Hours(seen.HoursH)} at such places";
    }
}
