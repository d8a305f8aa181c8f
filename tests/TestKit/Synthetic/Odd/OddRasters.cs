using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using static SecondShore.TestKit.Synthetic.Odd.OddPlaces;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Rasters, NMEA logs and tracks, awkward ones.</summary>
internal static class OddRasters
{
    private const int Side = 60;

    public static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> All =>
    [
        ("GeoTIFF, depths, no data around", r => Tiff(Sweden(r), (d, _) => d > 0 ? d : double.NaN)),
        ("GeoTIFF, depths with a minus", r => Tiff(Sweden(r), (d, _) => d > 0 ? -d : double.NaN)),
        ("GeoTIFF, depths in feet, unnamed", r => Tiff(Wisconsin(r), (d, _) => d > 0 ? d / 0.3048 : double.NaN) with { MustAsk = true }),
        ("GeoTIFF, terrain and bed", r => Tiff(Germany(r), (d, l) => l.SurfaceM - d) with { MustAsk = true }),
        ("GeoTIFF, terrain and bed in feet", r => Tiff(Wisconsin(r), (d, l) => (l.SurfaceM - d) / 0.3048) with { MustAsk = true }),
        ("GeoTIFF, terrain with the water flat", r => Tiff(Germany(r), (d, l) => d > 0 ? l.SurfaceM : l.SurfaceM - d) with { Lake = null }),
        ("GeoTIFF, bed heights, no data around", r => Tiff(Germany(r), (d, l) => d > 0 ? l.SurfaceM - d : double.NaN) with { MustAsk = true }),
        ("GeoTIFF, land 0, depths in the water", r => Tiff(Poland(r), (d, _) => d > 0 ? d : 0)),
        ("GeoTIFF, a mask", r => Tiff(Germany(r), (d, _) => d > 0 ? 1 : 0) with { Lake = null }),
        ("GeoTIFF, a mask of 255", r => Tiff(Germany(r), (d, _) => d > 0 ? 255 : 0) with { Lake = null }),
        ("GeoTIFF, classes of ground", r => Tiff(Germany(r), (d, l) => d <= 0 ? double.NaN : 1 + Math.Floor(Math.Abs(Math.Sin(d * 40)) * 4)) with { Lake = null }),
        ("ASCII grid, depths", r => Ascii(Finland(r), d => d > 0 ? d : double.NaN, 2)),
        ("ASCII grid, whole feet", r => Ascii(Wisconsin(r), d => d > 0 ? Math.Round(d / 0.3048) : double.NaN, 0) with { MustAsk = true, ToleranceM = 0.5 }),
        ("ASCII grid, decimal comma", r => Comma(Ascii(Germany(r), d => d > 0 ? d : double.NaN, 2)) with { MayBeRefused = true }),
        ("NetCDF, depth", r => Cdf(Sweden(r), "depth", d => d, ("units", "m"), ("positive", "down"))),
        ("NetCDF, elevation under water", r => Cdf(Sweden(r), "elevation", d => -d, ("units", "m"), ("standard_name", "height_above_mean_sea_level")) with { MayBeRefused = true }),
        ("NetCDF, feet", r => Cdf(Wisconsin(r), "depth", d => d / 0.3048, ("units", "feet"), ("positive", "down"))),
        ("NetCDF, bare z", r => Cdf(Sweden(r), "z", d => -d)),
        ("NMEA, the bottom stuck after it is lost", r => Nmea(Germany(r), (i, d) => i % 120 < 90 ? d : 3.3, null) with { MustAsk = true, ToleranceM = 0.4 }),
        ("NMEA, depth in feet only", r => Nmea(Wisconsin(r), (i, d) => d, (i, d) => string.Create(CultureInfo.InvariantCulture, $"SDDBT,{d / 0.3048:F1},f,,M,,F")) with { ToleranceM = 0.6 }),
        ("NMEA, depth below the keel", r => Nmea(Ontario(r), (i, d) => d - 0.4, (i, d) => string.Create(CultureInfo.InvariantCulture, $"SDDPT,{d:F2},0.40"))),
        ("NMEA, no fix at times", r => Nmea(Ontario(r), (i, d) => d, null, i => i % 50 > 44) with { ToleranceM = 1 }),
        ("GPX, heights only", r => Gpx(Germany(r), (d, l) => "<ele>" + l.SurfaceM.ToString("F1", CultureInfo.InvariantCulture) + "</ele>") with { Lake = null }),
        ("GPX, depth as an extension", r => Gpx(Sweden(r), (d, l) => $"<extensions><depth>{d.ToString("F2", CultureInfo.InvariantCulture)}</depth></extensions>")),
        ("GPX, heights that are depths", r => Gpx(Sweden(r), (d, l) => "<ele>" + (-d).ToString("F2", CultureInfo.InvariantCulture) + "</ele>") with { MayBeRefused = true, MustAsk = true }),
    ];

    private static OddSurvey Tiff(OddLake lake, Func<double, OddLake, double> value)
    {
        (double half, double side) = lake.Half();
        double cell = 2 * Math.Max(half, side) / Side, west = lake.Middle.LonDeg - (cell * Side / 2), north = lake.Middle.LatDeg + (cell * Side / 2);
        float[] values = new float[Side * Side];
        for (int i = 0; i < values.Length; i++)
        {
            double v = value(lake.DepthM(new GeoPoint(north - (((i / Side) + 0.5) * cell), west + (((i % Side) + 0.5) * cell))), lake);
            values[i] = double.IsNaN(v) ? -9999 : (float)v;
        }

        return new OddSurvey("bottom.tif", TiffBuilder.Floats(Side, Side, values, west, north, cell).Text(42113, "-9999").Build(), lake);
    }

    private static OddSurvey Ascii(OddLake lake, Func<double, double> value, int decimals)
    {
        (double half, double side) = lake.Half();
        double cell = Math.Round(2 * Math.Max(half, side) / Side, 7), west = Math.Round(lake.Middle.LonDeg - (cell * Side / 2), 6), south = Math.Round(lake.Middle.LatDeg - (cell * Side / 2), 6);
        float[] values = [.. Enumerable.Range(0, Side * Side).Select(i => (float)value(lake.DepthM(new GeoPoint(south + (((i / Side) + 0.5) * cell), west + (((i % Side) + 0.5) * cell)))))];
        return new OddSurvey("bottom.asc", Formats.Writers.AsciiGridWriter.Write(Side, Side, west, south, cell, values, decimals), lake);
    }

    private static OddSurvey Comma(OddSurvey grid) => grid with { Bytes = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(grid.Bytes).Replace('.', ',')) };

    private static OddSurvey Cdf(OddLake lake, string name, Func<double, double> value, params (string, string)[] attributes)
    {
        (double half, double side) = lake.Half();
        double[] lats = [.. Enumerable.Range(0, Side).Select(i => lake.Middle.LatDeg - half + (2 * half * i / (Side - 1)))];
        double[] lons = [.. Enumerable.Range(0, Side).Select(i => lake.Middle.LonDeg - side + (2 * side * i / (Side - 1)))];
        double[] values = [.. lats.SelectMany(a => lons.Select(o => lake.DepthM(new GeoPoint(a, o)) is > 0 and var d ? value(d) : double.NaN))];
        return new OddSurvey("bottom.nc", new ClassicNetCdfBuilder().Dimension("lat", Side).Dimension("lon", Side)
            .Array("lat", ["lat"], lats, ("units", "degrees_north")).Array("lon", ["lon"], lons, ("units", "degrees_east")).Array(name, ["lat", "lon"], values, attributes).Build(), lake);
    }

    private static OddSurvey Nmea(OddLake lake, Func<int, double, double> depth, Func<int, double, string>? form, Func<int, bool>? lost = null)
    {
        StringBuilder text = new();
        for (int i = 0; i < lake.Places.Count; i++)
        {
            GeoPoint p = lake.Places[i];
            double d = depth(i, lake.DepthM(p));
            string clock = $"{12 + (i / 3600):00}{i / 60 % 60:00}{i % 60:00}";
            string at = string.Create(CultureInfo.InvariantCulture, $"{Ddmm(p.LatDeg, 2)},{(p.LatDeg < 0 ? "S" : "N")},{Ddmm(p.LonDeg, 3)},{(p.LonDeg < 0 ? "W" : "E")}");
            text.Append(Sentence(lost?.Invoke(i) == true ? $"GPGGA,{clock},,,,,0,00,,,M,,M,," : $"GPGGA,{clock},{at},1,08,1.0,190.0,M,,M,,"));
            text.Append(Sentence(form?.Invoke(i, d) ?? string.Create(CultureInfo.InvariantCulture, $"SDDPT,{d:F2},0.00")));
        }

        return new OddSurvey("log.nmea", text.ToString(), lake);
    }

    /// <summary>A plain log of a lake.</summary>
    internal static OddSurvey Log(OddLake lake) => Nmea(lake, (_, d) => d, null);

    private static string Ddmm(double degrees, int digits) =>
        ((Math.Floor(Math.Abs(degrees)) * 100) + Math.Min(59.99999, Math.Abs(degrees) % 1 * 60)).ToString(new string('0', digits + 2) + ".00000", CultureInfo.InvariantCulture);

    private static string Sentence(string body) => string.Create(CultureInfo.InvariantCulture, $"${body}*{body.Aggregate(0, (sum, c) => sum ^ c):X2}\r\n");

    private static OddSurvey Gpx(OddLake lake, Func<double, OddLake, string> inner) => new("track.gpx",
        "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"hand\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>" + string.Concat(lake.Places.Select(p =>
            string.Create(CultureInfo.InvariantCulture, $"<trkpt lat=\"{p.LatDeg:F7}\" lon=\"{p.LonDeg:F7}\">{inner(lake.DepthM(p), lake)}</trkpt>"))) + "</trkseg></trk></gpx>", lake);
}
