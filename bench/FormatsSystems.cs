using System.Diagnostics;
using System.Globalization;
using SecondShore.Atlas;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Formats.Coordinates;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Holds coordinate systems by number against cs2cs of the Debian package proj-bin, on places drawn in their areas of use.</summary>
internal sealed class FormatsSystems : IFigure
{
    private const int Systems = 500;

    public string Name => "formats-systems";

    public string Claim => "Coordinate systems by number agree with PROJ within a metre, or say that they do not.";

    public FigureMargin Margin => FigureMargin.Exact;

    public IEnumerable<Measured> Measure()
    {
        // Drawn anew after the table was mended on two other draws.
        SeededRandom random = new(11, 1);
        int[] codes = [.. EpsgBook.Codes];
        int within = 0, said = 0, off = 0, unknown = 0, lacking = 0;
        for (int k = 0; k < Systems; k++)
        {
            EpsgEntry entry = EpsgBook.Find(codes[random.NextInt(codes.Length)])!;
            double south = entry.Area[0], north = entry.Area[2], west = entry.Area[1], east = entry.Area[3] < west ? entry.Area[3] + 360 : entry.Area[3];
            GeoPoint place = new(south + ((north - south) * random.NextDouble(0.2, 0.8)), GeoPoint.WrapLongitudeDeg(west + ((east - west) * random.NextDouble(0.2, 0.8))));
            if (CoordinateSystems.FromEpsg(entry.Code, out _) is not CoordinateSystem system)
            {
                lacking++;
                continue;
            }

            if (Told(entry.Code, place) is not (double A, double B) told)
            {
                unknown++;
                continue;
            }

            (double x, double y) = system.FromGeo(place);
            double apartM = entry.UnitM * Math.Min(Math.Max(Math.Abs(x - told.A), Math.Abs(y - told.B)), Math.Max(Math.Abs(x - told.B), Math.Abs(y - told.A)));
            if (apartM <= 1) within++;
            else if (!system.Doubt.IsEmpty) said++;
            else off++;
            if (!(apartM <= 1)) Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"EPSG:{entry.Code} {entry.Name}: {apartM:G4} m apart {(system.Doubt.IsEmpty ? "" : "(said)")}"));
        }

        string of = string.Create(CultureInfo.InvariantCulture, $"of {Systems} systems drawn from {codes.Length}");
        yield return new Measured("formats-systems-within-1m", within, "systems", of);
        yield return new Measured("formats-systems-further-and-said", said, "systems", "a datum without a published shift, or one good to some metres");
        yield return new Measured("formats-systems-further", off, "systems", "0 is the target");
        yield return new Measured("formats-systems-refused", lacking, "systems", "of a projection that the library works out otherwise; refused by name");
        yield return new Measured("formats-systems-not-told", unknown, "systems", "cs2cs gives nothing");
    }

    private static (double A, double B)? Told(int code, GeoPoint place)
    {
        string system = string.Create(CultureInfo.InvariantCulture, $"EPSG:{code}");
        using Process process = new OutsideProgram("cs2cs", "proj-bin").Start(withInput: true, "-f", "%.4f", "EPSG:4326", system);
        process.StandardInput.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{place.LatDeg:R} {place.LonDeg:R}"));
        process.StandardInput.Close();
        string[] parts = process.StandardOutput.ReadToEnd().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        process.WaitForExit();
        return parts.Length >= 2 && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double a)
            && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double b) ? (a, b) : null;
    }
}
