using System.Globalization;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Words;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Day;

namespace SecondShore.Cli.Verbs;

/// <summary>A planned day as text.</summary>
internal static class DayPrint
{
    public static void Print(DayResult result, UnitSystem units, IReadOnlyList<string> written, TextWriter output)
    {
        string title = result.Shore.Lake.Folder.Document.IsInvented ? $"{result.Shore.Lake.Site.Name} (invented)" : result.Shore.Lake.Site.Name;
        output.WriteLine($"{title}, {result.Wish.Date.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture)}");
        output.WriteLine(OutlookWords.Say(result.Shore.Outlook, !units.IsMetric));
        output.WriteLine(result.Plan.Title);
        if (result.Plan.Why.Length > 0) output.WriteLine($"In this order because {result.Plan.Why.TrimEnd('.')}.");
        output.WriteLine();
        Stops(result, units, output);
        output.WriteLine();
        output.WriteLine("All places, best first");
        foreach (Spot spot in result.Shore.Spots)
        {
            string chance = spot.Kind == SpotKind.Belt
                ? string.Create(CultureInfo.InvariantCulture, $", {spot.ChanceInReach * 100:0} % in reach")
                : "";
            output.WriteLine($"  {spot.Letter,-2} {(spot.Name.Length > 0 ? spot.Name + ", " : "")}{FormWords.Of(spot.Form)} at {units.Depth(spot.DepthM)}{chance}");
            output.WriteLine($"       because {string.Join("; ", spot.Reasons.Take(4).Select(r => ReasonText.Of(r, !units.IsMetric)))}");
        }

        Section("Other days", [.. result.Plan.Alternatives.SelectMany(a => (string[])[
            $"{KindWords(a.Kind)}: {string.Join(" ", a.Plan.Stops.Select(s => s.Candidate.Letter))}", $"     {a.Words}"])]);
        Section("Cautions", [.. result.Cautions.Select(c => c.Words)]);
        Section("Assumed", result.SayAssumed(units));
        Section("Written", written);

        void Section(string heading, IReadOnlyList<string> lines)
        {
            if (lines.Count == 0) return;
            output.WriteLine();
            output.WriteLine(heading);
            foreach (string line in lines) output.WriteLine($"  {line}");
        }
    }

    private static string KindWords(AlternativeKind kind) => kind switch
    {
        AlternativeKind.NearRamp => "Close to the ramp",
        AlternativeKind.Sheltered => "In the lee",
        AlternativeKind.Gamble => "A gamble",
        _ => "If the lake has turned",
    };

    private static void Stops(DayResult result, UnitSystem units, TextWriter output)
    {
        string start = result.Wish.Here is null ? result.RampName : "from here";
        output.WriteLine($"  {result.Plan.Launch:HH:mm}  {start}");
        bool isPractice = result.Wish.Practice is not null;
        List<PlannedPause> pauses = [.. result.Plan.Pauses];
        foreach (PlannedStop stop in result.Plan.Stops)
        {
            Pauses(pauses, stop.Arrive, output);
            output.WriteLine($"  {stop.Arrive:HH:mm}  {stop.Candidate.Letter,-2} {Title(stop.Candidate)} at {units.Depth(stop.Candidate.DepthM)}, until {stop.Leave:HH:mm}");
            output.WriteLine($"             {RigWords.Short(result.Rigs[stop.Candidate.Id])}");
            if (stop.Candidate.How.Length > 0) output.WriteLine($"             {stop.Candidate.How}");
            output.WriteLine($"             because {(isPractice ? $"{stop.Why}; {stop.Candidate.Why}" : stop.Candidate.Why)}");
        }

        Pauses(pauses, DateTimeOffset.MaxValue, output);
        output.WriteLine($"  {result.Plan.Home:HH:mm}  {result.RampName}; {units.Distance(result.Plan.RouteLengthM)} on the water");
    }

    private static void Pauses(List<PlannedPause> pauses, DateTimeOffset before, TextWriter output)
    {
        foreach (PlannedPause pause in pauses.Where(p => p.From < before).ToArray())
        {
            output.WriteLine($"  {pause.From:HH:mm}     break until {pause.To:HH:mm}");
            pauses.Remove(pause);
        }
    }

    // A place without a name of its own is called by its form: once is enough.
    private static string Title(StopCandidate stop) =>
        string.Equals(stop.Name, stop.Form, StringComparison.OrdinalIgnoreCase) ? stop.Name : $"{stop.Name}, {stop.Form}";
}
