using System.Globalization;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Surveys;

public class MeasuredSurveysTests(ITestOutputHelper output)
{
    public static TheoryData<int> Copies => [.. Enumerable.Range(0, SurveyCatalogue.Copies.Count)];

    // Without the whole files one row stands for all of them, and skips.
    public static TheoryData<int> Whole => [.. Enumerable.Range(0, SharedData.Folder is null ? 1 : SurveyCatalogue.All.Count)];

    [Theory]
    [MemberData(nameof(Copies))]
    public void A_copy_of_a_measured_survey_is_read_as_its_numbers_say_or_refused_in_one_sentence(int index) => Hold(SurveyCatalogue.Copies[index]);

    [Theory]
    [MemberData(nameof(Whole))]
    public void A_measured_survey_is_read_as_its_source_says_or_refused_in_one_sentence(int index)
    {
        Assert.SkipWhen(SharedData.Folder is null, SharedData.Missing);
        Hold(SurveyCatalogue.All[index]);
    }

    private void Hold(SurveyCase expected)
    {
        SurveyImport import = expected.Read() ?? throw new FileNotFoundException($"{expected.File} is not where it should be.");
        Show(expected, import);
        if (expected.Refusal is string words)
        {
            Problem[] errors = [.. import.Problems.Where(p => p.Severity == ProblemSeverity.Error)];
            if (words.Length == 0 && errors.Length == 0) return;
            Assert.Contains(words, Assert.Single(errors).What.Say(UnitSystem.Metric), StringComparison.Ordinal);
            Assert.Null(import.Survey);
            return;
        }

        SurveyUnderstanding seen = import.Understanding!;
        Assert.NotNull(import.Survey);
        Assert.DoesNotContain(import.Problems, p => p.Severity == ProblemSeverity.Error);
        Assert.Equal(expected.Kind, seen.Kind);
        if (expected.Count >= 0) Assert.Equal(expected.Count, CountUsed(import));
        if (!double.IsNaN(expected.LowFiled)) Assert.Equal(expected.LowFiled, seen.LowestFiled, 0.011);
        if (!double.IsNaN(expected.HighFiled)) Assert.Equal(expected.HighFiled, seen.HighestFiled, 0.011);
        if (expected.Kind is SurveyKind.Soundings or SurveyKind.Contours or SurveyKind.Raster)
        {
            Assert.Equal(expected.Unit, seen.Unit);
            Assert.Equal(expected.Sense, seen.Sense);
        }

        if (expected.Extent is GeoExtent box) AssertInside(box, seen.Extent!);
    }

    private static long CountUsed(SurveyImport import) => import.Understanding!.Kind switch
    {
        SurveyKind.Soundings => import.Survey!.Soundings.Sum(s => (long)s.DepthM.Length),
        SurveyKind.Contours => import.Survey!.Contours.Count,
        SurveyKind.Shoreline => import.Survey!.Shoreline!.Polygons.Sum(p => 1 + p.Islands.Count),
        _ => import.Understanding.Count,
    };

    // The extent must lie in the box (with a margin of rounding) and span most of it.
    private static void AssertInside(GeoExtent box, GeoExtent seen)
    {
        Assert.InRange(seen.SouthDeg, box.SouthDeg - 0.0006, box.NorthDeg);
        Assert.InRange(seen.NorthDeg, box.SouthDeg, box.NorthDeg + 0.0006);
        Assert.InRange(seen.WestDeg, box.WestDeg - 0.0006, box.EastDeg);
        Assert.InRange(seen.EastDeg, box.WestDeg, box.EastDeg + 0.0006);
        Assert.True(seen.NorthDeg - seen.SouthDeg > 0.5 * (box.NorthDeg - box.SouthDeg), "the extent is too short");
        Assert.True(GeoPoint.WrapLongitudeDeg(seen.EastDeg - seen.WestDeg) > 0.5 * (box.EastDeg - box.WestDeg), "the extent is too narrow");
    }

    private void Show(SurveyCase expected, SurveyImport import)
    {
        output.WriteLine(expected.File);
        SurveyUnderstanding? u = import.Understanding;
        if (u is not null)
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {u.Format}, {u.Kind} {u.Count}, {u.Unit} ({u.UnitKnown}), {u.Sense} ({u.SenseKnown}), {u.Crs} ({u.CrsKnown}), {u.Extent}, filed {u.LowestFiled} to {u.HighestFiled}, depth {u.MinDepthM:F2} to {u.MaxDepthM:F2} m, roles {string.Join("; ", u.RolesTaken)}"));
        foreach (Finding doubt in u?.Doubts ?? []) output.WriteLine("  ? " + doubt);
        foreach (Problem problem in import.Problems) output.WriteLine($"  {problem.Severity}: {problem}");
    }
}
