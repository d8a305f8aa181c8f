using System.Globalization;
using SecondShore.Engine.Core.Geo;
using ProjNet.CoordinateSystems;

namespace SecondShore.Formats.Coordinates;

/// <summary>Finds a coordinate system by EPSG code or by WKT.</summary>
public static class CoordinateSystems
{
    private static readonly int LongestWkt = 20_000;

    /// <summary>Reads <c>EPSG:26918</c>, a bare code, or WKT.</summary>
    /// <returns>The system; null with what is wrong, as a sentence, in <paramref name="fault"/>.</returns>
    public static CoordinateSystem? Parse(string text, out FindingForm fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        string trimmed = text.Trim();
        string digits = trimmed.StartsWith("EPSG:", StringComparison.OrdinalIgnoreCase) ? trimmed[5..] : trimmed;
        if (int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int code)) return FromEpsg(code, out fault);
        if (trimmed.Contains('[')) return FromWkt(trimmed, out fault);
        fault = $"'{Text.TextDecoding.Excerpt(trimmed)}' is no coordinate system that can be read; write EPSG:26918 or the like, or the WKT text of a .prj file.";
        return null;
    }

    /// <summary>The system of an EPSG code: degrees, UTM on WGS 84, NAD83 or ETRS89, web Mercator, and those of <see cref="EpsgTable"/>.</summary>
    public static CoordinateSystem? FromEpsg(int code, out FindingForm fault)
    {
        fault = "";
        if (code is 4326 or 4269 or 4258 or 4152 or 4617 or 4979) return new GeographicSystem($"geographic degrees (EPSG:{code})", "");
        if (code is 4267) return new GeographicSystem("geographic degrees, NAD27 (EPSG:4267)", DatumDoubt("NAD27"));
        if (code is 3857 or 900913 or 102100) return new SphereMercator();
        string? wkt = EpsgTable.Wkt(code);
        if (wkt is not null) return FromWkt(wkt, out fault);
        if (Places.IsThere && FromBook(code, out FindingForm reason) is var (listed, made) && listed)
        {
            fault = reason;
            return made;
        }

        fault = $"EPSG:{code} is not among the systems known here; give the WKT text of its .prj file instead, or convert the file to longitude and latitude (EPSG:4326).";
        return null;
    }

    /// <summary>The system of a WKT text as found in .prj files.</summary>
    public static CoordinateSystem? FromWkt(string wkt, out FindingForm fault)
    {
        ArgumentNullException.ThrowIfNull(wkt);
        fault = "the coordinate system's WKT text cannot be read; set the system in lake.json, for instance \"crs\": \"EPSG:26918\".";
        if (wkt.Length > LongestWkt || WktNode.Parse(wkt) is not WktNode root) return null;
        if (root.Keyword is "COMPD_CS") root = root.Child("PROJCS") ?? root.Child("GEOGCS") ?? root;
        CoordinateSystem? system = root.Keyword switch
        {
            "GEOGCS" => new GeographicSystem($"geographic degrees, {Text.TextDecoding.Excerpt(root.Name, 60)}", DatumDoubt(root.Child("DATUM")?.Name ?? root.Name)),
            "PROJCS" when SphereMercator.IsNamed(root.Child("PROJECTION")?.Name ?? "") => new SphereMercator(),
            "PROJCS" => Projected(root, ref fault),
            _ => null,
        };
        if (system is not null) fault = "";
        return system;
    }

    private static ProjectedSystem? Projected(WktNode root, ref FindingForm fault)
    {
        string? clean = CleanWkt(root);
        if (clean is null) return null;
        try
        {
            ProjectedCoordinateSystem made = (ProjectedCoordinateSystem)new CoordinateSystemFactory().CreateFromWkt(clean);
            return new ProjectedSystem(made, NameOf(root), DatumDoubt(root.Child("GEOGCS")?.Child("DATUM")?.Name ?? root.Name));
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // The library tells a projection it lacks by several exceptions; to the user they are one.
            fault = $"the projection '{Text.TextDecoding.Excerpt(root.Child("PROJECTION")?.Name ?? "")}' is not known here; convert the file to longitude and latitude (EPSG:4326).";
            return null;
        }
    }

    // Names types of the atlas, which may be missing: not to be inlined where it is not known to be there.
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.NoInlining)]
    private static (bool Listed, CoordinateSystem? Made) FromBook(int code, out FindingForm fault)
    {
        fault = "";
        return Atlas.EpsgBook.Find(code) is Atlas.EpsgEntry entry ? (true, FromEntry(entry, out fault)) : (false, null);
    }

    private static ProjectedSystem? FromEntry(Atlas.EpsgEntry entry, out FindingForm fault)
    {
        fault = $"EPSG:{entry.Code} ({entry.Name}) is of a projection not known here; convert the file to longitude and latitude (EPSG:4326).";
        System.Text.StringBuilder parameters = new();
        // False origins are filed in metres, and meant in the system's own unit here.
        foreach ((string name, double value) in entry.Parameters)
            parameters.Append(CultureInfo.InvariantCulture, $",PARAMETER[\"{name}\",{Plain(name.StartsWith("false_", StringComparison.Ordinal) ? value / entry.UnitM : value)}]");
        string wkt = string.Create(CultureInfo.InvariantCulture,
            $"PROJCS[\"plane\",GEOGCS[\"degrees\",DATUM[\"datum\",SPHEROID[\"ellipsoid\",{Plain(entry.RadiusM)},{Plain(entry.InverseFlattening)}]],PRIMEM[\"meridian\",0],UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"{entry.Method}\"]{parameters},UNIT[\"unit\",{Plain(entry.UnitM)}]]");
        try
        {
            ProjectedCoordinateSystem made = (ProjectedCoordinateSystem)new CoordinateSystemFactory().CreateFromWkt(wkt);
            string name = string.Create(CultureInfo.InvariantCulture, $"{entry.Name} (EPSG:{entry.Code}){(Math.Abs(entry.UnitM - 1) > 1e-9 ? $", unit {entry.UnitM:G9} m" : "")}");
            ProjectedSystem system = new(made, name, DoubtOf(entry), new DatumShift(entry), entry.MeridianDeg);
            if (!Agrees(system, entry)) return null;
            fault = "";
            return system;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // The library tells a projection it lacks by several exceptions; to the user they are one.
            return null;
        }
    }

    // The table knows where a system's area lies in its own numbers: a projection that the library works out another way is not used.
    private static bool Agrees(ProjectedSystem system, Atlas.EpsgEntry entry)
    {
        double[] area = entry.Area, box = entry.Box;
        double east = area[3] < area[1] ? area[3] + 360 : area[3];
        (double x, double y) = system.FromGeo(new GeoPoint((area[0] + area[2]) / 2, GeoPoint.WrapLongitudeDeg((area[1] + east) / 2)));
        double marginX = 1 + (0.02 * (box[1] - box[0])), marginY = 1 + (0.02 * (box[3] - box[2]));
        return x >= box[0] - marginX && x <= box[1] + marginX && y >= box[2] - marginY && y <= box[3] + marginY;
    }

    private static string DoubtOf(Atlas.EpsgEntry entry) => entry.Shift.Length == 0 && !entry.Datum.StartsWith("World Geodetic System 1984", StringComparison.Ordinal)
        ? $"for its datum ({entry.Datum}) no shift to the satellites' WGS 84 is published here; places can lie up to some 200 m off."
        : entry.ShiftAccuracyM >= (entry.Shift.Any(s => s != 0) ? 1 : 2) ? string.Create(CultureInfo.InvariantCulture, $"the shift of its datum ({entry.Datum}) to WGS 84 is good to {entry.ShiftAccuracyM:0} m.") : "";

    // Only what is needed, in the order the library expects, with our own names.
    private static string? CleanWkt(WktNode root)
    {
        WktNode? spheroid = root.Child("GEOGCS")?.Child("DATUM")?.Child("SPHEROID");
        string projection = root.Child("PROJECTION")?.Name ?? "";
        if (spheroid is null || spheroid.Numbers.Count < 2 || projection.Length is 0 or > 60 || !projection.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or ' ')) return null;
        double unit = root.Child("UNIT")?.Numbers.FirstOrDefault(1) ?? 1;
        double radius = spheroid.Numbers[0], flattening = spheroid.Numbers[1];
        if (!(radius is > 6e6 and < 7e6) || !(flattening is 0 or (> 200 and < 400)) || !(unit is > 1e-3 and < 1e4)) return null;
        System.Text.StringBuilder parameters = new();
        foreach (WktNode parameter in root.Children.Where(c => c.Keyword == "PARAMETER" && c.Numbers.Count > 0))
        {
            if (!parameter.Name.All(c => char.IsAsciiLetterOrDigit(c) || c == '_') || Math.Abs(parameter.Numbers[0]) > 1e9) return null;
            parameters.Append(CultureInfo.InvariantCulture, $",PARAMETER[\"{parameter.Name.ToLowerInvariant()}\",{Plain(parameter.Numbers[0])}]");
        }

        double meridian = root.Child("GEOGCS")?.Child("PRIMEM")?.Numbers.FirstOrDefault() ?? 0;
        return string.Create(CultureInfo.InvariantCulture,
            $"PROJCS[\"plane\",GEOGCS[\"degrees\",DATUM[\"datum\",SPHEROID[\"ellipsoid\",{Plain(radius)},{Plain(flattening)}]],PRIMEM[\"meridian\",{Plain(meridian)}],UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"{projection}\"]{parameters},UNIT[\"unit\",{Plain(unit)}]]");
    }

    private static string Plain(double value) => value.ToString("0.####################", CultureInfo.InvariantCulture);

    private static string NameOf(WktNode root)
    {
        string name = Text.TextDecoding.Excerpt(root.Name.Replace('_', ' '), 80);
        double code = root.Child("AUTHORITY")?.Numbers.FirstOrDefault() ?? 0;
        string epsg = code > 0 ? string.Create(CultureInfo.InvariantCulture, $" (EPSG:{code})") : "";
        double unitM = root.Child("UNIT")?.Numbers.FirstOrDefault(1) ?? 1;
        return name + epsg + (Math.Abs(unitM - 1) > 1e-9 ? string.Create(CultureInfo.InvariantCulture, $", unit {unitM:G9} m") : "");
    }

    private static FindingForm DatumDoubt(string datum)
    {
        bool old = datum.Contains("1927", StringComparison.Ordinal) || datum.Contains("NAD27", StringComparison.OrdinalIgnoreCase)
            || datum.Contains("Tokyo", StringComparison.OrdinalIgnoreCase) || datum.Contains("1950", StringComparison.Ordinal) || datum.Contains("OSGB", StringComparison.OrdinalIgnoreCase);
        if (!old) return "";
        return $"its datum ({Text.TextDecoding.Excerpt(datum)}) lies up to some 200 m off the satellites' WGS 84 and no shift is made; convert the file to WGS 84 for use on the water.";
    }
}
