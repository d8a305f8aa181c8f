using SecondShore.Answers.Lake;
using SecondShore.Answers.Learn;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Sheet;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Rig;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Questions;

/// <summary>The plan of one day: its spots, water and wind put to the planner, and what it says told as a day.</summary>
internal sealed class DayPlanning(PreparedLake lake, DayWish wish, UnitSystem units, DayClock clock, ShoreResult shore, IWaterMotion motion,
    IReadOnlyList<SheetWind> wind)
{
    private readonly double _dropM = PoolDrop.AtM(lake.Folder.Levels, clock.Launch);
    private readonly HazardArea[] _hazards = [.. RouteHazards.From(lake.Folder.Cover, shore.Grid, wish.Boat)];
    private readonly Dictionary<string, Spot> _spots = shore.Spots.ToDictionary(s => s.Id);

    /// <summary>Plans the day.</summary>
    /// <param name="windAssumed">What had to be assumed of the wind.</param>
    /// <param name="withOthers">Whether to find the plans that differ in kind at once.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="CouldNotComputeException">No time between launch and home; the message says what would help.</exception>
    public DayResult Plan(IReadOnlyList<Finding> windAssumed, bool withOthers, CancellationToken cancel)
    {
        List<Finding> assumed = [.. shore.Outlook.Assumed, .. windAssumed];
        if (wish.HomeBy is null && clock.HomeBy != clock.DarkAt)
            assumed.Add(AnswerFindings.HomeAssumed.Of(clock.HomeBy));
        NavigableWater water = new(shore.Grid, wish.Boat, _hazards, NoWake());
        (string rampName, PlanePoint ramp) = RampChoice.Of(lake, wish.Ramp, water, _dropM, assumed);
        PlanRequest request = Request(rampName, ramp, assumed);
        if (wish.Here is { } here) request = FromHere(request, here with { FishedH = NamedSpots.Fished(here.FishedH, shore) }, water);
        int hours = Math.Max(1, (int)Math.Ceiling((clock.HomeBy - clock.Launch).TotalHours));
        RouteMatrix travel = new WaterRoutes(water).Matrix(request.RoutePlaces, clock.Launch, hours, request.Sea, cancel: cancel);
        DayPlan plan = wish.Practice is { } practice
            ? PracticePlanner.Plan(request, travel, practice.Covered, cancel)
            : DayPlanner.Plan(request, travel, withOthers, cancel);
        if (plan.Stops.Count == 0)
            throw new CouldNotComputeException(AnswerFindings.NoStopFits.Of(clock.Launch, clock.HomeBy, rampName, string.Join(" ", plan.Unmet)));

        Tackle tackle = TackleMapper.Map(lake.Folder.Tackle, assumed);
        Finding[] told = [.. assumed.Distinct()];
        Func<CancellationToken, IReadOnlyList<DayAlternative>>? others = withOthers || wish.Practice is not null ? null
            : stop => DayPlanner.Alternatives(request, plan, travel, stop);
        return By(plan) with { Others = others };

        DayResult By(DayPlan chosen)
        {
            Dictionary<string, RigPick> rigs = chosen.Stops.DistinctBy(s => s.Candidate.Id).ToDictionary(s => s.Candidate.Id, s => Rig(s, tackle));
            return new DayResult
            {
                Wish = wish,
                Shore = shore,
                Plan = chosen,
                Spots = _spots,
                Rigs = rigs,
                By = By,
                RampName = rampName,
                Ramp = ramp,
                LightAt = clock.LightAt,
                DarkAt = clock.DarkAt,
                Wind = wind,
                Hazards = _hazards,
                Cautions = DayCautions.For(Facts(chosen, rigs), Units(units)),
                Assumed = told,
                Unmet = plan.Unmet,
            };
        }
    }

    private PlanRequest Request(string rampName, PlanePoint ramp, List<Finding> assumed)
    {
        LearnedWorth learned = LearnedWorth.Of(lake.Folder, wish.Ensemble.Seed);
        IEnumerable<string> must = NamedSpots.Marked(lake, shore, PlaceMarkKind.MustVisit).Concat(NamedSpots.Known(wish.Must, shore, assumed));
        IEnumerable<string> never = NamedSpots.Marked(lake, shore, PlaceMarkKind.NeverVisit).Concat(NamedSpots.Known(wish.Never, shore, assumed));
        return new PlanRequest
        {
            Candidates = [.. shore.Spots.Select(s => learned.Apply(StopValues.Candidate(s, shore.Outlook, motion, wish.Boat, clock, units)))],
            Start = ramp,
            StartName = rampName,
            Home = ramp,
            HomeName = rampName,
            StartAt = clock.Launch,
            CheckIn = clock.HomeBy,
            DarkAt = clock.DarkAt,
            WindLimitAt = WindLimit(),
            Reserve = wish.Reserve,
            Breaks = [.. wish.Breaks.Select(Break)],
            Boat = wish.Boat,
            Sea = new MotionSea(motion),
            Must = [.. must.Except(NamedSpots.Known(wish.Never, shore, null)).Distinct()],
            Never = [.. never.Concat(wish.Practice?.Been(shore) ?? []).Distinct()],
            Seed = wish.Ensemble.Seed,
            Speech = units.Speech,
        };
    }

    private PlannedBreak Break(BreakWish wished) => new(AnswerTime.At(wish.Date, wished.From, lake.Folder), AnswerTime.At(wish.Date, wished.To, lake.Folder),
        TimeSpan.FromMinutes(wished.Minutes));

    private RigPick Rig(PlannedStop stop, Tackle tackle) =>
        StopRig.Of(StopRig.Request(_spots[stop.Candidate.Id], stop, shore.Outlook, motion, wish, tackle, units, lake.Folder.Cover));

    // A replan begins where the boat is, on the open water nearest to it, and sees what was fished already.
    private static PlanRequest FromHere(PlanRequest request, BoatNow here, NavigableWater water)
    {
        PlanePoint place = water.Grid.Projection.ToPlane(here.Place);
        if (!water.TryNearestOpen(place, 2000, out PlanePoint open))
            throw new CouldNotComputeException(AnswerFindings.BoatFarAway.Of());
        return request.FromHere(here.At, open, here.FishedH);
    }

    private DateTimeOffset? WindLimit()
    {
        BoatLimits limits = wish.WindLimitMps is { } own ? new BoatLimits { StayAshoreWindMps = own } : new BoatLimits();
        foreach (SheetWind hour in wind)
        {
            if (hour.At > clock.Launch && (hour.WindMps >= limits.StayAshoreWindMps || hour.GustMps >= limits.StayAshoreGustMps)) return hour.At;
        }

        return null;
    }

    private IEnumerable<Engine.Day.NoWakeArea> NoWake() =>
        lake.Folder.NoWakeAreas.Select(a => new Engine.Day.NoWakeArea([.. a.Outline.Select(shore.Grid.Projection.ToPlane)], a.Name));

    private PlanFacts Facts(DayPlan plan, Dictionary<string, RigPick> rigs)
    {
        (IReadOnlyList<DateTimeOffset> showers, IReadOnlyList<DateTimeOffset> fog) = SkySigns.Between(lake, clock.Launch, clock.HomeBy);
        return new PlanFacts
        {
            Plan = plan,
            Boat = wish.Boat,
            SurfaceTempC = shore.Outlook.Lake.Profile.Count > 0 ? shore.Outlook.Lake.Profile[0].TempC.P50 : null,
            Wind = [.. wind.Select(w => new WindHour(w.At, w.WindMps, w.GustMps))],
            Showers = showers,
            Fog = fog,
            LightAt = clock.LightAt,
            DarkAt = clock.DarkAt,
            BelowFullPoolM = _dropM,
            Hazards = _hazards,
            UsesLead = plan.Stops.Any(s => StopRig.IsLead(rigs[s.Candidate.Id])),
        };
    }

    private static CautionUnits Units(UnitSystem units) => new(units.Depth, units.ShortDistance, units.Wind, units.Temp) { Speech = units.Speech };
}
