using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Bench.Shapes;

/// <summary>Learns the numbers of one kind of basin from lakes whose bottom is known, each lake counting once by its weight.</summary>
internal static class ShapeLearner
{
    public static readonly ulong Seed = 22;

    private static readonly double[] Branches = [0.5, 0.75, 1, 1.5, 2, 3, 5];

    private sealed record Free(Func<BasinNumbers, double> Of, Func<BasinNumbers, double, BasinNumbers> With, double Step,
        double Low, double High);

    private static readonly Free[] Natural =
    [
        new(n => n.CrossPower, (n, v) => n with { CrossPower = v }, 0.2, 0.2, 3),
        new(n => n.WidthPower, (n, v) => n with { WidthPower = v }, 0.2, 0, 3),
        new(n => n.SheetPower, (n, v) => n with { SheetPower = v }, 0.2, 0.2, 3),
        new(n => n.SheetShare, (n, v) => n with { SheetShare = v }, 0.2, 0, 1),
        new(n => n.BroadShare, (n, v) => n with { BroadShare = v }, 0.05, 0.6, 1),
    ];

    private static readonly Free[] Dammed = [.. Natural, new(n => n.FallPower, (n, v) => n with { FallPower = v }, 0.2, 0.2, 3)];

    /// <summary>Learns from lakes of one kind.</summary>
    /// <param name="lakes">Lakes with their weights.</param>
    /// <param name="start">Where to begin.</param>
    public static BasinNumbers Learn(IReadOnlyList<(ShapeLake Lake, double Weight)> lakes, BasinNumbers start)
    {
        bool dammed = lakes[0].Lake.Kind == BasinKind.Dammed;
        BasinNumbers best = start;
        double least = Cost(lakes, best);
        foreach (double branch in dammed ? Branches : [start.BranchFactor])
        {
            (BasinNumbers tried, double cost) = Descend(lakes, start with { BranchFactor = branch }, dammed ? Dammed : Natural);
            if (cost < least) (least, best) = (cost, tried);
        }

        return ShapeErrors.Learn(lakes, best);
    }

    /// <summary>Mean over lakes of the error against a cone's, with a part for the area by depth.</summary>
    public static double Cost(IReadOnlyList<(ShapeLake Lake, double Weight)> lakes, BasinNumbers numbers)
    {
        double[] costs = new double[lakes.Count];
        Parallel.For(0, lakes.Count, i => costs[i] = lakes[i].Weight * CostOf(lakes[i].Lake, numbers));
        return costs.Sum() / lakes.Sum(l => l.Weight);
    }

    private static double CostOf(ShapeLake lake, BasinNumbers numbers)
    {
        float[] share = RelativeShape.Of(lake.Shape, lake.Fall(numbers.BranchFactor), numbers);
        double sum = 0, mean = 0;
        foreach (int k in lake.Sample)
        {
            double off = share[k] - (lake.TruthM[k] / lake.DeepestM);
            sum += off * off;
            mean += off;
        }

        return (Math.Sqrt(sum / lake.Sample.Length) / lake.ConeRmse) + (0.5 * Math.Abs(mean / lake.Sample.Length) / lake.ConeRmse);
    }

    // One number at a time, by steps that halve: few numbers, a smooth hill, and no slopes to get wrong.
    private static (BasinNumbers Numbers, double Cost) Descend(IReadOnlyList<(ShapeLake Lake, double Weight)> lakes,
        BasinNumbers from, Free[] free)
    {
        double cost = Cost(lakes, from);
        for (double scale = 1; scale > 0.1; scale *= 0.5)
        {
            for (bool moved = true; moved;)
            {
                moved = false;
                foreach (Free f in free)
                {
                    foreach (int sign in (int[])[1, -1])
                    {
                        double value = Math.Clamp(f.Of(from) + (sign * scale * f.Step), f.Low, f.High);
                        BasinNumbers tried = f.With(from, value);
                        double at = Cost(lakes, tried);
                        if (at >= cost - 1e-5) continue;
                        (from, cost, moved) = (tried, at, true);
                        break;
                    }
                }
            }
        }

        return (from, cost);
    }
}

/// <summary>Learns how wrong a guess is: the lake's own bend, the place's own error, and how far errors go together.</summary>
internal static class ShapeErrors
{
    /// <summary>What two standard errors should hold of the lakes learned from: one of a few new lakes is always odder.</summary>
    public const double WishedShare = 0.95;

    private const int Lags = 24;
    private const double LongestLag = 3;

    public static BasinNumbers Learn(IReadOnlyList<(ShapeLake Lake, double Weight)> lakes, BasinNumbers numbers)
    {
        double[][] off = new double[lakes.Count][];
        double[][] share = new double[lakes.Count][];
        double bends = 0, weights = lakes.Sum(l => l.Weight);
        double a11 = 0, a12 = 0, a22 = 0, b1 = 0, b2 = 0;
        for (int i = 0; i < lakes.Count; i++)
        {
            (ShapeLake lake, double weight) = lakes[i];
            float[] shape = RelativeShape.Of(lake.Shape, lake.Fall(numbers.BranchFactor), numbers);
            double bend = BestBend(lake, shape);
            bends += weight * bend * bend;
            share[i] = [.. lake.Sample.Select(k => Math.Pow(shape[k], Math.Exp(bend)))];
            off[i] = [.. lake.Sample.Select((k, q) => (lake.TruthM[k] / lake.DeepestM) - share[i][q])];
            for (int q = 0; q < off[i].Length; q++)
            {
                double w = weight / off[i].Length, x = Math.Min(1, 4 * share[i][q]), y = share[i][q], r2 = off[i][q] * off[i][q];
                (a11, a12, a22, b1, b2) = (a11 + (w * x * x), a12 + (w * x * y), a22 + (w * y * y), b1 + (w * x * r2), b2 + (w * y * r2));
            }
        }

        double det = (a11 * a22) - (a12 * a12), shore = ((b1 * a22) - (b2 * a12)) / det, deep = ((b2 * a11) - (b1 * a12)) / det;
        if (shore < 0) (shore, deep) = (0, b2 / a22);
        if (deep < 0) (shore, deep) = (b1 / a11, 0);
        numbers = numbers with
        {
            BendSd = Math.Max(0.05, Math.Sqrt(bends / weights)),
            ShoreSd = Math.Max(0.02, Math.Sqrt(shore)),
            DeepSd = Math.Sqrt(deep)
        };
        numbers = Range(lakes, off, share, numbers);
        return Widen(lakes, numbers);
    }

    private static double BestBend(ShapeLake lake, float[] shape)
    {
        double best = 0, least = double.PositiveInfinity;
        for (double bend = -1.2; bend <= 1.2; bend += 0.05)
        {
            double power = Math.Exp(bend);
            double sum = lake.Sample.Sum(k => Math.Pow(Math.Pow(shape[k], power) - (lake.TruthM[k] / lake.DeepestM), 2));
            if (sum < least) (least, best) = (sum, bend);
        }

        return best;
    }

    private static BasinNumbers Range(IReadOnlyList<(ShapeLake Lake, double Weight)> lakes, double[][] off,
        double[][] share, BasinNumbers numbers)
    {
        double[] together = new double[Lags], count = new double[Lags];
        for (int i = 0; i < lakes.Count; i++)
        {
            ShapeLake lake = lakes[i].Lake;
            double[] z = [.. off[i].Select((o, q) => o / BottomGuesser.LocalShare(share[i][q], numbers))];
            double variance = z.Average(v => v * v);
            SeededRandom random = new(ShapeLearner.Seed, (ulong)i);
            for (int draw = 0; draw < 60_000; draw++)
            {
                int a = random.NextInt(z.Length), b = random.NextInt(z.Length);
                double apart = lake.Frame.Centre(lake.Shape.Cells[lake.Sample[a]])
                    .DistanceToM(lake.Frame.Centre(lake.Shape.Cells[lake.Sample[b]])) / lake.Shape.WidestM;
                int lag = (int)(apart / LongestLag * Lags);
                if (lag >= Lags || a == b) continue;
                together[lag] += lakes[i].Weight * z[a] * z[b] / variance;
                count[lag] += lakes[i].Weight;
            }
        }

        double best = double.PositiveInfinity;
        BasinNumbers found = numbers;
        for (double range = 0.2; range < 4; range *= 1.08)
        {
            for (double rough = 0; rough < 0.5; rough += 0.02)
            {
                double sum = 0;
                for (int lag = 0; lag < Lags; lag++)
                {
                    if (count[lag] < 50) continue;
                    double h = (lag + 0.5) * LongestLag / Lags / range;
                    double model = h >= 1 ? 0 : (1 - rough) * (1 - (h * (1.5 - (0.5 * h * h))));
                    sum += Math.Pow((together[lag] / count[lag]) - model, 2) / (lag + 1);
                }

                if (sum < best) (best, found) = (sum, numbers with { RangeFactor = range, RoughShare = rough });
            }
        }

        return found;
    }

    // All three errors together, until two of them hold as much as they should of the lakes learned from.
    private static BasinNumbers Widen(IReadOnlyList<(ShapeLake Lake, double Weight)> lakes, BasinNumbers numbers)
    {
        for (double wider = 0.5; wider < 3; wider += 0.05)
        {
            BasinNumbers tried = numbers with
            {
                BendSd = wider * numbers.BendSd,
                ShoreSd = wider * numbers.ShoreSd,
                DeepSd = wider * numbers.DeepSd
            };
            ShapeNumbers both = new(tried, tried);
            double[] held = new double[lakes.Count];
            Parallel.For(0, lakes.Count, i => held[i] = lakes[i].Weight * ShapeScore.ShareHeld(lakes[i].Lake, lakes[i].Lake.Guess(both)));
            if (held.Sum() / lakes.Sum(l => l.Weight) >= WishedShare) return tried;
        }

        return numbers with { BendSd = 3 * numbers.BendSd, ShoreSd = 3 * numbers.ShoreSd, DeepSd = 3 * numbers.DeepSd };
    }
}
