using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>Cut on 1 September, 15 September and 1 October; weather after the cut comes from other years only.</summary>
internal static class HindcastScore
{
    private const int Members = 64;
    private static readonly int[] Leads = [7, 14, 30];

    public static LakeScore Of(ScoredLake lake, IProgress<double>? progress, CancellationToken cancel)
    {
        List<SeasonCase> cases = SeasonCase.Of(lake);
        HindcastSums sums = new();
        int done = 0;
        foreach (SeasonCase season in cases)
        {
            foreach ((int month, int day) in new[] { (9, 1), (9, 15), (10, 1) })
            {
                cancel.ThrowIfCancellationRequested();
                Score(season, cases, StepHistory.Of(lake.Profiles, season.Year), season.Instant(month, day), sums, cancel);
                progress?.Report(++done / (3.0 * cases.Count));
            }
        }

        List<string> why = [];
        if (sums.Thermocline.Count == 0) why.Add("no thermocline was measured 7, 14 or 30 days after a cut");
        if (sums.Overturn.Count == 0) why.Add("no overturn after a cut is bracketed");
        return new LakeScore
        {
            Lake = lake.Name,
            Mode = ScoreRunner.ModeWord(ScoreMode.Hindcast),
            ThermoclineMaeM = Mean(sums.ThermoclineError),
            OverturnMaeDays = Mean(sums.OverturnError),
            Coverage80 = Mean(sums.Inside),
            CrpsThermoclineM = Mean(sums.Thermocline),
            CrpsOverturnDays = Mean(sums.Overturn),
            SkillVsClimatology = Skill(sums.At14, sums.At14Climatology),
            SkillVsPersistence = Skill(sums.At14, sums.At14Persistence),
            OverturnSkillVsClimatology = Skill(sums.Overturn, sums.OverturnClimatology),
            N = sums.Inside.Count,
            Why = why,
        };
    }

    private static void Score(SeasonCase season, List<SeasonCase> cases, StepHistory history, DateTimeOffset cut, HindcastSums sums, CancellationToken cancel)
    {
        ObservedProfile[] ahead = [.. Leads.Select(lead => Nearest(season, cut.AddDays(lead))).OfType<ObservedProfile>()];
        bool dated = season.Overturn is { FirstMixed: not null } o && new DateTimeOffset(o.LastStratified.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero) > cut;
        if (ahead.Length == 0 && !dated) return;
        // Weather up to the cut; earlier years and later ones stand behind it.
        WeatherSeries whole = season.Forcing.Weather;
        OutlookRequest request = SeasonRequest.Of(season, cut, Members) with
        {
            Weather = WeatherCut.Until(whole, cut),
            PastYears = [.. season.Lake.Weather.Segments],
            ExcludeYear = season.Year,
            Profiles = [season.Start, .. Weekly(season, cut)],
            Levels = [.. season.Lake.Levels.Where(l => l.At <= cut)],
            Flows = [.. season.Lake.Flows.Where(f => f.At <= cut)],
        };
        MemberCourse course = new(OutlookModel.ComputeMembers(request, null, cancel), season);
        ObservedProfile? before = season.Observed.LastOrDefault(p => p.At <= cut && !double.IsNaN(p.ThermoclineM));
        foreach (ObservedProfile seen in ahead) Thermocline(season, cases, history, cut, course, seen, before, sums);
        if (dated) Overturn(season, course, sums);
    }

    private static void Thermocline(SeasonCase season, List<SeasonCase> cases, StepHistory history, DateTimeOffset cut, MemberCourse course, ObservedProfile seen, ObservedProfile? before, HindcastSums sums)
    {
        (double median, double[] samples, double[] weights, double stands) = course.ThermoclineM(seen);
        double lead = (seen.At - cut).TotalDays;
        (samples, weights) = ModelError.Widen(samples, weights, m => ModelError.ThermoclineSdM(m, lead), 0.1, seen.DepthM[^1]);
        SeenStep? last = before is null ? null : new SeenStep(before.At.DayOfYear, before.ThermoclineM);
        (samples, weights) = history.Join(samples, weights, stands, seen.At.DayOfYear, last, seen.DepthM[^1]);
        median = SampleDistribution.Of(samples, weights).Quantile(0.5);
        double truth = seen.ThermoclineM, crps = Crps.Weighted(samples, weights, truth);
        sums.Thermocline.Add(crps);
        sums.ThermoclineError.Add(Math.Abs(median - truth));
        SampleDistribution law = SampleDistribution.Of(samples, weights);
        sums.Inside.Add(Interval80.Holds(law, truth, truth));
        if (Math.Abs((seen.At - cut).TotalDays - 14) > 4) return;
        double[] climate = [.. cases.Where(c => c.Year != season.Year).SelectMany(c => c.Observed)
            .Where(p => !double.IsNaN(p.ThermoclineM) && Math.Abs(p.At.DayOfYear - seen.At.DayOfYear) <= 10).Select(p => p.ThermoclineM)];
        if (climate.Length > 0)
        {
            sums.At14.Add(crps);
            sums.At14Climatology.Add(Crps.Equal(climate, truth));
            sums.At14Persistence.Add(before is null ? double.NaN : Math.Abs(before.ThermoclineM - truth));
        }
    }

    private static void Overturn(SeasonCase season, MemberCourse course, HindcastSums sums)
    {
        MeasuredOverturn measured = season.Overturn!;
        DateOnly newYear = season.FirstDay;
        double first = measured.LastStratified.DayNumber - newYear.DayNumber, last = measured.FirstMixed!.Value.DayNumber - newYear.DayNumber;
        double[] days = course.OverturnDays(), weights = course.Weights();
        (days, weights) = ModelError.Widen(days, weights, _ => ModelError.OverturnSdDays, 0, 364);
        SampleDistribution law = SampleDistribution.Of(days, weights);
        // The truth lies between two casts; the middle stands for it, and a forecast inside the bracket is not charged.
        double truth = Math.Clamp(law.Quantile(0.5), first, last);
        sums.Overturn.Add(Crps.Weighted(days, weights, truth));
        sums.OverturnError.Add(Math.Abs(law.Quantile(0.5) - truth));
        sums.Inside.Add(Interval80.Holds(law, first, last));
        double[] others = [.. season.Lake.Overturns.Where(o => o.Year != season.Year && o.FirstMixed is not null)
            .Select(o => (0.5 * (o.LastStratified.DayNumber + o.FirstMixed!.Value.DayNumber)) - SeasonCase.Day(season.Lake, o.Year, 1, 1).DayNumber)];
        sums.OverturnClimatology.Add(others.Length == 0 ? double.NaN : Crps.Equal(others, Math.Clamp(others.Order().ElementAt(others.Length / 2), first, last)));
    }

    private static ObservedProfile? Nearest(SeasonCase season, DateTimeOffset at) =>
        season.Observed.Where(p => !double.IsNaN(p.ThermoclineM) && Math.Abs((p.At - at).TotalDays) <= 3).MinBy(p => Math.Abs((p.At - at).TotalHours));

    private static IEnumerable<WaterProfile> Weekly(SeasonCase season, DateTimeOffset cut)
    {
        DateTimeOffset next = DateTimeOffset.MaxValue;
        foreach (ObservedProfile p in season.Observed.Where(p => p.At <= cut).Reverse())
        {
            if (p.At > next) continue;
            next = p.At.AddDays(-7);
            yield return new WaterProfile(p.At, p.DepthM, p.TempC, null, p.Source);
        }
    }

    private static double? Mean(List<double> values) => values.Count == 0 ? null : values.Average();

    private static double? Skill(List<double> own, List<double> reference)
    {
        double a = 0, b = 0;
        for (int i = 0; i < Math.Min(own.Count, reference.Count); i++)
        {
            if (!double.IsFinite(reference[i])) continue;
            a += own[i];
            b += reference[i];
        }

        return b > 0 ? 1 - (a / b) : null;
    }

    private sealed class HindcastSums
    {
        public List<double> Thermocline { get; } = [];

        public List<double> ThermoclineError { get; } = [];

        public List<double> Overturn { get; } = [];

        public List<double> OverturnError { get; } = [];

        public List<double> OverturnClimatology { get; } = [];

        public List<double> Inside { get; } = [];

        public List<double> At14 { get; } = [];

        public List<double> At14Climatology { get; } = [];

        public List<double> At14Persistence { get; } = [];
    }
}
