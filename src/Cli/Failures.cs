namespace SecondShore.Cli;

/// <summary>Bad input: the message is one sentence with file, line, value, what was expected and what to do.</summary>
internal sealed class BadInputException(string message) : Exception(message);

/// <summary>Bad usage of the command line that the parser alone cannot see.</summary>
internal sealed class BadUsageException(string message) : Exception(message);
