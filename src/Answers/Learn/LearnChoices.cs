using SecondShore.Engine.Learn;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Learn;

/// <summary>What the angler can choose from: the tackle file's things, and whatever else the log has seen.</summary>
internal sealed class LearnChoices
{
    private readonly Dictionary<string, IReadOnlyList<string>> _own = [];
    private readonly Dictionary<string, IReadOnlyList<string>> _all = [];

    public static LearnChoices Of(TackleDocument? tackle, CatchRates rates)
    {
        LearnChoices choices = new();
        choices.Add("trailer", tackle?.Trailers.Where(t => t.Count is not 0).Select(t => t.Name), rates);
        choices.Add("colour", tackle?.Trailers.Select(t => t.Colour).Concat(tackle.Jigs.Select(j => j.Colour)), rates);
        choices.Add("weight", tackle?.Jigs.Where(j => j.Count is not 0).Select(j => CatchFactors.WeightClass(j.WeightG)), rates);
        foreach (string factor in (string[])["layer", "form", "speed", "wind change", "spot"]) choices.Add(factor, null, rates);
        return choices;
    }

    /// <summary>Levels to compare: the tackle's and the log's.</summary>
    public IReadOnlyList<string> In(string factor) => _all[factor];

    /// <summary>Levels to recommend: the tackle's where there is a tackle file, else the log's.</summary>
    public IReadOnlyList<string> Own(string factor) => _own[factor].Count > 0 ? _own[factor] : _all[factor];

    private void Add(string factor, IEnumerable<string>? own, CatchRates rates)
    {
        string[] mine = [.. (own ?? []).Where(w => w.Length > 0).Select(w => w.Trim().ToLowerInvariant()).Distinct()];
        _own[factor] = mine;
        _all[factor] = [.. mine.Concat(rates.KnownLevels(factor)).Distinct()];
    }
}
