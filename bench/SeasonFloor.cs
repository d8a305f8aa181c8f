using SecondShore.Answers.Scoring;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>
/// What no run of a column can foretell on the measured lakes: how far each cast stands off the straight line between the casts
/// before and after it, scaled to the error of one cast. Rocking layers, tilt, the place of the buoy and the instrument are in it.
/// And how far the step stays off when the column's numbers are fitted to those very steps: more than weather and column allow.
/// </summary>
internal sealed class SeasonFloor : IFigure
{
    // Casts further apart hold weather that a column does see; nearer ones are one cast.
    private const double LongestD = 8, ShortestD = 0.2;

    public string Name => "season-floor";

    public string Claim => "scatter of single casts about their neighbours in time, April to November: a floor under every error of a column";

    public FigureMargin Margin => FigureMargin.Within(0.005);

    public IEnumerable<Measured> Measure()
    {
        foreach (LakeFolder lake in MeasuredLakes.Read())
        {
            WaterProfile[] casts = [.. lake.Profiles.Where(p => p.At.Month is >= 4 and <= 11).OrderBy(p => p.At)];
            List<double> squares = [], steps = [], gaps = [];
            for (int i = 1, last = 0, next = 0; i + 1 < casts.Length; i++)
            {
                // Casts within some hours are one; the neighbours are those beyond.
                while (last + 1 < i && DaysTo(casts[last + 1], casts[i]) >= ShortestD) last++;
                while (next < casts.Length && DaysTo(casts[i], casts[next]) < ShortestD) next++;
                if (next == casts.Length) break;
                double before = DaysTo(casts[last], casts[i]), after = DaysTo(casts[i], casts[next]);
                if (before is < ShortestD or > LongestD || after > LongestD) continue;
                double share = after / (before + after), own = 1 / (1 + (share * share) + ((1 - share) * (1 - share)));
                gaps.Add(before);
                foreach ((double depthM, double tempC) in Pairs(casts[i]))
                {
                    if (TempAt(casts[last], depthM) is { } a && TempAt(casts[next], depthM) is { } b)
                        squares.Add(own * Math.Pow(tempC - (share * a) - ((1 - share) * b), 2));
                }

                if (StepM(casts[last]) is { } earlier && StepM(casts[i]) is { } here && StepM(casts[next]) is { } later)
                    steps.Add(Math.Sqrt(own) * Math.Abs(here - (share * earlier) - ((1 - share) * later)));
            }

            string name = lake.Files.Name;
            if (squares.Count < 100)
            {
                yield return new($"{Name}-{name}-casts", squares.Count, "pairs", "too few casts within eight days of each other");
                continue;
            }

            gaps.Sort();
            string how = FormattableString.Invariant($"{gaps.Count} casts, {gaps[gaps.Count / 2]:0.#} days apart in the median");
            yield return new($"{Name}-{name}-temperature", Math.Sqrt(squares.Average()), "K", how);
            if (steps.Count > 10) yield return new($"{Name}-{name}-thermocline", steps.Average(), "m", $"mean of {steps.Count} steps");
            if (ScoreRunner.StepFloorM(lake) is { } floor) yield return new($"{Name}-{name}-own-fit", floor, "m", "column fitted to the very steps it is held against, second half of the years");
        }
    }

    private static double DaysTo(WaterProfile from, WaterProfile to) => (to.At - from.At).TotalDays;

    private static IEnumerable<(double DepthM, double TempC)> Pairs(WaterProfile p) => p.DepthM.Zip(p.TempC).Where(x => double.IsFinite(x.Second));

    private static double? TempAt(WaterProfile p, double depthM)
    {
        int at = Array.IndexOf(p.DepthM, depthM);
        return at >= 0 && double.IsFinite(p.TempC[at]) ? p.TempC[at] : null;
    }

    // The same casts tell a step as in the scores.
    private static double? StepM(WaterProfile p)
    {
        (double DepthM, double TempC)[] good = [.. Pairs(p)];
        if (good.Length < 6) return null;
        Stratification layers = Stratification.Of([.. good.Select(g => g.DepthM)], [.. good.Select(g => g.TempC)]);
        return layers.HasThermocline && layers.DensityDifferenceKgPerM3 > 0.5 ? layers.ThermoclineM : null;
    }
}
