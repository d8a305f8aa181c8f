using System.Globalization;
using SecondShore.App.Pace;
using SecondShore.TestKit;

namespace SecondShore.App.Tests.Pace;

/// <summary>
/// Runs recorded in Chromium beside 0 to 4 busy threads, one device, in the order in which they were (<c>bench app-progress</c>
/// writes them). Each is judged by the runs before it, as the app would.
/// </summary>
public class RecordedRunTests
{
    private static readonly string[] Works = ["open.cold", "day"];

    public static TheoryData<string> Work => [.. Works];

    [Fact]
    public void At_half_time_what_is_shown_is_within_a_factor_of_two_in_nine_of_ten()
    {
        int judged = 0, near = 0;
        foreach ((IReadOnlyList<WorkRun> former, WorkRun run) in Works.SelectMany(Judged))
        {
            double halfS = 0.5 * run.TookS;
            WorkPace pace = Replayed(former, run, halfS);
            judged++;
            if (pace.At(halfS).LeftS is { } shownS && shownS >= 0.5 * halfS && shownS <= 2 * halfS) near++;
        }

        Assert.True(judged >= 20, $"only {judged} runs are recorded");
        Assert.True(near >= 0.9 * judged, $"{near} of {judged}");
    }

    [Theory]
    [MemberData(nameof(Work))]
    public void Never_is_less_shown_than_the_median_still_needed_from_its_next_tick(string work)
    {
        foreach ((IReadOnlyList<WorkRun> former, WorkRun run) in Judged(work))
        {
            for (double s = 0; s < run.TookS; s += 0.25)
            {
                if (Replayed(former, run, s).At(s).LeftS is not { } shownS) continue;
                double place = run.Ticks.Where(t => t.SecondS <= s).Select(t => t.Place).LastOrDefault();
                double[] left = [.. former.Select(r => r.TookS - r.SecondBeyond(place)).Order()];
                Assert.True(shownS >= left[(left.Length - 1) / 2] - 1e-6, $"{work}: {shownS:0.0} s shown at {s:0.0} s");
            }
        }
    }

    private static WorkPace Replayed(IReadOnlyList<WorkRun> former, WorkRun run, double untilS)
    {
        WorkPace pace = new(former, 1, 1, 1);
        int part = 0;
        foreach ((double place, double secondS) in run.Ticks.TakeWhile(t => t.SecondS <= untilS))
        {
            if (place >= part) pace.Begin(part = (int)place, secondS);
            pace.Told(place - part, secondS);
        }

        return pace;
    }

    private static IEnumerable<(IReadOnlyList<WorkRun> Former, WorkRun Run)> Judged(string work)
    {
        WorkRun[] runs = [.. Lines(work)];
        for (int i = 1; i < runs.Length; i++) yield return ([.. runs[..i].TakeLast(FormerRuns.Most)], runs[i]);
    }

    // A line: busy threads beside, work, run.
    private static IEnumerable<WorkRun> Lines(string work)
    {
        string file = Path.Combine(SharedData.RepositoryRoot, "tests", "App.Tests", "Pace", "recorded-runs.txt");
        foreach (string line in File.ReadLines(file))
        {
            string[] words = line.Split(' ', 3);
            if (words.Length < 3 || words[1] != work || !int.TryParse(words[0], NumberStyles.None, CultureInfo.InvariantCulture, out _)) continue;
            yield return WorkRun.Parse(words[2]) ?? throw new InvalidDataException(line);
        }
    }
}
