namespace SecondShore.Cli.Tests;

public class UsageTests
{
    [Fact]
    public void Without_a_verb_the_help_is_shown_as_bad_usage()
    {
        Terminal.Run run = Terminal.Do();
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains("outlook", run.Err, StringComparison.Ordinal);
        Assert.Empty(run.Out);
    }

    [Theory]
    [InlineData("fly")]
    [InlineData("outlook")]
    [InlineData("outlook", "lake", "--members", "many")]
    [InlineData("demo")]
    public void Words_the_command_line_does_not_know_end_with_2(params string[] args)
    {
        Terminal.Run run = Terminal.Do(args);
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.NotEmpty(run.Err);
        Assert.DoesNotContain("   at ", run.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_of_every_verb_teaches_its_options()
    {
        foreach (string verb in (string[])["demo", "check", "outlook", "shore", "day", "score", "rig", "learn"])
        {
            Terminal.Run run = Terminal.Do(verb, "--help");
            Assert.Equal(ExitCodes.Done, run.Code);
            Assert.Contains(verb, run.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_lake_that_is_not_there_ends_with_3_and_names_it()
    {
        Terminal.Run run = Terminal.Do("outlook", "no-such-lake");
        Assert.Equal(ExitCodes.BadInput, run.Code);
        Assert.Contains("no-such-lake", run.Err, StringComparison.Ordinal);
    }
}
