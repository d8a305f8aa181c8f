using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Cli.Console;

/// <summary>The temperature profile drawn in characters: depth downwards, doubt as dots, median as a circle.</summary>
internal static class ProfileChart
{
    private const int Width = 46;

    /// <summary>Lines of the chart; at most <paramref name="maxRows"/> depths.</summary>
    public static IEnumerable<string> Draw(IReadOnlyList<ProfilePoint> profile, Spread? thermoclineM, UnitSystem units, int maxRows = 18)
    {
        if (profile.Count < 2) yield break;
        double low = profile.Min(p => p.TempC.P10), high = Math.Max(low + 1, profile.Max(p => p.TempC.P90));
        string left = units.TemperatureFrom(low).ToString("0", CultureInfo.InvariantCulture);
        string right = units.TemperatureFrom(high).ToString("0", CultureInfo.InvariantCulture) + " " + units.TemperatureUnit;
        yield return $"  {units.DepthUnit,4}  {left}{new string(' ', Math.Max(1, Width - left.Length - right.Length))}{right}";
        double bottomM = profile[^1].DepthM;
        int rows = Math.Min(maxRows, profile.Count);
        double stepM = bottomM / (rows - 1);
        for (int row = 0; row < rows; row++)
        {
            double depthM = row * stepM;
            ProfilePoint point = profile.MinBy(p => Math.Abs(p.DepthM - depthM))!;
            StringBuilder line = new(new string(' ', Width));
            int p10 = Column(point.TempC.P10), p50 = Column(point.TempC.P50), p90 = Column(point.TempC.P90);
            for (int x = p10; x <= p90; x++) line[x] = '·';
            line[p50] = 'o';
            string mark = thermoclineM is { } t && Math.Abs(t.P50 - depthM) <= stepM / 2
                ? $"  <- thermocline {units.DepthNumber(t.P50)} ({units.DepthNumber(t.P10)} to {units.DepthNumber(t.P90)}) {units.DepthUnit}"
                : "";
            string drawn = line.ToString().TrimEnd(), gap = mark.Length > 0 ? new string(' ', Width - drawn.Length) : "";
            yield return $"  {units.DepthNumber(depthM),4}  {drawn}{gap}{mark}".TrimEnd();
        }

        int Column(double tempC) => (int)Math.Clamp(Math.Round((tempC - low) / (high - low) * (Width - 1)), 0, Width - 1);
    }
}
