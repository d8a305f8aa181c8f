using System.Globalization;
using SecondShore.Engine.Core.Units;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys.GeoTiff;

/// <summary>The georeference of a TIFF: place of its pixels, coordinate system, vertical unit (OGC GeoTIFF 1.1).</summary>
internal sealed class GeoKeys
{
    private static readonly int UserDefined = 32767;
    private readonly TiffDirectory _tiff;
    private readonly Dictionary<int, (int Where, int Count, int Value)> _keys = [];

    public GeoKeys(TiffDirectory tiff)
    {
        _tiff = tiff;
        double[] raw = tiff.Numbers(34735, 4096);
        for (int i = 4; i + 3 < raw.Length; i += 4) _keys.TryAdd((int)raw[i], ((int)raw[i + 1], (int)raw[i + 2], (int)raw[i + 3]));
    }

    /// <summary>Unit of the heights, when a key states it.</summary>
    public DepthUnit? VerticalUnit => Short(4099) switch
    {
        9001 => DepthUnit.Metres,
        9002 or 9003 => DepthUnit.Feet,
        _ => null,
    };

    /// <summary>Where pixel centres lie; null when no tag says it.</summary>
    public AffinePlace? Place()
    {
        double shift = Short(1025) == 2 ? 0 : 0.5;
        double[] matrix = _tiff.Numbers(34264, 16), scale = _tiff.Numbers(33550, 3), tie = _tiff.Numbers(33922, 6);
        AffinePlace? place = null;
        if (matrix.Length >= 8)
            place = Shifted(matrix[3], matrix[0], matrix[1], matrix[7], matrix[4], matrix[5], shift);
        else if (scale.Length >= 2 && tie.Length >= 6)
            place = Shifted(tie[3] - (tie[0] * scale[0]), scale[0], 0, tie[4] + (tie[1] * scale[1]), 0, -scale[1], shift);
        return place is { IsUsable: true } ? place : null;
    }

    /// <summary>The place given by a world file (six lines; its corner is the first pixel's centre); null when it cannot be read.</summary>
    public static AffinePlace? WorldFile(string text)
    {
        string[] lines = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        if (lines.Length < 6) return null;
        double[] v = new double[6];
        for (int i = 0; i < 6; i++)
            if (!double.TryParse(lines[i], NumberStyles.Float, CultureInfo.InvariantCulture, out v[i])) return null;
        AffinePlace place = new(v[4], v[0], v[2], v[5], v[1], v[3]);
        return place.IsUsable ? place : null;
    }

    /// <summary>The coordinate system; null when the keys give none, with why in <paramref name="fault"/> when they try.</summary>
    public CoordinateSystem? Crs(out FindingForm fault)
    {
        fault = "";
        int projected = Short(3072), geographic = Short(2048), model = Short(1024);
        string citation = Ascii(3073) + Ascii(1026);
        int wkt = citation.IndexOf("PROJCS[", StringComparison.Ordinal);
        if (projected is > 0 && projected != UserDefined) return CoordinateSystems.FromEpsg(projected, out fault) ?? FromParameters(geographic, citation, ref fault);
        if (wkt >= 0) return CoordinateSystems.FromWkt(citation[wkt..].TrimEnd('|', ' '), out fault) ?? FromParameters(geographic, citation, ref fault);
        if (model == 1 || projected == UserDefined) return FromParameters(geographic, citation, ref fault);
        if (geographic is > 0 && geographic != UserDefined)
            return CoordinateSystems.FromEpsg(geographic, out _) ?? new GeographicSystem(string.Create(CultureInfo.InvariantCulture, $"geographic degrees (EPSG:{geographic})"), "");
        return model == 2 ? new GeographicSystem("geographic degrees", "") : null;
    }

    private CoordinateSystem? FromParameters(int geographic, string citation, ref FindingForm fault)
    {
        string? projection = Short(3075) switch
        {
            1 => "Transverse_Mercator",
            8 => "Lambert_Conformal_Conic_2SP",
            9 => "Lambert_Conformal_Conic_1SP",
            11 => "Albers_Conic_Equal_Area",
            _ => null,
        };
        if (projection is null)
        {
            if (fault.IsEmpty) fault = "the file's coordinate system is of a kind not known here; set survey.crs in lake.json, for instance \"EPSG:26918\".";
            return null;
        }

        double unit = Short(3076) switch { 9002 => Length.MetresPerFoot, 9003 => 1200.0 / 3937.0, _ => 1 };
        bool twoParallels = projection.EndsWith("2SP", StringComparison.Ordinal) || projection.StartsWith("Albers", StringComparison.Ordinal);
        double lat0 = First(0, 3085, 3081, 3089), lon0 = First(0, 3084, 3080, 3088);
        double east = First(0, 3086, 3082, 3090), north = First(0, 3087, 3083, 3091);
        string parameters = string.Create(CultureInfo.InvariantCulture,
            $"PARAMETER[\"latitude_of_origin\",{lat0}],PARAMETER[\"central_meridian\",{lon0}],PARAMETER[\"false_easting\",{east}],PARAMETER[\"false_northing\",{north}]");
        parameters += twoParallels
            ? string.Create(CultureInfo.InvariantCulture, $",PARAMETER[\"standard_parallel_1\",{First(0, 3078)}],PARAMETER[\"standard_parallel_2\",{First(0, 3079)}]")
            : string.Create(CultureInfo.InvariantCulture, $",PARAMETER[\"scale_factor\",{First(1, 3092, 3093)}]");
        double radius = First(6378137, 2057), flattening = First(298.257222101, 2059);
        string datum = geographic == 4267 ? "North_American_Datum_1927" : "modern";
        string name = citation.Split('|')[0].Split('\n')[0].Replace("\"", "", StringComparison.Ordinal).Trim();
        if (name.Length is 0 or > 60 || name.Contains('[')) name = projection;
        string wkt = string.Create(CultureInfo.InvariantCulture,
            $"PROJCS[\"{name}\",GEOGCS[\"degrees\",DATUM[\"{datum}\",SPHEROID[\"ellipsoid\",{radius},{flattening}]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"{projection}\"],{parameters},UNIT[\"unit\",{unit}]]");
        return CoordinateSystems.FromWkt(wkt, out fault);
    }

    private double First(double missing, params ReadOnlySpan<int> keys)
    {
        foreach (int key in keys)
            if (_keys.TryGetValue(key, out var entry) && entry.Where == 34736 && _tiff.Number(34736, double.NaN, entry.Value) is double value && double.IsFinite(value)) return value;
        return missing;
    }

    private int Short(int key) => _keys.TryGetValue(key, out var entry) && entry.Where == 0 ? entry.Value : 0;

    private string Ascii(int key)
    {
        if (!_keys.TryGetValue(key, out var entry) || entry.Where != 34737) return "";
        string all = _tiff.Text(34737);
        return entry.Value >= all.Length ? "" : all.Substring(entry.Value, Math.Min(entry.Count, all.Length - entry.Value));
    }

    // The tags speak of pixel corners (or, for points, of centres); ours are centres.
    private static AffinePlace Shifted(double x0, double a, double b, double y0, double d, double e, double shift) =>
        new(x0 + ((a + b) * shift), a, b, y0 + ((d + e) * shift), d, e);
}
