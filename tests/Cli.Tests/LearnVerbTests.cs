using System.Text.Json;

namespace SecondShore.Cli.Tests;

public class LearnVerbTests(DemoLake demo)
{
    [Fact]
    public void The_demo_log_gives_rates_odds_and_when_to_leave()
    {
        Terminal.Run run = Terminal.Do("learn", demo.Lake, "--log-only");
        Assert.Equal(ExitCodes.Done, run.Code);
        foreach (string needed in (string[])["Tie on first", "Try next", "When to leave", "Depth off the thermocline", "in 10", "bites in", "The last day"])
            Assert.Contains(needed, run.Out, StringComparison.Ordinal);
        Assert.Equal(run.Out, Terminal.Do("learn", demo.Lake, "--log-only").Out);
    }

    [Fact]
    public void Json_is_one_document_and_the_page_is_written_where_asked()
    {
        using TempFolder folder = new();
        Terminal.Run run = Terminal.Do("learn", demo.Lake, "--log-only", "--json", "--eats", "crayfish", "--light", "low", "--out", folder.File("learned"));
        Assert.Equal(ExitCodes.Done, run.Code);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        Assert.True(document.RootElement.GetProperty("bites").GetInt32() > 10);
        Assert.Contains("eats crayfish", document.RootElement.GetProperty("conditions").EnumerateArray().Select(c => c.GetString()));
        Assert.Equal(3, document.RootElement.GetProperty("files").GetArrayLength());
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(folder.File("learned/learned.html")), StringComparison.Ordinal);
        // The beliefs that were written are read back.
        Assert.Equal(ExitCodes.Done, Terminal.Do("learn", demo.Lake, "--log-only", "--priors", folder.File("learned/catch-priors.json")).Code);
    }

    [Theory]
    [InlineData(2, "--eats", "pizza")]
    [InlineData(2, "--light", "dim")]
    [InlineData(2, "--hours", "0")]
    [InlineData(2, "--travel", "900")]
    [InlineData(3, "--priors", "no-such-file.json")]
    public void Odd_options_end_as_designed_and_say_what_is_allowed(int code, string option, string value)
    {
        Terminal.Run run = Terminal.Do("learn", demo.Lake, "--log-only", option, value);
        Assert.Equal(code, run.Code);
        Assert.Contains(value, run.Err, StringComparison.Ordinal);
        Assert.Empty(run.Out);
    }
}
