using SecondShore.Engine.Basin.Shape;

namespace SecondShore.Bench.Shapes;

/// <summary>Greatest depth by area: a line through the logarithms of measured lakes of one kind.</summary>
/// <param name="Name">The lake.</param>
/// <param name="IsDammed">Whether a dam holds it.</param>
/// <param name="AreaM2">Area of the surface, m2.</param>
/// <param name="DeepestM">Greatest depth, m.</param>
internal sealed record DeepestDepths(string Name, bool IsDammed, double AreaM2, double DeepestM)
{
    // One power for both kinds: of reservoirs there are too few to tell their own.
    private const double PriorSd = 0.6, PriorCount = 3;

    /// <summary>The measured lakes that have an area and a depth, surveys first.</summary>
    public static IReadOnlyList<DeepestDepths> All(IEnumerable<ShapeLake> lakes)
    {
        List<DeepestDepths> all = [.. lakes.Select(l => new DeepestDepths(l.Name, l.Kind == BasinKind.Dammed, l.AreaM2, l.DeepestM))];
        foreach (var folder in MeasuredLakes.Read())
        {
            if (folder.SiteOrNull is not { SurfaceAreaM2: double areaM2, MaxDepthM: double deepestM } site) continue;
            bool dammed = site.IsReservoir || site.Name.Contains("reservoir", StringComparison.OrdinalIgnoreCase)
                || site.Name.Contains("predam", StringComparison.OrdinalIgnoreCase);
            DeepestDepths lake = new(site.Name, dammed, areaM2, deepestM);
            // One lake under two names counts once.
            if (!all.Exists(lake.IsSame)) all.Add(lake);
        }

        return all;
    }

    /// <summary>The numbers without one lake.</summary>
    public static (BasinNumbers Natural, BasinNumbers Dammed) Learn(IReadOnlyList<DeepestDepths> all, ShapeLake? without,
        BasinNumbers natural, BasinNumbers dammed)
    {
        DeepestDepths? left = without is null ? null : new(without.Name, false, without.AreaM2, without.DeepestM);
        DeepestDepths[] of = [.. all.Where(l => left is null || !l.IsSame(left))];
        double[] middle = [.. new[] { false, true }.Select(d => of.Where(l => l.IsDammed == d).Average(l => l.X))];
        double[] level = [.. new[] { false, true }.Select(d => of.Where(l => l.IsDammed == d).Average(l => l.Y))];
        double xy = of.Sum(l => (l.X - middle[l.Kind]) * (l.Y - level[l.Kind]));
        double xx = of.Sum(l => Math.Pow(l.X - middle[l.Kind], 2));
        double power = xy / xx;
        return (With(natural, 0), With(dammed, 1));

        BasinNumbers With(BasinNumbers numbers, int kind)
        {
            double[] off = [.. of.Where(l => l.Kind == kind).Select(l => l.Y - level[kind] - (power * (l.X - middle[kind])))];
            double sd = Math.Sqrt((off.Sum(o => o * o) + (PriorCount * PriorSd * PriorSd)) / (off.Length + PriorCount - 1));
            return numbers with { DeepestLogValue = level[kind] - (power * middle[kind]), DeepestAreaPower = power, DeepestLogSd = sd };
        }
    }

    private double X => Math.Log(AreaM2 / 1e6);

    private double Y => Math.Log(DeepestM);

    private int Kind => IsDammed ? 1 : 0;

    private bool IsSame(DeepestDepths other) =>
        Name == other.Name || (Math.Abs(Math.Log(AreaM2 / other.AreaM2)) < 0.15 && Math.Abs(Math.Log(DeepestM / other.DeepestM)) < 0.25);
}
