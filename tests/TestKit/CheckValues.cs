using System.Globalization;

namespace SecondShore.TestKit;

/// <summary>Check values of the formulas (tests/data/checkvalues.csv).</summary>
public static class CheckValues
{
    /// <summary>Expected value and tolerance by id.</summary>
    public static IReadOnlyDictionary<string, (double Expected, double Tolerance)> All { get; } = File.ReadLines(SharedData.Copy("checkvalues.csv")).Skip(1)
        .Select(line => line.Split(',')).ToDictionary(cells => cells[0], cells => (Number(cells[1]), Number(cells[2])));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
