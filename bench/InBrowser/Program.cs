using System.Diagnostics;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using SecondShore.Bench;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;
using SecondShore.Engine.Tests.Day;

[assembly: SupportedOSPlatform("browser")]

namespace SecondShore.InBrowser;

/// <summary>What the page of the bench calls.</summary>
internal static partial class Program
{
    private static ColumnYear? _year;

    private static void Main() { }

    /// <summary>Milliseconds of one column-year.</summary>
    [JSExport]
    internal static double ColumnYearMs() => (_year ??= new ColumnYear()).Run().Ms;

    /// <summary>Milliseconds of a random day's plan.</summary>
    [JSExport]
    internal static double PlanMs(int stops, int day)
    {
        PlanProblem problem = RandomDays.Make(new SeededRandom(60, (ulong)((stops * 100) + day)), stops, 120, 300);
        long start = Stopwatch.GetTimestamp();
        SearchPlanner.Solve(problem, SearchPlanner.UsualRounds, SearchPlanner.UsualPriceRounds, 1);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
}
