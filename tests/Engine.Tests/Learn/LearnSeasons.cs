using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Engine.Tests.Learn;

/// <summary>What simulated seasons gave: losses in bites a season, coverage of 80 % intervals.</summary>
/// <param name="LearnLoss">Choosing by Learn.</param>
/// <param name="RotationLoss">Even rotation.</param>
/// <param name="OracleLosses">Each oracle rule's.</param>
/// <param name="Coverage">Share of 80 % intervals that hold the truth.</param>
internal sealed record LearnScore(double LearnLoss, double RotationLoss, IReadOnlyList<double> OracleLosses, double Coverage)
{
    /// <summary>The oracle: the rule that did best on these very seasons, found out afterwards.</summary>
    public double OracleLoss => OracleLosses.Min();
}

/// <summary>
/// Seasons with a known truth: four trailers, days that differ, schooling at each visit, eight trips of six hours; each half
/// hour a trailer is chosen.
/// </summary>
/// <remarks>
/// The oracle sees what it fishes and nothing else, like Learn, but is told the laws that the truth was drawn from (how much
/// trailers, days and visits differ), so its posterior is the true one, and may decide by the best of several rules, picked
/// with hindsight on the seasons scored. What it does not get is the truth itself.
/// </remarks>
internal static class LearnSeasons
{
    private static readonly string[] Trailers = ["plain craw", "twin tail", "slim", "bulky"];

    /// <summary>A way to choose: from draws of the rates and the hours ahead to a trailer.</summary>
    public delegate int Rule(double[][] draws, double remainingH, SeededRandom random);

    /// <summary>The rules an oracle may choose from.</summary>
    public static IReadOnlyList<Rule> OracleRules { get; } =
    [
        static (draws, remainingH, _) => LookAhead.Best(draws, remainingH),
        static (draws, remainingH, _) => LookAhead.Best(draws, remainingH, 1.0),
        static (draws, _, random) => MeanOfDraws(draws, 4, random),
    ];

    /// <summary>Runs seasons, two at a time.</summary>
    public static LearnScore Run(int seasons, ulong seed, IReadOnlyList<Rule> oracles, int trips = 8, int turns = 12)
    {
        double[] learn = new double[seasons], rotation = new double[seasons];
        double[][] oracle = [.. oracles.Select(_ => new double[seasons])];
        int[] hits = new int[seasons];
        Parallel.For(0, seasons, new ParallelOptions { MaxDegreeOfParallelism = 2 }, season =>
        {
            var random = new SeededRandom(seed, (ulong)season);
            var truth = new Truth(random, trips, turns);
            (learn[season], hits[season]) = Play(truth.Again(), (ulong)season, trips, turns, null, static (draws, remainingH, _) => LookAhead.Best(draws, remainingH));
            for (int o = 0; o < oracles.Count; o++) oracle[o][season] = Play(truth.Again(), (ulong)season, trips, turns, Truth.Laws, oracles[o]).Loss;
            for (int t = 0; t < trips * turns; t++) rotation[season] += truth.LossH(t % Trailers.Length, t / turns);
        });
        return new LearnScore(learn.Average(), rotation.Average(), [.. oracle.Select(o => o.Average())], (double)hits.Sum() / (seasons * Trailers.Length));
    }

    private static int MeanOfDraws(double[][] draws, int count, SeededRandom random)
    {
        double[] sums = new double[draws.Length];
        int best = 0;
        for (int k = 0; k < count; k++)
        {
            int s = random.NextInt(draws[0].Length);
            for (int c = 0; c < draws.Length; c++) sums[c] += draws[c][s];
        }

        for (int c = 1; c < sums.Length; c++)
            if (sums[c] > sums[best]) best = c;
        return best;
    }

    private static (double Loss, int Hits) Play(Truth truth, ulong season, int trips, int turns, CatchLaws? laws, Rule rule)
    {
        CatchPriors priors = CatchPriors.Default with { Factors = ["trailer", "day"], Rules = [] };
        var chance = new SeededRandom(season, 5);
        List<EffortSpan> spans = [];
        double loss = 0;
        for (int trip = 0; trip < trips; trip++)
        {
            for (int turn = 0; turn < turns; turn++)
            {
                CatchRates rates = CatchRates.Learn(spans, priors, [], season, 40, laws);
                double remainingH = 0.5 * (((trips - trip) * turns) - turn);
                int choice = rule(rates.RateDraws("trailer", Trailers), remainingH, chance);
                loss += truth.LossH(choice, trip);
                spans.Add(truth.Fish(choice, trip, turn, Trailers[choice]));
            }
        }

        if (laws is not null) return (loss, 0);
        CatchRates known = CatchRates.Learn(spans, priors, [], season, 400);
        int hits = 0;
        foreach (ChoiceRate rate in known.By("trailer", Trailers))
        {
            double real = truth.Base * truth.Trailer[Array.IndexOf(Trailers, rate.Level)];
            if (rate.RatePerH.P10 <= real && real <= rate.RatePerH.P90) hits++;
        }

        return (loss, hits);
    }

    private sealed class Truth
    {
        public static readonly CatchLaws Laws = new([4.0, 5.0], 2.0);
        private readonly SeededRandom _origin;
        private readonly SeededRandom _luck;

        public Truth(SeededRandom random, int trips, int turns)
        {
            // A season like the priors say: gamma base of mean 0.8 and sd 0.7, yet no season without fish.
            Base = Math.Max(0.15, random.NextGamma(1.306) / 1.633);
            Trailer = new double[Trailers.Length];
            for (int c = 0; c < Trailer.Length; c++) Trailer[c] = random.NextGamma(Laws.FactorShapes[0]) / Laws.FactorShapes[0];
            Day = new double[trips];
            for (int d = 0; d < trips; d++) Day[d] = random.NextGamma(5) / 5;
            Visit = new double[trips, (turns / 3) + 1];
            for (int d = 0; d < trips; d++)
                for (int v = 0; v <= turns / 3; v++) Visit[d, v] = random.NextGamma(2) / 2;
            _origin = random;
            _luck = random.Split(7);
        }

        private Truth(Truth other)
        {
            (Base, Trailer, Day, Visit, _origin) = (other.Base, other.Trailer, other.Day, other.Visit, other._origin);
            _luck = _origin.Split(7);
        }

        /// <summary>The same season with its luck from the start, so that every rule meets the same water.</summary>
        public Truth Again() => new(this);

        public double Base { get; }

        public double[] Trailer { get; }

        public double[] Day { get; }

        public double[,] Visit { get; }

        public double LossH(int choice, int trip) => 0.5 * Base * Day[trip] * (Trailer.Max() - Trailer[choice]);

        public EffortSpan Fish(int choice, int trip, int turn, string trailer)
        {
            double mean = 0.5 * Base * Trailer[choice] * Day[trip] * Visit[trip, turn / 3];
            DateTimeOffset at = new DateTimeOffset(2026, 9, 1, 7, 0, 0, TimeSpan.Zero).AddDays(trip).AddMinutes(30 * turn);
            var entry = new LogEntry { Id = $"{trip}-{turn}", Kind = LogKind.Effort, At = at, Until = at.AddMinutes(30), Rig = new RigUsed(null, trailer, null, null), Spot = $"{turn / 3}" };
            return new EffortSpan(entry, 0.5, _luck.NextPoisson(mean), 0, 0);
        }
    }
}
