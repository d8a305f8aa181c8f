using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Bench.Shapes;

/// <summary>How well one lake was guessed.</summary>
/// <param name="Lake">The lake.</param>
/// <param name="Ratio">Error of the guess over that of a cone, greatest depth told to both.</param>
/// <param name="RatioWithMean">The same where the mean depth was told too.</param>
/// <param name="Held">Share of the cells whose truth lies within two standard errors.</param>
/// <param name="HeldUnknown">The same where no depth was told.</param>
/// <param name="DeepestFactor">Guessed over true greatest depth where none was told.</param>
/// <param name="Area">Mean over depths of the difference in area, as a share of the surface.</param>
/// <param name="AreaWithMean">The same where the mean depth was told too.</param>
/// <param name="ConeArea">The same of the cone.</param>
/// <param name="ShoreOff">How far the contour at 0.4 of the greatest depth lies from the true one, in radii of the largest circle.</param>
/// <param name="ConeShoreOff">The same of the cone.</param>
/// <param name="Sounded">Error on the second shore's stretch after twenty soundings by Sound here,
/// over that after twenty spread evenly.</param>
/// <param name="OnTheLine">The same after twenty soundings on the true line itself: what no rule can be expected to better by much.</param>
internal sealed record ShapeScore(
    ShapeLake Lake, double Ratio, double RatioWithMean, double Held, double HeldUnknown, double DeepestFactor,
    double Area, double AreaWithMean,
    double ConeArea, double ShoreOff, double ConeShoreOff, double Sounded, double OnTheLine)
{
    private const double ShoreShare = 0.4;
    private const int Depths = 50;

    public static ShapeScore Of(ShapeLake lake, ShapeNumbers numbers)
    {
        GuessedBottom told = lake.Guess(numbers), withMean = lake.Guess(numbers, true, true), unknown = lake.Guess(numbers, false);
        float[] cone = [.. lake.Shape.ShoreM.Select(m => (float)(lake.DeepestM * m / lake.Shape.WidestM))];
        float[] mean = told.Model!.MeanM;
        (double Wished, double OnTheLine) sounded = SoundedRatios(lake, told);
        double coneRmse = lake.ConeRmse * lake.DeepestM, shoreM = ShoreShare * lake.DeepestM;
        return new ShapeScore(
            lake,
            lake.Rmse(k => mean[k]) / coneRmse,
            lake.Rmse(k => withMean.Model!.MeanM[k]) / coneRmse,
            ShareHeld(lake, told),
            ShareHeld(lake, unknown),
            unknown.DeepestM / lake.DeepestM,
            AreaOff(lake, mean),
            AreaOff(lake, withMean.Model!.MeanM),
            AreaOff(lake, cone),
            ShoreOffM(lake, mean, shoreM) / lake.Shape.WidestM,
            ShoreOffM(lake, cone, shoreM) / lake.Shape.WidestM,
            sounded.Wished,
            sounded.OnTheLine);
    }

    /// <summary>Share of the cells whose truth lies within two standard errors of the guess.</summary>
    public static double ShareHeld(ShapeLake lake, GuessedBottom guess)
    {
        int held = 0;
        foreach (int k in lake.Judged)
            if (Math.Abs(guess.Model!.MeanM[k] - lake.TruthM[k]) <= 2 * Math.Sqrt(guess.Model.VarianceM2(k))) held++;
        return (double)held / lake.Judged.Length;
    }

    private static double AreaOff(ShapeLake lake, float[] depthM)
    {
        double sum = 0;
        for (int d = 0; d < Depths; d++)
        {
            double atM = (d + 0.5) / Depths * lake.DeepestM;
            sum += Math.Abs(lake.Judged.Count(k => depthM[k] >= atM) - lake.Judged.Count(k => lake.TruthM[k] >= atM))
                / (double)lake.Judged.Length;
        }

        return sum / Depths;
    }

    // Mean way from each line to the other, both ways: a line too many counts as much as one too few.
    private static double ShoreOffM(ShapeLake lake, float[] depthM, double atM)
    {
        bool[] guessed = Crossing(lake, depthM, atM), truth = Crossing(lake, lake.TruthM, atM), judged = new bool[lake.Frame.Count];
        foreach (int k in lake.Judged) judged[lake.Shape.Cells[k]] = true;
        for (int i = 0; i < judged.Length; i++) (guessed[i], truth[i]) = (guessed[i] && judged[i], truth[i] && judged[i]);
        return 0.5 * (WayM(lake, guessed, truth) + WayM(lake, truth, guessed));
    }

    private static double WayM(ShapeLake lake, bool[] from, bool[] to)
    {
        if (!from.Contains(true) || !to.Contains(true)) return lake.Shape.WidestM;
        float[] squared = NearestCell.Of(to, lake.Frame.Nx, lake.Frame.Ny).SquaredCells;
        return lake.Frame.CellM * Enumerable.Range(0, from.Length).Where(i => from[i]).Average(i => Math.Sqrt(squared[i]));
    }

    /// <summary>[Ny*Nx] cells that the contour at a depth runs through.</summary>
    private static bool[] Crossing(ShapeLake lake, float[] depthM, double atM)
    {
        bool[] crossing = new bool[lake.Frame.Count];
        for (int k = 0; k < depthM.Length; k++)
        {
            int i = lake.Shape.Cells[k], x = i % lake.Frame.Nx, y = i / lake.Frame.Nx;
            for (int side = 1; side < 9 && !crossing[i]; side += 2)
            {
                int nx = x + (side % 3) - 1, ny = y + (side / 3) - 1;
                int j = lake.Frame.Contains(nx, ny) ? lake.Shape.IndexOf[lake.Frame.Index(nx, ny)] : -1;
                crossing[i] = j >= 0 && depthM[k] >= atM != depthM[j] >= atM;
            }
        }

        return crossing;
    }

    // The places that the rule wishes, asked anew after each depth, and as a bound the true line itself, which nobody knows.
    private static (double Wished, double OnTheLine) SoundedRatios(ShapeLake lake, GuessedBottom guess)
    {
        const int count = 20;
        List<double> wishes = [], bounds = [];
        if (lake.Judged.Length < 0.9 * lake.TruthM.Length) return (double.NaN, double.NaN);
        int[] spread = Spread(lake, count);
        foreach (double share in (double[])[0.25, 0.4, 0.55])
        {
            double atM = share * lake.DeepestM;
            bool[] crossing = Crossing(lake, lake.TruthM, atM);
            int[] stretch = [.. lake.Judged.Where(k => crossing[lake.Shape.Cells[k]])];
            if (stretch.Length < 10) continue;
            SeededRandom random = new(ShapeLearner.Seed, 5);
            SoundedBottom wished = guess.Sound(), even = guess.Sound(), bound = guess.Sound();
            for (int q = 0; q < count; q++)
            {
                IReadOnlyList<SoundingWish> wish = SoundHere.Best(wished, atM, 0.3, 1);
                if (wish.Count == 0) break;
                Sound(lake, wished, wished.CellAt(wish[0].Place), random);
            }

            foreach (int k in spread) Sound(lake, even, k, random);
            foreach (int k in Along(lake, stretch, count)) Sound(lake, bound, k, random);
            double evenM = StretchRmseM(lake, even, stretch);
            wishes.Add(StretchRmseM(lake, wished, stretch) / evenM);
            bounds.Add(StretchRmseM(lake, bound, stretch) / evenM);
        }

        return wishes.Count > 0 ? (Math.Exp(wishes.Average(Math.Log)), Math.Exp(bounds.Average(Math.Log))) : (double.NaN, double.NaN);
    }

    // Cells of the line as far from each other as may be.
    private static List<int> Along(ShapeLake lake, int[] stretch, int count)
    {
        List<int> chosen = [];
        double[] least = new double[stretch.Length];
        Array.Fill(least, double.PositiveInfinity);
        for (int next = 0; chosen.Count < count; next = Array.IndexOf(least, least.Max()))
        {
            chosen.Add(stretch[next]);
            PlanePoint at = lake.Frame.Centre(lake.Shape.Cells[stretch[next]]);
            for (int q = 0; q < least.Length; q++)
                least[q] = Math.Min(least[q], at.DistanceToM(lake.Frame.Centre(lake.Shape.Cells[stretch[q]])));
        }

        return chosen;
    }

    // As an angler reads it: to 0.15 m and 1 % of the depth.
    private static void Sound(ShapeLake lake, SoundedBottom bottom, int cell, SeededRandom random)
    {
        double sdM = 0.15 + (0.01 * lake.TruthM[cell]), readM = Math.Max(0.1, lake.TruthM[cell] + (sdM * random.NextNormal()));
        bottom.Add(new Sounding(lake.Frame.Centre(lake.Shape.Cells[cell]), readM, sdM));
    }

    private static double StretchRmseM(ShapeLake lake, SoundedBottom bottom, int[] stretch)
    {
        double sum = 0;
        foreach (int k in stretch) sum += Math.Pow(bottom.MeanM[k] - lake.TruthM[k], 2);
        return Math.Sqrt(sum / stretch.Length);
    }

    // Middles of as many even parts of the water (Lloyd's rounds from the furthest points).
    private static int[] Spread(ShapeLake lake, int count)
    {
        PlanePoint[] at = [.. lake.Shape.Cells.Select(i => lake.Frame.Centre(i))];
        double[] least = new double[at.Length];
        Array.Fill(least, double.PositiveInfinity);
        int next = Array.IndexOf(lake.Shape.ShoreM, lake.Shape.ShoreM.Max());
        PlanePoint[] middles = new PlanePoint[count];
        for (int q = 0; q < count; q++)
        {
            middles[q] = at[next];
            for (int k = 0; k < at.Length; k++) least[k] = Math.Min(least[k], at[k].DistanceToM(middles[q]));
            next = Array.IndexOf(least, least.Max());
        }

        for (int round = 0; round < 12; round++)
        {
            var parts = at.GroupBy(p => Enumerable.Range(0, count).MinBy(q => p.DistanceToM(middles[q]))).ToArray();
            foreach (var part in parts) middles[part.Key] = new PlanePoint(part.Average(p => p.XM), part.Average(p => p.YM));
        }

        return [.. middles.Select(m => Enumerable.Range(0, at.Length).MinBy(k => at[k].DistanceToM(m)))];
    }
}
