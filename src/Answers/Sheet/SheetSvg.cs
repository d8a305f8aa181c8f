using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Sheet;

/// <summary>Draws the sheet's map as SVG: washes, contours, second shore, ways, passes, stops. Well-formed, no script.</summary>
internal sealed class SheetSvg
{
    public static readonly double MapWidthPx = 464, MapHeightPx = 440;
    private readonly SheetMap _map;
    private readonly StringBuilder _svg = new();
    private readonly double _pxPerM;

    private SheetSvg(SheetMap map)
    {
        _map = map;
        _pxPerM = MapWidthPx / map.WidthM;
    }

    public static string Map(SheetMap map, DayPlan plan, string rampName, bool metric)
    {
        var drawing = new SheetSvg(map);
        drawing.Open(plan);
        drawing.Water();
        foreach (PlannedLeg leg in plan.Legs) drawing.Path(leg.Line, false, "leg");
        foreach (PlannedStop stop in plan.Stops) drawing.Pass(stop.Candidate);
        foreach (HazardArea hazard in map.Hazards) drawing.Hazard(hazard);
        drawing.Ramp(rampName);
        drawing.Stops(plan);
        drawing._svg.Append("</g>");
        drawing.Frame(metric);
        return drawing._svg.Append("</svg>").ToString();
    }

    private void Open(DayPlan plan)
    {
        string stops = string.Join(", ", plan.Stops.Select(s => $"{s.Candidate.Letter} {s.Candidate.Name}"));
        _svg.Append(Fmt($"<svg class=\"map\" viewBox=\"-9 -9 {MapWidthPx + 18} {MapHeightPx + 18}\" role=\"img\" aria-label=\"{SheetHtml.Escape($"Map of the plan: {stops}")}\">"))
            .Append(Fmt($"<defs><clipPath id=\"frame\"><rect width=\"{MapWidthPx}\" height=\"{MapHeightPx}\"/></clipPath></defs><g clip-path=\"url(#frame)\">"));
    }

    private void Water()
    {
        for (int w = 0; w < _map.Washes.Count; w++)
        {
            if (_map.Washes[w].Count == 0) continue;
            _svg.Append(Fmt($"<path class=\"w{w}\" d=\""));
            foreach (PlanePoint[] ring in _map.Washes[w]) Data(ring, true);
            _svg.Append("\"/>");
        }

        foreach (SheetContour line in _map.Contours) Path(line.Points, line.Closed, line.Heavy ? "cn ix" : "cn");
        if (_map.Washes.Count > 0)
            foreach (PlanePoint[] ring in _map.Washes[0]) Path(ring, true, "shore");
        foreach (SheetContour line in _map.SecondShore) Path(line.Points, line.Closed, "s2c");
        foreach (SheetContour line in _map.SecondShore) Path(line.Points, line.Closed, "s2");
    }

    private void Pass(StopCandidate candidate)
    {
        if (candidate.Pass.Count < 2) return;
        Path(candidate.Pass, false, "pass0");
        Path(candidate.Pass, false, "pass");
        (double x, double y) = Px(candidate.Pass[^1]);
        (double bx, double by) = Px(candidate.Pass[^2]);
        double turnDeg = double.RadiansToDegrees(Math.Atan2(y - by, x - bx));
        _svg.Append(Fmt($"<path class=\"f\" transform=\"translate({x:0.#},{y:0.#}) rotate({turnDeg:0})\" d=\"M9,0L-4,-5.5L-1,0L-4,5.5Z\"/>"));
    }

    private void Hazard(HazardArea hazard)
    {
        (double x, double y) = Px(hazard.Centre);
        _svg.Append(Fmt($"<g class=\"k\" transform=\"translate({x:0.#},{y:0.#})\"><circle r=\"8\" stroke-dasharray=\"1.5 2.5\"/><path d=\"M-4,-4L4,4M-4,4L4,-4\"/></g>"));
    }

    private void Ramp(string name)
    {
        (double x, double y) = Px(_map.Ramp);
        bool right = x < MapWidthPx * 0.7;
        _svg.Append(Fmt($"<g class=\"ramp\" transform=\"translate({x:0.#},{y:0.#})\"><path d=\"M-6,-8H6L8.5,8H-8.5Z\"/><path class=\"k\" d=\"M-6.6,-3H6.6M-7.4,2.4H7.4\"/>"))
            .Append(Fmt($"<text class=\"ln\" x=\"{(right ? 14 : -14)}\" y=\"4\" text-anchor=\"{(right ? "start" : "end")}\">{SheetHtml.Escape(name)}</text></g>"));
    }

    private void Stops(DayPlan plan)
    {
        (double X, double Y)[] anchors = [.. plan.Stops.Select(s => Px(Anchor(s.Candidate)))];
        IReadOnlyList<(double DxPx, double DyPx)> offsets = StopLabels.Place(anchors, Px(_map.Ramp), MapWidthPx, MapHeightPx);
        for (int i = 0; i < anchors.Length; i++)
        {
            ((double x, double y), (double dx, double dy)) = (anchors[i], offsets[i]);
            _svg.Append(Fmt($"<g class=\"stop\" transform=\"translate({x:0.#},{y:0.#})\"><path class=\"k\" d=\"M0,0L{dx:0.#},{dy:0.#}\"/><circle class=\"f\" r=\"2.6\"/>"))
                .Append(Fmt($"<circle class=\"bg\" cx=\"{dx:0.#}\" cy=\"{dy:0.#}\" r=\"12.5\"/><text x=\"{dx:0.#}\" y=\"{dy + 5:0.#}\" text-anchor=\"middle\">{SheetHtml.Escape(plan.Stops[i].Candidate.Letter)}</text></g>"));
        }
    }

    private static PlanePoint Anchor(StopCandidate candidate) => candidate.Pass.Count > 1 ? candidate.Pass[candidate.Pass.Count / 2] : candidate.Place;

    // The frame is the scale: each bar is a quarter mile, or 500 m.
    private void Frame(bool metric)
    {
        double barPx = (metric ? 500.0 : 402.336) * _pxPerM;
        _svg.Append(Fmt($"<rect class=\"fr\" width=\"{MapWidthPx}\" height=\"{MapHeightPx}\"/><rect class=\"fr\" x=\"-8\" y=\"-8\" width=\"{MapWidthPx + 16}\" height=\"{MapHeightPx + 16}\"/>"));
        foreach (double y in (double[])[-4, MapHeightPx + 4])
            _svg.Append(Fmt($"<path class=\"bar\" d=\"M0,{y}H{MapWidthPx}\" stroke-dasharray=\"{barPx:0.##} {barPx:0.##}\"/>"));
        foreach (double x in (double[])[-4, MapWidthPx + 4])
            _svg.Append(Fmt($"<path class=\"bar\" d=\"M{x},0V{MapHeightPx}\" stroke-dasharray=\"{barPx:0.##} {barPx:0.##}\"/>"));
    }

    private void Path(IReadOnlyList<PlanePoint> points, bool closed, string style)
    {
        if (points.Count < 2) return;
        _svg.Append(Fmt($"<path class=\"{style}\" d=\""));
        Data(points, closed);
        _svg.Append("\"/>");
    }

    private void Data(IReadOnlyList<PlanePoint> points, bool closed)
    {
        for (int i = 0; i < points.Count; i++)
        {
            (double x, double y) = Px(points[i]);
            _svg.Append(i == 0 ? 'M' : 'L').Append(Fmt($"{x:0.#},{y:0.#}"));
        }

        if (closed) _svg.Append('Z');
    }

    private (double X, double Y) Px(PlanePoint p) => ((p.XM - _map.WestM) * _pxPerM, MapHeightPx - ((p.YM - _map.SouthM) * _pxPerM));

    private static string Fmt(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
