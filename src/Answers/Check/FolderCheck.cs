using System.Globalization;
using SecondShore.Answers.Documents;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;

namespace SecondShore.Answers.Check;

/// <summary>Says what a lake folder holds, what it lacks and what is odd about it.</summary>
public static class FolderCheck
{
    /// <summary>The document of a folder.</summary>
    public static CheckDocument Describe(LakeFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        return new CheckDocument
        {
            Lake = folder.Document.Name ?? folder.Files.Name,
            Usable = folder.IsUsable,
            Parts = [.. Parts(folder)],
            Surveys = [.. folder.SurveyFiles.Select(Row)],
            Missing = [.. Missing(folder)],
            Problems = [.. folder.Problems.Select(p => new CheckDocument.ProblemRow(p.File, p.Line, p.Severity.ToString().ToLowerInvariant(), p.What.Say(UnitSystem.Metric)))],
            Assumed = folder.Assumed.Say(UnitSystem.Metric),
        };
    }

    private static IEnumerable<CheckDocument.PartRow> Parts(LakeFolder folder)
    {
        if (folder.SiteOrNull is { } site)
            yield return new("position", string.Create(CultureInfo.InvariantCulture, $"{site.Position.LatDeg:0.#####}, {site.Position.LonDeg:0.#####}, {site.ElevationM:0} m above sea level, zone {site.TimeZoneId}"));
        if (folder.Hypsography is { } shape)
            yield return new("hypsography", string.Create(CultureInfo.InvariantCulture, $"{shape.DepthsM.Length} depths to {shape.MaxDepthM:0.#} m, {shape.SurfaceAreaM2 / 1e6:0.###} km2"));
        if (folder.Shoreline is { } shore)
            yield return new("shoreline", $"{Count(shore.Polygons.Count, "piece")} of water, {Count(shore.Polygons.Sum(p => p.Islands.Count), "island")}");
        if (folder.Weather is { Count: > 0 } weather)
            yield return new("weather", $"{Span(weather)}{(folder.MeasuredUntil is { } until ? $", measured until {Stamp(until)}" : "")}");
        if (folder.Climate.Count > 0)
            yield return new("climate", $"{Count(folder.Climate.Count, "past year")}, {folder.Climate.Keys.Min()} to {folder.Climate.Keys.Max()}");
        if (folder.Levels.Count > 0) yield return new("level", $"{Count(folder.Levels.Count, "level")}, last {folder.Levels[^1].BelowFullPoolM.ToString("0.##", CultureInfo.InvariantCulture)} m below full pool");
        if (folder.Readings.Count > 0) yield return new("readings", string.Join(", ", folder.Readings.GroupBy(r => r.Kind).Select(g => $"{g.Count()} {Words(g.Key.ToString())}")));
        if (folder.Secchi.Count > 0) yield return new("secchi", Count(folder.Secchi.Count, "depth"));
        if (folder.Profiles.Count > 0) yield return new("profiles", $"{Count(folder.Profiles.Count, "cast")}, last {Stamp(folder.Profiles[^1].At)}");
        if (folder.Flows.Count > 0) yield return new("flows", Count(folder.Flows.Count, "day"));
        if (folder.Cover.Count > 0) yield return new("cover", string.Join(", ", folder.Cover.GroupBy(c => c.Kind).Select(g => $"{g.Count()} {Words(g.Key.ToString())}")));
        if (folder.Ramps.Count > 0) yield return new("ramps", string.Join(", ", folder.Ramps.Select(r => r.Name)));
        if (folder.NoWakeAreas.Count > 0) yield return new("no-wake areas", Count(folder.NoWakeAreas.Count, "area"));
        if (folder.Tackle is not null) yield return new("tackle", "read");
        if (folder.Log.Count > 0) yield return new("log", Count(folder.Log.Count, "entry", "entries"));
    }

    private static IEnumerable<string> Missing(LakeFolder folder)
    {
        if (folder.Survey is null) yield return "survey: without it there is no second shore, no spots and no plan, only the outlook.";
        if (folder.Weather is not { Count: > 0 }) yield return "weather.csv: without it the outlook rests on the usual weather of this latitude and date.";
        else if (folder.Climate.Count == 0) yield return "climate/YYYY.csv: without past years the turnover window beyond the forecast rests on made-up usual weather.";
        if (folder.Readings.Count == 0 && folder.Profiles.Count == 0) yield return "readings.csv or profiles.csv: one deep temperature in August or September, or one look at the haze, sharpens the outlook more than any forecast.";
        if (folder.Document.SecchiM is null && folder.Document.LightExtinctionPerM is null && folder.Secchi.Count == 0) yield return "secchi_m in lake.json: clarity sets how deep the sun warms the water.";
        if (folder.Tackle is null) yield return "tackle.json: without it rigs are chosen from the usual sizes.";
        if (folder.Ramps.Count == 0 && folder.Survey is not null) yield return "ramps in lake.json: without one the day starts at the shore nearest the middle of the lake.";
    }

    private static CheckDocument.SurveyRow Row(SurveyUnderstanding survey) => new()
    {
        File = survey.File,
        Format = survey.Format,
        Kind = Words(survey.Kind.ToString()),
        Unit = $"{Words(survey.Unit.ToString())} ({Words(survey.UnitKnown.ToString())})",
        Sense = $"{Words(survey.Sense.ToString())} ({Words(survey.SenseKnown.ToString())})",
        Crs = survey.Crs.Length == 0 ? "not known" : $"{survey.Crs} ({Words(survey.CrsKnown.ToString())})",
        Count = survey.Count,
        MinDepthM = double.IsNaN(survey.MinDepthM) ? null : Math.Round(survey.MinDepthM, 3),
        MaxDepthM = double.IsNaN(survey.MaxDepthM) ? null : Math.Round(survey.MaxDepthM, 3),
        Extent = survey.Extent is { } e ? [e.SouthDeg, e.WestDeg, e.NorthDeg, e.EastDeg] : null,
        Doubts = survey.Doubts.Say(UnitSystem.Metric),
    };

    private static string Span(WeatherTable weather) =>
        $"{Count(weather.Count, "row")} every {(weather.StepS / 3600).ToString("0.##", CultureInfo.InvariantCulture)} h, {Stamp(weather.TimesUtc[0])} to {Stamp(weather.TimesUtc[^1])}";

    private static string Stamp(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string Count(int count, string one, string? many = null) => count == 1 ? $"1 {one}" : $"{count} {many ?? one + "s"}";

    // StandingTimber -> standing timber
    private static string Words(string pascal)
    {
        System.Text.StringBuilder words = new();
        foreach (char c in pascal)
        {
            if (char.IsUpper(c) && words.Length > 0) words.Append(' ');
            words.Append(char.ToLowerInvariant(c));
        }

        return words.ToString();
    }
}
