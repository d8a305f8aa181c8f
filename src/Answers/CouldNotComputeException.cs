namespace SecondShore.Answers;

/// <summary>There is no answer to a question.</summary>
/// <param name="why">Why, and what would help.</param>
public sealed class CouldNotComputeException(FindingForm why) : RefusedException(why.ToFinding());
