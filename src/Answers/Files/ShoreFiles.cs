using System.Text;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Passes;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Writers;

namespace SecondShore.Answers.Files;

/// <summary>The second shore and its spots as files other programs read.</summary>
public static class ShoreFiles
{
    /// <summary>The caution that every file carries.</summary>
    public static readonly string Caution = "A plan, not a chart for navigation. Follow local regulations and official charts.";

    /// <summary><c>shore.geojson</c> and <c>spots.gpx</c>.</summary>
    public static ILakeFiles Of(ShoreResult result, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        string gpx = GpxWriter.Write($"{result.Lake.Site.Name}, spots", Caution, result.Outlook.At, [.. result.Spots.Select(s => Waypoint(s, units))], [],
            [.. result.Spots.SelectMany(s => s.Passes.Take(1).Select(p => PassPath(s, p, result.Grid.Projection, units)))]);
        return new MemoryFiles("shore",
        [
            new("shore.geojson", Encoding.UTF8.GetBytes(GeoJsonWriter.Write(Features(result, units), new MapProperty("caution", Caution)))),
            new("spots.gpx", Encoding.UTF8.GetBytes(gpx)),
        ]);
    }

    /// <summary>A spot as a waypoint.</summary>
    public static GpxPoint Waypoint(Spot spot, UnitSystem units) =>
        new(spot.At, $"{spot.Letter} {(spot.Name.Length > 0 ? spot.Name : units.Speech.Plain(FormWords.Of(spot.Form)))}", Reasons(spot, units), "spot", spot.DepthM);

    /// <summary>A pass as a track.</summary>
    public static GpxPath PassPath(Spot spot, Pass pass, LocalProjection projection, UnitSystem units) =>
        new(units.Speech.Say($"Pass {spot.Letter}"), StopValues.How(pass, units), [.. pass.Line.Select(p => new GpxPoint(projection.ToGeo(p)))]);

    private static IEnumerable<MapFeature> Features(ShoreResult result, UnitSystem units)
    {
        LocalProjection projection = result.Grid.Projection;
        if (result.Line is { } line)
        {
            yield return new MapFeature(new MapShape.Lines([.. line.Lines.Select(l => Geo(l, projection))]),
                [new("kind", "second shore"), new("depth_m", result.Outlook.Lake.ThermoclineM!.Quantile(0.5)), new("length_m", line.LengthM)]);
        }

        foreach (Spot spot in result.Spots)
        {
            yield return new MapFeature(new MapShape.Point(spot.At),
            [
                new("kind", "spot"), new("id", spot.Id), new("rank", spot.Rank), new("letter", spot.Letter), new("name", spot.Name), new("form", FormWords.Of(spot.Form)),
                new("depth_m", spot.DepthM), new("chance_in_reach", spot.ChanceInReach), new("value", spot.Value.P50), new("reasons", Reasons(spot, units)),
            ]);
            foreach (Pass pass in spot.Passes)
            {
                yield return new MapFeature(new MapShape.Line([.. pass.Line.Select(projection.ToGeo)]),
                    [new("kind", "pass"), new("spot", spot.Id), new("heading_deg", pass.HeadingDeg), new("shallow_m", pass.ShallowM), new("deep_m", pass.DeepM), new("length_m", pass.LengthM)]);
            }
        }
    }

    private static string Reasons(Spot spot, UnitSystem units) => string.Join("; ", spot.Reasons.Select(r => ReasonText.Of(r, !units.IsMetric, units.Speech)));

    private static GeoPoint[] Geo(DepthContour line, LocalProjection projection)
    {
        List<GeoPoint> points = [.. line.Points.ToArray().Select(projection.ToGeo)];
        if (line.Closed) points.Add(points[0]);
        return [.. points];
    }
}
