using System.Diagnostics;
using System.Globalization;
using SecondShore.Formats;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit.Figures;
using SecondShore.TestKit;
using SecondShore.TestKit.Synthetic;

namespace SecondShore.Bench;

/// <summary>Reads every measured survey file and prints what was understood of each.</summary>
internal sealed class FormatsSurveys : IFigure
{
    public string Name => "formats-surveys";

    public string Claim => "Every measured survey file is read as its source says, or refused with one sentence.";

    public FigureMargin Margin => FigureMargin.Exact;

    public IEnumerable<Measured> Measure()
    {
        int read = 0, refused = 0, wrong = 0;
        double slowestMs = 0;
        foreach (SurveyCase expected in SurveyCatalogue.All)
        {
            Stopwatch watch = Stopwatch.StartNew();
            SurveyImport? import = expected.Read();
            if (import is null) continue;
            slowestMs = Math.Max(slowestMs, watch.Elapsed.TotalMilliseconds);
            Problem[] errors = [.. import.Problems.Where(p => p.Severity == ProblemSeverity.Error)];
            if (import.Survey is not null) read++;
            else if (errors.Length == 1) refused++;
            else wrong++;
            Console.Error.WriteLine($"{expected.File,-66} {Words(import, errors)}");
        }

        foreach (Measured figure in Judged()) yield return figure;
        yield return new Measured("formats-surveys-read", read, "cases", "of the measured survey files");
        yield return new Measured("formats-surveys-refused", refused, "cases", "each in one sentence");
        yield return new Measured("formats-surveys-neither", wrong, "cases", "0 is the target");
        yield return new Measured("formats-surveys-slowest", slowestMs, "ms", "one file", FigureMargin.OfValue(0.5));
    }

    // Against what the source.json of each says: by itself, and with hasty answers.
    private static IEnumerable<Measured> Judged()
    {
        int good = 0, asked = 0, refused = 0, wrong = 0, files = 0;
        foreach (SurveyTruth truth in SurveyTruths.All)
        {
            if (truth.Read(new SurveyOptions()) is not SurveyImport import) continue;
            files++;
            SurveyOutcome outcome = truth.Judge(import);
            if (outcome == SurveyOutcome.WrongInSilence) wrong++;
            bool fits = truth.Must switch
            {
                SurveyMust.Read => outcome is SurveyOutcome.Right or SurveyOutcome.Asked && Answered(truth),
                SurveyMust.Ask => outcome == SurveyOutcome.Asked && Answered(truth),
                _ => outcome is SurveyOutcome.Refused or SurveyOutcome.Right or SurveyOutcome.Asked,
            };
            if (fits) good++;
            if (outcome == SurveyOutcome.Asked) asked++;
            if (outcome == SurveyOutcome.Refused) refused++;
            Console.Error.WriteLine($"{truth.File,-66} must {truth.Must}: {outcome}{(fits ? "" : ", NOT as its source says")}");
        }

        int hasty = 0;
        foreach ((string file, SurveyOptions answer) in SurveyTruths.Naive)
        {
            SurveyTruth truth = SurveyTruths.All.Single(t => t.File == file);
            if (truth.Read(answer) is not SurveyImport import || truth.Judge(import) != SurveyOutcome.WrongInSilence) continue;
            hasty++;
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{file}, hastily {answer.DepthColumn} {answer.Sense} {answer.Unit} {answer.Crs}: {import.Understanding!.Kind} {import.Understanding.MinDepthM:F2} to {import.Understanding.MaxDepthM:F2} m"));
        }

        yield return new Measured("formats-surveys-as-told", good, "files", string.Create(CultureInfo.InvariantCulture, $"of {files} with an expectation in source.json; {asked} asked about, {refused} refused"));
        yield return new Measured("formats-surveys-wrong-in-silence", wrong, "files", "0 is the target");
        yield return new Measured("formats-surveys-hasty-answers-wrong", hasty, "answers", string.Create(CultureInfo.InvariantCulture, $"of {SurveyTruths.Naive.Count} hasty answers"));
    }

    private static bool Answered(SurveyTruth truth) => double.IsNaN(truth.HighM)
        || (truth.Read(truth.Set) is { Survey: { } survey, Understanding: { } seen } && truth.IsRight(survey, seen));

    private static string Words(SurveyImport import, Problem[] errors)
    {
        if (import.Survey is null || import.Understanding is not SurveyUnderstanding u) return $"refused: {errors.FirstOrDefault()?.Message}";
        string depths = double.IsNaN(u.MaxDepthM) ? "" : string.Create(CultureInfo.InvariantCulture, $", {u.MinDepthM:F2} to {u.MaxDepthM:F2} m, {u.Unit} {u.UnitKnown}, {u.Sense} {u.SenseKnown}");
        string box = u.Extent is null ? "" : string.Create(CultureInfo.InvariantCulture, $", {u.Extent.SouthDeg:F4} {u.Extent.WestDeg:F4} to {u.Extent.NorthDeg:F4} {u.Extent.EastDeg:F4}");
        return $"{u.Kind} {u.Count}{depths}{box}, {u.Crs}";
    }
}
