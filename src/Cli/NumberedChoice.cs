using System.Globalization;

namespace SecondShore.Cli;

/// <summary>One of several: by number on a terminal, by an option in scripts.</summary>
internal static class NumberedChoice
{
    private const int MostShown = 20;

    /// <summary>The index chosen.</summary>
    /// <param name="what">What is chosen, such as <c>Several places have that name</c>.</param>
    /// <param name="labels">What there is.</param>
    /// <param name="number">The number given with the option; null where it was left out.</param>
    /// <param name="option">The option, such as <c>--choose</c>.</param>
    /// <param name="surroundings">The terminal.</param>
    /// <exception cref="BadUsageException">Nobody chose, or nothing has that number; the list is told before.</exception>
    public static int Of(string what, IReadOnlyList<string> labels, int? number, string option, Surroundings surroundings)
    {
        if (number is { } given && given >= 1 && given <= labels.Count) return given - 1;
        surroundings.Err.WriteLine($"{what}:");
        for (int i = 0; i < Math.Min(labels.Count, MostShown); i++)
            surroundings.Err.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {i + 1}  {labels[i]}"));
        if (labels.Count > MostShown) surroundings.Err.WriteLine($"  and {labels.Count - MostShown} more");
        if (number is not null)
            throw new BadUsageException(
                string.Create(CultureInfo.InvariantCulture, $"{option} {number} is none of them; use 1 to {labels.Count}."));
        while (surroundings.Answers is { } typed)
        {
            surroundings.Err.Write("Number: ");
            string? line = typed.ReadLine()?.Trim();
            if (string.IsNullOrEmpty(line)) break;
            if (int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out int chosen) && chosen >= 1
                && chosen <= labels.Count) return chosen - 1;
            surroundings.Err.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"Write a number from 1 to {labels.Count}, or nothing to stop."));
        }

        throw new BadUsageException($"Choose one by its number: {option} 1");
    }
}
