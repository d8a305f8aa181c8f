using System.Globalization;
using SecondShore.Answers.Learn;

namespace SecondShore.Cli.Verbs;

/// <summary>What was learned, as text.</summary>
internal static class LearnPrint
{
    public static void Print(LearnResult result, UnitSystem units, IReadOnlyList<string> written, TextWriter output)
    {
        LogTotals t = result.Totals;
        output.WriteLine(result.Invented ? $"{result.Lake} (invented)" : result.Lake);
        output.WriteLine(result.Trust);
        if (t.Stretches > 0)
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{t.Days} {(t.Days == 1 ? "day" : "days")}, {t.Stretches} stretches, {t.Blanks} blank; {t.Fish} fish, {t.Snags} snags. An ordinary hour: {LearnWords.Range(result.RatePerH)} bites."));
        if (t.WithoutEffort > 0)
            output.WriteLine($"{LearnWords.Bites(t.WithoutEffort)} or snags stand outside any logged stretch of fishing and teach no rate: log the time with them.");
        Section("Tie on first", [.. result.TieOn.Select(a => LearnWords.Say(a, units))], output);
        Section("Try next", [.. result.NextTry.Select(a => LearnWords.Say(a, units))], output);
        output.WriteLine();
        output.WriteLine("When to leave");
        output.WriteLine($"  {result.Leave.Words}");
        foreach (FactorRates table in result.Choices) Table(table, output);
        if (result.LastTrip is { } trip)
        {
            string head = string.Create(CultureInfo.InvariantCulture, $"{trip.Totals.Bites} bites in {trip.Totals.HoursH:0.#} h, {trip.Totals.Blanks} of {trip.Totals.Stretches} stretches blank.");
            Section($"The last day, {trip.Day.ToString("d MMMM", CultureInfo.InvariantCulture)}",
                [head, .. trip.BestStretch.Length > 0 ? [$"Best stretch: {trip.BestStretch}"] : Array.Empty<string>(), .. trip.Changed], output);
        }

        Section("Learned about the lake and the season", result.Learned, output);
        Section("Would teach most next time", result.TeachesMost, output);
        Section("Assumed", result.Assumed.Say(UnitSystem.Metric), output);
        Section("Written", written, output);
    }

    private static void Table(FactorRates table, TextWriter output)
    {
        output.WriteLine();
        output.WriteLine($"{table.Heading,-34}{"fished",9}{"bites",7}   bites an hour      best");
        foreach (LevelRate row in table.Rows)
        {
            string fished = row.Rate.HoursH < 0.05 ? "not yet" : LearnWords.Hours(row.Rate.HoursH);
            output.WriteLine($"  {row.Words,-32}{fished,9}{row.Rate.BitesCount,7}   {LearnWords.Range(row.Rate.RatePerH),-18} {LearnWords.Chance(row.Rate.BestChance)}");
        }
    }

    private static void Section(string title, IReadOnlyList<string> lines, TextWriter output)
    {
        if (lines.Count == 0) return;
        output.WriteLine();
        output.WriteLine(title);
        foreach (string line in lines) output.WriteLine($"  {line}");
    }
}
