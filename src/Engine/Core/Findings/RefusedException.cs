namespace SecondShore.Engine.Core.Findings;

/// <summary>What was asked cannot be done, for a reason that the person who asked can understand.</summary>
/// <param name="finding">The reason.</param>
/// <param name="inner">What led to it, for developers.</param>
public class RefusedException(Finding finding, Exception? inner = null) : Exception(Require.NotNull(finding).ToString(), inner)
{
    /// <summary>The reason; the message of the exception is for developers only.</summary>
    public Finding Finding { get; } = finding;
}
