using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;

namespace SecondShore.Engine.Day;

/// <summary>The usual cautions, where they bear on the plan. General information: rules, agencies and licensed practice stand above it.</summary>
/// <remarks>
/// Most thresholds are choices of this tool, none an authority's value (docs/science/day.md). Depth: signs and deaths in bass brought up
/// from 3.5 to 18 m (ShasteenSheehan1997, FeathersKnable1983, GravelCooke2008). Warm water: deaths at weigh-ins rise over 25 degC
/// (Wilde1998, EdwardsEtAl2004). Cold water: the stages after falling in (GiesbrechtHayward2006).
/// </remarks>
public static class DayCautions
{
    /// <summary>Words beside any caution.</summary>
    public static readonly string Deferring =
        "General information. It plans, it does not navigate. Local regulations, charts, the weather service, your fish and wildlife agency and licensed practice come first.";

    private static readonly double ColdC = 15.0, CoolC = 21.0, WarmC = 25.0;
    private static readonly double AmberDepthM = 5.0, RedDepthM = 8.0, TooDeepM = 12.0;

    /// <summary>Cautions of a day, the strongest first; the last is always the one that defers.</summary>
    /// <param name="facts">What is known.</param>
    /// <param name="units">How to say numbers.</param>
    public static IReadOnlyList<Caution> For(PlanFacts facts, CautionUnits units)
    {
        Require.NotNull(facts);
        Require.NotNull(units);
        List<Caution> cautions = [];
        AddWind(facts, units, cautions);
        AddWaves(facts, units, cautions);
        AddWeather(facts, units, cautions);
        AddCold(facts, units, cautions);
        AddDark(facts, units, cautions);
        AddHazards(facts, units, cautions);
        AddFish(facts, units, cautions);
        if (facts.UsesLead) cautions.Add(new(CautionKind.Lead, CautionLevel.Note, units.Speech.Plain("Lead is not allowed everywhere: check the rules of this water.")));
        // Stable by level, so that kinds keep their order within it.
        List<Caution> sorted = [.. cautions.OrderByDescending(c => c.Level)];
        sorted.Add(new(CautionKind.Always, CautionLevel.Note, units.Speech.Plain(Deferring)));
        return sorted;
    }

    private static void AddWind(PlanFacts facts, CautionUnits units, List<Caution> cautions)
    {
        var limits = new BoatLimits();
        WindHour? worst = null, first = null;
        foreach (WindHour hour in facts.Wind)
        {
            if (worst is null || hour.GustMps > worst.Value.GustMps) worst = hour;
            if (first is null && (hour.WindMps >= 8.0 || hour.GustMps >= 12.0)) first = hour;
        }

        if (worst is not WindHour high || first is not WindHour from) return;
        bool ashore = false;
        foreach (WindHour hour in facts.Wind) ashore |= hour.WindMps >= limits.StayAshoreWindMps || hour.GustMps >= limits.StayAshoreGustMps;
        cautions.Add(ashore
            ? new(CautionKind.Wind, CautionLevel.Stop, units.Speech.Say($"Wind with gusts of {units.Wind(high.GustMps)}: small craft stay ashore in such wind. Look at the weather service's advisories before you go."))
            : new(CautionKind.Wind, CautionLevel.Care, units.Speech.Say($"Gusts of {units.Wind(high.GustMps)}, strong from {units.Speech.Clock(from.At)}. Look at the weather service's advisories before you go.")));
    }

    private static void AddWaves(PlanFacts facts, CautionUnits units, List<Caution> cautions)
    {
        PlannedLeg? worst = null;
        foreach (PlannedLeg leg in facts.Plan.Legs)
            if (worst is null || leg.GreatestWaveM > worst.GreatestWaveM) worst = leg;
        if (worst is null || worst.GreatestWaveM <= facts.Boat.FairWaveM) return;
        bool cold = facts.SurfaceTempC < ColdC, poor = worst.GreatestWaveM > facts.Boat.RoughWaveM;
        Speech speech = units.Speech;
        string what = speech.Say($"Waves of {units.Wave(worst.GreatestWaveM)} on the run to {worst.To} about {speech.Clock(worst.Leave)}, the highest a quarter more");
        cautions.Add(new(CautionKind.Waves, CautionLevel.Care, cold ? speech.Say($"{what}: rough for a small boat, and the water is cold. Go slowly, or not.")
            : poor ? speech.Say($"{what}: rough for a small boat. Go slowly, or not.") : speech.Say($"{what}: take it slowly.")));
    }

    private static void AddWeather(PlanFacts facts, CautionUnits units, List<Caution> cautions)
    {
        if (facts.Showers.Count > 0)
        {
            cautions.Add(new(CautionKind.Lightning, CautionLevel.Care,
                units.Speech.Say($"Showers about {units.Speech.Clock(facts.Showers[0])}: if you hear thunder, be ashore and under a roof; no place in an open boat is safe. Wait 30 minutes after the last thunder.")));
        }

        if (facts.Fog.Count > 0)
            cautions.Add(new(CautionKind.Fog, CautionLevel.Care, units.Speech.Say($"Fog is possible about {units.Speech.Clock(facts.Fog[0])}: wait it out, or idle with lights and sound.")));
    }

    private static void AddCold(PlanFacts facts, CautionUnits units, List<Caution> cautions)
    {
        if (facts.SurfaceTempC is not double waterC || waterC >= CoolC) return;
        cautions.Add(waterC < ColdC
            ? new(CautionKind.ColdWater, CautionLevel.Care, units.Speech.Say($"Water of {units.Temp(waterC)} takes the breath in the first minute and the hands in ten. Wear the life jacket, do not carry it; wear the engine cut-off; tell someone your plan."))
            : new(CautionKind.ColdWater, CautionLevel.Note, units.Speech.Say($"Water of {units.Temp(waterC)} counts as cold: wear the life jacket and the engine cut-off, and tell someone your plan.")));
    }

    private static void AddDark(PlanFacts facts, CautionUnits units, List<Caution> cautions)
    {
        if (facts.LightAt is DateTimeOffset light && facts.Plan.Launch < light)
            cautions.Add(new(CautionKind.Dark, CautionLevel.Care, units.Speech.Say($"It is dark until {units.Speech.Clock(light)}: lights on, and idle.")));
        if (facts.DarkAt is DateTimeOffset dark && facts.Plan.Home > dark - TimeSpan.FromMinutes(45))
            cautions.Add(new(CautionKind.Dark, facts.Plan.Home > dark ? CautionLevel.Stop : CautionLevel.Care, units.Speech.Say($"Home is close to dark at {units.Speech.Clock(dark)}: carry lights, and leave earlier if anything is slow.")));
    }

    private static void AddHazards(PlanFacts facts, CautionUnits units, List<Caution> cautions)
    {
        List<string> near = [];
        foreach (HazardArea hazard in facts.Hazards)
        {
            foreach (PlannedLeg leg in facts.Plan.Legs)
            {
                if (near.Contains(hazard.Name) || DistanceM(leg.Line, hazard.Centre) > hazard.RadiusM + 150) continue;
                near.Add(hazard.Name);
            }
        }

        string level = facts.BelowFullPoolM > 0.3 ? units.Speech.Say($"Pool is {units.Depth(facts.BelowFullPoolM)} below full, so maps show more water than there is.") : "";
        if (near.Count > 0)
            cautions.Add(new(CautionKind.Hazards, CautionLevel.Care, units.Speech.Say($"Near the way: {units.Speech.Join(near.GetRange(0, Math.Min(3, near.Count)))} at today's level. Idle there.") + (level.Length > 0 ? " " + level : "")));
        else if (level.Length > 0)
            cautions.Add(new(CautionKind.Hazards, CautionLevel.Note, level + " " + units.Speech.Plain("Timber and shallows nobody has mapped are not on this plan.")));
        double byEyeM = 0;
        foreach (PlannedLeg leg in facts.Plan.Legs) byEyeM = Math.Max(byEyeM, leg.ByEyeM);
        if (byEyeM > 20)
            cautions.Add(new(CautionKind.Hazards, CautionLevel.Care, units.Speech.Say($"The last {units.Depth(byEyeM)} of a run lead over water too shallow or foul to plan: go by eye, at idle.")));
    }

    private static void AddFish(PlanFacts facts, CautionUnits units, List<Caution> cautions)
    {
        double deepestM = 0;
        foreach (PlannedStop stop in facts.Plan.Stops) deepestM = Math.Max(deepestM, stop.Candidate.DepthM);
        bool warm = facts.SurfaceTempC > WarmC;
        string choices = units.Speech.Plain("Release at once, a weighted release, or not fishing that deep for fish that must live are the choices; check your agency's rules.");
        if (deepestM >= TooDeepM || (deepestM >= AmberDepthM && warm))
        {
            string why = deepestM >= TooDeepM ? units.Speech.Say($"from {units.Depth(deepestM)}") : units.Speech.Say($"from {units.Depth(deepestM)} into water of {units.Temp(facts.SurfaceTempC!.Value)}");
            cautions.Add(new(CautionKind.FishFromDepth, facts.KeepsFishAlive ? CautionLevel.Stop : CautionLevel.Care, units.Speech.Say($"Fish brought up {why} are likely hurt by swelling of the swim bladder: do not target them for release. {choices}")));
        }
        else if (deepestM >= RedDepthM)
        {
            cautions.Add(new(CautionKind.FishFromDepth, CautionLevel.Care, units.Speech.Say($"Fish from {units.Depth(deepestM)} may be hurt by swelling of the swim bladder. {choices}")));
        }
        else if (deepestM >= AmberDepthM)
        {
            cautions.Add(new(CautionKind.FishFromDepth, CautionLevel.Note, units.Speech.Say($"Some fish from {units.Depth(deepestM)} show signs of swelling: release them fast, with little time in the air.")));
        }

        if (warm) cautions.Add(new(CautionKind.WarmWater, CautionLevel.Care, units.Speech.Say($"At {units.Temp(facts.SurfaceTempC!.Value)} fish survive handling and the live well badly: short fights, no air, cool well.")));
    }

    private static double DistanceM(IReadOnlyList<PlanePoint> line, PlanePoint point)
    {
        double best = double.PositiveInfinity;
        for (int i = 1; i < line.Count; i++)
        {
            PlanePoint a = line[i - 1], b = line[i];
            double squared = a.SquaredDistanceToM2(b);
            double t = squared > 0 ? Math.Clamp((((point.XM - a.XM) * (b.XM - a.XM)) + ((point.YM - a.YM) * (b.YM - a.YM))) / squared, 0, 1) : 0;
            best = Math.Min(best, point.DistanceToM(new PlanePoint(a.XM + (t * (b.XM - a.XM)), a.YM + (t * (b.YM - a.YM)))));
        }

        return best;
    }
}
