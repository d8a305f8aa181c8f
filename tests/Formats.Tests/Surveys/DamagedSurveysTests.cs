using System.Globalization;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Surveys;

public class DamagedSurveysTests
{
    public static TheoryData<string> Formats => [.. SurveySamples.All.Select(s => s.Format)];

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_good_sample_is_read_without_an_error(string format)
    {
        SurveySample sample = SurveySamples.All.Single(s => s.Format == format);
        SurveyImport import = sample.Read(sample.Bytes);
        Assert.DoesNotContain(import.Problems, p => p.Severity != ProblemSeverity.Note);
        Assert.NotNull(import.Survey);
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Every_truncation_gives_a_survey_or_a_sentence(string format)
    {
        SurveySample sample = SurveySamples.All.Single(s => s.Format == format);
        int step = Math.Max(1, sample.Bytes.Length / 500);
        for (int length = 0; length < sample.Bytes.Length; length += step) Check(sample.Read(sample.Bytes[..length]), $"cut at {length}");
    }

    [Theory]
    [LongerCheck]
    [MemberData(nameof(Formats))]
    public void Every_damaged_file_gives_a_survey_or_a_sentence(string format)
    {
        SurveySample sample = SurveySamples.All.Single(s => s.Format == format);
        int runs = int.TryParse(Environment.GetEnvironmentVariable("SECONDSHORE_MUTATIONS"), CultureInfo.InvariantCulture, out int set) ? set : LongCheck.Number(300, 3000);
        foreach (ulong seed in RandomCases.Numbers(runs))
        {
            Mutator mutator = new(seed);
            Check(sample.Read(mutator.Damage(sample.Bytes), mutator, seed % 3 == 1), $"seed {seed}");
        }
    }

    // The inflater has an exception of its own for these.
    [Theory]
    [InlineData("nc4", 1_012_030)]
    [InlineData("nc4", 1_018_232)]
    [InlineData("nc4-new", 1_035_631)]
    public void A_damaged_packed_part_gives_a_sentence(string format, ulong seed)
    {
        SurveySample sample = SurveySamples.All.Single(s => s.Format == format);
        Mutator mutator = new(seed);
        Check(sample.Read(mutator.Damage(sample.Bytes), mutator), $"seed {seed}");
    }

    private static void Check(SurveyImport import, string what)
    {
        bool refused = import.Problems.Any(p => p.Severity == ProblemSeverity.Error);
        Assert.True(import.Survey is not null || refused, what);
        if (import.Survey is not Engine.Basin.Survey survey) return;
        foreach (Engine.Basin.SoundingSet set in survey.Soundings)
            for (int i = 0; i < set.DepthM.Length; i++)
                Assert.True(double.IsFinite(set.DepthM[i]) && Math.Abs(set.LatDeg[i]) <= 90 && Math.Abs(set.LonDeg[i]) <= 180, what);
        foreach (Engine.Basin.ContourLine line in survey.Contours) Assert.True(double.IsFinite(line.DepthM) && line.Points.Count >= 2, what);
    }
}
