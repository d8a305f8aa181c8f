using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Writers;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Lakes;

/// <summary>A draft as an ordinary lake folder: lake.json, shoreline.geojson, and a page that names sources and licences.</summary>
public static class LakeDraftFiles
{
    /// <summary>The files.</summary>
    /// <param name="draft">The lake.</param>
    /// <param name="now">When.</param>
    public static ILakeFiles Of(LakeDraft draft, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(draft);
        LakeOutline? outline = draft.Outline;
        GeoPoint place = outline is null || outline.Holds(draft.Place) ? draft.Place : outline.Inside;
        LakeDocument document = new()
        {
            Name = draft.Name,
            Position = new GeoPoint(Math.Round(place.LatDeg, 5), Math.Round(place.LonDeg, 5)),
            ElevationM = draft.ElevationM,
            TimeZoneId = draft.TimeZoneId,
            SurfaceAreaM2 = outline is null ? null : Math.Round(outline.AreaM2),
            MaxDepthM = draft.DeepestM is { } deepestM ? Math.Round(deepestM, 2) : null,
            IsReservoir = draft.IsReservoir ?? (draft.Dam is null ? null : true),
            Dam = draft.Dam,
            SecchiM = draft.SecchiM is { } secchiM ? Math.Round(secchiM, 2) : null,
            Clarity = draft.SecchiM is null ? draft.Clarity : null,
            Units = draft.Units,
        };
        ILakeFiles files = new MemoryFiles(draft.Name).With("lake.json", LakeJson.Lake(document));
        if (outline is null) return Sourced(files, draft, now);
        files = LakeFolderEdits.WithLakeKeys(files, ("outline_source", JsonValue.Create(SourceOf(outline))));
        files = ChangedFiles.Of(files, "shoreline.geojson", Encoding.UTF8.GetBytes(Shoreline(outline)));
        return Sourced(files, draft, now);
    }

    /// <summary>What had to be guessed or is odd about the draft, each to be told.</summary>
    public static IReadOnlyList<Finding> Guesses(LakeDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        List<Finding> said = [.. draft.Outline?.Notes ?? []];
        LakeOutline? outline = draft.Outline;
        if (outline is null) said.Add("There is no outline: the shore is not known, and area and shape are taken as usual.");
        else if (outline.IsStandIn) said.Add("The outline is only a round one of the area told: where the shore runs is not known.");
        else if (!outline.Holds(draft.Place)) said.Add("The place given does not lie on the outline's water: one in its middle is taken.");
        if (outline is { IsStandIn: false, Shore.Polygons.Count: > 1 })
            said.Add($"The outline has {outline.Shore.Polygons.Count} waters; the largest counts, or the one at the lake's position.");
        if (draft.DeepestM is null) said.Add(
            "The deepest water is not known: say it as max_depth_m in lake.json as soon as you know it, it matters most.");
        if (draft.IsReservoir is null && draft.Dam is null) said.Add("Whether a dam holds the lake is not known: a natural lake is taken.");
        if (draft.IsReservoir == true && draft.Dam is null) said.Add("Where the dam stands is not known: say it as dam in lake.json.");
        if (draft.ElevationM is { } heightM) said.Add($"The height of the surface, {Told.Depth(heightM)}, is the place search's.");
        return said;
    }

    private static string SourceOf(LakeOutline outline) => outline.IsStandIn
        ? "a round stand-in of the area told"
        : outline.Attribution.Length == 0 ? outline.Source : $"{outline.Attribution}; {outline.Source}";

    // The licence travels with the shape itself, also where the file is taken out of its folder.
    private static string Shoreline(LakeOutline outline)
    {
        MapProperty[] about = [new("source", SourceOf(outline)), new("stand_in", outline.IsStandIn)];
        return GeoJsonWriter.Write(outline.Shore.Polygons.Select(p => new MapFeature(new MapShape.Polygon(p.Outer, p.Islands), about)),
            new MapProperty("attribution", outline.IsStandIn ? "" : outline.Attribution));
    }

    private static ChangedFiles Sourced(ILakeFiles files, LakeDraft draft, DateTimeOffset now)
    {
        StringBuilder page = new("# Sources and licences\n\n");
        string day = now.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        if (draft.Outline is { } outline) page.Append(CultureInfo.InvariantCulture, $"- shoreline.geojson: {SourceOf(outline)}, {day}\n");
        if (draft.PlaceAttribution is { } place) page.Append(CultureInfo.InvariantCulture,
            $"- position, height and time zone: {place}, {day}\n");
        page.Append("- depth, dam and clarity in lake.json: as told by the lake's angler\n");
        return ChangedFiles.Of(files, "sources.md", Encoding.UTF8.GetBytes(page.ToString()));
    }
}
