using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using static SecondShore.TestKit.Synthetic.Odd.OddPlaces;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Tables laid out awkwardly, and tables that are no survey at all.</summary>
internal static class OddLayouts
{
    public static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> All =>
    [
        ("a row of units under the header", r => new OddTable(Germany(r)) { Instead = (i, row) => i == 0 ? "deg,deg,m\n" + row : null }.Degrees().Depth("depth").File()),
        ("a row of feet under the header", r => new OddTable(Wisconsin(r)) { Instead = (i, row) => i == 0 ? "deg,deg,ft\n" + row : null }.Degrees().Depth("depth", 1 / 0.3048, 1).File()),
        ("lines of words before", r => OddTable.Of(Wisconsin(r), " ", t => t.Bare().Say("Survey of the lake in May", "3 transects", "longitude latitude depth in feet").LonLat().Depth("", 1 / 0.3048, 1).File())),
        ("remarks with a hash", r => new OddTable(Sweden(r), "\t") { Before = { "# made by hand", "# units: metres", "# datum: WGS84" } }.Degrees().Depth("depth").File()),
        ("a header that is a remark", r => OddTable.Of(Sweden(r), " ", t => t.Bare().Say("#lon lat depth").LonLat().Depth("").File())),
        ("the header again in the middle", r => new OddTable(Germany(r)) { Instead = (i, row) => i % 90 == 50 ? "lat,lon,depth_m\n" + row : null }.Degrees().Depth().File()),
        ("a sum at the end", r => new OddTable(Germany(r)) { After = { "", "mean,,4.21", "END" } }.Degrees().Depth().File()),
        ("UTF-16", r => OddTable.Of(Poland(r), "\t", t => t.Degrees().Depth("głębokość [m]").File(text => [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)]))),
        ("Windows-1252", r => new OddTable(Germany(r), ";").Degrees("Breite", "Länge").Depth("Tiefe über Grund").File(Encoding.Latin1.GetBytes)),
        ("bare carriage returns", r => new OddTable(Germany(r)) { LineEnd = "\r" }.Degrees().Depth().File()),
        ("every cell in quotes", r => OddTable.Of(Wisconsin(r), t => t.Column("\"lat\"", i => Q(t.At(i).LatDeg, 6)).Column("\"lon\"", i => Q(t.At(i).LonDeg, 6)).Column("\"Depth (ft)\"", i => Q(t.DepthM(i) / 0.3048, 1)).File())),
        ("a separator at the end of each line", r => new OddTable(Germany(r), ";").Degrees().Depth().Column("", _ => "").File()),
        ("blanks in columns of one width", r => OddTable.Of(Germany(r), "", t => t.Bare().Column("", i => F(t.At(i).LonDeg, 14)).Column("", i => F(t.At(i).LatDeg, 14)).Column("", i => F(t.DepthM(i), 12, 2)).File())),
        ("thousands parted by blanks", r => OddTable.Of(Poland(r), ";", t => Thousands(t))),
        ("numbers with an exponent", r => OddTable.Of(Sweden(r), t => t.Column("lon", i => E(t.At(i).LonDeg)).Column("lat", i => E(t.At(i).LatDeg)).Column("depth", i => E(t.DepthM(i))).File())),
        ("time as text with commas", r => OddTable.Of(Germany(r), t => t.Column("time", i => $"\"May 4, 2021 {10 + (i / 3600)}:{i / 60 % 60:00}\"").Degrees().Depth().File())),
        ("time of a spreadsheet", r => OddTable.Of(Wisconsin(r), t => t.Number("Time", i => 44320.4 + (i * 2e-5), 6).Degrees("Latitude", "Longitude").Depth("Depth (ft)", 1 / 0.3048, 1).File())),
        ("two lines of header", r => new OddTable(Germany(r)) { Before = { "Position,,Water" } }.Degrees().Depth().File()),
        ("names of columns twice", r => OddTable.Of(Germany(r), t => t.Degrees().Depth("depth").Number("depth", i => t.DepthM(i) * 0.4, 2).File() with { MustAsk = true })),
        ("a lake's name in each row", r => OddTable.Of(Wisconsin(r), t => t.Column("lake", _ => "North Pond").Column("date", _ => "5/14/2019").Degrees().Depth("depth_ft", 1 / 0.3048, 1).File())),
        ("two lakes in one table", r => TwoLakes(r)),
        ("a list of lakes", r => LakeList(r)),
        ("casts of a thermometer", r => Casts(r)),
        ("a transect without places", r => OddTable.Of(Germany(r), t => t.Number("distance_m", i => i * 3.5, 1).Depth().File("transect.csv") with { Lake = null })),
        ("a track without depths", r => OddTable.Of(Germany(r), t => t.Degrees().Number("speed_kn", i => 2 + (i % 7 * 0.2), 1).Number("heading", i => i * 3 % 360, 0).File("track.csv") with { Lake = null })),
        ("a track with heights of the receiver", r => OddTable.Of(Germany(r), t => t.Degrees().Number("altitude", i => 64.2 + (i % 5 * 0.04), 2).File("track.csv") with { Lake = null })),
        ("counters only", r => OddTable.Of(Germany(r), t => t.Degrees().Number("a", i => i + 1, 0).Number("b", i => 1.6e9 + i, 0).File("log.csv") with { Lake = null })),
        ("a mask as points", r => OddTable.Of(Germany(r), t => t.Degrees().Number("water", i => i % 3 == 0 ? 1 : 0, 0).File("points.csv") with { Lake = null })),
        ("temperatures along a track", r => OddTable.Of(Germany(r), t => t.Degrees().Number("temp", i => 14 + (Math.Sin(i * 0.02) * 2), 2).File("points.csv") with { Lake = null })),
        ("levels of a gauge", _ => new OddSurvey("gauge.csv", "time,level_m\n" + string.Concat(Enumerable.Range(0, 300).Select(i => string.Create(CultureInfo.InvariantCulture, $"2021-05-{1 + (i / 24):00}T{i % 24:00}:00,{3.2 + (i % 9 * 0.01):F2}\n"))), null)),
        ("a table of the survey's grid", r => Cross(r)),
    ];

    private static string Q(double value, int decimals) => "\"" + value.ToString("F" + decimals, CultureInfo.InvariantCulture) + "\"";

    private static string E(double value) => value.ToString("0.00000000E+000", CultureInfo.InvariantCulture);

    private static string F(double value, int width, int decimals = 6) => value.ToString("F" + decimals, CultureInfo.InvariantCulture).PadLeft(width);

    private static OddSurvey Thousands(OddTable t)
    {
        Formats.Coordinates.CoordinateSystem crs = Formats.Coordinates.CoordinateSystems.FromEpsg(2180, out _)!;
        return t.Column("X", i => Spaced(crs.FromGeo(t.At(i)).X)).Column("Y", i => Spaced(crs.FromGeo(t.At(i)).Y)).Depth("glebokosc").File() with { MayBeRefused = true };

        static string Spaced(double value) => value.ToString("#,##0.00", CultureInfo.InvariantCulture).Replace(',', ' ');
    }

    private static OddSurvey TwoLakes(SeededRandom r)
    {
        OddLake first = Wisconsin(r), second = new(r, first.Middle.LatDeg + 1.1, first.Middle.LonDeg);
        string one = OddTable.Of(first, t => t.Column("lake", _ => "A").Degrees().Depth().File()) is { } a ? Encoding.UTF8.GetString(a.Bytes) : "";
        OddTable other = new(second) { HasHeader = false };
        return new OddSurvey("soundings.csv", one + other.Column("", _ => "B").Degrees().Depth(), first) { MustAsk = true, Others = [second] };
    }

    // One row a lake: no survey of any.
    private static OddSurvey LakeList(SeededRandom r)
    {
        StringBuilder text = new("lake_name,lat,lon,max_depth_ft,area_acres\n");
        for (int i = 0; i < 220; i++)
            text.Append(CultureInfo.InvariantCulture, $"Lake {i},{r.NextDouble(43, 46.8):F5},{r.NextDouble(-92, -88):F5},{Math.Round(r.NextDouble(4, 90)):F0},{r.NextDouble(10, 900):F1}\n");
        return new OddSurvey("lakes.csv", text.ToString(), null);
    }

    // Depths of a thermometer, at one place or at three.
    private static OddSurvey Casts(SeededRandom r)
    {
        StringBuilder text = new("station,lat,lon,depth_m,temp_c\n");
        for (int s = 0; s < 3; s++)
            for (int d = 0; d < 24; d++)
                text.Append(CultureInfo.InvariantCulture, $"S{s},{53.2 + (s * 0.004):F5},{12.9 + (s * 0.006):F5},{d * 0.5:F1},{22 - (d * 0.5) - r.NextDouble():F1}\n");
        return new OddSurvey("casts.csv", text.ToString(), null);
    }

    // Eastings across, northings down, depths between.
    private static OddSurvey Cross(SeededRandom r)
    {
        OddLake lake = Germany(r);
        Formats.Coordinates.CoordinateSystem crs = Formats.Coordinates.CoordinateSystems.FromEpsg(25833, out _)!;
        (double x, double y) = crs.FromGeo(lake.Middle);
        StringBuilder text = new("north\\east");
        for (int c = -20; c <= 20; c++) text.Append(CultureInfo.InvariantCulture, $";{x + (c * 40):F0}");
        for (int row = 20; row >= -20; row--)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{y + (row * 40):F0}");
            for (int c = -20; c <= 20; c++)
            {
                crs.TryToGeo(x + (c * 40), y + (row * 40), out double lat, out double lon);
                double d = lake.DepthM(new GeoPoint(lat, lon));
                text.Append(d > 0 ? string.Create(CultureInfo.InvariantCulture, $";{d:F2}") : ";");
            }
        }

        return new OddSurvey("grid.csv", text.ToString(), null);
    }
}
