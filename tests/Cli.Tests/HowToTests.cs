using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Cli.Tests;

/// <summary>What a page tells the reader to type is what the program takes.</summary>
public partial class HowToTests
{
    public static TheoryData<string> Pages =>
    [
        "README.md",
        .. Directory.GetFiles(Path.Combine(SharedData.RepositoryRoot, "docs", "how-to"), "*.md")
            .Select(p => Path.GetRelativePath(SharedData.RepositoryRoot, p)).Where(p => !p.EndsWith("host.md", StringComparison.Ordinal)),
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Every_option_on_a_page_is_offered_by_the_verb_it_stands_with(string page)
    {
        string text = File.ReadAllText(Path.Combine(SharedData.RepositoryRoot, page));
        string[] onPage = [.. Command().Matches(text).Select(m => m.Groups["verb"].Value).Distinct()];
        List<string> wrong = [.. onPage.Where(v => Help(v).Length == 0).Select(v => $"no verb '{v}'")];
        foreach (string line in text.Split('\n').Where(l => !l.Contains("src/Host", StringComparison.Ordinal)))
        {
            // An option belongs to the command before it on its line; one that stands alone, to a verb of the page.
            MatchCollection commands = Command().Matches(line);
            foreach (Match option in Option().Matches(line))
            {
                string[] verbs = commands.LastOrDefault(c => c.Index < option.Index) is { } command ? [command.Groups["verb"].Value] : onPage;
                if (option.Value is not "--project" && !verbs.Any(v => Offers(v, option.Value)))
                    wrong.Add($"{option.Value} is offered by none of: {string.Join(", ", verbs)}");
            }
        }

        Assert.True(wrong.Count == 0, $"{page}: {string.Join("; ", wrong.Distinct())}");
    }

    [Fact]
    public void The_pages_name_options_that_can_be_checked()
    {
        Assert.True(Offers("wind", "--hours"));
        Assert.False(Offers("wind", "--must"));
        Assert.Empty(Help("fly"));
    }

    private static bool Offers(string verb, string option) => Option().Matches(Help(verb)).Any(m => m.Value == option);

    private static string Help(string verb)
    {
        // Of a verb that is not there, the program's own help is shown.
        Terminal.Run run = Terminal.Do(verb, "--help");
        return UsageOf(verb).IsMatch(run.Out) ? run.Out : "";
    }

    private static Regex UsageOf(string verb) => new($@"Usage:\s+\S+ {verb}\b");

    [GeneratedRegex(@"(?:secondshore |src/Cli -- |`)(?<verb>lake|survey|check|outlook|shore|wind|rig|day|learn|score-wind|score|weather|doctor|demo)(?=[ `\n])")]
    private static partial Regex Command();

    [GeneratedRegex(@"--[a-z][a-z-]*[a-z]")]
    private static partial Regex Option();
}
