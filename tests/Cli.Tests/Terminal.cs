using SecondShore.Cli;

namespace SecondShore.Cli.Tests;

/// <summary>Runs one command as a person would, with the clock standing still.</summary>
internal static class Terminal
{
    public static readonly DateTimeOffset Now = new(2026, 10, 6, 12, 0, 0, TimeSpan.Zero);

    public static Run Do(params string[] args)
    {
        StringWriter output = new(), error = new();
        int code = CommandLine.RunAsync(args, new Surroundings(output, error, new StandingClock(), ShowsProgress: false), CancellationToken.None).GetAwaiter().GetResult();
        return new Run(code, output.ToString(), error.ToString());
    }

    internal sealed record Run(int Code, string Out, string Err);

    private sealed class StandingClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Now;
    }
}
