using SecondShore.Cli;

namespace SecondShore.Cli.Tests;

/// <summary>Runs one command as a person would, with the clock standing still.</summary>
internal static class Terminal
{
    public static readonly DateTimeOffset Now = new(2026, 10, 6, 12, 0, 0, TimeSpan.Zero);

    public static Run Do(params string[] args) => Answering(null, args);

    /// <summary>With what is typed when it asks; null when nobody sits there.</summary>
    public static Run Answering(string? typed, params string[] args)
    {
        StringWriter output = new(), error = new();
        using StringReader? answers = typed is null ? null : new StringReader(typed);
        Surroundings surroundings = new(output, error, new StandingClock(), ShowsProgress: false) { Answers = answers };
        int code = CommandLine.RunAsync(args, surroundings, CancellationToken.None).GetAwaiter().GetResult();
        return new Run(code, output.ToString(), error.ToString());
    }

    internal sealed record Run(int Code, string Out, string Err);

    private sealed class StandingClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Now;
    }
}
