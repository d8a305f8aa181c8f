using System.Xml;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Kml;

/// <summary>Reads placemarks into a raw survey.</summary>
internal sealed class KmlPlacemarks(RawSurvey raw, SurveyOptions options)
{
    private readonly List<double> _x = [], _y = [], _z = [];
    private readonly List<(Shape Shape, double[] X, double[] Y, double[] Z)> _found = [];
    private DepthAttribute? _attribute;
    private bool _byName;

    private enum Shape
    {
        Point,
        Line,
        Outer,
        Inner,
    }

    public int Count { get; private set; }

    public int Bad { get; private set; }

    /// <summary>Reads the placemark the reader stands on.</summary>
    public void Read(XmlReader xml)
    {
        Count++;
        int outer = xml.Depth;
        string element = "", dataName = "", name = "", described = "";
        double depth = double.NaN;
        Shape shape = Shape.Point;
        _found.Clear();
        while (xml.Read() && xml.Depth > outer)
        {
            if (xml.NodeType == XmlNodeType.Element)
            {
                element = xml.LocalName;
                shape = element switch
                {
                    "Point" => Shape.Point,
                    "LineString" or "LinearRing" when shape is not (Shape.Outer or Shape.Inner) || element == "LineString" => Shape.Line,
                    "outerBoundaryIs" => Shape.Outer,
                    "innerBoundaryIs" => Shape.Inner,
                    _ => shape,
                };
                if (element is "Data" or "SimpleData") dataName = xml.GetAttribute("name") ?? "";
            }
            else if (xml.NodeType == XmlNodeType.EndElement)
            {
                if (xml.LocalName is "outerBoundaryIs" or "innerBoundaryIs") shape = Shape.Point;
                element = "";
            }
            else if (xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA)
            {
                if (element == "coordinates") Coordinates(xml.Value, shape);
                else if (element == "name" && xml.Depth == outer + 2) name = xml.Value;
                else if (element is "value" or "SimpleData" && DepthText.TryParse(xml.Value, out DepthText written) && IsDepth(dataName)) depth = raw.Written(written);
                else if (element == "description" && xml.Depth == outer + 2) described = xml.Value;
            }
        }

        if (double.IsNaN(depth) && NameAsDepth(name, out double named)) depth = named;
        if (double.IsNaN(depth) && Described(described, out named)) depth = named;
        Place(depth);
    }

    /// <summary>Hands the points over.</summary>
    public void Finish()
    {
        if (_x.Count > 0) raw.Points.Add(new RawPoints([.. _x], [.. _y], [.. _z], []));
        _attribute?.Tell(raw);
        if (_attribute is not null) raw.RolesTaken.Add($"{_attribute.Name}: depth");
        if (_byName) raw.Doubts.Add("The placemarks' names are numbers and are taken as depths.");
    }

    private void Place(double depth)
    {
        List<(double[] X, double[] Y)> islands = [];
        (double[] X, double[] Y)? water = null;
        foreach ((Shape shape, double[] x, double[] y, double[] z) in _found)
        {
            double level = !double.IsNaN(depth) ? depth : Even(z);
            if (shape == Shape.Point)
            {
                for (int i = 0; i < x.Length; i++)
                {
                    _x.Add(x[i]);
                    _y.Add(y[i]);
                    _z.Add(!double.IsNaN(depth) ? depth : z[i] == 0 ? double.NaN : z[i]);
                }

                continue;
            }

            bool closed = x.Length > 3 && x[0] == x[^1] && y[0] == y[^1];
            double[] rx = closed ? x[..^1] : x, ry = closed ? y[..^1] : y;
            if (rx.Length < 2 || (rx.Length < 3 && shape != Shape.Line)) continue;
            if (!double.IsNaN(level)) raw.Lines.Add(new RawLine(rx, ry, level, closed || shape != Shape.Line));
            else if (shape == Shape.Inner) islands.Add((rx, ry));
            else if (shape == Shape.Outer || closed)
            {
                if (water is { } earlier) raw.Polygons.Add(new RawPolygon(earlier, [.. islands]));
                islands.Clear();
                water = (rx, ry);
            }
        }

        if (water is { } last) raw.Polygons.Add(new RawPolygon(last, islands));
    }

    private void Coordinates(string text, Shape shape)
    {
        List<double> x = [], y = [], z = [];
        foreach (string token in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            string[] parts = token.Split(',', 4);
            if (parts.Length < 2 || !NumberText.TryParse(parts[0], false, out double lon) || !NumberText.TryParse(parts[1], false, out double lat))
            {
                Bad++;
                continue;
            }

            x.Add(lon);
            y.Add(lat);
            z.Add(parts.Length > 2 && NumberText.TryParse(parts[2], false, out double height) ? height : 0);
        }

        if (x.Count > 0) _found.Add((shape, [.. x], [.. y], [.. z]));
    }

    private bool IsDepth(string name)
    {
        if (_attribute is not null) return name == _attribute.Name;
        _attribute = DepthAttribute.Choose([name], options);
        return _attribute is not null;
    }

    private bool NameAsDepth(string name, out double depth)
    {
        depth = 0;
        if (!DepthText.TryParse(name, out DepthText written) || !(Math.Abs(written.Begin) < 2000)) return false;
        depth = raw.Written(written);
        _byName = true;
        return true;
    }

    // "Depth: 15 m": a word for depth, and nothing but a depth up to the end of its line.
    private bool Described(string text, out double depth)
    {
        depth = 0;
        foreach (string line in text.Split(['\n', '<', ';'], 20))
        {
            int colon = line.IndexOfAny([':', '=']);
            if (colon < 1 || colon > 40 || DepthAttribute.Of(line[..colon]) is not { Sense: not null } told || !DepthText.TryParse(line.AsSpan(colon + 1), out DepthText written)) continue;
            _attribute ??= told;
            depth = raw.Written(written);
            return true;
        }

        return false;
    }

    private static double Even(double[] z)
    {
        foreach (double value in z) if (value != z[0]) return double.NaN;
        return z.Length == 0 || z[0] == 0 ? double.NaN : z[0];
    }
}
