using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Bench.Priors;

/// <summary>
/// Learns <see cref="PriorNumbers"/> by damped Gauss-Newton steps over lakes, then by draws about where they end. Each region weighs the same
/// however many lakes it has; one that nothing explains weighs less (Cauchy), and each number is held to its start by its own spread.
/// </summary>
internal sealed class PriorLearner(PriorLake[] lakes, PriorNumbers start, double ridge, Func<PriorNumber, bool> free, Action<string> say)
{
    /// <summary>Seed of the draws.</summary>
    public const ulong Seed = 44;

    private const double Difference = 0.6, RegionScale = 8, LeaveOutDamping = 0.03, EndShare = 3e-3, Furthest = 3.5;
    private const int Draws = 60, RefitSteps = 4, RefitDraws = 12;
    private static readonly PriorNumber[] Learned = [.. PriorNumbers.All.Where(n => n.LearnSd > 0)];

    private readonly PriorNumbers _start = start;

    private int[] Moving => [.. Enumerable.Range(0, Learned.Length).Where(k => free(Learned[k]))];

    /// <summary>Numbers at a place counted in learning spreads from the start.</summary>
    public static PriorNumbers At(PriorNumbers start, double[] u)
    {
        PriorNumbers made = start;
        for (int k = 0; k < u.Length; k++)
        {
            double from = Learned[k].Of(start), step = Learned[k].LearnSd * u[k];
            made = Learned[k].With(made, Learned[k].IsLog ? from * Math.Exp(step) : from + step);
        }

        return made;
    }

    /// <summary>Learns from all lakes.</summary>
    /// <param name="steps">Steps at most.</param>
    public PriorPlace Learn(int steps)
    {
        Descent at = new(this, lakes, new double[Learned.Length]);
        double[][][] slopes = Slopes(lakes, at.U);
        for (int step = 0; step < steps; step++)
        {
            double before = at.Cost;
            bool moved = at.Move(slopes);
            say(FormattableString.Invariant($"  step {step + 1}: cost {before:0.00} -> {at.Cost:0.00}"));
            if (!moved || before - at.Cost < EndShare * before) break;
            slopes = Slopes(lakes, at.U);
        }

        double descended = at.Cost;
        at.Draw(slopes, Draws);
        say(FormattableString.Invariant($"  {Draws} draws about it: cost {descended:0.00} -> {at.Cost:0.00}"));
        return new PriorPlace(at.U, at.Now, Slopes(lakes, at.U));
    }

    /// <summary>
    /// Learns without a region. It begins one Gauss-Newton step of the kept lakes (less that of all) from where all stand, so that it does not stop on the
    /// jumps of steps and dates beside what the region taught; then steps and draws that lower the cost of the kept lakes alone. Slopes are those of the
    /// kept lakes where all stand: the place lies near.
    /// </summary>
    public PriorRefit Without(int region, PriorPlace all)
    {
        int[] kept = [.. Enumerable.Range(0, lakes.Length).Where(i => lakes[i].Region != region)];
        double[] own = NewtonStep(all, kept), whole = NewtonStep(all, [.. Enumerable.Range(0, lakes.Length)]);
        double[] from = [.. all.U.Zip(own.Zip(whole, (k, w) => k - w), (u, shift) => Math.Clamp(u + shift, -Furthest, Furthest))];
        PriorLake[] others = [.. kept.Select(i => lakes[i])];
        Descent at = new(this, others, from);
        double begun = at.Cost, last = begun;
        double[][][] slopes = [.. kept.Select(i => all.Slopes[i])];
        for (int step = 0; step < RefitSteps; step++)
        {
            last = at.Cost;
            if (!at.Move(slopes) || last - at.Cost < EndShare * last) break;
        }

        double lastGain = (last - at.Cost) / last;
        at.Draw(slopes, RefitDraws);
        say(FormattableString.Invariant($"  without {lakes.First(l => l.Region == region).Name}: cost {begun:0.00} -> {at.Cost:0.00}, its last step {lastGain:0.0%}"));
        return new PriorRefit(At(_start, at.U), lastGain);
    }

    private double[] NewtonStep(PriorPlace at, int[] kept)
    {
        double[][] now = [.. kept.Select(i => at.Residuals[i])];
        double[] to = Step([.. kept.Select(i => at.Slopes[i])], now, Weights([.. kept.Select(i => lakes[i])], now), at.U, LeaveOutDamping);
        return [.. to.Zip(at.U, (a, b) => a - b)];
    }

    private static double[][] Residuals(PriorLake[] lakes, PriorNumbers numbers)
    {
        double[][] made = new double[lakes.Length][];
        Parallel.For(0, lakes.Length, i => made[i] = lakes[i].Residuals(numbers));
        return made;
    }

    private double[][][] Slopes(PriorLake[] of, double[] u)
    {
        int[] moving = Moving;
        double[][][] slopes = [.. of.Select(_ => new double[moving.Length][])];
        Parallel.For(0, of.Length * moving.Length, job =>
        {
            int lake = job % of.Length, k = job / of.Length;
            // To both sides and wide: steps and dates jump, and a slope must be that of the hill, not of its stones.
            double[] trial = (double[])u.Clone();
            trial[moving[k]] += Difference;
            double[] above = of[lake].Residuals(At(_start, trial));
            trial[moving[k]] -= 2 * Difference;
            double[] below = of[lake].Residuals(At(_start, trial));
            for (int i = 0; i < above.Length; i++) above[i] = (above[i] - below[i]) / (2 * Difference);
            slopes[lake][k] = above;
        });
        return slopes;
    }

    private static Dictionary<int, (double Sum, int Count)> Regions(PriorLake[] lakes, double[][] residuals)
    {
        Dictionary<int, (double Sum, int Count)> regions = [];
        for (int i = 0; i < lakes.Length; i++)
        {
            (double sum, int count) = regions.GetValueOrDefault(lakes[i].Region);
            regions[lakes[i].Region] = (sum + residuals[i].Sum(r => r * r), count + 1);
        }

        return regions;
    }

    private static double[] Weights(PriorLake[] lakes, double[][] residuals)
    {
        Dictionary<int, (double Sum, int Count)> regions = Regions(lakes, residuals);
        return [.. lakes.Select(l => 1.0 / regions[l.Region].Count / (1.0 + (regions[l.Region].Sum / regions[l.Region].Count / RegionScale)))];
    }

    private double CostOf(PriorLake[] lakes, double[][] residuals, double[] u) =>
        Regions(lakes, residuals).Values.Sum(r => RegionScale * Math.Log(1.0 + (r.Sum / r.Count / RegionScale))) + (ridge * u.Sum(v => v * v));

    private double[,] Normal(double[][][] slopes, double[] weights)
    {
        int n = Moving.Length;
        double[,] normal = new double[n, n];
        for (int a = 0; a < n; a++)
        {
            for (int b = 0; b <= a; b++)
            {
                double sum = a == b ? ridge : 0;
                for (int l = 0; l < slopes.Length; l++) sum += weights[l] * PriorAlgebra.Dot(slopes[l][a], slopes[l][b]);
                normal[a, b] = normal[b, a] = sum;
            }
        }

        return normal;
    }

    private double[] Step(double[][][] slopes, double[][] now, double[] weights, double[] u, double damping)
    {
        int[] moving = Moving;
        double[,] normal = Normal(slopes, weights);
        double[] right = new double[moving.Length];
        for (int a = 0; a < moving.Length; a++)
        {
            right[a] = -ridge * u[moving[a]];
            for (int l = 0; l < slopes.Length; l++) right[a] -= weights[l] * PriorAlgebra.Dot(slopes[l][a], now[l]);
            normal[a, a] += damping * (normal[a, a] + 0.1);
        }

        double[] move = PriorAlgebra.Solve(normal, right), trial = (double[])u.Clone();
        for (int a = 0; a < moving.Length; a++) trial[moving[a]] = Math.Clamp(u[moving[a]] + Math.Clamp(move[a], -1, 1), -Furthest, Furthest);
        return trial;
    }

    /// <summary>Where a descent over some lakes stands.</summary>
    private sealed class Descent
    {
        private readonly PriorLearner _by;
        private readonly PriorLake[] _of;
        private double _damping = 0.3;

        public Descent(PriorLearner by, PriorLake[] of, double[] from)
        {
            (_by, _of, U) = (by, of, from);
            Now = Residuals(of, At(by._start, from));
            Cost = by.CostOf(of, Now, from);
        }

        public double[] U { get; private set; }

        public double[][] Now { get; private set; }

        public double Cost { get; private set; }

        /// <summary>One step that lowers the cost, damped as it must be; whether there is one.</summary>
        public bool Move(double[][][] slopes)
        {
            double[] weights = Weights(_of, Now);
            for (int tries = 0; tries < 5; tries++)
            {
                if (Try(_by.Step(slopes, Now, weights, U, _damping)))
                {
                    _damping *= 0.3;
                    return true;
                }

                _damping = Math.Max(_damping, 0.1) * 4;
            }

            return false;
        }

        /// <summary>Steps and dates jump, so a descent by slopes ends on a ledge: draws as wide as the slopes say the numbers are known step off it.</summary>
        public void Draw(double[][][] slopes, int draws)
        {
            SeededRandom random = new(Seed);
            double width = 0.5;
            double[,] root = PriorAlgebra.Root(_by.Normal(slopes, Weights(_of, Now)));
            int[] moving = _by.Moving;
            for (int draw = 0; draw < draws; draw++)
            {
                double[] move = PriorAlgebra.SolveUpper(root, [.. moving.Select(_ => random.NextNormal())]), trial = (double[])U.Clone();
                for (int a = 0; a < moving.Length; a++) trial[moving[a]] = Math.Clamp(U[moving[a]] + (width * move[a]), -Furthest, Furthest);
                width = Math.Clamp(width * (Try(trial) ? 1.5 : 0.9), 0.05, 1);
            }
        }

        private bool Try(double[] trial)
        {
            double[][] seen = Residuals(_of, At(_by._start, trial));
            double tried = _by.CostOf(_of, seen, trial);
            if (tried >= Cost) return false;
            (U, Now, Cost) = (trial, seen, tried);
            return true;
        }
    }
}

/// <summary>Where learning came to.</summary>
/// <param name="U">The place, counted in learning spreads from the start.</param>
/// <param name="Residuals">Residuals there, by lake.</param>
/// <param name="Slopes">Slopes of the residuals there, by lake and number.</param>
internal sealed record PriorPlace(double[] U, double[][] Residuals, double[][][] Slopes);

/// <summary>What was learned without a region.</summary>
/// <param name="Numbers">The numbers.</param>
/// <param name="LastGainShare">Share of the cost that its last step still won: small where it stands.</param>
internal sealed record PriorRefit(PriorNumbers Numbers, double LastGainShare);
