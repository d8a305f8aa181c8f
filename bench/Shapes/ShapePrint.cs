using System.Globalization;

namespace SecondShore.Bench.Shapes;

/// <summary>Scores of many lakes as a table and as figures.</summary>
internal static class ShapePrint
{
    public static void Table(string what, IReadOnlyList<ShapeScore> scores)
    {
        Console.Error.WriteLine($"{what}: error over a cone's, with mean depth; held by two sd, nothing told; deepest guessed/true; "
            + $"area off, with mean, cone's; shore off, cone's; sounded, on the line");
        foreach (ShapeScore s in scores)
        {
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"  {s.Lake.Name,-26} {s.Lake.AreaM2 / 1e6,7:0.00} km2 {s.Lake.DeepestM,5:0.0} m  {s.Ratio:0.00} {s.RatioWithMean:0.00}  "
                    + $"{s.Held:0.00} {s.HeldUnknown:0.00}  {s.DeepestFactor:0.00}  {s.Area:0.00} {s.AreaWithMean:0.00} {s.ConeArea:0.00}  "
                    + $"{s.ShoreOff:0.00} {s.ConeShoreOff:0.00}  {s.Sounded:0.00} {s.OnTheLine:0.00}"));
        }

        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  median                                         "
                + $"{Median(scores, s => s.Ratio):0.00} {Median(scores, s => s.RatioWithMean):0.00}  {scores.Average(s => s.Held):0.00} "
                + $"{scores.Average(s => s.HeldUnknown):0.00}  -     "
                + $"{Median(scores, s => s.Area):0.00} {Median(scores, s => s.AreaWithMean):0.00} {Median(scores, s => s.ConeArea):0.00}  "
                + $"{Median(scores, s => s.ShoreOff):0.00} {Median(scores, s => s.ConeShoreOff):0.00}  "
                + $"{Median(scores, s => s.Sounded):0.00} {Median(scores, s => s.OnTheLine):0.00}"));
    }

    public static IEnumerable<Measured> Figures(string of, IReadOnlyList<ShapeScore> scores, IReadOnlyList<ShapeScore>? inSample)
    {
        string name = $"basin-shape-{of}", lakes = $"{scores.Count} lakes, each left out";
        yield return new Measured($"{name}-error", Median(scores, s => s.Ratio), "of a cone's",
            $"median of {lakes}; want 0.75 or less; {Range(scores, s => s.Ratio)}{InSample(inSample, s => s.Ratio)}");
        yield return new Measured($"{name}-error-with-mean", Median(scores, s => s.RatioWithMean), "of a cone's",
            $"mean depth told too; {Range(scores, s => s.RatioWithMean)}");
        yield return new Measured($"{name}-within-2sd", scores.Average(s => s.Held), "share",
            $"of the cells, mean of {lakes}; want 0.85 to 0.98; {Range(scores, s => s.Held)}");
        yield return new Measured($"{name}-within-2sd-nothing-told", scores.Average(s => s.HeldUnknown), "share",
            $"no depth told; {Range(scores, s => s.HeldUnknown)}");
        yield return new Measured($"{name}-area", Median(scores, s => s.Area), "of the surface", $"difference of area, mean over depths; "
            + $"want 0.15 or less; {Range(scores, s => s.Area)}; cone {Number(Median(scores, s => s.ConeArea))}");
        yield return new Measured($"{name}-area-with-mean", Median(scores, s => s.AreaWithMean), "of the surface",
            $"mean depth told too; {Range(scores, s => s.AreaWithMean)}");
        yield return new Measured($"{name}-shore", Median(scores, s => s.ShoreOff), "of the largest circle's radius",
            $"way between guessed and true contour at 0.4 of the greatest depth; cone {Number(Median(scores, s => s.ConeShoreOff))}");
        yield return new Measured($"{name}-sounded", Median(scores, s => s.Sounded),
            "of evenly", $"error on the second shore after twenty soundings by Sound here over twenty spread evenly; want 0.6 or less; "
                + $"{Range(scores, s => s.Sounded)}; on the true line itself {Number(Median(scores, s => s.OnTheLine))}");
    }

    public static double Median(IReadOnlyList<ShapeScore> scores, Func<ShapeScore, double> of)
    {
        double[] sorted = [.. scores.Select(of).Where(double.IsFinite).Order()];
        return 0.5 * (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]);
    }

    private static string Range(IReadOnlyList<ShapeScore> scores, Func<ShapeScore, double> of) =>
        $"{Number(scores.Select(of).Where(double.IsFinite).Min())} to {Number(scores.Select(of).Where(double.IsFinite).Max())}";

    private static string InSample(IReadOnlyList<ShapeScore>? scores, Func<ShapeScore, double> of) =>
        scores is null ? "" : $"; in sample {Number(Median(scores, of))}";

    private static string Number(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);
}
