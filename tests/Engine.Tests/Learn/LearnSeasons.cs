using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Engine.Tests.Learn;

/// <summary>What simulated seasons gave: losses in bites a season, coverage of 80 % intervals.</summary>
internal sealed record SeasonScore(double LearnLoss, double RotationLoss, double OracleLoss, double Coverage);

/// <summary>Seasons with a known truth: four trailers, days that differ, schooling at each visit, eight trips of six hours.</summary>
internal static class LearnSeasons
{
    private static readonly string[] Trailers = ["plain craw", "twin tail", "slim", "bulky"];

    /// <summary>
    /// Runs seasons. Each half hour a trailer is chosen: by Learn; in even rotation; or by an oracle that sees the same
    /// log and besides knows the season's base rate, each day's factor and each visit's, and the true width of the trailers' law.
    /// </summary>
    public static SeasonScore Run(int seasons, ulong seed, int trips = 8, int turns = 12)
    {
        double learnLoss = 0, rotationLoss = 0, oracleLoss = 0;
        int covered = 0, intervals = 0;
        for (int season = 0; season < seasons; season++)
        {
            var random = new SeededRandom(seed, (ulong)season);
            var truth = new Truth(random, trips, turns);
            (double loss, int hits) = Learn(truth, (ulong)season, trips, turns);
            learnLoss += loss;
            covered += hits;
            intervals += Trailers.Length;
            oracleLoss += Oracle(truth, (ulong)season, trips, turns);
            for (int t = 0; t < trips * turns; t++) rotationLoss += truth.LossH(t % Trailers.Length, t / turns);
        }

        return new SeasonScore(learnLoss / seasons, rotationLoss / seasons, oracleLoss / seasons, (double)covered / intervals);
    }

    private static (double Loss, int Hits) Learn(Truth truth, ulong season, int trips, int turns)
    {
        CatchPriors priors = CatchPriors.Default with { Factors = ["trailer", "day"], Rules = [] };
        List<EffortSpan> spans = [];
        double loss = 0;
        for (int trip = 0; trip < trips; trip++)
        {
            for (int turn = 0; turn < turns; turn++)
            {
                CatchRates rates = CatchRates.Learn(spans, priors, [], season, 24);
                double remainingH = 0.5 * (((trips - trip) * turns) - turn);
                int choice = TryAdvice.Pick(rates.RateDraws("trailer", Trailers), (season * 1000) + (ulong)spans.Count, remainingH);
                loss += truth.LossH(choice, trip);
                spans.Add(truth.Fish(choice, trip, turn, Trailers[choice]));
            }
        }

        CatchRates known = CatchRates.Learn(spans, priors, [], season, 400);
        int hits = 0;
        foreach (ChoiceRate rate in known.By("trailer", Trailers))
        {
            double real = truth.Base * truth.Trailer[Array.IndexOf(Trailers, rate.Level)];
            if (rate.RatePerH.P10 <= real && real <= rate.RatePerH.P90) hits++;
        }

        return (loss, hits);
    }

    private static double Oracle(Truth truth, ulong season, int trips, int turns)
    {
        var random = new SeededRandom(season, 99);
        double[] bites = new double[Trailers.Length], exposure = new double[Trailers.Length];
        double loss = 0;
        for (int t = 0; t < trips * turns; t++)
        {
            int trip = t / turns, best = 0;
            double remainingH = 0.5 * ((trips * turns) - t), bestSum = double.NegativeInfinity;
            int count = (int)Math.Clamp(Math.Round(12.0 / Math.Max(0.5, remainingH)), 1, 12);
            for (int c = 0; c < Trailers.Length; c++)
            {
                double sum = 0;
                for (int k = 0; k < count; k++) sum += random.NextGamma(Truth.TrailerShape + bites[c]) / (Truth.TrailerShape + exposure[c]);
                if (sum > bestSum) { bestSum = sum; best = c; }
            }

            loss += truth.LossH(best, trip);
            EffortSpan span = truth.Fish(best, trip, t % turns, Trailers[best]);
            bites[best] += span.Bites;
            exposure[best] += 0.5 * truth.Base * truth.Day[trip] * truth.Visit[trip, t % turns / 3];
        }

        return loss;
    }

    private sealed class Truth
    {
        public static readonly double TrailerShape = 4.0;
        private readonly SeededRandom _luck;

        public Truth(SeededRandom random, int trips, int turns)
        {
            // A season like the priors say: gamma base of mean 0.8 and sd 0.7, yet no season without fish.
            Base = Math.Max(0.15, random.NextGamma(1.306) / 1.633);
            Trailer = new double[Trailers.Length];
            for (int c = 0; c < Trailer.Length; c++) Trailer[c] = random.NextGamma(TrailerShape) / TrailerShape;
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
