using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;
using SecondShore.Engine.Rig;

namespace SecondShore.Desk;

/// <summary>A planned day as the page shows it.</summary>
internal static class DayViews
{
    public static DayView Of(DayResult day, DayAsk asked, UnitSystem units) => new()
    {
        Date = day.Wish.Date,
        Ramp = day.RampName,
        Launch = day.Plan.Launch,
        Home = day.Plan.Home,
        Title = day.Plan.Title,
        Why = day.Plan.Why,
        HomeByWhy = day.Plan.HomeByWhy,
        Bites = day.Plan.Bites,
        Stops = [.. day.Plan.Stops.Select((s, i) => Stop(day, s, i < day.Plan.Legs.Count ? day.Plan.Legs[i] : null))],
        RouteM = day.Plan.RouteLengthM,
        ThermoclineM = day.Shore.Outlook.Lake.ThermoclineM.SpreadOrNull(),
        Cautions = [.. day.Cautions.Select(c => c.Words)],
        Hours = [.. day.Wind.Select(w => new HourView(w.At, w.WindMps, w.GustMps, w.FromDeg, IsDark(day, w.At)))],
        Assumed = day.SayAssumed(units),
        LightAt = day.LightAt,
        FromHere = day.Wish.Here is not null,
        Asked = asked,
        Alternatives = [.. day.Plan.Alternatives.Select(a => new AlternativeView(a.Kind.ToString(), a.Words, [.. a.Plan.Stops.Select(s => s.Candidate.Letter)]))],
        OthersWait = day.OthersWait,
        Chart = Chart(day),
    };

    private static StopView Stop(DayResult day, PlannedStop stop, PlannedLeg? leg)
    {
        RigPick rig = day.Rigs[stop.Candidate.Id];
        return new StopView(
            stop.Candidate.Id, stop.Candidate.Letter, stop.Candidate.Name, stop.Candidate.Place.XM, stop.Candidate.Place.YM, stop.Candidate.DepthM,
            stop.Arrive, stop.Leave, RigWords.Short(rig), Math.Round(rig.Choice.Chosen.Jig.MassKg * 1000, 1), stop.Candidate.How, stop.Why,
            leg is null ? 0 : (leg.Arrive - leg.Leave).TotalMinutes, leg?.LengthM ?? 0,
            FormWords.Of(day.Spots[stop.Candidate.Id].Form), Math.Round(TowShape.Of(rig.Conditions.Tow(rig.Choice.Chosen.Jig, rig.Line)).Tow.TrailM, 1));
    }

    private static RouteDrawing Chart(DayResult day) => new(
        [.. day.Plan.Legs.Where(l => l.Line.Count > 1).Select(l => SpotViews.Flat(l.Line))],
        [.. day.Plan.Stops.Where(s => s.Candidate.Pass.Count > 1).Select(s => SpotViews.Pass(s.Candidate.Letter, s.Candidate.Pass))],
        [.. day.Plan.Stops.Select(s => Mark(day, s))],
        day.Plan.Stops.Count > 0 ? day.Plan.Stops[0].Candidate.Letter : "");

    private static SpotMark Mark(DayResult day, PlannedStop stop)
    {
        PlanePoint place = day.Spots[stop.Candidate.Id].Place;
        return new SpotMark(stop.Candidate.Letter, stop.Candidate.Name, place.XM, place.YM, stop.Candidate.DepthM);
    }

    private static bool IsDark(DayResult day, DateTimeOffset at) => at.AddMinutes(30) < day.LightAt || at.AddMinutes(30) > day.DarkAt;
}
