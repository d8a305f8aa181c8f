using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Formats.Coordinates;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Writes soundings of a lake as rows of text, column by column.</summary>
internal sealed class OddTable(OddLake lake, string separator = ",")
{
    private readonly List<(string Header, Func<int, string> Cell)> _columns = [];

    public List<string> Before { get; } = [];

    public List<string> After { get; } = [];

    /// <summary>Text to put in place of a row, by its number; null leaves the row.</summary>
    public Func<int, string, string?>? Instead { get; set; }

    public bool HasHeader { get; set; } = true;

    public string LineEnd { get; set; } = "\n";

    /// <summary>A file of a table filled by <paramref name="fill"/>.</summary>
    public static OddSurvey Of(OddLake lake, Func<OddTable, OddSurvey> fill) => fill(new OddTable(lake));

    public static OddSurvey Of(OddLake lake, string separator, Func<OddTable, OddSurvey> fill) => fill(new OddTable(lake, separator));

    /// <summary>Longitude and latitude without names.</summary>
    public OddTable LonLat() => Number("", i => At(i).LonDeg, 6).Number("", i => At(i).LatDeg, 6);

    /// <summary>Lines before the table.</summary>
    public OddTable Say(params string[] lines)
    {
        Before.AddRange(lines);
        return this;
    }

    /// <summary>Without a header.</summary>
    public OddTable Bare()
    {
        HasHeader = false;
        return this;
    }

    public OddLake Lake => lake;

    public double DepthM(int i) => lake.DepthM(lake.Places[i]);

    public GeoPoint At(int i) => lake.Places[i];

    public OddTable Column(string header, Func<int, string> cell)
    {
        _columns.Add((header, cell));
        return this;
    }

    public OddTable Number(string header, Func<int, double> value, int decimals) =>
        Column(header, i => value(i).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));

    public OddTable Degrees(string lat = "lat", string lon = "lon", int decimals = 6) => Number(lat, i => At(i).LatDeg, decimals).Number(lon, i => At(i).LonDeg, decimals);

    public OddTable Plane(int epsg, string east = "easting", string north = "northing", double addEast = 0, int decimals = 2)
    {
        CoordinateSystem crs = CoordinateSystems.FromEpsg(epsg, out _)!;
        return Number(east, i => crs.FromGeo(At(i)).X + addEast, decimals).Number(north, i => crs.FromGeo(At(i)).Y, decimals);
    }

    public OddTable Depth(string header = "depth_m", double perM = 1, int decimals = 2) => Number(header, i => DepthM(i) * perM, decimals);

    public override string ToString()
    {
        StringBuilder text = new();
        foreach (string line in Before) text.Append(line).Append(LineEnd);
        if (HasHeader) text.AppendJoin(separator, _columns.Select(c => c.Header)).Append(LineEnd);
        for (int i = 0; i < lake.Places.Count; i++)
        {
            string row = string.Join(separator, _columns.Select(c => c.Cell(i)));
            text.Append(Instead?.Invoke(i, row) ?? row).Append(LineEnd);
        }

        foreach (string line in After) text.Append(line).Append(LineEnd);
        return text.ToString();
    }

    public OddSurvey File(string name = "notes.txt") => new(name, ToString(), lake);

    public OddSurvey File(Func<string, byte[]> encode) => new("notes.txt", encode(ToString()), lake);
}

/// <summary>Places where lakes are, by what bears on how their files are written.</summary>
internal static class OddPlaces
{
    public static OddLake Wisconsin(SeededRandom random) => new(random, 45.9, -89.6);

    public static OddLake Ontario(SeededRandom random) => new(random, 46.2, -79.4);

    public static OddLake Germany(SeededRandom random) => new(random, 53.2, 12.9);

    public static OddLake Sweden(SeededRandom random) => new(random, 58.6, 14.6);

    public static OddLake Finland(SeededRandom random) => new(random, 62.1, 26.2);

    public static OddLake Poland(SeededRandom random) => new(random, 53.9, 21.6);

    public static OddLake NewZealand(SeededRandom random) => new(random, -44.2, 170.1);

    public static OddLake Spain(SeededRandom random) => new(random, 41.3, -2.4);

    public static OddLake Brazil(SeededRandom random) => new(random, -20.7, -46.2);

    public static OddLake Netherlands(SeededRandom random) => new(random, 52.4, 5.9);

    public static OddLake Any(SeededRandom random) => random.NextInt(8) switch
    {
        0 => Wisconsin(random),
        1 => Ontario(random),
        2 => Germany(random),
        3 => Sweden(random),
        4 => Poland(random),
        5 => NewZealand(random),
        6 => Spain(random),
        _ => Brazil(random),
    };
}
