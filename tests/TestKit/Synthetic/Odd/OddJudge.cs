using System.Globalization;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Surveys;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Judges what comes of an awkward file, answering its questions in every way that can lead to the truth.</summary>
public static class OddJudge
{
    private const int MostTaps = 3;

    /// <summary>What came of it: with the words of its question or refusal.</summary>
    public static (SurveyOutcome Outcome, string Words) Judge(OddSurvey odd)
    {
        ArgumentNullException.ThrowIfNull(odd);
        SurveyImport import = odd.Read(new SurveyOptions());
        string words = import.Question?.Text.ToString() ?? string.Join(' ', import.Problems.Select(p => p.Message));
        if (import.Survey is not null)
            return (IsRight(odd, import.Survey) && !odd.MustAsk ? SurveyOutcome.Right : SurveyOutcome.WrongInSilence, $"{import.Understanding!.Kind} {import.Understanding.MinDepthM:F2} to {import.Understanding.MaxDepthM:F2} m, {import.Understanding.Extent}");
        if (import.Question is null) return (odd.Lake is null || odd.MayBeRefused ? SurveyOutcome.Refused : SurveyOutcome.AskedInVain, words);
        if (odd.Lake is null) return (SurveyOutcome.Asked, words);
        List<string> ends = [];
        return Leads(odd, import.Question, new SurveyOptions(), MostTaps, ends) is string path ? (SurveyOutcome.Asked, words + path)
            : (odd.MayBeRefused ? SurveyOutcome.Refused : SurveyOutcome.AskedInVain, $"{words} [{string.Join(" | ", ends.Take(8))}]");
    }

    // Whether some way through the questions ends at the truth.
    private static string? Leads(OddSurvey odd, SurveyQuestion question, SurveyOptions so, int taps, List<string> ends)
    {
        if (taps == 0) return null;
        foreach ((SurveyOptions answer, string label) in Answers(odd, question))
        {
            if (!answer.Use) continue;
            SurveyOptions set = answer.Over(so);
            SurveyImport import = odd.Read(set);
            if (import.Survey is not null && IsRight(odd, import.Survey)) return $" -> {label}";
            ends.Add($"{label}: {import.Question?.Text.ToString() ?? import.Understanding?.MaxDepthM.ToString(CultureInfo.InvariantCulture) ?? "refused"}");
            if (import.Question is SurveyQuestion next && Leads(odd, next, set, taps - 1, ends) is string path) return $" -> {label}{path}";
        }

        return null;
    }

    private static IEnumerable<(SurveyOptions, string)> Answers(OddSurvey odd, SurveyQuestion question)
    {
        if (question.Kind == SurveyQuestionKind.Level) return [(new SurveyOptions { SurfaceElevationM = odd.Lake!.SurfaceM }, "its level")];
        IEnumerable<SurveyChoice> choices = question.Choices;
        if (question.Kind is SurveyQuestionKind.Crs)
            choices = choices.Where(c => c.Place is GeoPoint p && AwayM(odd.Lake!.Middle, p) < 5000).OrderBy(c => AwayM(odd.Lake!.Middle, c.Place!.Value)).Take(3);
        return choices.Select(c => (c.Set, c.Label.ToString()));
    }

    private static double AwayM(GeoPoint from, GeoPoint to) => Math.Abs(from.LatDeg - to.LatDeg) > 1 || Math.Abs(GeoPoint.WrapLongitudeDeg(from.LonDeg - to.LonDeg)) > 2
        ? double.PositiveInfinity : new LocalProjection(from).ToPlane(to.LatDeg, to.LonDeg).DistanceToM(default);

    /// <summary>Whether what was read agrees with the lake, or with one of the others of its file, everywhere it says something.</summary>
    public static bool IsRight(OddSurvey odd, Survey survey)
    {
        if (odd.Lake is null) return false;
        return new[] { odd.Lake }.Concat(odd.Others).Any(lake => Agrees(odd, lake, survey));
    }

    private static bool Agrees(OddSurvey odd, OddLake lake, Survey survey)
    {
        List<(GeoPoint At, double DepthM)> told = [.. Told(survey)];
        if (odd.OnlyShore) return told.Count == 0 && survey.Shoreline is Shoreline shore && shore.Polygons.All(w => w.Outer.All(p => AwayM(lake.Middle, p) < 4000));
        if (told.Count < 12) return false;
        List<double> misfits = [.. told.Select(t => AwayM(lake.Middle, t.At) > 6000 ? 1e6 : Math.Abs(t.DepthM - lake.DepthM(t.At))).Order()];
        // Damage may leave a few odd rows; the deepest tenth must be there, so that no half of a lake passes for it.
        return misfits[misfits.Count * 95 / 100] <= odd.ToleranceM + (0.03 * lake.DeepestM) && told.Max(t => t.DepthM) > lake.DeepestM * 0.6 && misfits[^1] < 1e5;
    }

    private static IEnumerable<(GeoPoint At, double DepthM)> Told(Survey survey)
    {
        foreach (SoundingSet set in survey.Soundings)
            for (int i = 0; i < set.DepthM.Length; i++) yield return (new GeoPoint(set.LatDeg[i], set.LonDeg[i]), set.DepthM[i]);
        foreach (ContourLine line in survey.Contours)
            foreach (GeoPoint at in line.Points) yield return (at, line.DepthM);
        foreach (SurveyRaster raster in survey.Rasters)
            for (int i = 0; i < raster.DepthM.Length; i += raster.DepthM.Length < 20_000 ? 1 : 7)
                if (raster.DepthM[i] > 0.2f) yield return (raster.Placement.PlaceOf(i % raster.Columns, i / raster.Columns), raster.DepthM[i]);
    }
}
