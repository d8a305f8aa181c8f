using SecondShore.Engine.Season;

namespace SecondShore.Bench.Priors;

/// <summary>
/// Learns <see cref="PriorNumbers"/> by damped Gauss-Newton steps over lakes. Each region weighs the same however many lakes it has; one that
/// nothing explains weighs less (Cauchy), and each number is held to its start by its own spread.
/// </summary>
internal sealed class PriorLearner(PriorLake[] lakes, PriorNumbers start, double ridge, Func<PriorNumber, bool> free, Action<string> say)
{
    private const double Difference = 0.6, RegionScale = 8, LeaveOutDamping = 0.03;
    private static readonly PriorNumber[] Learned = [.. PriorNumbers.All.Where(n => n.LearnSd > 0)];

    public bool Verbose { get; init; }

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
        double[] u = new double[Learned.Length];
        double[][] now = Residuals(lakes, At(start, u));
        double cost = Cost(lakes, now, u), damping = 0.3;
        double[][][] slopes = Slopes(u);
        for (int step = 0; step < steps; step++)
        {
            double before = cost;
            bool moved = Move(lakes, slopes, ref u, ref now, ref cost, ref damping);
            say(FormattableString.Invariant($"  step {step + 1}: cost {before:0.00} -> {cost:0.00}, damping {damping:0.000}"));
            if (!moved || before - cost < 3e-3 * before) break;
            slopes = Slopes(u);
        }

        return new PriorPlace(u, cost, now, slopes);
    }

    /// <summary>
    /// What learning would have come to without a region: one Gauss-Newton step of the kept lakes from where all stand, less the step of all from there.
    /// (Leaving out by one Newton step; a new descent for each region would stop on jumps of steps and dates before it felt what is missing.)
    /// </summary>
    public PriorNumbers Without(int region, PriorPlace all)
    {
        double[] kept = NewtonStep(all, l => l.Region != region), whole = NewtonStep(all, _ => true);
        return At(start, [.. all.U.Zip(kept.Zip(whole, (k, w) => k - w), (u, shift) => Math.Clamp(u + shift, -3.5, 3.5))]);
    }

    private double[] NewtonStep(PriorPlace at, Func<PriorLake, bool> isKept)
    {
        int[] kept = [.. Enumerable.Range(0, lakes.Length).Where(i => isKept(lakes[i]))];
        double[][] now = [.. kept.Select(i => at.Residuals[i])];
        double[] to = Step([.. kept.Select(i => at.Slopes[i])], now, Weights([.. kept.Select(i => lakes[i])], now), at.U, LeaveOutDamping);
        return [.. to.Zip(at.U, (a, b) => a - b)];
    }

    private bool Move(PriorLake[] of, double[][][] slopes, ref double[] u, ref double[][] now, ref double cost, ref double damping)
    {
        double[] weights = Weights(of, now);
        for (int tries = 0; tries < 5; tries++)
        {
            double[] trial = Step(slopes, now, weights, u, damping);
            double[][] seen = Residuals(of, At(start, trial));
            double tried = Cost(of, seen, trial);
            if (Verbose) say(FormattableString.Invariant($"    tried {tried:0.00} with damping {damping:0.00}"));
            if (tried < cost)
            {
                (u, now, cost, damping) = (trial, seen, tried, damping * 0.3);
                return true;
            }

            damping = Math.Max(damping, 0.1) * 4;
        }

        return false;
    }

    private static double[][] Residuals(PriorLake[] lakes, PriorNumbers numbers)
    {
        double[][] made = new double[lakes.Length][];
        Parallel.For(0, lakes.Length, i => made[i] = lakes[i].Residuals(numbers));
        return made;
    }

    private double[][][] Slopes(double[] u)
    {
        int[] moving = Moving;
        double[][][] slopes = [.. lakes.Select(_ => new double[moving.Length][])];
        Parallel.For(0, lakes.Length * moving.Length, job =>
        {
            int lake = job % lakes.Length, k = job / lakes.Length;
            // To both sides and wide: steps and dates jump, and a slope must be that of the hill, not of its stones.
            double[] trial = (double[])u.Clone();
            trial[moving[k]] += Difference;
            double[] above = lakes[lake].Residuals(At(start, trial));
            trial[moving[k]] -= 2 * Difference;
            double[] below = lakes[lake].Residuals(At(start, trial));
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

    private double Cost(PriorLake[] lakes, double[][] residuals, double[] u) =>
        Regions(lakes, residuals).Values.Sum(r => RegionScale * Math.Log(1.0 + (r.Sum / r.Count / RegionScale))) + (ridge * u.Sum(v => v * v));

    private double[] Step(double[][][] slopes, double[][] now, double[] weights, double[] u, double damping)
    {
        int[] moving = Moving;
        int n = moving.Length;
        double[,] normal = new double[n, n];
        double[] right = new double[n];
        for (int a = 0; a < n; a++)
        {
            for (int b = 0; b <= a; b++)
            {
                double sum = a == b ? ridge : 0;
                for (int l = 0; l < slopes.Length; l++) sum += weights[l] * Dot(slopes[l][a], slopes[l][b]);
                normal[a, b] = normal[b, a] = sum;
            }

            right[a] = -ridge * u[moving[a]];
            for (int l = 0; l < slopes.Length; l++) right[a] -= weights[l] * Dot(slopes[l][a], now[l]);
        }

        for (int a = 0; a < n; a++) normal[a, a] += damping * (normal[a, a] + 0.1);
        double[] move = Solve(normal, right), trial = (double[])u.Clone();
        for (int a = 0; a < n; a++) trial[moving[a]] = Math.Clamp(u[moving[a]] + Math.Clamp(move[a], -1, 1), -3.5, 3.5);
        return trial;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    // Gauss elimination with rows exchanged: small, positive definite, damped.
    private static double[] Solve(double[,] m, double[] right)
    {
        int n = right.Length;
        for (int c = 0; c < n; c++)
        {
            int best = c;
            for (int r = c + 1; r < n; r++) if (Math.Abs(m[r, c]) > Math.Abs(m[best, c])) best = r;
            for (int k = 0; k < n; k++) (m[c, k], m[best, k]) = (m[best, k], m[c, k]);
            (right[c], right[best]) = (right[best], right[c]);
            for (int r = c + 1; r < n; r++)
            {
                double factor = m[r, c] / m[c, c];
                for (int k = c; k < n; k++) m[r, k] -= factor * m[c, k];
                right[r] -= factor * right[c];
            }
        }

        for (int c = n - 1; c >= 0; c--)
        {
            for (int k = c + 1; k < n; k++) right[c] -= m[c, k] * right[k];
            right[c] /= m[c, c];
        }

        return right;
    }
}

/// <summary>Where learning came to.</summary>
/// <param name="U">The place, counted in learning spreads from the start.</param>
/// <param name="Cost">Its cost.</param>
/// <param name="Residuals">Residuals there, by lake.</param>
/// <param name="Slopes">Slopes of the residuals there, by lake and number.</param>
internal sealed record PriorPlace(double[] U, double Cost, double[][] Residuals, double[][][] Slopes);
