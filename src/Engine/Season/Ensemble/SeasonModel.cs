namespace SecondShore.Engine.Season;

/// <summary>One season of a lake's arms, ready to run for any member: grids, boundaries, weathers, readings.</summary>
internal sealed class SeasonModel
{
    // Our choice: a secondary step must be nearer than the main one by this much to pass for what was seen.
    private const double SecondaryStepCostM = 2.0;

    private const double ExchangeDays = 12;

    // As far as a forecast reaches that moves water: five days.
    private const int HoursAhead = 120;

    public required SeasonTimeline Timeline { get; init; }

    public required IReadOnlyList<ArmShape> Arms { get; init; }

    public required ColumnGrid[] Grids { get; init; }

    public required LakePriors[] Priors { get; init; }

    public required LakeBoundary[] Boundaries { get; init; }

    public required ObservationSet Observations { get; init; }

    public required double[] ProfileDepthsM { get; init; }

    public required double LonDeg { get; init; }

    /// <summary>Where the step stood in other years, by the lake's own casts.</summary>
    public required StepHistory History { get; init; }

    /// <summary>The last step that this season's casts showed.</summary>
    public SeenStep? LastSeen { get; init; }

    public WaterProfile? StartProfile { get; init; }

    public int StartStep { get; init; }

    // Arms that some reading speaks of.
    private int[] _watched = [];

    private (int Arm, int Neighbour, double SillM)[] _links = [];

    public int ScenarioOf(int member) => member % Timeline.Scenarios.Count;

    /// <summary>Day of the year of a step.</summary>
    public double DayOfYear(int step) => Timeline.StartUtc.AddHours(step).DayOfYear;

    /// <summary>Runs a member to a step; keeps its course when asked, and what it says at every observation.</summary>
    public MemberTrace Run(double[] z, double startNoiseK, int scenario, int toStep, bool keep)
    {
        ColumnForcing forcing = Timeline.Scenarios[scenario];
        LakeBoundary boundary = Boundaries[scenario];
        int arms = Arms.Count;
        // Only arms with readings matter to the filter; what little their neighbours' surface water does is left to the last run.
        int[] active = keep ? [.. Enumerable.Range(0, arms)] : _watched;
        LakeColumn[] columns = new LakeColumn[arms];
        OxygenColumn[] oxygen = new OxygenColumn[arms];
        DaySkin[] skins = new DaySkin[arms];
        foreach (int a in active)
        {
            columns[a] = new LakeColumn(Grids[a], Priors[a].At(z), 8, boundary.DropM(StartStep / 24));
            Start(columns[a], startNoiseK);
            skins[a] = new DaySkin();
            oxygen[a] = new OxygenColumn(columns[a], Priors[a].DemandAt(z), forcing.PressurePa);
        }

        MemberTrace trace = new(this, keep, toStep);
        int next = 0;
        int[] mixedTo = new int[arms];
        int snapshot = ((9 - (int)Math.Round(LonDeg / 15.0)) % 24 + 24) % 24;
        double windSum = 0;
        while (next < Observations.All.Count && Observations.All[next].Step < StartStep) next++;
        for (int step = StartStep; step < toStep; step++)
        {
            if (step % 24 == 0 || step == StartStep)
            {
                foreach (int a in active) boundary.Apply(columns[a], step / 24);
                if (step > StartStep && keep) Exchange(columns);
            }

            foreach (int a in active)
            {
                columns[a].Step(forcing, step);
                skins[a].Add(columns[a].SurfaceTempC);
                mixedTo[a] = Math.Max(mixedTo[a], columns[a].MixedTo);
            }

            windSum += forcing.Weather.WindMps[step];
            next = Observe(trace, columns, oxygen, skins, step, next);
            if (keep && step == Timeline.AtStep) trace.KeepNow(columns, oxygen, skins);
            if (keep && step >= Timeline.AtStep && step <= Timeline.AtStep + HoursAhead) trace.KeepAhead(columns[0], skins[0]);
            if (keep && step % 6 == snapshot % 6) trace.AddSample(columns, step);
            if (step % 24 != snapshot) continue;
            foreach (int a in active)
            {
                oxygen[a].StepDay(mixedTo[a], windSum / 24.0);
                mixedTo[a] = columns[a].Top;
            }

            windSum = 0;
            if (keep) trace.KeepDay(columns, skins, step / 24);
        }

        return trace;
    }

    private void Start(LakeColumn column, double noiseK)
    {
        if (StartProfile is { } profile)
        {
            column.SetProfile(profile.DepthM, profile.TempC);
            return;
        }

        double air = Timeline.StartAirC;
        double mixed = MixedStart.TempC(air) + noiseK;
        column.SetProfile([0], [Math.Clamp(mixed, 1, 30)]);
        if (air < -2) column.SetIce(Math.Min(0.6, 0.022 * Math.Sqrt(-air * 70)));
    }

    // Neighbours trade water above their sill: the smaller layer changes within ExchangeDays.
    private void Exchange(LakeColumn[] columns)
    {
        double share = 1.0 - Math.Exp(-1.0 / ExchangeDays);
        foreach ((int arm, int neighbour, double sillM) in _links) columns[arm].Exchange(columns[neighbour], sillM, share);
    }

    private static IEnumerable<(int Arm, int Neighbour, double SillM)> Links(ArmShape[] arms)
    {
        for (int a = 0; a < arms.Length; a++)
        {
            foreach ((string name, double sillM) in arms[a].Neighbours)
            {
                for (int b = a + 1; b < arms.Length; b++)
                    if (arms[b].Name == name) yield return (a, b, sillM);
            }
        }
    }

    private int Observe(MemberTrace trace, LakeColumn[] columns, OxygenColumn[] oxygen, DaySkin[] skins, int step, int next)
    {
        IReadOnlyList<Observation> all = Observations.All;
        while (next < all.Count && all[next].Step <= step)
        {
            Observation o = all[next];
            LakeColumn column = columns[o.Arm];
            SeasonBias? bias = Priors[o.Arm].Bias;
            trace.Predicted[next] = o.Kind switch
            {
                ReadingKind.SurfaceTemperature => Corrected(bias, column, 0.3, step),
                ReadingKind.Temperature => Corrected(bias, column, o.DepthM, step),
                ReadingKind.HazeDepth => MemberTrace.Layers(column, skins[o.Arm]).Seen.StepSeenM(o.Value, SecondaryStepCostM),
                ReadingKind.Secchi => 2.0 / column.Parameters.LightExtinctionPerM,
                _ => oxygen[o.Arm].AtMgPerL(o.DepthM),
            };
            if (o.Kind == ReadingKind.Temperature) trace.Slope[next] = Math.Abs(column.TempAtC(o.DepthM + 0.5) - column.TempAtC(Math.Max(0, o.DepthM - 0.5)));
            double before = column.SurfaceTempC;
            if (o.Kind == ReadingKind.HazeDepth) FollowStep(column, skins[o.Arm], o);
            // The run is moved to where it would have to stand for its corrected self to show the cast.
            if (o.Cast is { } cast) column.NudgeTo(cast.DepthM, bias is null ? cast.TempC : [.. cast.TempC.Select((t, i) => t - Missed(bias, column, cast.DepthM[i], step))], NudgeShare);
            skins[o.Arm].Shift(column.SurfaceTempC - before);
            next++;
        }

        return next;
    }

    private double Corrected(SeasonBias? bias, LakeColumn column, double depthM, int step) =>
        column.TempAtC(depthM) + (bias is null ? 0 : Missed(bias, column, depthM, step));

    private double Missed(SeasonBias bias, LakeColumn column, double depthM, int step) =>
        bias.AtK(depthM, DayOfYear(step), column.SurfaceTempC - column.TempC[^1]);

    // What the numbers cannot explain of a step seen is taken over as state: less the further off it is, so that a wild one moves nothing.
    private static void FollowStep(LakeColumn column, DaySkin skin, Observation seen)
    {
        Stratification layers = MemberTrace.Layers(column, skin).Seen;
        double off = seen.Value - layers.ThermoclineM;
        if (!layers.HasThermocline || Math.Abs(seen.Value - layers.SecondaryM) + SecondaryStepCostM < Math.Abs(off)) return;
        double wild = off / (3 * seen.Sd);
        column.MoveStep(layers.ThermoclineM, layers.ThermoclineM + (StepShare * off / (1 + (wild * wild))));
    }

    /// <summary>Share of the difference to a step seen on a sounder that a run takes over; the rest is the reading's own error and tilt.</summary>
    public static readonly double StepShare = 0.6;

    /// <summary>Share of the difference to a cast that a run takes over: what is left is the cast's own error and tilt.</summary>
    public static readonly double NudgeShare = 0.8;

    public static SeasonModel Build(OutlookRequest request)
    {
        ArmShape[] arms = [.. request.Arms.OrderByDescending(a => a.Basin.MaxDepthM)];
        SeasonTimeline timeline = SeasonTimeline.Build(request);
        (DateTimeOffset, double)[] secchi = [.. request.Readings.Where(r => r.Kind == ReadingKind.Secchi && r.At <= request.At && r.Value > 0).Select(r => (r.At, r.Value))];
        double above = Math.Max(0, -request.Levels.Select(l => l.BelowFullPoolM).DefaultIfEmpty(0).Min()) + (request.Levels.Count > 0 ? 0.5 : 0);
        double layer = arms.Length == 1 ? Math.Clamp(arms[0].Basin.MaxDepthM / 40, 0.25, 1.0) : Math.Clamp(arms[0].Basin.MaxDepthM / 60, 0.4, 1.0);
        ColumnGrid[] grids = [.. arms.Select(a => new ColumnGrid(a.Basin, layer, above, exact: arms.Length > 1))];
        PoolLevel[] levels = [.. request.Levels.Where(l => l.At <= request.At.AddDays(20))];
        LakeBoundary[] boundaries = [.. timeline.Scenarios.Select(s => LakeBoundary.Build(request.Site, s.Weather, levels, arms.Length > 1 ? [] : request.Flows, secchi))];
        WaterProfile? start = FindStart(request, timeline, arms[0]);
        int startStep = start is null ? 0 : (int)Math.Floor((start.At - timeline.StartUtc).TotalHours);
        double step = Math.Max(0.5, Math.Ceiling(arms[0].Basin.MaxDepthM / 40 * 2) / 2);
        int points = (int)(arms[0].Basin.MaxDepthM / step) + 1;
        MixingStructure structure = request.Structure ?? MixingStructure.EnergyBudget;
        double? wind = request.MeanWindMps ?? (request.Weather is { } weather ? LakePriors.MeanWindMps([weather]) : null);
        LakePriors[] priors = [.. arms.Select(a => PriorsOf(request, a, wind))];
        ObservationSet observations = ObservationSet.Build(request, timeline.StartUtc, timeline.AtStep, arms, start);
        return new SeasonModel
        {
            _links = [.. Links(arms)],
            _watched = [.. observations.All.Select(o => o.Arm).Distinct().Order()],
            Timeline = timeline,
            Arms = arms,
            Grids = grids,
            Boundaries = boundaries,
            Priors = [.. priors.Select(p => p with { Centre = p.Centre with { Structure = structure } })],
            Observations = observations,
            History = StepHistory.Of(request.ExcludeYear is null ? [.. request.Profiles.Where(p => p.At <= request.At)] : request.Profiles, timeline.StartUtc.AddDays(150).Year),
            LastSeen = StepHistory.Last(request.Profiles, request.At),
            ProfileDepthsM = [.. Enumerable.Range(0, points).Select(i => i * step)],
            LonDeg = request.Site.Position.LonDeg,
            StartProfile = start,
            StartStep = startStep,
        };
    }

    // Numbers fitted to the whole lake hold in every arm; only stirring goes with an arm's own size.
    private static LakePriors PriorsOf(OutlookRequest request, ArmShape arm, double? windMps)
    {
        WeatherSource source = request.Weather is null ? WeatherSource.Climate : request.Source;
        LakePriors general = LakePriors.For(request.Site, arm.Basin, source, windMps, request.Numbers);
        if (request.Fitted is not { } fitted) return general;
        double whole = LakePriors.Stirring(request.Site.SurfaceAreaM2 ?? arm.Basin.SurfaceAreaM2, source, windMps, request.Numbers), share = general.Centre.StirringFactor / whole;
        return fitted with { Centre = fitted.Centre with { StirringFactor = fitted.Centre.StirringFactor * (request.Arms.Count > 1 ? share : 1) } };
    }

    // A deep cast of spring or early summer is a better start than any guess of winter.
    private static WaterProfile? FindStart(OutlookRequest request, SeasonTimeline timeline, ArmShape arm)
    {
        foreach (WaterProfile p in request.Profiles.OrderBy(p => p.At))
        {
            double days = (p.At - timeline.StartUtc).TotalDays;
            if (days < 0 || p.At > request.At) continue;
            if (days > 150) return null;
            int[] good = [.. Enumerable.Range(0, p.DepthM.Length).Where(i => double.IsFinite(p.TempC[i]) && p.TempC[i] is > -0.5 and < 45)];
            if (good.Length < 4 || p.DepthM[good[^1]] < 0.6 * arm.Basin.MaxDepthM) continue;
            return p with { DepthM = [.. good.Select(i => p.DepthM[i])], TempC = [.. good.Select(i => p.TempC[i])], OxygenMgPerL = null };
        }

        return null;
    }
}
