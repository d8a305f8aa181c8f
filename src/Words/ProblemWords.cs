using System.Globalization;
using SecondShore.Formats;

namespace SecondShore.Words;

/// <summary>Says problems of the user's files.</summary>
public static class ProblemWords
{
    /// <summary>Place and sentence, such as <c>weather.csv line 12: ...</c>.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="reader">Language, units and place.</param>
    public static string Say(this Problem problem, UnitSystem reader)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(reader);
        string what = problem.What.Say(reader);
        return problem.Line is int line
            ? reader.Speech.Say($"{problem.File} line {line.ToString(CultureInfo.InvariantCulture)}") + ": " + what
            : $"{problem.File}: {what}";
    }
}
