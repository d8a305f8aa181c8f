using System.Globalization;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit.Figures;
using SecondShore.TestKit.Synthetic;
using SecondShore.TestKit.Synthetic.Odd;

namespace SecondShore.Bench;

/// <summary>Made-up surveys of random truth, layout, unit, sense, system, separator, words and noise: read, asked about, or wrong.</summary>
internal sealed class FormatsSynthetic : IFigure
{
    private const ulong FirstSeed = 9_000_000;

    public string Name => "formats-synthetic";

    public string Claim => "A survey of any layout is read rightly or asked about, and not wrong in silence.";

    public FigureMargin Margin => FigureMargin.Exact;

    public IEnumerable<Measured> Measure()
    {
        int runs = int.TryParse(Environment.GetEnvironmentVariable("SECONDSHORE_SYNTHETIC"), CultureInfo.InvariantCulture, out int set) ? set : 2000;
        ulong from = ulong.TryParse(Environment.GetEnvironmentVariable("SECONDSHORE_SEED"), CultureInfo.InvariantCulture, out ulong first) ? first : FirstSeed;
        Dictionary<SurveyOutcome, int> count = [];
        Dictionary<SurveyQuestionKind, int> kinds = [];
        int most = 0, questions = 0;
        for (int k = 0; k < runs; k++)
        {
            (SurveyOutcome outcome, IReadOnlyList<SurveyQuestionKind> asked) = SyntheticJudge.Judge(new SyntheticFile(from + (ulong)k));
            foreach (SurveyQuestionKind kind in asked.Distinct()) kinds[kind] = kinds.GetValueOrDefault(kind) + 1;
            count[outcome] = count.GetValueOrDefault(outcome) + 1;
            most = Math.Max(most, asked.Count);
            questions += asked.Count;
            if (outcome is not (SurveyOutcome.Right or SurveyOutcome.Asked)) Console.Error.WriteLine($"seed {from + (ulong)k}: {outcome} after {string.Join(", ", asked)}: {Head(new SyntheticFile(from + (ulong)k))}");
        }

        Console.Error.WriteLine("files asked about by kind: " + string.Join(", ", kinds.OrderByDescending(k => k.Value).Select(k => $"{k.Key} {k.Value}")));

        double Share(SurveyOutcome outcome) => 100.0 * count.GetValueOrDefault(outcome) / runs;
        string of = string.Create(CultureInfo.InvariantCulture, $"of {runs} made-up surveys; seeds from {from}, none used while the weights were chosen");
        yield return new Measured("formats-synthetic-right", Share(SurveyOutcome.Right), "%", of + ", at once");
        yield return new Measured("formats-synthetic-asked", Share(SurveyOutcome.Asked), "%", of + ", with the right reading among the choices");
        yield return new Measured("formats-synthetic-answered", Share(SurveyOutcome.Right) + Share(SurveyOutcome.Asked), "%", "99 is the target");
        yield return new Measured("formats-synthetic-in-vain", Share(SurveyOutcome.AskedInVain) + Share(SurveyOutcome.Refused), "%", "refused, or no choice is right");
        yield return new Measured("formats-synthetic-wrong", Share(SurveyOutcome.WrongInSilence), "%", "0.1 is the target");
        foreach (Measured figure in Odd(runs >= 1000 ? 6 : 1)) yield return figure;
        yield return new Measured("formats-synthetic-questions", (double)questions / runs, "questions", string.Create(CultureInfo.InvariantCulture, $"mean a file; at most {most}"));
    }

    private static string Head(SyntheticFile file) => string.Create(CultureInfo.InvariantCulture, $"{file.Lake.Country} {file.Lake.Sense} {file.Lake.Unit} {file.Lake.DeepestM:F1} m {file.System?.Code} | {string.Join(" | ", file.Text.Split('\n').Take(2))}");

    // Every awkward kind, several times each.
    private static IEnumerable<Measured> Odd(int each)
    {
        ulong from = ulong.TryParse(Environment.GetEnvironmentVariable("SECONDSHORE_ODD"), CultureInfo.InvariantCulture, out ulong set) ? set : FirstSeed;
        Dictionary<SurveyOutcome, int> count = [];
        for (int kind = 0; kind < OddKinds.All.Count; kind++)
        {
            for (int k = 0; k < each; k++)
            {
                (SurveyOutcome outcome, string words) = OddJudge.Judge(OddKinds.Make(kind, from + (ulong)k));
                count[outcome] = count.GetValueOrDefault(outcome) + 1;
                if (outcome is SurveyOutcome.AskedInVain or SurveyOutcome.WrongInSilence || Environment.GetEnvironmentVariable("SECONDSHORE_ODD") is not null)
                    Console.Error.WriteLine($"{kind} {OddKinds.All[kind].Name} ({from + (ulong)k}): {outcome}: {words}");
            }
        }

        double Share(params SurveyOutcome[] outcomes) => 100.0 * outcomes.Sum(o => count.GetValueOrDefault(o)) / (OddKinds.All.Count * each);
        string of = string.Create(CultureInfo.InvariantCulture, $"of {OddKinds.All.Count} awkward kinds, {each} files each");
        yield return new Measured("formats-odd-fit", Share(SurveyOutcome.Right, SurveyOutcome.Asked, SurveyOutcome.Refused), "%", of + ": right, asked with the right reading within three taps, or refused where that is right");
        yield return new Measured("formats-odd-in-vain", Share(SurveyOutcome.AskedInVain), "%", of + ": refused, or no choice is right");
        yield return new Measured("formats-odd-wrong", Share(SurveyOutcome.WrongInSilence), "%", "0 is the target");
    }
}
