using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests;

public class BadInputTests
{
    public static TheoryData<string> Names => [.. BadInputs.All.Select(b => b.Name)];

    [Fact]
    public void The_list_is_long_and_names_are_distinct()
    {
        Assert.True(BadInputs.All.Count >= 60, $"{BadInputs.All.Count} inputs");
        Assert.Equal(BadInputs.All.Count, BadInputs.All.Select(b => b.Name).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Bad_input_ends_in_its_sentence(string name)
    {
        BadInput input = BadInputs.All.Single(b => b.Name == name);
        string folder = Directory.CreateTempSubdirectory("secondshore-bad-").FullName;
        try
        {
            LakeFolder lake = LakeFolderReader.ReadPath(input.WriteTo(folder));
            string all = string.Join('\n', lake.Problems.Select(p => $"{p.Severity}: {p.Say(UnitSystem.Metric)}"));
            Assert.True(lake.IsUsable == (input.ExitCode == 0), all);
            Assert.Contains(input.Phrase, all, StringComparison.Ordinal);
            foreach (Problem problem in lake.Problems)
            {
                Assert.DoesNotContain("Exception", problem.What.Say(UnitSystem.Metric), StringComparison.Ordinal);
                Assert.DoesNotContain('\n', problem.What.Say(UnitSystem.Metric));
                // What a file leaves open is asked; its choices stand beside.
                bool asked = lake.SurveyQuestions.Any(q => q.Text.Equals(problem.What));
                Assert.EndsWith(asked ? "?" : ".", problem.What.Say(UnitSystem.Metric), StringComparison.Ordinal);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
