using System.Globalization;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using static SecondShore.TestKit.Synthetic.Odd.OddPlaces;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Tables whose positions are written awkwardly.</summary>
internal static class OddPositions
{
    public static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> All =>
    [
        ("degree-minutes with the letter in the cell", r => OddTable.Of(Any(r), t => t.Column("Lat", i => Minutes(t.At(i).LatDeg, "N", "S", 2)).Column("Lon", i => Minutes(t.At(i).LonDeg, "E", "W", 3)).Depth().File())),
        ("degree-minutes with a sign", r => OddTable.Of(Wisconsin(r), t => t.Number("lat", i => Ddmm(t.At(i).LatDeg), 4).Number("lon", i => Ddmm(t.At(i).LonDeg), 4).Depth().File())),
        ("degree-minutes without a header", r => OddTable.Of(Sweden(r), t => t.Bare().Column("", i => $"{10 + (i / 3600):00}{i / 60 % 60:00}{i % 60:00}").Column("", i => Size(t.At(i).LatDeg, 2)).Column("", _ => "N").Column("", i => Size(t.At(i).LonDeg, 3)).Column("", _ => "E").Depth("").File())),
        ("degrees and minutes in two columns each", r => OddTable.Of(Germany(r), t => t.Number("lat_deg", i => Math.Floor(t.At(i).LatDeg), 0).Number("lat_min", i => t.At(i).LatDeg % 1 * 60, 4).Number("lon_deg", i => Math.Floor(t.At(i).LonDeg), 0).Number("lon_min", i => t.At(i).LonDeg % 1 * 60, 4).Depth().File() with { MayBeRefused = true })),
        ("degrees, minutes and seconds in three columns each", r => OddTable.Of(Germany(r), t => t.Number("LatD", i => Math.Floor(t.At(i).LatDeg), 0).Number("LatM", i => Math.Floor(t.At(i).LatDeg % 1 * 60), 0).Number("LatS", i => t.At(i).LatDeg * 60 % 1 * 60, 2)
                .Number("LonD", i => Math.Floor(t.At(i).LonDeg), 0).Number("LonM", i => Math.Floor(t.At(i).LonDeg % 1 * 60), 0).Number("LonS", i => t.At(i).LonDeg * 60 % 1 * 60, 2).Depth("Depth").File() with { MayBeRefused = true })),
        ("degrees times ten million", r => OddTable.Of(Wisconsin(r), t => t.Number("lat", i => t.At(i).LatDeg * 1e7, 0).Number("lon", i => t.At(i).LonDeg * 1e7, 0).Depth().File() with { MayBeRefused = true })),
        ("seconds of arc", r => OddTable.Of(Germany(r), t => t.Number("latitude", i => t.At(i).LatDeg * 3600, 3).Number("longitude", i => t.At(i).LonDeg * 3600, 3).Depth().File() with { MayBeRefused = true })),
        ("radians", r => OddTable.Of(Germany(r), t => t.Number("lat", i => t.At(i).LatDeg * Math.PI / 180, 9).Number("lon", i => t.At(i).LonDeg * Math.PI / 180, 9).Depth().File() with { MayBeRefused = true })),
        ("the zone before the easting", r => new OddTable(Germany(r), ";").Plane(25833, "RECHTSWERT", "HOCHWERT", 33_000_000).Depth("TIEFE").File()),
        ("Gauss-Krueger with its zone", r => new OddTable(Germany(r), ";").Plane(31468, "Rechtswert", "Hochwert").Depth("Tiefe_m").File()),
        ("the zone in a column", r => OddTable.Of(Ontario(r), t => t.Column("zone", _ => "17T").Plane(26917, "UTM_E", "UTM_N").Depth().File())),
        ("feet of a state plane", r => new OddTable(Wisconsin(r)).Plane(2287, "X", "Y").Depth("Depth_ft", 1 / 0.3048, 1).File()),
        ("feet of a state plane, depth unnamed", r => new OddTable(Wisconsin(r), " ") { HasHeader = false }.Plane(2287, "X", "Y").Depth("Depth", 1 / 0.3048, 1).File("soundings.xyz")),
        ("latitude and longitude in each other's column", r => OddTable.Of(Wisconsin(r), t => t.Number("lat", i => t.At(i).LonDeg, 6).Number("lon", i => t.At(i).LatDeg, 6).Depth().File())),
        ("both under 90 and in each other's column", r => OddTable.Of(Poland(r), t => t.Number("szerokosc", i => t.At(i).LonDeg, 6).Number("dlugosc", i => t.At(i).LatDeg, 6).Depth("glebokosc").File())),
        ("the minus of west lost, feet", r => OddTable.Of(Wisconsin(r), t => t.Number("Latitude", i => t.At(i).LatDeg, 6).Number("Longitude", i => -t.At(i).LonDeg, 6).Depth("Depth_Feet", 1 / 0.3048, 1).File())),
        ("a longitude past 180", r => OddTable.Of(Wisconsin(r), t => t.Number("lat", i => t.At(i).LatDeg, 6).Number("lon", i => 360 + t.At(i).LonDeg, 6).Depth().File())),
        ("rows without a fix at 0", r => new OddTable(Germany(r)) { Instead = (i, row) => i % 19 == 3 ? "0.000000,0.000000,0.00" : null }.Degrees().Depth().File()),
        ("a quarter of the rows without a fix", r => new OddTable(Germany(r)) { Instead = (i, row) => i % 4 == 3 ? $"0.000000,0.000000,{row.Split(',')[2]}" : null }.Degrees().Depth().File()),
        ("no fix as words", r => new OddTable(Sweden(r)) { Instead = (i, row) => i % 23 == 4 ? $"nan,nan,{row.Split(',')[2]}" : i % 23 == 5 ? $"*****,*****,{row.Split(',')[2]}" : null }.Degrees().Depth().File()),
        ("no fix as a mark", r => new OddTable(Sweden(r)) { Instead = (i, row) => i % 23 == 4 ? $"-999,-999,{row.Split(',')[2]}" : i % 23 == 9 ? $"99.999999,999.999999,{row.Split(',')[2]}" : null }.Degrees().Depth().File()),
        ("north of the grid before east, no words", r => OddTable.Of(Poland(r), t => North(t, 2180))),
        ("a geometry column", r => OddTable.Of(Poland(r), ";", t => t.Column("geom", i => string.Create(CultureInfo.InvariantCulture, $"POINT ({t.At(i).LonDeg:F6} {t.At(i).LatDeg:F6})")).Depth().File() with { MayBeRefused = true })),
        ("both numbers in one cell", r => OddTable.Of(Poland(r), t => t.Column("position", i => string.Create(CultureInfo.InvariantCulture, $"\"{t.At(i).LatDeg:F6}, {t.At(i).LonDeg:F6}\"")).Depth().Number("temp_c", _ => 14.5, 1).File() with { MayBeRefused = true })),
        ("degrees beside a plane", r => new OddTable(Ontario(r)).Plane(26917, "Easting", "Northing").Degrees("Lat_DD", "Long_DD").Depth("Sounding").File()),
        ("a mile's digits: three decimals only", r => new OddTable(Finland(r)).Degrees(decimals: 4).Depth("syvyys").File()),
        ("letters first", r => OddTable.Of(NewZealand(r), t => t.Column("Lat", i => string.Create(CultureInfo.InvariantCulture, $"S{-t.At(i).LatDeg:F6}")).Column("Long", i => string.Create(CultureInfo.InvariantCulture, $"E{t.At(i).LonDeg:F6}")).Depth().File())),
        ("degree signs and minutes", r => OddTable.Of(Wisconsin(r), "\t", t => t.Column("Latitude", i => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(t.At(i).LatDeg):0}° {t.At(i).LatDeg % 1 * 60:00.0000}' N"))
                .Column("Longitude", i => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(-t.At(i).LonDeg):0}° {-t.At(i).LonDeg % 1 * 60:00.0000}' W")).Depth("Depth (feet)", 1 / 0.3048, 1).File())),
    ];

    private static OddSurvey North(OddTable t, int epsg)
    {
        Formats.Coordinates.CoordinateSystem crs = Formats.Coordinates.CoordinateSystems.FromEpsg(epsg, out _)!;
        t.HasHeader = false;
        return t.Number("", i => i + 1, 0).Number("", i => crs.FromGeo(t.At(i)).Y, 3).Number("", i => crs.FromGeo(t.At(i)).X, 3).Number("", i => -t.DepthM(i), 3).File();
    }

    private static double Ddmm(double degrees) => Math.CopySign((Math.Floor(Math.Abs(degrees)) * 100) + (Math.Abs(degrees) % 1 * 60), degrees);

    private static string Size(double degrees, int digits) => Ddmm(Math.Abs(degrees)).ToString(new string('0', digits + 2) + ".0000", CultureInfo.InvariantCulture);

    private static string Minutes(double degrees, string plus, string minus, int digits) => Size(degrees, digits) + (degrees < 0 ? minus : plus);
}
