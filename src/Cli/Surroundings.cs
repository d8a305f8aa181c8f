namespace SecondShore.Cli;

/// <summary>What a verb may touch of the world outside, so that tests can stand in for it.</summary>
/// <param name="Out">Answers, and nothing else.</param>
/// <param name="Err">Messages and progress.</param>
/// <param name="Clock">The only source of the present instant.</param>
/// <param name="ShowsProgress">Whether <paramref name="Err"/> is a terminal that can redraw a line.</param>
internal sealed record Surroundings(TextWriter Out, TextWriter Err, TimeProvider Clock, bool ShowsProgress)
{
    /// <summary>Where answers are typed; null when nobody sits there.</summary>
    public TextReader? Answers { get; init; }

    /// <summary>Keys of lake.json said on the command line with --set.</summary>
    public List<string> Settings { get; } = [];
}
