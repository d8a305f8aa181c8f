using System.Text.Json.Nodes;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;

namespace SecondShore.Bench.Shapes;

/// <summary>The measured lakes that have an outline and depths, by a list of their files; read and gridded as the product does.</summary>
/// <remarks>
/// The list is <c>bench/Shapes/lakes.json</c> over the shared surveys, or <c>lakes.json</c> in the folder that SECONDSHORE_SHAPES names:
/// name, kind (natural, dammed), files with what their owner would answer, and <c>split</c> where one file holds several lakes.
/// </remarks>
internal static class ShapeSurveys
{
    public static IReadOnlyList<ShapeLake> Read(Action<string> say)
    {
        List<ShapeLake> lakes = [];
        foreach ((string name, BasinKind kind, Survey survey) in All(say))
        {
            GriddedLake lake = SurveyGridder.Grid(survey);
            if (lake.Grid is not { } grid) say($"{name}: {lake.Refusal}");
            else if (ShapeLake.Of(name, kind, grid, survey) is { } found) lakes.Add(found);
        }

        return lakes;
    }

    /// <summary>Those that were sounded: their soundings without the shore, and the bottom with it.</summary>
    public static IEnumerable<(string Name, Survey Soundings, DepthGrid Truth)> WithSoundings(Action<string> say) =>
        from lake in All(say)
        where lake.Survey.Soundings.Sum(s => s.DepthM.Length) >= 60
        let grid = SurveyGridder.Grid(lake.Survey).Grid
        where grid is not null
        select (lake.Name, new Survey { Soundings = lake.Survey.Soundings }, grid);

    private static IEnumerable<(string Name, BasinKind Kind, Survey Survey)> All(Action<string> say)
    {
        string? own = Environment.GetEnvironmentVariable("SECONDSHORE_SHAPES");
        string shared = Environment.GetEnvironmentVariable("SECONDSHORE_SHARED") ?? Path.GetFullPath(Path.Combine("..", "shared"));
        string folder = own ?? Path.Combine(shared, "surveys");
        string list = own is null ? "bench/Shapes/lakes.json" : Path.Combine(own, "lakes.json");
        if (!Directory.Exists(folder) || !File.Exists(list))
        {
            say($"There are no surveys at {folder} with a list of lakes at {list}.");
            yield break;
        }

        foreach (JsonNode? entry in JsonNode.Parse(File.ReadAllText(list))!.AsArray())
        {
            string name = (string)entry!["name"]!;
            BasinKind kind = (string)entry["kind"]! == "dammed" ? BasinKind.Dammed : BasinKind.Natural;
            if (Merged(folder, entry["files"]!.AsArray(), say) is not { } survey) continue;
            IReadOnlyList<Survey> parts = (bool?)entry["split"] == true ? ContourSplit.Of(survey) : [OneShore(survey)];
            for (int k = 0; k < parts.Count; k++) yield return (parts.Count == 1 ? name : $"{name}-{k + 1}", kind, parts[k]);
        }
    }

    private static Survey? Merged(string folder, JsonArray files, Action<string> say)
    {
        Survey merged = new();
        foreach (JsonNode? file in files)
        {
            string path = Path.Combine(folder, (string)file!["file"]!);
            if (!File.Exists(path))
            {
                say($"{path} is not there.");
                return null;
            }

            SurveyOptions options = new()
            {
                Crs = (string?)file["crs"],
                SurfaceElevationM = (double?)file["surface_m"],
                Sense = (string?)file["sense"] == "elevation" ? DepthSense.Elevation : null,
                Unit = (string?)file["unit"] == "feet" ? DepthUnit.Feet : (string?)file["sense"] is null ? null : DepthUnit.Metres,
                Area = file["area"]?.AsArray().Select(v => (double)v!).ToArray(),
            };
            SurveyImport import = SurveyImporter.Read(new SurveySource(FolderFiles.OneFile(path), Path.GetFileName(path)),
                options, SurveyContext.Nothing);
            if (import.Survey is not { } survey)
            {
                say($"{path}: {string.Join(" ", import.Problems.Select(p => p.Message))}");
                return null;
            }

            merged = new Survey
            {
                Soundings = [.. merged.Soundings, .. survey.Soundings],
                Contours = [.. merged.Contours, .. survey.Contours],
                Rasters = [.. merged.Rasters, .. survey.Rasters],
                Shoreline = survey.Shoreline ?? merged.Shoreline,
            };
        }

        return merged;
    }

    // An outline file may hold the lakes around: only the water with the soundings is this one.
    private static Survey OneShore(Survey survey)
    {
        if (survey.Shoreline is not { Polygons.Count: > 1 } shoreline || survey.Soundings.Count == 0) return survey;
        LocalProjection plane = new(shoreline.Polygons[0].Outer[0]);
        WaterPolygon most = shoreline.Polygons.MaxBy(polygon =>
        {
            PlaneShoreline one = new(new Shoreline([polygon]), plane);
            return survey.Soundings.Sum(set =>
                Enumerable.Range(0, set.LatDeg.Length).Count(i => one.Holds(plane.ToPlane(set.LatDeg[i], set.LonDeg[i]))));
        })!;
        return survey with { Shoreline = new Shoreline([most]) };
    }
}

/// <summary>Several lakes of one file of depth contours, told apart by the shores that lie in no other.</summary>
internal static class ContourSplit
{
    public static IReadOnlyList<Survey> Of(Survey survey)
    {
        ContourLine[] shores = [.. survey.Contours.Where(c => c.DepthM == 0 && c.Points.Count >= 3)];
        LocalProjection plane = new(shores[0].Points[0]);
        (ContourLine Line, PlaneShoreline Ring)[] rings = [.. shores.Select(s =>
            (s, new PlaneShoreline(new Shoreline([new WaterPolygon(s.Points, [])]), plane)))];
        var lakes = rings.Where(r =>
            !rings.Any(o => o.Line != r.Line && o.Ring.AreaM2 > r.Ring.AreaM2 && o.Ring.Holds(plane.ToPlane(r.Line.Points[0])))).ToArray();
        return [.. lakes.OrderByDescending(l => l.Ring.AreaM2).Select(l => new Survey
        {
            Contours = [.. survey.Contours.Where(c => c == l.Line || l.Ring.Holds(plane.ToPlane(c.Points[c.Points.Count / 2])))],
        })];
    }
}
