using SecondShore.TestKit;

namespace SecondShore.Cli.Tests;

/// <summary>Bad and odd input at the terminal: the designed exit code, the reason, and nothing left half written.</summary>
public class BadInputTests
{
    public static TheoryData<string> Names => [.. BadInputs.All.Select(b => b.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Bad_input_is_refused_or_told_and_the_folder_is_left_as_it_was(string name)
    {
        BadInput input = BadInputs.All.Single(b => b.Name == name);
        using TempFolder folder = new();
        string path = input.WriteTo(folder.Path);
        string[] before = Everything(folder.Path);

        Terminal.Run run = Terminal.Do("check", path);

        Assert.True(run.Code == input.ExitCode, $"exit code {run.Code} where {input.ExitCode} is designed: {run.Out}{run.Err}");
        Assert.Contains(input.Phrase, run.Out + run.Err, StringComparison.OrdinalIgnoreCase);
        if (input.ExitCode == ExitCodes.BadInput) Assert.NotEmpty(run.Err);
        Assert.DoesNotContain("   at ", run.Out + run.Err, StringComparison.Ordinal);
        Assert.Equal(before, Everything(folder.Path));
    }

    [Theory]
    [InlineData("outlook")]
    [InlineData("shore")]
    [InlineData("day")]
    [InlineData("learn")]
    public void Every_verb_that_needs_a_lake_refuses_the_same_input_with_3_and_writes_nothing(string verb)
    {
        foreach (BadInput input in BadInputs.All.Where(b => b.ExitCode == ExitCodes.BadInput).Where((_, i) => i % 6 == 0))
        {
            using TempFolder own = new();
            string path = input.WriteTo(own.Path);
            string[] before = Everything(own.Path);
            Terminal.Run run = Terminal.Do(verb, path);
            Assert.True(run.Code == ExitCodes.BadInput, $"{input.Name}: exit code {run.Code}: {run.Err}");
            Assert.Contains(input.Phrase, run.Err, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("   at ", run.Err, StringComparison.Ordinal);
            Assert.Empty(run.Out);
            Assert.Equal(before, Everything(own.Path));
        }
    }

    private static string[] Everything(string folder) =>
        [.. Directory.GetFileSystemEntries(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];
}
