using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Engine.Tests.Learn;

/// <summary>What simulated seasons gave: losses in bites a season, coverage of 80 % intervals.</summary>
internal sealed record LearnScore(double LearnLoss, double RotationLoss, double OracleLoss, double Coverage);

/// <summary>Seasons with a known truth: four trailers, days that differ, schooling at each visit, eight trips of six hours.</summary>
internal static class LearnSeasons
{
    private static readonly string[] Trailers = ["plain craw", "twin tail", "slim", "bulky"];

    /// <summary>
    /// Runs seasons. Each half hour a trailer is chosen: by Learn; in even rotation; or by an oracle that sees only the same
    /// data but is told the laws the truth was drawn from: how much trailers, days and visits differ.
    /// </summary>
    public static LearnScore Run(int seasons, ulong seed, int trips = 8, int turns = 12, bool withOracle = true)
    {
        double learnLoss = 0, rotationLoss = 0, oracleLoss = 0;
        int covered = 0, intervals = 0;
        for (int season = 0; season < seasons; season++)
        {
            var random = new SeededRandom(seed, (ulong)season);
            var truth = new Truth(random, trips, turns);
            (double loss, int hits) = Play(truth, (ulong)season, trips, turns, null);
            learnLoss += loss;
            covered += hits;
            intervals += Trailers.Length;
            if (withOracle) oracleLoss += Play(truth, (ulong)season, trips, turns, Truth.Laws).Loss;
            for (int t = 0; t < trips * turns; t++) rotationLoss += truth.LossH(t % Trailers.Length, t / turns);
        }

        return new LearnScore(learnLoss / seasons, rotationLoss / seasons, oracleLoss / seasons, (double)covered / intervals);
    }

    private static (double Loss, int Hits) Play(Truth truth, ulong season, int trips, int turns, CatchLaws? laws)
    {
        CatchPriors priors = CatchPriors.Default with { Factors = ["trailer", "day"], Rules = [] };
        List<EffortSpan> spans = [];
        double loss = 0;
        for (int trip = 0; trip < trips; trip++)
        {
            for (int turn = 0; turn < turns; turn++)
            {
                CatchRates rates = CatchRates.Learn(spans, priors, [], season, 24, laws);
                double remainingH = 0.5 * (((trips - trip) * turns) - turn);
                int choice = TryAdvice.Pick(rates.RateDraws("trailer", Trailers), (season * 1000) + (ulong)spans.Count, remainingH);
                loss += truth.LossH(choice, trip);
                spans.Add(truth.Fish(choice, trip, turn, Trailers[choice]));
            }
        }

        CatchRates known = CatchRates.Learn(spans, priors, [], season, 400, laws);
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
            _luck = random.Split(7);
        }

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
