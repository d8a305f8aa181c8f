using System.Text.Json;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Surveys.Hypotheses;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.GeoJson;

/// <summary>Walks the features of a GeoJSON document into a raw survey.</summary>
internal sealed class GeoJsonFeatures(string file, RawSurvey raw, SurveyOptions options, ProblemLog log)
{
    private readonly List<double> _x = [], _y = [], _z = [];
    private string? _attribute;
    private bool _unitNamed;
    private int _feature;
    private int _broken;

    public void ReadRoot(JsonElement root, CancellationToken cancellation)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            log.Error(file, "the file holds no GeoJSON object.");
            return;
        }

        ReadCrs(root);
        if (root.TryGetProperty("features", out JsonElement list) && list.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement feature in list.EnumerateArray())
            {
                if (++_feature % 1000 == 0) cancellation.ThrowIfCancellationRequested();
                ReadFeature(feature);
            }
        }
        else
        {
            ReadFeature(root);
        }

        if (_x.Count > 0) raw.Points.Add(new RawPoints([.. _x], [.. _y], [.. _z], []));
        if (_broken > 0) log.Warn(file, $"{_broken} of the file's shapes have no usable coordinates and are not used.");
        if (_attribute is not null) raw.RolesTaken.Add($"{_attribute}: depth");
    }

    private void ReadCrs(JsonElement root)
    {
        raw.Crs = CoordinateSystem.Degrees;
        raw.CrsKnown = Knowledge.Stated;
        if (!root.TryGetProperty("crs", out JsonElement crs) || crs.ValueKind != JsonValueKind.Object
            || !crs.TryGetProperty("properties", out JsonElement properties) || properties.ValueKind != JsonValueKind.Object
            || !properties.TryGetProperty("name", out JsonElement name) || name.ValueKind != JsonValueKind.String) return;
        string text = name.GetString() ?? "";
        if (text.Contains("CRS84", StringComparison.Ordinal)) return;
        int colon = text.LastIndexOf(':');
        CoordinateSystem? named = CoordinateSystems.Parse(colon >= 0 ? text[(colon + 1)..] : text, out FindingForm fault);
        if (named is null) log.Warn(file, $"{fault} Degrees are taken.");
        else raw.Crs = named;
    }

    private void ReadFeature(JsonElement feature)
    {
        if (feature.ValueKind != JsonValueKind.Object)
        {
            _broken++;
            return;
        }

        JsonElement geometry = feature.TryGetProperty("geometry", out JsonElement inner) ? inner : feature;
        double z = feature.TryGetProperty("properties", out JsonElement properties) ? DepthOf(properties) : double.NaN;
        ReadGeometry(geometry, z, 0);
    }

    private void ReadGeometry(JsonElement geometry, double z, int depth)
    {
        if (geometry.ValueKind != JsonValueKind.Object || depth > 8)
        {
            if (geometry.ValueKind != JsonValueKind.Null) _broken++;
            return;
        }

        string type = geometry.TryGetProperty("type", out JsonElement name) && name.ValueKind == JsonValueKind.String ? name.GetString() ?? "" : "";
        if (type == "GeometryCollection" && geometry.TryGetProperty("geometries", out JsonElement parts) && parts.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement part in parts.EnumerateArray()) ReadGeometry(part, z, depth + 1);
            return;
        }

        if (!geometry.TryGetProperty("coordinates", out JsonElement coordinates) || coordinates.ValueKind != JsonValueKind.Array)
        {
            _broken++;
            return;
        }

        switch (type)
        {
            case "Point": Point(coordinates, z); break;
            case "MultiPoint": foreach (JsonElement c in coordinates.EnumerateArray()) Point(c, z); break;
            case "LineString": Line(coordinates, z); break;
            case "MultiLineString": foreach (JsonElement c in coordinates.EnumerateArray()) Line(c, z); break;
            case "Polygon": Polygon(coordinates, z); break;
            case "MultiPolygon": foreach (JsonElement c in coordinates.EnumerateArray()) Polygon(c, z); break;
            default: _broken++; break;
        }
    }

    private void Point(JsonElement c, double z)
    {
        if (!TryPosition(c, out double x, out double y, out double own))
        {
            _broken++;
            return;
        }

        _x.Add(x);
        _y.Add(y);
        _z.Add(double.IsNaN(z) ? own : z);
    }

    private void Line(JsonElement c, double z)
    {
        (double[] x, double[] y, double own, bool closed) = Ring(c);
        if (double.IsNaN(z)) z = own;
        if (x.Length < 2) _broken++;
        else if (!double.IsNaN(z)) raw.Lines.Add(new RawLine(x, y, z, closed && x.Length >= 3));
        else if (closed && x.Length >= 3) raw.Polygons.Add(new RawPolygon((x, y), []));
        else _broken++;
    }

    private void Polygon(JsonElement c, double z)
    {
        if (c.ValueKind != JsonValueKind.Array)
        {
            _broken++;
            return;
        }

        List<(double[] X, double[] Y)> rings = [];
        foreach (JsonElement ring in c.EnumerateArray())
        {
            (double[] x, double[] y, _, _) = Ring(ring);
            if (x.Length >= 3) rings.Add((x, y));
            else if (rings.Count == 0) break;
        }

        if (rings.Count == 0) _broken++;
        else if (double.IsNaN(z)) raw.Polygons.Add(new RawPolygon(rings[0], rings[1..]));
        else foreach ((double[] x, double[] y) in rings) raw.Lines.Add(new RawLine(x, y, z, true));
    }

    private static (double[] X, double[] Y, double Z, bool Closed) Ring(JsonElement c)
    {
        if (c.ValueKind != JsonValueKind.Array) return ([], [], double.NaN, false);
        List<double> x = [], y = [];
        double z = double.NaN;
        bool even = true;
        foreach (JsonElement position in c.EnumerateArray())
        {
            if (!TryPosition(position, out double px, out double py, out double pz)) continue;
            if (x.Count == 0) z = pz;
            else if (pz != z) even = false;
            x.Add(px);
            y.Add(py);
        }

        bool closed = x.Count > 3 && x[0] == x[^1] && y[0] == y[^1];
        if (closed)
        {
            x.RemoveAt(x.Count - 1);
            y.RemoveAt(y.Count - 1);
        }

        return ([.. x], [.. y], even && z != 0 ? z : double.NaN, closed);
    }

    private static bool TryPosition(JsonElement c, out double x, out double y, out double z)
    {
        x = y = 0;
        z = double.NaN;
        if (c.ValueKind != JsonValueKind.Array) return false;
        int n = c.GetArrayLength();
        if (n < 2 || !Number(c[0], out x) || !Number(c[1], out y)) return false;
        if (n > 2 && Number(c[2], out double height)) z = height;
        return true;
    }

    private static bool Number(JsonElement e, out double value)
    {
        value = 0;
        return e.ValueKind == JsonValueKind.Number && e.TryGetDouble(out value) && double.IsFinite(value);
    }

    private double DepthOf(JsonElement properties)
    {
        if (properties.ValueKind != JsonValueKind.Object) return double.NaN;
        if (_attribute is null)
        {
            List<string> names = [];
            foreach (JsonProperty property in properties.EnumerateObject())
                if (property.Value.ValueKind == JsonValueKind.Number || (property.Value.ValueKind == JsonValueKind.String && DepthText.TryParse(property.Value.GetString(), out _))) names.Add(property.Name);
            if (DepthAttribute.Choose(names, options) is not DepthAttribute chosen) return double.NaN;
            _attribute = chosen.Name;
            _unitNamed = chosen.Unit is not null;
            chosen.Tell(raw);
        }

        if (!properties.TryGetProperty(_attribute, out JsonElement value)) return double.NaN;
        if (Number(value, out double number)) return UnitBeside(properties) is DepthUnit own ? raw.Written(new DepthText(number, double.NaN, own)) : number;
        return value.ValueKind == JsonValueKind.String && DepthText.TryParse(value.GetString(), out DepthText written) ? raw.Written(written) : double.NaN;
    }

    // A property called unit tells each shape's own; what the name of the depth or the user says stands above it.
    private DepthUnit? UnitBeside(JsonElement properties)
    {
        if (options.Unit is not null || _unitNamed) return null;
        foreach (JsonProperty property in properties.EnumerateObject())
        {
            if (property.Value.ValueKind == JsonValueKind.String && HeaderWords.Split(property.Name).Exists(w => w is "unit" or "units" or "uom" or "einheit")
                && ColumnNumbers.UnitIn(property.Value.GetString()!.Trim()) is DepthUnit unit) return unit;
        }

        return null;
    }
}
