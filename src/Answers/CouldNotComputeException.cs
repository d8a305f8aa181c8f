namespace SecondShore.Answers;

/// <summary>The input was read and is sound, but does not suffice for an answer. The message says why and what would.</summary>
public sealed class CouldNotComputeException(string message) : Exception(message);
