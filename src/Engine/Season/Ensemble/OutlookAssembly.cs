using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Season;

/// <summary>Turns members into distributions.</summary>
internal static class OutlookAssembly
{
    // A member that turned over within these days, or will, is turning.
    private const double TurningDays = 7;

    // A skin that fewer members have is not named (choice).
    private const double LeastSkinShare = 0.5;

    public static Outlook Assemble(OutlookRequest request, SeasonModel model, double[] weight, MemberTrace[] traces)
    {
        ArmOutlook[] arms = [.. Enumerable.Range(0, model.Arms.Count).Select(a => Arm(model, a, weight, traces))];
        List<Finding> assumed = [.. model.Priors[0].Assumed, .. model.Timeline.Assumed];
        if (model.StartProfile is null) assumed.Add(SeasonFindings.NoSpringCast.Of());
        return new Outlook
        {
            At = request.At,
            Lake = arms[0],
            Arms = arms,
            IsRoughGuess = model.Timeline.IsMadeUp && model.Observations.All.Count == 0 && model.StartProfile is null,
            Assumed = [.. assumed.Distinct()],
            Doubted = [.. model.Observations.Refused, .. ReadingsFilter.Doubted(model, traces, weight).Distinct()],
        };
    }

    private static ArmOutlook Arm(SeasonModel model, int arm, double[] weight, MemberTrace[] traces)
    {
        int n = traces.Length;
        double[] days = [.. traces.Select(t => TurnoverDays(model, t.Days[arm]))];
        double[] settled = [.. traces.Select(t => SettledDays(model, t.Days[arm]))];
        double stratified = 0, layered = 0, turning = 0, seen = 0;
        for (int i = 0; i < n; i++)
        {
            ArmNow now = traces[i].Now[arm];
            bool stands = now.Layers.HasThermocline;
            if (stands) stratified += weight[i];
            if (double.IsFinite(days[i])) seen += weight[i];
            if (double.IsFinite(days[i]) && Math.Abs(days[i]) <= TurningDays) turning += weight[i];
            else if (stands || days[i] > 0 && now.Layers.DensityDifferenceKgPerM3 > Stratification.LayeredKgPerM3) layered += weight[i];
        }

        double mixed = 1 - layered - turning;
        LayerState state = turning >= 0.4 && turning >= Math.Min(layered, mixed) ? LayerState.Turning : layered >= mixed ? LayerState.Stratified : LayerState.Mixed;
        return new ArmOutlook
        {
            Name = model.Arms[arm].Name,
            State = state,
            ChanceStratified = Math.Clamp(stratified, 0, 1),
            ThermoclineM = Depth(model, arm, weight, traces, t => t.Now[arm].Layers.ThermoclineM, model.Timeline.AtStep),
            MetalimnionTopM = Of(traces, weight, t => t.Now[arm].Layers.TopM, 0.1),
            MetalimnionBottomM = Of(traces, weight, t => t.Now[arm].Layers.BottomM, 0.1),
            Skin = Skin(arm, weight, traces),
            OxygenFloorM = Of(traces, weight, t => t.Now[arm].FloorM, 0.5),
            TurnoverInDays = Date(days, weight, state),
            ChanceTurnoverSeen = Math.Clamp(seen, 0, 1),
            SettledInDays = Of(settled, weight, 0.05),
            Profile = Profile(model, arm, weight, traces),
            Days = Course(model, arm, weight, traces),
            Layers = [.. Layered(arm, weight, traces).Select(i => Two(traces[i].Now[arm].Two, weight[i])!)],
            Ahead = arm == 0 ? Ahead(model, weight, traces) : [],
        };
    }

    private static IEnumerable<int> Layered(int arm, double[] weight, MemberTrace[] traces) =>
        Enumerable.Range(0, traces.Length).Where(i => weight[i] > 0 && double.IsFinite(traces[i].Now[arm].Two.UpperM));

    private static TwoLayers? Two((double UpperM, double Upper, double Lower) two, double weight) =>
        double.IsFinite(two.UpperM) ? new TwoLayers(two.UpperM, two.Upper, two.Lower, weight) : null;

    private static LayerHour[] Ahead(SeasonModel model, double[] weight, MemberTrace[] traces)
    {
        int[] layered = [.. Layered(0, weight, traces)];
        if (layered.Length == 0) return [];
        return [.. Enumerable.Range(0, traces[0].Ahead.Count).Select(h => new LayerHour(
            Depth(model, 0, weight, traces, t => t.Ahead[h].UpperM, model.Timeline.AtStep + h),
            [.. layered.Select(i => Two(traces[i].Ahead[h], weight[i]))]))];
    }

    private static WarmSkin? Skin(int arm, double[] weight, MemberTrace[] traces)
    {
        double Strong(MemberTrace t, double value) => t.Now[arm].Skin.IsStrong ? value : double.NaN;
        return Of(traces, weight, t => Strong(t, t.Now[arm].Skin.SkinDepthM), LeastSkinShare) is not { } depth ? null
            : new WarmSkin(depth.Spread, Of(traces, weight, t => Strong(t, t.Now[arm].Skin.SkinK), LeastSkinShare)!.Spread);
    }

    // Depths and dates carry the error all members share, besides what they differ by.
    private static SampleDistribution? Depth(SeasonModel model, int arm, double[] weight, MemberTrace[] traces, Func<MemberTrace, double> depthM, int step)
    {
        double lead = Math.Max(0, (step - KnownTo(model, step)) / 24.0), deepest = model.Arms[arm].Basin.MaxDepthM, stands = 0;
        List<double> samples = [], shares = [];
        for (int i = 0; i < traces.Length; i++)
        {
            double depth = depthM(traces[i]);
            if (!double.IsFinite(depth) || !(weight[i] > 0)) continue;
            samples.Add(depth);
            shares.Add(weight[i]);
            stands += weight[i];
        }

        if (stands < 0.1) return null;
        (double[] wide, double[] parts) = ModelError.Widen([.. samples], [.. shares], m => ModelError.ThermoclineSdM(m, lead), 0.1, deepest);
        if (arm == 0) (wide, parts) = model.History.Join(wide, parts, stands, model.Timeline.StartUtc.AddHours(step).DayOfYear, model.LastSeen, deepest);
        return SampleDistribution.Of(wide, parts);
    }

    // Doubt grows from where the weather ends, or from the last reading where there is no weather.
    private static int KnownTo(SeasonModel model, int step) =>
        model.Observations.All is [.., { } last] ? Math.Max(model.Timeline.KnownToStep, Math.Min(last.Step, step)) : model.Timeline.KnownToStep;

    // What is told as layered has not turned: a member that says otherwise turns today.
    private static SampleDistribution? Date(double[] days, double[] weight, LayerState state)
    {
        double least = state == LayerState.Stratified ? 0 : double.MinValue;
        (double[] wide, double[] shares) = ModelError.Widen(days, weight, _ => ModelError.OverturnSdDays, least, double.MaxValue);
        return Of(wide, shares, 0.05);
    }

    private static double TurnoverDays(SeasonModel model, ArmDays days)
    {
        (double[] top, double[] bottom, int first) = Cut(model, days);
        int day = OverturnRule.Lasting(top, bottom, OverturnRule.MostStable(top, bottom));
        return day < 0 ? double.NaN : (((first + day) * 24.0) + 12 - model.Timeline.AtStep) / 24.0;
    }

    // Settled: the first of five days in a row within a quarter kelvin from top to bottom, after turnover.
    private static double SettledDays(SeasonModel model, ArmDays days)
    {
        (double[] top, double[] bottom, int first) = Cut(model, days);
        int day = OverturnRule.Lasting(top, bottom, OverturnRule.MostStable(top, bottom)), run = 0;
        if (day < 0) return double.NaN;
        for (int d = day; d < top.Length; d++)
        {
            run = Math.Abs(top[d] - bottom[d]) < 0.25 ? run + 1 : 0;
            if (run == 5) return (((first + d - 4) * 24.0) + 12 - model.Timeline.AtStep) / 24.0;
        }

        return double.NaN;
    }

    private static (double[] Top, double[] Bottom, int First) Cut(SeasonModel model, ArmDays days)
    {
        int first = (model.StartStep / 24) + 1, last = days.TopC.Length - 1;
        while (first < last && double.IsNaN(days.TopC[first])) first++;
        while (last > first && double.IsNaN(days.TopC[last])) last--;
        return (days.TopC[first..(last + 1)], days.BottomC[first..(last + 1)], first);
    }

    private static SampleDistribution? Of(MemberTrace[] traces, double[] weight, Func<MemberTrace, double> value, double least) =>
        Of([.. traces.Select(value)], weight, least);

    private static SampleDistribution? Of(double[] samples, double[] weight, double least)
    {
        List<double> values = [], weights = [];
        double sum = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double v = samples[i];
            if (!double.IsFinite(v) || !(weight[i] > 0)) continue;
            values.Add(v);
            weights.Add(weight[i]);
            sum += weight[i];
        }

        return sum >= least ? SampleDistribution.Of([.. values], [.. weights]) : null;
    }

    private static ProfilePoint[] Profile(SeasonModel model, int arm, double[] weight, MemberTrace[] traces)
    {
        double deepest = model.Arms[arm].Basin.MaxDepthM - model.Boundaries[0].DropM(model.Timeline.AtStep / 24);
        return [.. Enumerable.Range(0, model.ProfileDepthsM.Length).Where(i => model.ProfileDepthsM[i] <= deepest).Select(i => new ProfilePoint(
            model.ProfileDepthsM[i],
            Of(traces, weight, t => t.Now[arm].TempC[i], 0)!.Spread,
            Of(traces, weight, t => t.Now[arm].OxygenMgPerL[i], 0)!.Spread))];
    }

    private static OutlookDay[] Course(SeasonModel model, int arm, double[] weight, MemberTrace[] traces)
    {
        List<OutlookDay> course = [];
        MemberMedian median = new(weight);
        int depths = model.ProfileDepthsM.Length, count = traces[0].Days[arm].TopC.Length;
        DateTimeOffset local = model.Timeline.StartUtc.AddHours(model.LonDeg / 15.0 + 12);
        for (int day = 0; day < count; day++)
        {
            int d = day;
            if (double.IsNaN(traces[0].Days[arm].TopC[d])) continue;
            SampleDistribution? thermocline = Depth(model, arm, weight, traces, t => t.Days[arm].ThermoclineM[d], (d * 24) + 12);
            double stands = 0;
            for (int i = 0; i < traces.Length; i++) stands += float.IsNaN(traces[i].Days[arm].ThermoclineM[d]) ? 0 : weight[i];
            // The season's picture is drawn of the lake itself only.
            float[] medians = new float[arm == 0 ? depths : 0];
            for (int k = 0; k < medians.Length; k++)
            {
                int at = (d * depths) + k;
                for (int i = 0; i < traces.Length; i++) median.Values[i] = traces[i].Days[arm].TempC[at];
                medians[k] = median.Take();
            }

            course.Add(new OutlookDay(DateOnly.FromDateTime(local.AddDays(day).UtcDateTime),
                Of(traces, weight, t => t.Days[arm].SurfaceC[d], 0)!.Spread,
                Of(traces, weight, t => t.Days[arm].BottomC[d], 0)!.Spread,
                thermocline, Math.Clamp(stands, 0, 1), medians));
        }

        return [.. course];
    }
}
