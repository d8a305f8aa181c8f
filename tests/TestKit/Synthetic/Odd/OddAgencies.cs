using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Numerics;
using static SecondShore.TestKit.Synthetic.Odd.OddPlaces;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Tables as agencies, universities and self-built boats hand them out: codes, marks, mixed measures, misnamed columns.</summary>
internal static class OddAgencies
{
    private const double Foot = 0.3048;

    public static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> All => [.. Measures, .. Codes, .. Places, .. Texts];

    private static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> Measures =>
    [
        ("metres and feet by a column of units", r => OddTable.Of(Ontario(r), t => t.Degrees()
            .Number("depth", i => i % 2 == 0 ? t.DepthM(i) : t.DepthM(i) / Foot, 2).Column("unit", i => i % 2 == 0 ? "m" : "ft").File()
            with { MayBeRefused = true })),
        ("feet by a column of units", r => OddTable.Of(Ontario(r), t => t.Degrees()
            .Depth("depth", 1 / Foot, 1).Column("unit", _ => "ft").File())),
        ("feet by a column of units in words", r => OddTable.Of(Ontario(r), ";", t => t.Degrees()
            .Depth("value", 1 / Foot, 1).Column("depth unit", _ => "feet").File())),
        ("tenths of a metre in brackets", r => new OddTable(Netherlands(r), ";").Degrees().Depth("Diepte (0.1 m)", 10, 0).File()),
        ("decimetres by a fraction", r => new OddTable(Germany(r), ";").Degrees().Depth("Tiefe [1/10 m]", 10, 0).File()),
        ("hundredths in words", r => new OddTable(Sweden(r), ";").Degrees().Depth("depth x 100 (m)", 100, 0).File()),
        ("feet by a mark", r => new OddTable(Ontario(r)).Degrees().Depth("Depth (')", 1 / Foot, 1).File()),
        ("feet by a mark alone", r => new OddTable(Ontario(r)).Degrees().Depth("Depth'", 1 / Foot, 1).File()),
        ("feet told before, beside metres of the grid", r => OddTable.Of(Ontario(r), t => t
            .Say("Positions in metres (UTM 17 NAD83)", "Depths in feet").Plane(26917).Depth("Depth", 1 / Foot, 1).File())),
        ("feet told at the end", r => new OddTable(Ontario(r)) { After = { "", "Depths are in feet below full supply level" } }
            .Degrees().Depth("Depth", 1 / Foot, 1).File()),
        ("centimetres called metres", r => new OddTable(Sweden(r)).Degrees().Depth("depth_m", 100, 0).File()
            with { MustAsk = true, MayBeRefused = true }),
        ("heights called depth", r => OddTable.Of(Germany(r), t => t.Degrees()
            .Number("Depth", i => t.Lake.SurfaceM - t.DepthM(i), 2).File() with { MustAsk = true, MayBeRefused = true })),
        ("heights called depth in metres", r => OddTable.Of(Germany(r), t => t.Plane(25833)
            .Number("depth_m", i => t.Lake.SurfaceM - t.DepthM(i), 2).File() with { MustAsk = true, MayBeRefused = true })),
        ("depths called elevation", r => new OddTable(Sweden(r)).Degrees().Depth("Elevation").File()
            with { MustAsk = true, MayBeRefused = true }),
        ("the sign turned in a third of the rows", r => OddTable.Of(Germany(r), t => t.Degrees()
            .Number("depth", i => i % 3 == 1 ? -t.DepthM(i) : t.DepthM(i), 2).File() with { MustAsk = true, MayBeRefused = true })),
        ("a gauge's datum, heights about 0", r => OddTable.Of(Poland(r), t => t.Degrees()
            .Number("H_rel", i => 1.2 - t.DepthM(i), 2).File() with { ToleranceM = 1.5 })),
        ("surface and bed heights", r => OddTable.Of(Germany(r), t => t.Degrees()
            .Number("water_surface_elev", i => t.Lake.SurfaceM + (i % 5 * 0.01), 2)
            .Number("bed_elev", i => t.Lake.SurfaceM - t.DepthM(i), 2).File())),
        ("receiver's height and depth", r => OddTable.Of(Germany(r), t => t.Degrees()
            .Number("height", i => t.Lake.SurfaceM + 40 + (i % 7 * 0.02), 2).Depth("depth").File())),
        ("ice, snow and water", r => OddTable.Of(Finland(r), t => t.Degrees().Number("snow_depth_cm", i => 8 + (i % 6), 0)
            .Number("ice_thickness_cm", i => 31 + (i % 5), 0).Depth("water_depth_m").File())),
        ("depth of a towed probe before the bottom's", r => OddTable.Of(Sweden(r), t => t.Degrees()
            .Number("probe_depth", i => 2 + Math.Sin(i * 0.05), 2).Depth("bottom_depth").File())),
        ("depth where light ends", r => OddTable.Of(Sweden(r), t => t.Degrees()
            .Number("secchi_depth", i => 3 + (i % 4 * 0.2), 1).Depth("depth").File())),
        ("two frequencies", r => OddTable.Of(Sweden(r), t => t.Degrees().Depth("depth_200kHz")
            .Number("depth_50kHz", i => t.DepthM(i) + (i % 5 * 0.03), 2).File())),
    ];

    private static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> Codes =>
    [
        ("-1 for no bottom", r => Coded(Germany(r), "-1")),
        ("-1.00 for no bottom", r => Coded(Sweden(r), "-1.00")),
        ("-99 for no bottom", r => Coded(Germany(r), "-99")),
        ("99.9 for no bottom", r => Coded(Poland(r), "99.9")),
        ("999.9 for no bottom", r => Coded(Germany(r), "999.9")),
        ("120.0 for no bottom", r => Coded(Germany(r), "120.0")),
        ("1e20 for no bottom", r => Coded(Germany(r), "1e+20")),
        ("-9999.00 for no bottom", r => Coded(Wisconsin(r), "-9999.00")),
        ("nothing in words", r => Coded(Germany(r), "no bottom")),
        ("a mark behind numbers", r => new OddTable(Germany(r)) { Instead = (i, row) => i % 17 == 3 ? row + "*" : null }.Degrees().Depth("depth").File()),
        ("a flag of quality beside", r => OddTable.Of(Sweden(r), t => t.Degrees().Depth("depth").Number("quality", i => 1 + (i % 3), 0).File())),
        ("a flag as a bare number before", r => OddTable.Of(Sweden(r), t => t.Number("q", i => 1 + (i % 3), 0).Degrees().Depth("depth").File())),
        ("percent before remarks", r => new OddTable(Sweden(r), "\t") { Before = { "% by hand", "% WGS84" } }.Degrees().Depth("depth").File()),
        ("slashes before remarks", r => new OddTable(Sweden(r)) { Before = { "// by hand, 2 days", "// WGS84" } }.Degrees().Depth("depth").File()),
        ("bars between", r => OddTable.Of(Germany(r), "|", t => t.Degrees().Depth("depth").File())),
        ("bars and blanks between", r => OddTable.Of(Germany(r), " | ", t => t.Degrees().Depth("depth").File())),
        ("three lines of header", r => new OddTable(Germany(r)) { Before = { "Lake survey,,", "Lat,Lon,Depth" }, Instead = (i, row) => i == 0 ? "[deg],[deg],[m]\n" + row : null }
            .Degrees("GPS", "GPS").Depth("Echo").File()),
        ("colours of a cloud", r => OddTable.Of(Germany(r), " ", t => t.Bare().Plane(25833, decimals: 3)
            .Number("", i => t.Lake.SurfaceM - t.DepthM(i), 3).Number("", i => 90 + (i % 40), 0).Number("", i => 80 + (i % 30), 0).Number("", i => 60 + (i % 20), 0).File())),
    ];

    private static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> Places =>
    [
        ("lengths of a total station", r => OddTable.Of(Germany(r), t => Local(t, "x", "y"))),
        ("lengths of a total station, east and north", r => OddTable.Of(Germany(r), t => Local(t, "east", "north"))),
        ("the minus of west lost, metres", r => OddTable.Of(Wisconsin(r), t => t.Number("lat", i => t.At(i).LatDeg, 6)
            .Number("lon", i => -t.At(i).LonDeg, 6).Depth().File() with { MustAsk = true })),
        ("longitude west by name", r => OddTable.Of(Wisconsin(r), t => t.Number("Lat_N", i => t.At(i).LatDeg, 6)
            .Number("Long_W", i => -t.At(i).LonDeg, 6).Depth().File())),
        ("both exchanged, English words", r => OddTable.Of(Poland(r), t => t.Number("lat", i => t.At(i).LonDeg, 6)
            .Number("lon", i => t.At(i).LatDeg, 6).Depth("depth_m").File() with { MustAsk = true })),
        ("both exchanged, no words", r => OddTable.Of(Spain(r), t => t.Bare().Number("", i => t.At(i).LatDeg, 6)
            .Number("", i => t.At(i).LonDeg, 6).Depth("").File())),
        ("degrees, minutes and seconds in one number", r => OddTable.Of(Germany(r), t => t.Number("lat", i => Packed(t.At(i).LatDeg), 2)
            .Number("lon", i => Packed(t.At(i).LonDeg), 2).Depth().File() with { MayBeRefused = true })),
        ("the zone in the easting's cell", r => OddTable.Of(Ontario(r), t => Zoned(t))),
        ("kilometres of a grid", r => OddTable.Of(Germany(r), t => Kilometres(t))),
        ("two ponds with their names", r => TwoPonds(r)),
        ("positions to a hundredth", r => new OddTable(Germany(r)).Degrees(decimals: 2).Depth().File() with { Lake = null }),
        ("epoch and degrees without words", r => OddTable.Of(Germany(r), t => t.Bare().Number("", i => 1.62e9 + i, 0).Degrees("", "").Depth("").File())),
        ("a spreadsheet's day without words", r => OddTable.Of(Sweden(r), t => t.Bare().Number("", i => 44320.4 + (i * 2e-5), 6).LonLat().Depth("").File())),
        ("distance to the shore beside", r => OddTable.Of(Germany(r), t => t.Degrees().Number("shore_m", i => 8 * t.DepthM(i) + (i % 3), 1).Depth("depth").File())),
    ];

    private static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> Texts =>
    [
        ("UTF-16, the other order", r => OddTable.Of(Poland(r), "\t", t => t.Degrees().Depth("depth [m]")
            .File(text => [.. Encoding.BigEndianUnicode.GetPreamble(), .. Encoding.BigEndianUnicode.GetBytes(text)]))),
        ("UTF-16 without its mark", r => OddTable.Of(Poland(r), "\t", t => t.Degrees().Depth("depth [m]").File(Encoding.Unicode.GetBytes)
            with { MayBeRefused = true })),
        ("UTF-8 with its mark", r => OddTable.Of(Germany(r), ";", t => t.Degrees().Depth("Tiefe").File(text => [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(text)]))),
        ("German thousands", r => OddTable.Of(Germany(r), ";", t => Grouped(t, '.', ',', false))),
        ("English thousands in quotes", r => OddTable.Of(Ontario(r), t => Grouped(t, ',', '.', true))),
        ("Swiss thousands", r => OddTable.Of(Germany(r), ";", t => Grouped(t, '\'', '.', false))),
        ("decimal commas between commas", r => OddTable.Of(Germany(r), t => t.Column("lat", i => Comma(t.At(i).LatDeg, 6))
            .Column("lon", i => Comma(t.At(i).LonDeg, 6)).Column("depth", i => Comma(t.DepthM(i), 2)).File() with { MayBeRefused = true })),
        ("a dash for minus", r => OddTable.Of(Sweden(r), ";", t => t.Degrees().Column("depth", i => "\u2212" + t.DepthM(i).ToString("F2", CultureInfo.InvariantCulture)).File()
            with { MayBeRefused = true })),
        ("blanks of no break", r => OddTable.Of(Germany(r), ";", t => t.Column("lat\u00A0", i => t.At(i).LatDeg.ToString("F6", CultureInfo.InvariantCulture) + "\u00A0")
            .Number("lon", i => t.At(i).LonDeg, 6).Depth("depth\u00A0(m)").File())),
        ("NMEA sentences behind a clock", r => Clocked(r)),
        ("a page of the web", _ => new OddSurvey("survey.html", "<!DOCTYPE html><html><body><table><tr><td>53.1</td><td>12.9</td><td>4.2</td></tr></table></body></html>", null)),
        ("a spreadsheet's archive", _ => new OddSurvey("survey.xlsx", [0x50, 0x4B, 3, 4, 20, 0, 6, 0, 8, 0, 0, 0, 33, 0, 1, 2, 3, 4], null)),
        ("a database of shapes", _ => new OddSurvey("lake.gpkg", [.. "SQLite format 3\0"u8, .. new byte[400]], null)),
        ("a list in JSON", r => OddTable.Of(Germany(r), t => new OddSurvey("depths.json", "[" + string.Join(",\n", Enumerable.Range(0, 60).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"{{\"lat\":{t.At(i).LatDeg:F6},\"lon\":{t.At(i).LonDeg:F6},\"depth\":{t.DepthM(i):F2}}}"))) + "]", t.Lake) with { MayBeRefused = true })),
    ];

    private static OddSurvey Coded(OddLake lake, string code) =>
        new OddTable(lake) { Instead = (i, row) => i % 17 == 3 ? row[..(row.LastIndexOf(',') + 1)] + code : null }.Degrees().Depth("depth").File();

    private static OddSurvey Local(OddTable t, string x, string y)
    {
        Engine.Core.Geo.LocalProjection plane = new(t.At(0));
        return t.Number(x, i => 2000 + plane.ToPlane(t.At(i).LatDeg, t.At(i).LonDeg).XM, 3)
            .Number(y, i => 5000 + plane.ToPlane(t.At(i).LatDeg, t.At(i).LonDeg).YM, 3).Depth("z", -1).File() with
        { Lake = null };
    }

    private static OddSurvey Zoned(OddTable t)
    {
        Formats.Coordinates.CoordinateSystem crs = Formats.Coordinates.CoordinateSystems.FromEpsg(26917, out _)!;
        return t.Column("Easting", i => string.Create(CultureInfo.InvariantCulture, $"17T {crs.FromGeo(t.At(i)).X:F1}"))
            .Number("Northing", i => crs.FromGeo(t.At(i)).Y, 1).Depth().File() with
        { MayBeRefused = true };
    }

    private static OddSurvey Kilometres(OddTable t)
    {
        Formats.Coordinates.CoordinateSystem crs = Formats.Coordinates.CoordinateSystems.FromEpsg(25833, out _)!;
        return t.Number("x_km", i => crs.FromGeo(t.At(i)).X / 1000, 5).Number("y_km", i => crs.FromGeo(t.At(i)).Y / 1000, 5).Depth().File()
            with
        { MayBeRefused = true, MustAsk = true };
    }

    private static OddSurvey Grouped(OddTable t, char group, char point, bool quoted)
    {
        Formats.Coordinates.CoordinateSystem crs = Formats.Coordinates.CoordinateSystems.FromEpsg(quoted ? 26917 : 25833, out _)!;
        NumberFormatInfo form = new() { NumberGroupSeparator = group.ToString(), NumberDecimalSeparator = point.ToString() };
        return t.Column("easting", i => Cell(crs.FromGeo(t.At(i)).X)).Column("northing", i => Cell(crs.FromGeo(t.At(i)).Y))
            .Column("depth", i => Cell(t.DepthM(i))).File() with
        { MayBeRefused = true };

        string Cell(double value) => quoted ? "\"" + value.ToString("N2", form) + "\"" : value.ToString("N2", form);
    }

    // Nearer to each other than either is long.
    private static OddSurvey TwoPonds(SeededRandom r)
    {
        OddLake first = Wisconsin(r), second = new(r, first.Middle.LatDeg + 0.036, first.Middle.LonDeg, 0);
        string one = Encoding.UTF8.GetString(OddTable.Of(first, t => t.Column("lake", _ => "North Pond").Degrees().Depth().File()).Bytes);
        OddTable other = new(second) { HasHeader = false };
        return new OddSurvey("soundings.csv", one + other.Column("", _ => "South Pond").Degrees().Depth(), first) { MustAsk = true, Others = [second] };
    }

    private static OddSurvey Clocked(SeededRandom r)
    {
        OddSurvey log = OddRasters.Log(Germany(r));
        string[] lines = Encoding.UTF8.GetString(log.Bytes).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        string text = string.Concat(lines.Select((l, i) => $"2021-05-04T10:{i / 60 % 60:00}:{i % 60:00}.000Z {l}\r\n"));
        return log with { Bytes = Encoding.UTF8.GetBytes(text), MayBeRefused = true };
    }

    private static double Packed(double degrees) => (Math.Floor(degrees) * 10000) + (Math.Floor(degrees % 1 * 60) * 100) + (degrees * 60 % 1 * 60);

    private static string Comma(double value, int decimals) => value.ToString("F" + decimals, CultureInfo.InvariantCulture).Replace('.', ',');
}
