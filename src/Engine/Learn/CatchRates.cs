using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Learn;

/// <summary>A rate of a choice, with what it rests on.</summary>
/// <param name="Level">The choice, such as <c>twin tail</c>.</param>
/// <param name="HoursH">Hours fished with it, H.</param>
/// <param name="BitesCount">Bites it drew.</param>
/// <param name="RatePerH">Believed rate at an ordinary time, bites per hour.</param>
/// <param name="MeanPerH">Mean of the belief, bites per hour.</param>
/// <param name="BestChance">Chance that it is the best of its factor's levels.</param>
public sealed record ChoiceRate(string Level, double HoursH, int BitesCount, Spread RatePerH, double MeanPerH, double BestChance);

/// <summary>What a log says of rates: draws from the belief after it. Immutable.</summary>
public sealed class CatchRates
{
    private readonly List<string> _factors;
    private readonly List<string>[] _levels;
    private readonly double[][] _hours;
    private readonly int[][] _bites;
    private readonly double[] _base;
    private readonly double[][][] _draws;
    private readonly double[][] _shape, _rest;
    private readonly double[] _school;
    private readonly CatchPriors _priors;
    private readonly IReadOnlyCollection<string> _conditions;
    private readonly ulong _seed;

    private CatchRates(CatchPriors priors, IReadOnlyCollection<string> conditions, ulong seed, List<string> factors, List<string>[] levels, int draws)
    {
        (_priors, _conditions, _seed, _factors, _levels) = (priors, conditions, seed, factors, levels);
        _hours = new double[factors.Count][];
        _bites = new int[factors.Count][];
        for (int f = 0; f < factors.Count; f++) { _hours[f] = new double[levels[f].Count]; _bites[f] = new int[levels[f].Count]; }
        _base = new double[draws];
        _draws = new double[draws][][];
        _shape = new double[draws][];
        _rest = new double[draws][];
        _school = new double[draws];
    }

    /// <summary>Number of draws.</summary>
    public int DrawCount => _base.Length;

    /// <summary>Bites in the log's spans.</summary>
    public int BitesCount { get; private set; }

    /// <summary>Hours in the log's spans, H.</summary>
    public double HoursH { get; private set; }

    /// <summary>Believed rate of an ordinary hour, bites per hour.</summary>
    public Spread BasePerH => SampleDistribution.Of(_base).Spread;

    /// <summary>Mean of that belief, bites per hour.</summary>
    public double BaseMeanPerH => SampleDistribution.Of(_base).Mean;

    /// <summary>
    /// Standard deviation over mean of the rate at a stop not yet fished, when the day's ordinary rate is known: what places
    /// and the fish's schooling make of it.
    /// </summary>
    public double NewStopDoubtShare
    {
        get
        {
            int spot = _factors.IndexOf("spot");
            double sum = 0;
            for (int s = 0; s < DrawCount; s++)
                sum += ((1.0 + (1.0 / _school[s])) * (1.0 + (spot < 0 ? 0 : 1.0 / _shape[s][spot]))) - 1.0;
            return Math.Sqrt(sum / DrawCount);
        }
    }

    /// <summary>Learns from spans.</summary>
    /// <param name="spans">Spans of effort with their outcomes.</param>
    /// <param name="priors">What is believed before.</param>
    /// <param name="conditions">Conditions of the day ahead, for the priors.</param>
    /// <param name="seed">Seed: the same log and seed give the same answer.</param>
    /// <param name="draws">Draws kept: 400 hold a tenth-percentile to a few percent.</param>
    public static CatchRates Learn(IReadOnlyList<EffortSpan> spans, CatchPriors priors, IReadOnlyCollection<string> conditions, ulong seed = 1, int draws = 400) =>
        Learn(spans, priors, conditions, seed, draws, null);

    internal static CatchRates Learn(IReadOnlyList<EffortSpan> spans, CatchPriors priors, IReadOnlyCollection<string> conditions, ulong seed, int draws, CatchLaws? known)
    {
        Require.NotNull(spans);
        Require.NotNull(priors);
        Require.NotNull(conditions);
        Require.InRange(draws, 1, 100_000);
        int n = spans.Count;
        List<string> factors = [.. priors.Factors];
        var levels = new List<string>[factors.Count];
        int[][] level = new int[factors.Count][];
        for (int f = 0; f < factors.Count; f++)
        {
            levels[f] = [];
            level[f] = new int[n];
            for (int i = 0; i < n; i++) level[f][i] = Intern(levels[f], CatchFactors.LevelOf(factors[f], spans[i]));
        }

        var rates = new CatchRates(priors, conditions, seed, factors, levels, draws);
        double[] hoursH = new double[n];
        int[] bites = new int[n], visit = new int[n];
        List<string> visits = [];
        for (int i = 0; i < n; i++)
        {
            hoursH[i] = Math.Max(1e-6, spans[i].HoursH);
            bites[i] = spans[i].Bites;
            visit[i] = Intern(visits, $"{CatchFactors.LevelOf("day", spans[i])}/{spans[i].Effort.Spot ?? spans[i].Effort.Id}");
            rates.HoursH += hoursH[i];
            rates.BitesCount += bites[i];
            for (int f = 0; f < factors.Count; f++)
                if (level[f][i] >= 0) { rates._hours[f][level[f][i]] += hoursH[i]; rates._bites[f][level[f][i]] += bites[i]; }
        }

        double[][] prior = new double[factors.Count][];
        for (int f = 0; f < factors.Count; f++)
        {
            prior[f] = new double[levels[f].Count];
            for (int l = 0; l < prior[f].Length; l++) prior[f][l] = priors.FactorOf(factors[f], levels[f][l], conditions);
        }

        var sampler = new CatchSampler(hoursH, bites, level, prior, visit, visits.Count, priors.MeanPerH, priors.SdPerH, new SeededRandom(seed, 31), known);
        for (int s = 0; s < 40 + (draws / 10); s++) sampler.Sweep();
        for (int s = 0; s < draws; s++)
        {
            sampler.Sweep();
            sampler.Sweep();
            rates.Keep(s, sampler, level, hoursH);
        }

        return rates;
    }

    /// <summary>Rates by the levels of a factor that the log knows, best mean first.</summary>
    public IReadOnlyList<ChoiceRate> By(string factor) => By(factor, factor is null ? [] : KnownLevels(factor));

    /// <summary>Rates of given levels of a factor, known to the log or not, best mean first.</summary>
    /// <param name="factor">The factor.</param>
    /// <param name="among">The levels to compare.</param>
    public IReadOnlyList<ChoiceRate> By(string factor, IReadOnlyList<string> among)
    {
        double[][] draws = RateDraws(factor, among);
        int[] best = new int[among.Count];
        for (int s = 0; s < DrawCount; s++)
        {
            int top = 0;
            for (int c = 1; c < among.Count; c++)
                if (draws[c][s] > draws[top][s]) top = c;
            if (among.Count > 0) best[top]++;
        }

        List<ChoiceRate> rates = [];
        int f = _factors.IndexOf(factor);
        for (int c = 0; c < among.Count; c++)
        {
            int l = f < 0 ? -1 : _levels[f].IndexOf(among[c].Trim().ToLowerInvariant());
            SampleDistribution belief = SampleDistribution.Of(draws[c]);
            rates.Add(new ChoiceRate(among[c], l < 0 ? 0 : _hours[f][l], l < 0 ? 0 : _bites[f][l], belief.Spread, belief.Mean, (double)best[c] / DrawCount));
        }

        rates.Sort(static (a, b) => b.MeanPerH.CompareTo(a.MeanPerH));
        return rates;
    }

    /// <summary>The levels of a factor that the log knows.</summary>
    public IReadOnlyList<string> KnownLevels(string factor)
    {
        int f = _factors.IndexOf(factor);
        return f < 0 ? [] : _levels[f];
    }

    /// <summary>Draws of a level's factor on the rate: what a place, a form or a depth is worth against an ordinary one.</summary>
    public SampleDistribution FactorDraws(string factor, string level)
    {
        double[] draws = new double[DrawCount];
        for (int s = 0; s < draws.Length; s++) draws[s] = FactorAt(factor, level, s);
        return SampleDistribution.Of(draws);
    }

    /// <summary>[level][draw] draws of the rates of levels, others as fished.</summary>
    internal double[][] RateDraws(string factor, IReadOnlyList<string> among)
    {
        Require.NotNull(factor);
        Require.NotNull(among);
        int f = _factors.IndexOf(factor);
        double[][] draws = new double[among.Count][];
        for (int c = 0; c < among.Count; c++)
        {
            draws[c] = new double[DrawCount];
            for (int s = 0; s < DrawCount; s++)
                draws[c][s] = _base[s] * FactorAt(factor, among[c], s) * (f < 0 ? 1.0 : _rest[s][f]);
        }

        return draws;
    }

    private double FactorAt(string factor, string level, int s)
    {
        int f = _factors.IndexOf(factor), l = f < 0 ? -1 : _levels[f].IndexOf(level.Trim().ToLowerInvariant());
        if (l >= 0) return _draws[s][f][l];
        double mean = _priors.FactorOf(factor, level, _conditions), shape = f < 0 ? 6 : _shape[s][f];
        // A level without data: its factor is as wide as the factor's levels are; the draw is tied to its name, not to who asks.
        ulong key = (ulong)s;
        foreach (char ch in level) key = (key * 1099511628211UL) + ch;
        return new SeededRandom(_seed, key).NextGamma(shape) / shape * mean;
    }

    private void Keep(int s, CatchSampler sampler, int[][] level, double[] hoursH)
    {
        _base[s] = sampler.Base;
        _school[s] = sampler.VisitShape;
        _shape[s] = [.. sampler.Shape];
        _draws[s] = new double[_factors.Count][];
        _rest[s] = new double[_factors.Count];
        for (int f = 0; f < _factors.Count; f++) _draws[s][f] = [.. sampler.Factors[f]];
        for (int f = 0; f < _factors.Count; f++)
        {
            double sum = 0, total = 0;
            for (int i = 0; i < hoursH.Length; i++)
            {
                double product = 1;
                for (int g = 0; g < _factors.Count; g++)
                    if (g != f && _factors[g] is not ("day" or "spot") && level[g][i] >= 0) product *= sampler.Factors[g][level[g][i]];
                sum += hoursH[i] * product;
                total += hoursH[i];
            }

            _rest[s][f] = total > 0 ? sum / total : 1;
        }
    }

    private static int Intern(List<string> known, string? level)
    {
        if (level is null) return -1;
        int at = known.IndexOf(level);
        if (at >= 0) return at;
        known.Add(level);
        return known.Count - 1;
    }
}
