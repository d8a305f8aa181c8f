namespace SecondShore.Open.Asking;

/// <summary>An open service's answer does not come or cannot be used.</summary>
/// <param name="sentence">Why, and how to go on without it.</param>
/// <param name="inner">What led to it, for developers.</param>
public sealed class OpenException(FindingForm sentence, Exception? inner = null) : RefusedException(sentence.ToFinding(), inner);
