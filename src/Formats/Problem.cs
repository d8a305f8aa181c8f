using System.Globalization;

namespace SecondShore.Formats;

/// <summary>How much a problem matters.</summary>
public enum ProblemSeverity
{
    /// <summary>Something understood or assumed, said aloud.</summary>
    Note,

    /// <summary>A value or row that could not be used; the rest of the file is.</summary>
    Warning,

    /// <summary>A file, or the whole lake, that cannot be used.</summary>
    Error,
}

/// <summary>Something found in the user's files: what was seen, what was expected, and what to do, as one sentence.</summary>
/// <param name="File">The file's name inside the lake folder.</param>
/// <param name="Line">Line number counted from 1; null when the problem has no line.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="What">What was seen, what was expected, and what to do.</param>
public sealed record Problem(string File, int? Line, ProblemSeverity Severity, Finding What)
{
    /// <summary>The sentence in English.</summary>
    public string Message => What.ToString();

    /// <summary>Place and sentence, such as <c>weather.csv line 12: ...</c>.</summary>
    public override string ToString() => Line is int line
        ? string.Create(CultureInfo.InvariantCulture, $"{File} line {line}: {Message}")
        : $"{File}: {Message}";
}
