using SecondShore.Formats.Surveys;
using SecondShore.TestKit;
using SecondShore.TestKit.Synthetic;

namespace SecondShore.Formats.Tests.Surveys;

public class SurveyTruthTests(ITestOutputHelper output)
{
    // Without the whole files one row of each stands for all of them, and skips.
    public static TheoryData<int> Truths => [.. Enumerable.Range(0, SharedData.Folder is null ? 1 : SurveyTruths.All.Count)];

    public static TheoryData<int> NaiveAnswers => [.. Enumerable.Range(0, SharedData.Folder is null ? 1 : SurveyTruths.Naive.Count)];

    [Theory]
    [MemberData(nameof(Truths))]
    public void A_measured_file_is_read_asked_about_or_refused_as_its_source_says(int index)
    {
        SurveyTruth truth = SurveyTruths.All[index];
        if (truth.Read(new SurveyOptions()) is not SurveyImport import)
        {
            Assert.Skip(SharedData.Missing);
            return;
        }

        SurveyOutcome outcome = truth.Judge(import);
        output.WriteLine($"{truth.File}: {outcome} {import.Question?.Text} {string.Join(' ', import.Problems.Select(p => p.Message))}");
        Assert.NotEqual(SurveyOutcome.WrongInSilence, outcome);
        if (truth.Must == SurveyMust.Read) Assert.NotEqual(SurveyOutcome.Refused, outcome);
        if (truth.Must == SurveyMust.Ask) Assert.Equal(SurveyOutcome.Asked, outcome);
        if (double.IsNaN(truth.HighM)) return;
        SurveyImport answered = truth.Read(truth.Set)!;
        Assert.Null(answered.Question);
        Assert.True(answered.Survey is not null && truth.IsRight(answered.Survey, answered.Understanding!), $"{answered.Understanding?.MinDepthM} to {answered.Understanding?.MaxDepthM} m at {answered.Understanding?.Extent}");
    }

    [Theory]
    [MemberData(nameof(NaiveAnswers))]
    public void A_hasty_answer_does_not_make_a_wrong_lake_of_a_measured_file(int index)
    {
        (string file, SurveyOptions answer) = SurveyTruths.Naive[index];
        SurveyTruth truth = SurveyTruths.All.Single(t => t.File == file);
        if (truth.Read(answer) is not SurveyImport import)
        {
            Assert.Skip(SharedData.Missing);
            return;
        }

        output.WriteLine($"{import.Question?.Text} {string.Join(' ', import.Problems.Select(p => p.Message))}");
        Assert.NotEqual(SurveyOutcome.WrongInSilence, truth.Judge(import));
    }

    [Fact, LongerCheck]
    public void Made_up_surveys_are_read_rightly_or_asked_about_and_never_wrong_in_silence()
    {
        int answered = 0, all = LongCheck.Number(40, 120);
        for (int k = 0; k < all; k++)
        {
            SyntheticFile file = new((ulong)k + 500_000);
            (SurveyOutcome outcome, IReadOnlyList<SurveyQuestionKind> asked) = SyntheticJudge.Judge(file);
            Assert.True(outcome != SurveyOutcome.WrongInSilence, $"seed {k + 500_000} is wrong in silence: {file.Lake.Sense} in {file.Lake.Unit}, {file.Written}");
            if (outcome is SurveyOutcome.Right or SurveyOutcome.Asked) answered++;
            else output.WriteLine($"seed {k + 500_000}: {outcome} after {string.Join(", ", asked)}");
        }

        Assert.True(answered >= all * 0.97, $"{answered} of {all}");
    }
}
