using System.Globalization;
using System.Text;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Sheet;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;
using SecondShore.Formats.Files;
using SecondShore.Formats.Writers;

namespace SecondShore.Answers.Files;

/// <summary>A planned day as files: the sheet, GPX, GeoJSON, KML and a calendar.</summary>
public static class DayFiles
{
    /// <summary>Makes <c>day.html</c>, <c>day.gpx</c>, <c>day.geojson</c>, <c>day.kml</c> and <c>day.ics</c>.</summary>
    /// <param name="result">The day.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="madeAt">When the files are made.</param>
    public static ILakeFiles Of(DayResult result, UnitSystem units, DateTimeOffset madeAt)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(units);
        LocalProjection projection = result.Shore.Grid.Projection;
        string lake = result.Shore.Lake.Site.Name;
        return new MemoryFiles("plan",
        [
            File("day.html", DaySheet.Html(Model(result, units))),
            File("day.gpx", GpxWriter.Write($"{lake}, {result.Wish.Date:yyyy-MM-dd}", units.Speech.Plain(ShoreFiles.Caution), madeAt, [.. Waypoints(result, units)],
                [new GpxPath(units.Speech.Plain("Day"), result.Plan.Why, [.. Way(result, projection)])], [.. Passes(result, units, projection)])),
            File("day.geojson", GeoJsonWriter.Write(Features(result, units, projection), new MapProperty("caution", units.Speech.Plain(ShoreFiles.Caution)))),
            File("day.kml", KmlWriter.Write($"{lake}, {result.Wish.Date:yyyy-MM-dd}", units.Speech.Plain(ShoreFiles.Caution), [.. Features(result, units, projection)])),
            File("day.ics", DayCalendar.Write(result.Plan, lake, projection, madeAt, [.. result.Cautions.Select(c => c.Words)], units.Speech)),
        ]);

        static KeyValuePair<string, byte[]> File(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));
    }

    /// <summary>The sheet's model of a day.</summary>
    public static DaySheetModel Model(DayResult result, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(units);
        Spread? thermoclineM = result.Shore.Outlook.Lake.ThermoclineM?.Spread;
        return new DaySheetModel
        {
            LakeName = result.Shore.Lake.Site.Name,
            Invented = result.Shore.Lake.Folder.Document.IsInvented,
            Units = units,
            Plan = result.Plan,
            RampName = result.RampName,
            ThermoclineM = thermoclineM,
            OxygenOutM = result.Shore.Outlook.Lake.OxygenFloorM?.Spread,
            Because = result.Plan.Why,
            Map = SheetMap.Around(result.Shore.Grid, result.Plan, result.Ramp, thermoclineM?.P50, units.IsMetric, result.Hazards),
            Wind = result.Wind,
            LightAt = result.LightAt,
            DarkAt = result.DarkAt,
            Stops = [.. result.Plan.Stops.Select(s => new SheetStop(s.Candidate.Letter, s.Candidate.Name, s.Arrive, s.Leave,
                RigWords.Short(result.Rigs[s.Candidate.Id]), s.Candidate.How, Reasons(result.Spots[s.Candidate.Id], units)))],
            IfHazeElsewhere = thermoclineM is { } t ? HazeAdvice.Of(result, t, units) : [],
            Tie = [.. result.Plan.Stops.GroupBy(s => Jig(result.Rigs[s.Candidate.Id])).Select(g => new SheetRow(g.Key, units.Speech.Say($"for {string.Join(", ", g.Select(s => s.Candidate.Letter))}")))],
            Cautions = [.. result.Cautions.Select(c => c.Words)],
            MadeBy = units.Speech.Say($"Second Shore {Version}, {result.Wish.Ensemble.Members} runs, seed {result.Wish.Ensemble.Seed.ToString(CultureInfo.InvariantCulture)}."),
        };
    }

    private static string Version => typeof(DayFiles).Assembly.GetName().Version?.ToString(3) ?? "";

    // The sheet has room for the two that weigh most.
    private static string Reasons(Spot spot, UnitSystem units) => string.Join("; ", spot.Reasons.Take(2).Select(r => ReasonText.Of(r, !units.IsMetric, units.Speech)));

    // Jig and line without the length of line out, which changes from stop to stop.
    private static string Jig(RigPick reply) => RigWords.Short(reply).Split(", ")[0];

    private static IEnumerable<GpxPoint> Waypoints(DayResult result, UnitSystem units)
    {
        yield return new GpxPoint(result.Shore.Grid.Projection.ToGeo(result.Ramp), result.RampName, units.Speech.Plain("Launch and home"), "ramp");
        foreach (PlannedStop stop in result.Plan.Stops)
        {
            Spot spot = result.Spots[stop.Candidate.Id];
            yield return ShoreFiles.Waypoint(spot, units) with
            {
                Description = units.Speech.Say($"{stop.Arrive:HH:mm} to {stop.Leave:HH:mm}. {RigWords.Short(result.Rigs[spot.Id])}. {stop.Candidate.How}. Because {stop.Why}."),
                Kind = "stop",
            };
        }
    }

    private static IEnumerable<GpxPoint> Way(DayResult result, LocalProjection projection)
    {
        foreach (PlannedLeg leg in result.Plan.Legs)
            foreach (PlanePoint point in leg.Line) yield return new GpxPoint(projection.ToGeo(point));
    }

    private static IEnumerable<GpxPath> Passes(DayResult result, UnitSystem units, LocalProjection projection) =>
        result.Plan.Stops.Select(s => result.Spots[s.Candidate.Id]).Where(s => s.Passes.Count > 0).Select(s => ShoreFiles.PassPath(s, s.Passes[0], projection, units));

    private static IEnumerable<MapFeature> Features(DayResult result, UnitSystem units, LocalProjection projection)
    {
        yield return new MapFeature(new MapShape.Point(projection.ToGeo(result.Ramp)), [new("kind", "ramp"), new("name", result.RampName)]);
        foreach (PlannedStop stop in result.Plan.Stops)
        {
            Spot spot = result.Spots[stop.Candidate.Id];
            yield return new MapFeature(new MapShape.Point(spot.At),
            [
                new("kind", "stop"), new("id", spot.Id), new("letter", spot.Letter), new("name", stop.Candidate.Name), new("depth_m", spot.DepthM),
                new("arrive", stop.Arrive.ToString("O")), new("leave", stop.Leave.ToString("O")), new("rig", RigWords.Short(result.Rigs[spot.Id])), new("why", stop.Why),
            ]);
            if (stop.Candidate.Pass.Count > 1)
                yield return new MapFeature(new MapShape.Line([.. stop.Candidate.Pass.Select(projection.ToGeo)]), [new("kind", "pass"), new("spot", spot.Id), new("how", stop.Candidate.How)]);
        }

        foreach (PlannedLeg leg in result.Plan.Legs.Where(l => l.Line.Count > 1))
            yield return new MapFeature(new MapShape.Line([.. leg.Line.Select(projection.ToGeo)]), [new("kind", "leg"), new("from", leg.From), new("to", leg.To), new("length_m", leg.LengthM)]);
    }
}
