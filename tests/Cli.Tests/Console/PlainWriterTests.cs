using SecondShore.Cli.Console;

namespace SecondShore.Cli.Tests.Console;

public class PlainWriterTests
{
    [Theory]
    [InlineData("\u001b[2J\u001b]0;title\u0007name", "?[2J?]0;title?name")]
    [InlineData("a\u0008\u009b31mb\u202ec", "a??31mb?c")]
    [InlineData("Größe 9.5 m\t\"ok\"\n", "Größe 9.5 m\t\"ok\"\n")]
    public void What_a_terminal_would_obey_is_shown_and_not_sent(string text, string shown)
    {
        using StringWriter to = new();
        using PlainWriter plain = new(to);
        plain.Write(text);
        foreach (char c in text) plain.Write(c);
        plain.Write(text.ToCharArray());
        Assert.Equal(shown + shown + shown, to.ToString());
    }
}
