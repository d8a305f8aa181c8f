using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;

namespace SecondShore.Desk;

/// <summary>Makes a question about a survey file into what the page shows: each reading with a small picture.</summary>
internal static class SurveyPictures
{
    private const int MostDrawn = 6;
    private const int MostRows = 6;
    private const int MostDots = 260;
    private const int MostRings = 40;
    private const int Classes = 10;

    /// <summary>The question with its pictures; only the first choices are drawn, since each means reading the file once more.</summary>
    public static QuestionView Of(ILakeFiles files, LakeFolder folder, SurveyQuestion question, UnitSystem units)
    {
        SurveyUnderstanding? seen = folder.SurveyFiles.FirstOrDefault(s => s.File == question.File);
        return new QuestionView(question.File, question.Kind.ToString(), question.Text.Say(units), Finite(seen?.LowestFiled), Finite(seen?.HighestFiled),
            [.. question.Choices.Select((c, i) => new ChoiceView(c.Label.Say(units), LakeSettings.KeysOf(c.Set with { Why = question.Text.ToString() }).ToJsonString(), c.Country,
                c.Place?.LatDeg, c.Place?.LonDeg, i < MostDrawn && c.Set.Use ? Picture(files, question.File, c.Set) : null))]);
    }

    private static PictureView? Picture(ILakeFiles files, string file, SurveyOptions choice)
    {
        LakeFolder folder = LakeFolderReader.Read(LakeSettings.WithAnswer(files, file, choice));
        List<(GeoPoint Place, double DepthM)> places = [.. PlacesOf(folder.Survey)];
        List<List<GeoPoint>> rings = RingsOf(folder.Survey);
        List<GeoPoint> all = [.. places.Select(p => p.Place), .. rings.SelectMany(r => r)];
        if (all.Count < 3) return null;
        GeoPoint middle = new((all.Min(p => p.LatDeg) + all.Max(p => p.LatDeg)) / 2, all[all.Count / 2].LonDeg);
        if (Math.Abs(middle.LatDeg) > 88) return null;
        LocalProjection plane = new(middle);
        PlanePoint[] at = [.. all.Select(p => plane.ToPlane(p.LatDeg, p.LonDeg))];
        double west = at.Min(p => p.XM), south = at.Min(p => p.YM), wideM = Math.Max(1, Math.Max(at.Max(p => p.XM) - west, at.Max(p => p.YM) - south));
        (double X, double Y) OnField(PlanePoint p) => (Math.Round((p.XM - west) / wideM * 100, 1), Math.Round(100 - ((p.YM - south) / wideM * 100), 1));
        (double X, double Y)[] dots = [.. at.Take(places.Count).Select(OnField)];
        string outline = rings.Count > 0
            ? SurveyOutline.Of(rings.Select(r => r.Select(p => OnField(plane.ToPlane(p.LatDeg, p.LonDeg)))))
            : SurveyOutline.Around(dots);
        if (places.Count == 0) return new PictureView(outline, [], [], null, Math.Round(wideM)) { LatDeg = middle.LatDeg, LonDeg = middle.LonDeg };
        double deepestM = Math.Max(0.01, places.Max(p => p.DepthM));
        double[] counts = new double[Classes];
        foreach ((_, double depthM) in places) counts[Math.Clamp((int)(depthM / deepestM * Classes), 0, Classes - 1)]++;
        double most = counts.Max();
        (double deepX, double deepY) = dots[places.FindIndex(p => p.DepthM == places.Max(q => q.DepthM))];
        return new PictureView(outline, [.. dots.SelectMany((d, i) => new[] { d.X, d.Y, Math.Round(Math.Clamp(places[i].DepthM / deepestM, 0, 1), 2) })],
            [.. counts.Select(c => Math.Round(c / most, 3))], Math.Round(deepestM, 2), Math.Round(wideM))
        { DeepX = deepX, DeepY = deepY, LatDeg = middle.LatDeg, LonDeg = middle.LonDeg };
    }

    // The shore where the survey has one, else its outermost contours: so many points that the form is told.
    private static List<List<GeoPoint>> RingsOf(Survey? survey)
    {
        IReadOnlyList<GeoPoint>[] rings = survey?.Shoreline is { } shore
            ? [.. shore.Polygons.SelectMany(p => p.Islands.Prepend(p.Outer))]
            : survey?.Contours is { Count: > 0 } contours ? [.. contours.Where(c => c.DepthM <= contours.Min(d => d.DepthM) + 1e-9).Select(Closed)] : [];
        int step = Math.Max(1, rings.Sum(r => r.Count) / MostDots);
        return [.. rings.OrderByDescending(r => r.Count).Take(MostRings).Select(r => r.Where((_, i) => i % step == 0 || i == r.Count - 1).ToList()).Where(r => r.Count > 1)];

        static IReadOnlyList<GeoPoint> Closed(ContourLine line) => line.Closed ? [.. line.Points, line.Points[0]] : line.Points;
    }

    // Every so many places of whatever the survey holds.
    private static IEnumerable<(GeoPoint Place, double DepthM)> PlacesOf(Survey? survey)
    {
        if (survey is null) yield break;
        foreach (SoundingSet set in survey.Soundings)
            for (int i = 0; i < set.DepthM.Length; i += Math.Max(1, set.DepthM.Length / MostDots)) yield return (new GeoPoint(set.LatDeg[i], set.LonDeg[i]), set.DepthM[i]);
        int points = survey.Contours.Sum(c => c.Points.Count);
        foreach (ContourLine line in survey.Contours)
            for (int i = 0; i < line.Points.Count; i += Math.Max(1, points / MostDots)) yield return (line.Points[i], line.DepthM);
        foreach (SurveyRaster raster in survey.Rasters)
        {
            int step = Math.Max(1, (int)Math.Sqrt(raster.Columns * (double)raster.Rows / MostDots));
            for (int row = 0; row < raster.Rows; row += step)
                for (int column = 0; column < raster.Columns; column += step)
                    if (raster.DepthM[(row * raster.Columns) + column] is var depth && depth >= 0) yield return (raster.Placement.PlaceOf(column, row), depth);
        }
    }

    private static double? Finite(double? value) => value is { } v && double.IsFinite(v) ? v : null;

    /// <summary>First rows of the text files that were looked at.</summary>
    public static IReadOnlyList<TableView> TablesOf(ILakeFiles files, LakeFolder folder)
    {
        List<TableView> tables = [];
        string[] unread = [.. folder.Problems.Where(p => p.Severity == ProblemSeverity.Error && !LakeFolder.IsOwnFile(p.File)).Select(p => p.File)];
        foreach (string name in folder.SurveyFiles.Select(s => s.File).Concat(folder.SurveyQuestions.Select(q => q.File)).Concat(unread).Distinct())
        {
            if (files.Find(name) is not string found || found.EndsWith(".json", StringComparison.OrdinalIgnoreCase)) continue;
            SurveyOptions options = folder.Document.SurveyOptions.GetValueOrDefault(name) ?? new SurveyOptions();
            if (SurveyTable.Of(new SurveySource(files, found), options, MostRows) is not SurveyTable table) continue;
            SurveyQuestionKind? asked = folder.SurveyQuestions.FirstOrDefault(q => q.File == name)?.Kind;
            bool columns = asked is SurveyQuestionKind.Place or SurveyQuestionKind.Depth;
            tables.Add(new TableView(name, table.Columns, table.Rows, table.X, table.Y, table.Depth)
            { Waits = columns || (asked is null && unread.Contains(name)), OnlyDepth = asked == SurveyQuestionKind.Depth });
        }

        return tables;
    }
}
