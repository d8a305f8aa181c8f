using System.Globalization;
using SecondShore.TestKit;

namespace SecondShore.Bench;

/// <summary>Soundings of the measured surveys as plane points, m. A few lines a file: the figures must not hang on the importers.</summary>
internal static class BasinSurveyFiles
{
    public sealed record Points(string Name, List<double> XM, List<double> YM, List<double> DepthM);

    public static IEnumerable<Points> All()
    {
        if (Degrees("ela-lake-227-transects", "227_LA.csv", c => (Number(c[0]), Number(c[1]), -Number(c[2])), 1, ',', (lat, _) => lat > 49.68) is { } ela) yield return ela;
        if (Corpus() is { } corpus) yield return corpus;
        if (Nmea() is { } nmea) yield return nmea;
        if (Degrees("harbour-depth-logger", "grohn26082021.csv", c => (Number(c[3]), Number(c[4]), Number(c[2])), 1, ',', (_, _) => true) is { } harbour) yield return harbour;
        if (Csv("prettyboy-reservoir-soundings", "PrettyBoy.csv", c => (Number(c[0]), Number(c[1]), Number(c[2]) * 0.3048), 1, ',') is { } pretty) yield return pretty;
    }

    private static Points? Corpus()
    {
        List<(double, double, double)> all = [];
        foreach (string name in (string[])["12030201.pic", "12030202.pic", "12030203.pic", "12030204.pic", "12030208.pic"])
        {
            if (SharedData.Find("surveys", "corpus-christi-reservoir", "current-bottom", name) is not { } path) return null;
            foreach (string line in File.ReadLines(path).Skip(8))
            {
                string[] c = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
                if (c.Length >= 3 && Number(c[1]) is > 28 and < 28.2) all.Add((Number(c[1]), Number(c[0]), Number(c[2]) * 0.3048));
            }
        }

        return Plane("corpus-christi-reservoir", all);
    }

    private static Points? Nmea()
    {
        if (SharedData.Find("surveys", "nmea-lake-depth-survey", "depths.nmea") is not { } path) return null;
        List<(double, double, double)> all = [];
        (double Lat, double Lon) at = (double.NaN, double.NaN);
        foreach (string line in File.ReadLines(path))
        {
            string[] c = line.Split(',', '*');
            if (line.StartsWith("$GPGGA", StringComparison.Ordinal) && c[2].Length > 4)
                at = ((Number(c[2][..2]) + (Number(c[2][2..]) / 60)) * (c[3] == "S" ? -1 : 1), (Number(c[4][..3]) + (Number(c[4][3..]) / 60)) * (c[5] == "W" ? -1 : 1));
            else if (line.Contains("DPT", StringComparison.Ordinal) && Number(c[1]) > 0 && !double.IsNaN(at.Lat)) all.Add((at.Lat, at.Lon, Number(c[1])));
        }

        return Plane("nmea-lake-depth-survey", all);
    }

    private static Points? Csv(string folder, string file, Func<string[], (double, double, double)> read, int skip, char separator)
    {
        if (SharedData.Find("surveys", folder, file) is not { } path) return null;
        Points points = new(folder, [], [], []);
        foreach (string line in File.ReadLines(path).Skip(skip))
        {
            (double x, double y, double depth) = read(line.Split(separator));
            if (double.IsNaN(x + y + depth)) continue;
            points.XM.Add(x);
            points.YM.Add(y);
            points.DepthM.Add(depth);
        }

        return points;
    }

    private static Points? Degrees(
        string folder, string file, Func<string[], (double, double, double)> read, int skip, char separator, Func<double, double, bool> keep)
    {
        if (Csv(folder, file, read, skip, separator) is not { } raw) return null;
        List<(double, double, double)> all = [];
        for (int i = 0; i < raw.XM.Count; i++)
            if (keep(raw.XM[i], raw.YM[i])) all.Add((raw.XM[i], raw.YM[i], raw.DepthM[i]));
        return Plane(folder, all);
    }

    private static Points Plane(string name, List<(double Lat, double Lon, double DepthM)> all)
    {
        Engine.Core.Geo.LocalProjection plane = new(new(all[all.Count / 2].Lat, all[all.Count / 2].Lon));
        Points points = new(name, [], [], []);
        foreach ((double lat, double lon, double depthM) in all)
        {
            var p = plane.ToPlane(lat, lon);
            points.XM.Add(p.XM);
            points.YM.Add(p.YM);
            points.DepthM.Add(depthM);
        }

        return points;
    }

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;
}
