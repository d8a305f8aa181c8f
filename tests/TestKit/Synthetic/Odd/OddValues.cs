using System.Globalization;
using SecondShore.Engine.Core.Numerics;
using static SecondShore.TestKit.Synthetic.Odd.OddPlaces;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Tables whose depths, or what stands beside them, are written awkwardly.</summary>
internal static class OddValues
{
    public static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> All =>
    [
        ("decimal comma and semicolons", r => OddTable.Of(Germany(r), ";", t => t.Column("Breite", i => C(t.At(i).LatDeg, 6)).Column("Länge", i => C(t.At(i).LonDeg, 6)).Column("Wassertiefe", i => C(t.DepthM(i), 2)).File())),
        ("centimetres, German", r => new OddTable(Germany(r), ";").Degrees("Breitengrad", "Längengrad").Depth("Tiefe [cm]", 100, 0).File()),
        ("centimetres, unnamed", r => new OddTable(Sweden(r)).Degrees().Depth("depth", 100, 0).File()),
        ("millimetres", r => new OddTable(Poland(r), ";").Degrees("szerokosc", "dlugosc").Depth("glebokosc_mm", 1000, 0).File()),
        ("millimetres, unnamed", r => new OddTable(Spain(r)).Degrees().Depth("range", 1000, 0).File() with { MayBeRefused = true }),
        ("fathoms, Swedish", r => new OddTable(Sweden(r), ";").Degrees("bredd", "längd").Depth("Djup (famnar)", 1 / 1.8288, 2).File()),
        ("fathoms", r => new OddTable(Ontario(r)).Degrees("LAT", "LONG").Depth("DEPTH_FATHOMS", 1 / 1.8288, 2).File()),
        ("feet, French", r => new OddTable(Ontario(r), ";").Degrees("Latitude", "Longitude").Depth("Profondeur (pieds)", 1 / 0.3048, 1).File()),
        ("feet, Spanish", r => new OddTable(Spain(r)).Degrees("latitud", "longitud").Depth("profundidad_pies", 1 / 0.3048, 1).File()),
        ("feet, German", r => new OddTable(Ontario(r)).Degrees("Breite", "Länge").Depth("Tiefe in Fuß", 1 / 0.3048, 1).File()),
        ("decimetres, Dutch", r => new OddTable(Netherlands(r), ";").Plane(28992, "x", "y").Depth("diepte_dm", 10, 0).File()),
        ("Russian", r => new OddTable(Finland(r), ";").Degrees("широта", "долгота").Depth("глубина, м").File()),
        ("Japanese", r => new OddTable(new OddLake(r, 36.4, 138.3)).Degrees("緯度", "経度").Depth("水深(m)").File()),
        ("Chinese", r => new OddTable(new OddLake(r, 30.9, 116.4)).Degrees("纬度", "经度").Depth("深度").File()),
        ("Finnish centimetres", r => new OddTable(Finland(r), ";").Plane(3067, "E", "N").Depth("Syvyys (cm)", 100, 0).File()),
        ("feet and inches in words", r => OddTable.Of(Wisconsin(r), "\t", t => t.Degrees().Column("depth", i => $"{Math.Floor(t.DepthM(i) / 0.3048):0}' {t.DepthM(i) / 0.3048 % 1 * 11.99:0}\"").File() with { MayBeRefused = true })),
        ("the unit in every cell", r => OddTable.Of(Germany(r), t => t.Degrees().Column("depth", i => string.Create(CultureInfo.InvariantCulture, $"{t.DepthM(i):F2} m")).File() with { MayBeRefused = true })),
        ("feet in every cell", r => OddTable.Of(Wisconsin(r), t => t.Degrees().Column("depth", i => string.Create(CultureInfo.InvariantCulture, $"{t.DepthM(i) / 0.3048:F1} ft")).File() with { MayBeRefused = true })),
        ("a counter, a time and a distance before", r => OddTable.Of(Poland(r), t => t.Number("no", i => i + 1, 0).Column("time", i => $"{9 + (i / 3600)}:{i / 60 % 60:00}:{i % 60:00}").Number("dist", i => i * 2.4, 1).Degrees("y", "x").Depth("h2o", 1, 1).File())),
        ("depth of the sensor and of the water", r => new OddTable(Germany(r)).Degrees().Number("sensor_depth_m", _ => 0.4, 1).Depth("water_depth_m").File()),
        ("temperature called like a depth", r => OddTable.Of(Wisconsin(r), t => t.Degrees().Number("temp_at_depth", i => 18 - (i % 9 * 0.3), 1).Depth("depth_ft", 1 / 0.3048, 1).File())),
        ("depth error beside depth", r => new OddTable(Germany(r)).Degrees().Number("depth_error", i => 0.05 + (i % 7 * 0.01), 2).Depth("depth").File()),
        ("raw and corrected depth", r => OddTable.Of(Germany(r), t => t.Degrees().Number("depth_raw", i => t.DepthM(i) + 0.1, 2).Depth("depth_corrected").File())),
        ("old and new bed", r => OddTable.Of(Wisconsin(r), t => t.Degrees().Depth("depth_2012").Number("depth_1950", i => t.DepthM(i) * 1.6, 2).File() with { MustAsk = true })),
        ("thickness of mud beside", r => OddTable.Of(Wisconsin(r), t => t.Degrees().Number("muck_thickness", i => 1 + (i % 5 * 0.3), 1).Depth("depth").File())),
        ("lost bottom as 0", r => new OddTable(Germany(r)) { Instead = (i, row) => i % 31 == 3 ? Zero(row) : null }.Degrees().Depth("depth").File() with { ToleranceM = 0.5 }),
        ("lost bottom as 655.35", r => new OddTable(Germany(r)) { Instead = (i, row) => i % 40 == 3 ? Ends(row, "655.35") : null }.Degrees().Depth("depth").File()),
        ("dashes for no depth", r => new OddTable(Germany(r)) { Instead = (i, row) => i % 12 == 3 ? Ends(row, "---") : null }.Degrees().Depth("depth").File()),
        ("elevation with a bed below the sea", r => OddTable.Of(SeaLake(r), t => t.Degrees().Number("elevation_m", i => t.Lake.SurfaceM - t.DepthM(i), 2).File())),
        ("elevation in feet", r => OddTable.Of(Wisconsin(r), t => t.Degrees().Number("BOTTOM_ELEV_FT", i => (t.Lake.SurfaceM - t.DepthM(i)) / 0.3048, 1).File())),
        ("elevation above a sea, Polish plane", r => OddTable.Of(Poland(r), "\t", t => t.Plane(2178, "Y", "X").Number("H", i => t.Lake.SurfaceM - t.DepthM(i), 2).File())),
        ("depths with a minus", r => new OddTable(Sweden(r), "\t") { HasHeader = false }.Degrees().Depth("", -1).File("soundings.xyz")),
        ("depths with a minus and drying land", r => new OddTable(Germany(r)) { Instead = (i, row) => i % 37 == 3 ? Ends(row, "0.40") : null }.Degrees().Depth("z", -1).File()),
        ("depth before position, no header", r => OddTable.Of(Brazil(r), "\t", t => t.Bare().Depth("").Degrees("", "").File())),
        ("speed and depth without words", r => OddTable.Of(Germany(r), ";", t => t.Bare().Degrees("", "").Number("", i => 2 + (Noise(i) * 1.1), 2).Depth("", 1, 2).File())),
        ("a constant sound speed", r => OddTable.Of(Germany(r), t => t.Degrees().Number("sv", _ => 1482, 0).Depth("d", 1, 2).File())),
        ("the level of the day", r => OddTable.Of(Wisconsin(r), t => t.Degrees().Number("water_level_ft", _ => 1623.4, 1).Depth("depth_ft", 1 / 0.3048, 1).File())),
        ("depth and height of one bed", r => OddTable.Of(Germany(r), t => t.Degrees().Depth("depth").Number("elevation", i => t.Lake.SurfaceM - t.DepthM(i), 2).File())),
    ];

    /// <summary>A lake whose bed lies below the sea.</summary>
    private static OddLake SeaLake(SeededRandom r)
    {
        OddLake lake = Sweden(r);
        lake.SurfaceM = 3.2;
        return lake;
    }

    private static double Noise(int i) => Math.Sin(i * 12.9898) * 43758.5453 % 1;

    private static string C(double value, int decimals) => value.ToString("F" + decimals, CultureInfo.InvariantCulture).Replace('.', ',');

    private static string Zero(string row) => Ends(row, "0.00");

    private static string Ends(string row, string with) => row[..(row.LastIndexOf(',') + 1)] + with;
}
