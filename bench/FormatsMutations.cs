using System.Diagnostics;
using System.Globalization;
using SecondShore.Formats;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit.Figures;
using SecondShore.TestKit;

namespace SecondShore.Bench;

/// <summary>Reads many damaged files per survey reader; SECONDSHORE_MUTATIONS sets how many (5,000 without it).</summary>
internal sealed class FormatsMutations : IFigure
{
    public string Name => "formats-mutations";

    public string Claim => "Damaged files give a survey or a sentence, never an exception, in bounded time and memory.";

    public FigureMargin Margin => FigureMargin.Exact;

    public IEnumerable<Measured> Measure()
    {
        int runs = int.TryParse(Environment.GetEnvironmentVariable("SECONDSHORE_MUTATIONS"), CultureInfo.InvariantCulture, out int set) ? set : 5000;
        int thrown = 0, silent = 0;
        double slowestMs = 0, mostMb = 0;
        foreach (SurveySample sample in SurveySamples.All)
        {
            Stopwatch all = Stopwatch.StartNew();
            int surveys = 0;
            for (int i = 0; i < runs; i++)
            {
                Mutator mutator = new((ulong)i + 1_000_000);
                byte[] bytes = mutator.Damage(sample.Bytes);
                long before = GC.GetAllocatedBytesForCurrentThread();
                long start = Stopwatch.GetTimestamp();
                try
                {
                    SurveyImport import = sample.Read(bytes, mutator, i % 3 == 0);
                    if (import.Survey is not null) surveys++;
                    else if (!import.Problems.Any(p => p.Severity == ProblemSeverity.Error)) silent++;
                }
                catch (Exception e)
                {
                    thrown++;
                    Console.Error.WriteLine($"{sample.Format} seed {i + 1_000_000}: {e.GetType().Name} {e.StackTrace?.Split('\n')[0]}");
                }

                slowestMs = Math.Max(slowestMs, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
                mostMb = Math.Max(mostMb, (GC.GetAllocatedBytesForCurrentThread() - before) / 1e6);
            }

            Console.Error.WriteLine($"{sample.Format,-8} {runs} files, {surveys} still a survey, {all.Elapsed.TotalSeconds:F1} s");
        }

        yield return new Measured("formats-mutations-per-reader", runs, "files", $"{SurveySamples.All.Count} readers");
        yield return new Measured("formats-mutations-thrown", thrown, "files", "0 is the target");
        yield return new Measured("formats-mutations-silent", silent, "files", "neither survey nor sentence; 0 is the target");
        yield return new Measured("formats-mutations-slowest", slowestMs, "ms", "one file", FigureMargin.OfValue(0.5));
        yield return new Measured("formats-mutations-memory", mostMb, "MB", "most allocated for one file", FigureMargin.OfValue(0.1));
    }
}
