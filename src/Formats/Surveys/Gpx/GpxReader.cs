using System.Text;
using System.Xml;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Gpx;

/// <summary>Reads GPX 1.0 and 1.1: points with a depth among their extensions, or, where the user says so, in their height.</summary>
internal sealed class GpxReader : ISurveyReader
{
    public string Format => "GPX";

    public double Sniff(SurveySource source)
    {
        string head = Encoding.UTF8.GetString(source.Bytes.AsSpan(0, Math.Min(source.Bytes.Length, 3000)));
        return head.Contains("<gpx", StringComparison.OrdinalIgnoreCase) ? 0.98 : source.Ending == "gpx" ? 0.5 : 0;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        GpxPoints points = new();
        try
        {
            using XmlReader xml = SafeXml.Open(source.Bytes);
            while (xml.Read())
            {
                if (xml.NodeType == XmlNodeType.Element) points.Element(xml, cancellation);
            }
        }
        catch (XmlException e)
        {
            if (!SafeXml.Tell(source.Name, source.Bytes, e, log, points.Count > 0)) return null;
        }

        RawSurvey raw = new(Format) { Crs = CoordinateSystem.Degrees, CrsKnown = Knowledge.Stated };
        points.Into(raw, options);
        if (points.Bad > 0) log.Warn(source.Name, $"{points.Bad} points have no usable lat and lon and are not used.");
        return raw;
    }

    private sealed class GpxPoints
    {
        private readonly List<double> _x = [], _y = [], _depth = [], _height = [];
        private readonly List<int> _breaks = [];
        private DepthAttribute? _named;

        public int Count => _x.Count;

        public int Bad { get; private set; }

        public void Element(XmlReader xml, CancellationToken cancellation)
        {
            switch (xml.LocalName)
            {
                case "wpt" or "rtept" or "trkpt": Point(xml, cancellation); break;
                case "trkseg" or "rte" when _x.Count > 0: _breaks.Add(_x.Count); break;
                default: break;
            }
        }

        public void Into(RawSurvey raw, SurveyOptions options)
        {
            bool depths = _depth.Exists(d => !double.IsNaN(d));
            double[] heights = [.. _height.Where(h => !double.IsNaN(h))];
            bool useHeights = !depths && (options.Sense is not null || string.Equals(options.DepthColumn, "ele", StringComparison.OrdinalIgnoreCase));
            if (depths) (raw.Sense, raw.SenseKnown, raw.Unit, raw.UnitKnown) = (DepthSense.Depth, Knowledge.Stated, _named?.Unit, _named?.Unit is null ? Knowledge.Assumed : Knowledge.Stated);
            else if (!useHeights && heights.Length > 0) raw.Doubts.Add("The points carry heights (ele), which are not taken as depths unless survey.sense says so.");
            if (_named is not null) raw.RolesTaken.Add($"{_named.Name}: depth");
            if (_x.Count > 0) raw.Points.Add(new RawPoints([.. _x], [.. _y], [.. depths ? _depth : useHeights ? _height : _depth], _breaks));
        }

        private void Point(XmlReader xml, CancellationToken cancellation)
        {
            if (_x.Count % 10_000 == 0) cancellation.ThrowIfCancellationRequested();
            bool ok = Number(xml.GetAttribute("lat"), out double lat) & Number(xml.GetAttribute("lon"), out double lon);
            double depth = double.NaN, height = double.NaN;
            if (!xml.IsEmptyElement) ReadInside(xml, ref depth, ref height);
            if (!ok)
            {
                Bad++;
                return;
            }

            _x.Add(lon);
            _y.Add(lat);
            _depth.Add(depth);
            _height.Add(height);
        }

        // Foreign elements may hold others with text between them: the innermost name decides.
        private void ReadInside(XmlReader xml, ref double depth, ref double height)
        {
            int outer = xml.Depth;
            string name = "";
            while (xml.Read() && xml.Depth > outer)
            {
                if (xml.NodeType == XmlNodeType.Element) name = xml.LocalName;
                else if (xml.NodeType == XmlNodeType.EndElement) name = "";
                else if (xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA && Number(xml.Value, out double value))
                {
                    if (name == "ele") height = value;
                    else if (DepthAttribute.Of(name) is { Sense: DepthSense.Depth } attribute) (depth, _named) = (value, attribute);
                }
            }
        }

        private static bool Number(string? text, out double value) => NumberText.TryParse(text, false, out value);
    }
}
