using System.Globalization;
using ProjNet.CoordinateSystems;

namespace SecondShore.Formats.Coordinates;

/// <summary>Finds a coordinate system by EPSG code or by WKT.</summary>
public static class CoordinateSystems
{
    private static readonly int LongestWkt = 20_000;

    /// <summary>Reads <c>EPSG:26918</c>, a bare code, or WKT.</summary>
    /// <returns>The system; null with what is wrong, as a sentence, in <paramref name="fault"/>.</returns>
    public static CoordinateSystem? Parse(string text, out string fault)
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
    public static CoordinateSystem? FromEpsg(int code, out string fault)
    {
        fault = "";
        if (code is 4326 or 4269 or 4258 or 4152 or 4617 or 4979) return new GeographicSystem($"geographic degrees (EPSG:{code})", "");
        if (code is 4267) return new GeographicSystem("geographic degrees, NAD27 (EPSG:4267)", DatumDoubt("NAD27"));
        string? wkt = EpsgTable.Wkt(code);
        if (wkt is not null) return FromWkt(wkt, out fault);
        fault = $"EPSG:{code} is not among the systems known here; give the WKT text of its .prj file instead, or convert the file to longitude and latitude (EPSG:4326).";
        return null;
    }

    /// <summary>The system of a WKT text as found in .prj files.</summary>
    public static CoordinateSystem? FromWkt(string wkt, out string fault)
    {
        ArgumentNullException.ThrowIfNull(wkt);
        fault = "the coordinate system's WKT text cannot be read; set the system in lake.json, for instance \"crs\": \"EPSG:26918\".";
        if (wkt.Length > LongestWkt || DeepestBracket(wkt) > 24) return null;
        try
        {
            switch (new CoordinateSystemFactory().CreateFromWkt(wkt))
            {
                case ProjectedCoordinateSystem projected:
                    fault = "";
                    return new ProjectedSystem(projected, NameOf(projected), DatumDoubt(projected.HorizontalDatum?.Name ?? projected.Name));
                case GeographicCoordinateSystem geographic:
                    fault = "";
                    return new GeographicSystem($"geographic degrees, {geographic.Name}", DatumDoubt(geographic.HorizontalDatum?.Name ?? geographic.Name));
                default:
                    return null;
            }
        }
        catch (Exception e) when (e is ArgumentException or FormatException or NotSupportedException or InvalidOperationException
            or NullReferenceException or IndexOutOfRangeException or OverflowException or InvalidCastException or KeyNotFoundException)
        {
            // The library tells a malformed text by many exceptions; all mean the same to the user.
            return null;
        }
        catch (Exception e) when (e.GetType().Namespace?.StartsWith("ProjNet", StringComparison.Ordinal) == true)
        {
            return null;
        }
    }

    private static string NameOf(ProjectedCoordinateSystem system)
    {
        string name = Text.TextDecoding.Excerpt(system.Name.Replace('_', ' '), 80);
        string code = system.AuthorityCode > 0 ? string.Create(CultureInfo.InvariantCulture, $" (EPSG:{system.AuthorityCode})") : "";
        string unit = system.LinearUnit is { } u && Math.Abs(u.MetersPerUnit - 1) > 1e-9 ? string.Create(CultureInfo.InvariantCulture, $", unit {u.MetersPerUnit:G9} m") : "";
        return name + code + unit;
    }

    private static string DatumDoubt(string datum) =>
        datum.Contains("1927", StringComparison.Ordinal) || datum.Contains("NAD27", StringComparison.OrdinalIgnoreCase)
        || datum.Contains("Tokyo", StringComparison.OrdinalIgnoreCase) || datum.Contains("1950", StringComparison.Ordinal) || datum.Contains("OSGB", StringComparison.OrdinalIgnoreCase)
            ? $"its datum ({Text.TextDecoding.Excerpt(datum)}) lies up to some 200 m off the satellites' WGS 84 and no shift is made; convert the file to WGS 84 for use on the water."
            : "";

    private static int DeepestBracket(string wkt)
    {
        int depth = 0, deepest = 0;
        foreach (char c in wkt)
        {
            if (c is '[' or '(') deepest = Math.Max(deepest, ++depth);
            else if (c is ']' or ')') depth--;
        }

        return deepest;
    }
}
