using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;

namespace SecondShore.Desk;

/// <summary>Makes a question about a survey file into what the page shows: each reading with a small picture.</summary>
internal static class SurveyPictures
{
    private const int MostDrawn = 6;
    private const int MostDots = 260;
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
        if (places.Count < 3) return null;
        GeoPoint middle = new((places.Min(p => p.Place.LatDeg) + places.Max(p => p.Place.LatDeg)) / 2, places[0].Place.LonDeg);
        if (Math.Abs(middle.LatDeg) > 88) return null;
        LocalProjection plane = new(middle);
        (PlanePoint At, double DepthM)[] at = [.. places.Select(p => (plane.ToPlane(p.Place.LatDeg, p.Place.LonDeg), p.DepthM))];
        double west = at.Min(p => p.At.XM), south = at.Min(p => p.At.YM), wideM = Math.Max(1, Math.Max(at.Max(p => p.At.XM) - west, at.Max(p => p.At.YM) - south));
        double deepestM = Math.Max(0.01, at.Max(p => p.DepthM));
        double[] counts = new double[Classes];
        foreach ((_, double depthM) in at) counts[Math.Clamp((int)(depthM / deepestM * Classes), 0, Classes - 1)]++;
        double most = counts.Max();
        return new PictureView(
            [.. at.SelectMany(p => new[] { Math.Round((p.At.XM - west) / wideM * 100, 1), Math.Round(100 - ((p.At.YM - south) / wideM * 100), 1), Math.Round(Math.Clamp(p.DepthM / deepestM, 0, 1), 2) })],
            [.. counts.Select(c => Math.Round(c / most, 3))], Math.Round(deepestM, 2), Math.Round(wideM));
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
}
