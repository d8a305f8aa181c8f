namespace SecondShore.Open.Asking;

/// <summary>How patient and how polite a client of open services is.</summary>
/// <param name="Attempts">Tries after the first, 0 to 10.</param>
/// <param name="FirstWait">Wait before the second try; each further one doubles, with chance in it.</param>
/// <param name="AttemptTimeout">Longest one try may take, body included: a server that drips ends here.</param>
/// <param name="Spacing">Least time between two requests.</param>
/// <param name="LongestWait">Longest wait between two tries; a service that asks for more is left alone, and that is said.</param>
public sealed record AskPatience(int Attempts, TimeSpan FirstWait, TimeSpan AttemptTimeout, TimeSpan Spacing, TimeSpan LongestWait)
{
    /// <summary>Where none is given.</summary>
    public static AskPatience Default { get; } =
        new(2, TimeSpan.FromSeconds(2), TimeSpan.FromSeconds(45), TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(60));
}
