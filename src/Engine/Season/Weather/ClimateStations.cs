using System.Globalization;

namespace SecondShore.Engine.Season;

/// <summary>What the air is like at 240 places over the world, as published; <c>climate-stations.csv</c> names the source of each.</summary>
internal static class ClimateStations
{
    private static readonly Lazy<ClimateStation[]> Embedded = new(() => [.. Lines().Select(Parse)]);

    /// <summary>The stations, north to south.</summary>
    public static ClimateStation[] All => Embedded.Value;

    // After the notes comes the header.
    private static IEnumerable<string> Lines()
    {
        using Stream stream = typeof(ClimateStations).Assembly.GetManifestResourceStream("SecondShore.Engine.Season.climate-stations.csv")!;
        using StreamReader reader = new(stream);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).SkipWhile(line => line[0] == '#').Skip(1)];
    }

    private static ClimateStation Parse(string line)
    {
        string[] cells = line.Split(',');
        double[] numbers = [.. cells[..5].Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
        return new ClimateStation(numbers[0], numbers[1], numbers[2], numbers[3], numbers[4]);
    }
}

/// <summary>Normals of one place.</summary>
/// <param name="LatDeg">Latitude, degrees.</param>
/// <param name="LonDeg">Longitude, degrees.</param>
/// <param name="ElevationM">Height over the sea, m.</param>
/// <param name="MeanC">Annual mean of the air, degC.</param>
/// <param name="SwingK">Half the swing of the first wave through the monthly means, K.</param>
internal readonly record struct ClimateStation(double LatDeg, double LonDeg, double ElevationM, double MeanC, double SwingK);
