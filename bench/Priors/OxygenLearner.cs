using SecondShore.Answers.Scoring;
using SecondShore.Engine.Season;

namespace SecondShore.Bench.Priors;

/// <summary>
/// Learns what deep water uses of oxygen: every candidate of a lattice rides on one column a season (a column does not feel its
/// oxygen), so that the cost of every candidate on every lake is known at once, and leaving a region out is a sum without it.
/// </summary>
internal sealed class OxygenLearner
{
    private const double OxygenScaleMgPerL = 2, FloorScaleM = 2, Furthest = 3, LeastSd = 0.3, MostSd = 1.5;

    private static readonly double[] Demands = [.. Enumerable.Range(0, 25).Select(i => 0.1 * Math.Pow(1.15, i))];
    private static readonly double[] Powers = [0, 0.375, 0.75, 1.125], Airs = [0.5, 1, 2];

    private readonly OxygenNumbers[] _candidates;
    private readonly double[][] _cost;
    private readonly int[] _region;

    public OxygenLearner(IReadOnlyList<ScoredLake> lakes, IReadOnlyList<int> regions, Func<OxygenNumbers, bool> free)
    {
        _candidates = [.. All().Where(free)];
        _region = [.. regions];
        _cost = new double[lakes.Count][];
        Parallel.For(0, lakes.Count, i => _cost[i] = CostOf(lakes[i]));
    }

    /// <summary>The best numbers of all regions but one, and their spread.</summary>
    /// <param name="leftOut">The region; -1 for none.</param>
    /// <param name="weight">How heavily the start weighs.</param>
    /// <param name="free">Candidates that may be taken.</param>
    public OxygenNumbers Without(int leftOut, double weight, Func<OxygenNumbers, bool> free)
    {
        int best = Enumerable.Range(0, _candidates.Length).Where(c => free(_candidates[c]))
            .MinBy(c => Sum(c, leftOut) + (weight * Off(_candidates[c])));
        OxygenNumbers found = _candidates[best];
        double[] own = [.. _region.Distinct().Where(r => r != leftOut).Select(r => Math.Log(OwnDemand(r, found) / found.DemandGPerM2Day))];
        return found with { DemandLogSd = Math.Clamp(Math.Sqrt(own.Sum(u => u * u) / own.Length), LeastSd, MostSd) };
    }

    /// <summary>The cheapest candidate of one region by itself: what no number shared by lakes can beat.</summary>
    public double Floor(int region) => Enumerable.Range(0, _candidates.Length).Min(c => Of(c, region));

    /// <summary>Cost of a lake by numbers, mean over its casts.</summary>
    public double Cost(int lake, OxygenNumbers numbers) => _cost[lake][Place(numbers)];

    private int Place(OxygenNumbers n) => Array.FindIndex(_candidates, c => c with { DemandLogSd = 0 } == n with { DemandLogSd = 0 });

    // What a region would ask for by itself, all else as found.
    private double OwnDemand(int region, OxygenNumbers found) =>
        Demands.MinBy(d => Place(found with { DemandGPerM2Day = d }) is var c and >= 0 ? Of(c, region) : double.MaxValue);

    private double Sum(int candidate, int leftOut) => _region.Distinct().Where(r => r != leftOut).Sum(r => Of(candidate, r));

    private double Of(int candidate, int region) =>
        Enumerable.Range(0, _cost.Length).Where(i => _region[i] == region).Average(i => _cost[i][candidate]);

    private static double Off(OxygenNumbers n)
    {
        double d = Math.Log(n.DemandGPerM2Day / 0.4) / 0.7, p = (n.SecchiPower - 0.75) / 0.4, a = Math.Log(n.ReaerationFactor) / 0.7;
        return (d * d) + (p * p) + (a * a);
    }

    private static IEnumerable<OxygenNumbers> All() =>
        from d in Demands
        from p in Powers
        from a in Airs
        select new OxygenNumbers { DemandGPerM2Day = d, SecchiPower = p, ReaerationFactor = a };

    private double[] CostOf(ScoredLake lake)
    {
        double[] sum = new double[_candidates.Length];
        int count = 0;
        ColumnParameters centre = ScoreRunner.PriorsOf(lake).Centre;
        OxygenDemand[] demands = [.. _candidates.Select(c => c.Demand(centre.LightExtinctionPerM))];
        foreach (SeasonCase season in SeasonCase.Of(lake))
        {
            List<(DateTimeOffset At, OxygenCast Cast)> casts = OxygenScore.Casts(season);
            if (casts.Count > 0) count += Run(season, centre, demands, casts, sum);
        }

        return [.. sum.Select(s => s / Math.Max(1, count))];
    }

    private static int Run(
        SeasonCase season, ColumnParameters centre, OxygenDemand[] demands, List<(DateTimeOffset At, OxygenCast Cast)> casts, double[] sum)
    {
        WeatherSeries weather = season.Forcing.Weather;
        LakeColumn column = new(season.Grid, centre, 8, season.Boundary.DropM(season.StartStep / 24));
        column.SetProfile(season.Start.DepthM, season.Start.TempC);
        int shut = OxygenStart.DaysShut(weather, season.StartStep, season.Start.TempC[0], season.Start.TempC[^1]);
        OxygenColumn[] oxygen = [.. demands.Select(d => new OxygenColumn(column, d, season.Forcing.PressurePa))];
        foreach (OxygenColumn o in oxygen) o.Age(shut);
        int next = 0, seen = 0;
        double wind = 0;
        for (int step = season.StartStep; step < season.EndStep && next < casts.Count; step++)
        {
            if (step % 24 == 0) season.Boundary.Apply(column, step / 24);
            column.Step(season.Forcing, step);
            foreach (OxygenColumn o in oxygen) o.Watch();
            wind += weather.WindMps[step];
            if (step % 24 == 14)
            {
                foreach (OxygenColumn o in oxygen) o.StepDay(wind / 24.0);
                wind = 0;
            }

            for (; next < casts.Count && season.StepAt(casts[next].At) <= step; next++, seen++)
                for (int c = 0; c < oxygen.Length; c++) sum[c] += Misfit(oxygen[c], casts[next].Cast);
        }

        return seen;
    }

    // What is missed of oxygen under 3 m, and of the floor's depth; where there is none the deepest reading stands for it.
    private static double Misfit(OxygenColumn model, OxygenCast cast)
    {
        double sum = 0, deepest = cast.DepthM[^1];
        int count = 0;
        for (int i = 0; i < cast.DepthM.Length; i++)
        {
            if (cast.DepthM[i] < 3) continue;
            sum += Math.Min(Furthest, Math.Abs(model.AtMgPerL(cast.DepthM[i]) - cast.MgPerL[i]) / OxygenScaleMgPerL);
            count++;
        }

        double told = model.FloorM(), measured = cast.FloorM;
        double off = Math.Abs((double.IsNaN(told) ? deepest : Math.Min(told, deepest)) - (double.IsNaN(measured) ? deepest : measured));
        return (sum / Math.Max(1, count)) + Math.Min(Furthest, off / FloorScaleM);
    }
}
