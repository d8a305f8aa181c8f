using SecondShore.Engine.Core.Findings;

namespace SecondShore.Words;

/// <summary>Says findings: in the reader's language and units, and in the terms of the place where they are read.</summary>
public static class FindingWords
{
    /// <summary>A finding as a sentence, or as the word it is.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="reader">Language, units and place.</param>
    public static string Say(this Finding finding, UnitSystem reader)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(reader);
        if (finding.Kind == Finding.Openings) return Finding.Capital(((Finding)finding.Values[0].Other!).Say(reader));
        return string.Format(reader.Speech.Culture, Sentences.FormOf(finding.Kind, reader.Speech, reader.Place), [.. finding.Values.Select(v => Argument(v, reader))]);
    }

    /// <summary>Findings as sentences, in their order; none twice.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="reader">Language, units and place.</param>
    public static IReadOnlyList<string> Say(this IEnumerable<Finding> findings, UnitSystem reader) => [.. findings.Select(f => f.Say(reader)).Distinct()];

    private static string[] Each(Told told, UnitSystem reader) =>
        [.. ((Told[])told.Other!).Select(v => Convert.ToString(Argument(v, reader), reader.Speech.Culture) ?? "")];

    private static string Source(string source, UnitSystem reader)
    {
        int at = source.LastIndexOf(" line ", StringComparison.Ordinal);
        return at < 0 ? source : reader.Speech.Say($"{source[..at]} line {source[(at + 6)..]}");
    }

    // Numbers and instants stay what they are, so that each sentence gives them its own digits; all else is words by now.
    private static object Argument(Told told, UnitSystem reader) => told.Measure switch
    {
        Measure.Number => told.Value,
        Measure.Count => (long)told.Value,
        Measure.Time => told.Other!,
        Measure.Depth => reader.Depth(told.Value),
        Measure.Difference => reader.Difference(told.Value),
        Measure.Way => reader.Distance(told.Value),
        Measure.Length => reader.ShortDistance(told.Value),
        Measure.Area => reader.Area(told.Value),
        Measure.Temperature => reader.Temp(told.Value),
        Measure.Speed => reader.Pace(told.Value),
        Measure.Wind => reader.Wind(told.Value),
        Measure.Mass => reader.JigWeight(told.Value),
        Measure.Source => Source((string)told.Other!, reader),
        Measure.Finding => ((Finding)told.Other!).Say(reader),
        Measure.Row => reader.Speech.Join(Each(told, reader)),
        Measure.List => string.Join(", ", Each(told, reader)),
        _ => told.Other as string ?? "",
    };
}
