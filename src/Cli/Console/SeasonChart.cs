using System.Globalization;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Cli.Console;

/// <summary>The thermocline's walk through the season in characters: dates to the right, depth downwards.</summary>
internal static class SeasonChart
{
    private const int MaxColumns = 60;

    /// <summary>Lines of the chart; nothing where no day has a thermocline.</summary>
    public static IEnumerable<string> Draw(IReadOnlyList<OutlookDay> days, DateOnly today, UnitSystem units, int rows = 10)
    {
        int first = FirstStratified(days);
        if (first < 0) yield break;
        int stride = Math.Max(1, (int)Math.Ceiling((days.Count - first) / (double)MaxColumns));
        List<OutlookDay> shown = [.. days.Skip(first).Where((_, i) => i % stride == 0)];
        double deepestM = shown.Max(d => d.ThermoclineM?.Spread.P90 ?? 0);
        if (deepestM <= 0) yield break;
        char[][] cells = [.. Enumerable.Range(0, rows + 1).Select(_ => Enumerable.Repeat(' ', shown.Count).ToArray())];
        for (int x = 0; x < shown.Count; x++)
        {
            if (shown[x].ThermoclineM is not { } law || shown[x].ChanceStratified < 0.5) continue;
            Spread spread = law.Spread;
            for (int y = Row(spread.P10); y <= Row(spread.P90); y++) cells[y][x] = '·';
            cells[Row(spread.P50)][x] = 'o';
        }

        int todayColumn = shown.FindLastIndex(d => d.Date <= today);
        for (int y = 0; y <= rows; y++)
        {
            if (todayColumn >= 0 && cells[y][todayColumn] == ' ') cells[y][todayColumn] = '|';
            yield return $"  {units.DepthNumber(deepestM * y / rows),4}  {new string(cells[y]).TrimEnd()}";
        }

        yield return "        " + DateAxis(shown);
        if (todayColumn >= 0) yield return "        " + new string(' ', todayColumn) + "^ now";

        int Row(double depthM) => (int)Math.Clamp(Math.Round(depthM / deepestM * rows), 0, rows);
    }

    private static int FirstStratified(IReadOnlyList<OutlookDay> days)
    {
        for (int i = 0; i < days.Count; i++)
            if (days[i].ThermoclineM is not null && days[i].ChanceStratified >= 0.5) return i;
        return -1;
    }

    private static string DateAxis(List<OutlookDay> shown)
    {
        char[] axis = [.. Enumerable.Repeat(' ', shown.Count + 8)];
        int free = 0;
        for (int x = 0; x < shown.Count; x++)
        {
            if (x > 0 && shown[x].Date.Month == shown[x - 1].Date.Month) continue;
            string label = shown[x].Date.ToString("d MMM", CultureInfo.InvariantCulture);
            if (x < free) continue;
            label.CopyTo(0, axis, x, label.Length);
            free = x + label.Length + 1;
        }

        return new string(axis).TrimEnd();
    }
}
