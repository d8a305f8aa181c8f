using PdfSharp.Drawing;
using SecondShore.Answers.Sheet;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;

namespace SecondShore.Sheets;

/// <summary>The sheet's map as vectors: washes of depth, contours, second shore, ways, passes, stops.</summary>
internal sealed class PdfMap
{
    public static readonly double WidthPx = 464, HeightPx = 440;

    private static readonly int[] WashGreys = [0xF3, 0xEA, 0xE1, 0xD7, 0xCC, 0xC0, 0xB3, 0xA6, 0x99, 0x8C];
    private static readonly XColor InkColour = XColor.FromArgb(0x10, 0x18, 0x1F), Accent = XColor.FromArgb(0xB0, 0x2C, 0x00);
    private readonly XGraphics _graphics;
    private readonly SheetMap _map;
    private readonly double _pxPerM;

    private PdfMap(XGraphics graphics, SheetMap map)
    {
        (_graphics, _map) = (graphics, map);
        _pxPerM = WidthPx / map.WidthM;
    }

    /// <summary>Draws the map at a place and a scale; the frame's bars are a quarter mile, or 500 m.</summary>
    public static void Draw(XGraphics graphics, DaySheetModel model, double xPx, double yPx, double scale)
    {
        PdfMap drawing = new(graphics, model.Map);
        XGraphicsState outer = graphics.Save();
        graphics.TranslateTransform(xPx, yPx);
        graphics.ScaleTransform(scale);
        XGraphicsState inner = graphics.Save();
        graphics.IntersectClip(new XRect(0, 0, WidthPx, HeightPx));
        drawing.Water();
        foreach (PlannedLeg leg in model.Plan.Legs) drawing.Line(leg.Line, false, Pen(InkColour, 1.5, 1, 3));
        foreach (PlannedStop stop in model.Plan.Stops) drawing.Pass(stop.Candidate);
        foreach (HazardArea hazard in model.Map.Hazards) drawing.Hazard(hazard);
        drawing.Ramp(model.RampName);
        drawing.Stops(model.Plan);
        graphics.Restore(inner);
        drawing.Frame(model.Units.IsMetric);
        graphics.Restore(outer);
    }

    private void Water()
    {
        for (int w = 0; w < _map.Washes.Count; w++)
        {
            int grey = WashGreys[Math.Min(w, WashGreys.Length - 1)];
            Fill(_map.Washes[w], new XSolidBrush(XColor.FromArgb(grey, grey, grey)));
        }

        foreach (SheetContour line in _map.Contours)
            Line(line.Points, line.Closed, Pen(XColor.FromArgb(line.Heavy ? 0x75 : 0x95, line.Heavy ? 0x80 : 0x9D, line.Heavy ? 0x8A : 0xA5), line.Heavy ? 1.0 : 0.6));
        if (_map.Washes.Count > 0)
            foreach (PlanePoint[] ring in _map.Washes[0]) Line(ring, true, Pen(InkColour, 1.5));
        foreach (SheetContour line in _map.SecondShore) Line(line.Points, line.Closed, Pen(XColors.White, 6.5));
        foreach (SheetContour line in _map.SecondShore) Line(line.Points, line.Closed, Pen(Accent, 2.8));
    }

    private void Pass(StopCandidate candidate)
    {
        if (candidate.Pass.Count < 2) return;
        Line(candidate.Pass, false, Pen(XColors.White, 6));
        Line(candidate.Pass, false, Pen(InkColour, 2.6, 3.5, 1.5));
        XPoint tip = Px(candidate.Pass[^1]), before = Px(candidate.Pass[^2]);
        double angle = Math.Atan2(tip.Y - before.Y, tip.X - before.X);
        XPoint[] arrow = [At(9, 0), At(-4, -5.5), At(-1, 0), At(-4, 5.5)];
        _graphics.DrawPolygon(PdfText.Ink, arrow, XFillMode.Winding);

        XPoint At(double along, double across) => new(tip.X + (along * Math.Cos(angle)) - (across * Math.Sin(angle)), tip.Y + (along * Math.Sin(angle)) + (across * Math.Cos(angle)));
    }

    private void Hazard(HazardArea hazard)
    {
        XPoint p = Px(hazard.Centre);
        XPen pen = Pen(InkColour, 1.4);
        _graphics.DrawEllipse(Pen(InkColour, 1.4, 1, 1.6), p.X - 8, p.Y - 8, 16, 16);
        _graphics.DrawLine(pen, p.X - 4, p.Y - 4, p.X + 4, p.Y + 4);
        _graphics.DrawLine(pen, p.X - 4, p.Y + 4, p.X + 4, p.Y - 4);
    }

    private void Ramp(string name)
    {
        XPoint p = Px(_map.Ramp);
        _graphics.DrawPolygon(Pen(InkColour, 1.6), XBrushes.White, [new(p.X - 6, p.Y - 8), new(p.X + 6, p.Y - 8), new(p.X + 8.5, p.Y + 8), new(p.X - 8.5, p.Y + 8)], XFillMode.Winding);
        _graphics.DrawLine(Pen(InkColour, 1.4), p.X - 6.6, p.Y - 3, p.X + 6.6, p.Y - 3);
        _graphics.DrawLine(Pen(InkColour, 1.4), p.X - 7.4, p.Y + 2.4, p.X + 7.4, p.Y + 2.4);
        PdfText text = new(_graphics, 1);
        double width = text.WidthPx(name, 12, true), x = p.X < WidthPx * 0.7 ? p.X + 14 : p.X - 14 - width;
        _graphics.DrawRectangle(new XSolidBrush(XColor.FromArgb(225, 255, 255, 255)), x - 2, p.Y - 8, width + 4, 16);
        text.Draw(name, x, p.Y - 8, 400, 12, true);
    }

    private void Stops(DayPlan plan)
    {
        XPoint[] anchors = [.. plan.Stops.Select(s => Px(s.Candidate.Pass.Count > 1 ? s.Candidate.Pass[s.Candidate.Pass.Count / 2] : s.Candidate.Place))];
        XPoint ramp = Px(_map.Ramp);
        IReadOnlyList<(double DxPx, double DyPx)> offsets = StopLabels.Place([.. anchors.Select(a => (a.X, a.Y))], (ramp.X, ramp.Y), WidthPx, HeightPx);
        PdfText text = new(_graphics, 1);
        for (int i = 0; i < anchors.Length; i++)
        {
            (double x, double y, double dx, double dy) = (anchors[i].X, anchors[i].Y, offsets[i].DxPx, offsets[i].DyPx);
            _graphics.DrawLine(Pen(InkColour, 1.6), x, y, x + dx, y + dy);
            _graphics.DrawEllipse(PdfText.Ink, x - 2.6, y - 2.6, 5.2, 5.2);
            _graphics.DrawEllipse(Pen(InkColour, 1.6), XBrushes.White, x + dx - 12.5, y + dy - 12.5, 25, 25);
            text.Centre(plan.Stops[i].Candidate.Letter, x + dx, y + dy, 13, true);
        }
    }

    private void Frame(bool metric)
    {
        double barPx = (metric ? 500.0 : 402.336) * _pxPerM;
        _graphics.DrawRectangle(Pen(InkColour, 1), 0, 0, WidthPx, HeightPx);
        _graphics.DrawRectangle(Pen(InkColour, 1), -8, -8, WidthPx + 16, HeightPx + 16);
        for (double at = 0; at < WidthPx; at += 2 * barPx)
            foreach (double y in (double[])[-4, HeightPx + 4]) _graphics.DrawLine(Pen(InkColour, 3), at, y, Math.Min(WidthPx, at + barPx), y);
        for (double at = 0; at < HeightPx; at += 2 * barPx)
            foreach (double x in (double[])[-4, WidthPx + 4]) _graphics.DrawLine(Pen(InkColour, 3), x, at, x, Math.Min(HeightPx, at + barPx));
    }

    private void Fill(IReadOnlyList<PlanePoint[]> rings, XBrush brush)
    {
        XGraphicsPath path = new() { FillMode = XFillMode.Alternate };
        bool any = false;
        foreach (PlanePoint[] ring in rings)
        {
            if (ring.Length < 3) continue;
            path.StartFigure();
            path.AddPolygon([.. ring.Select(Px)]);
            any = true;
        }

        if (any) _graphics.DrawPath(brush, path);
    }

    private void Line(IReadOnlyList<PlanePoint> points, bool closed, XPen pen)
    {
        if (points.Count < 2) return;
        XPoint[] px = [.. points.Select(Px)];
        if (closed && px.Length > 2) _graphics.DrawPolygon(pen, px);
        else _graphics.DrawLines(pen, px);
    }

    private XPoint Px(PlanePoint p) => new((p.XM - _map.WestM) * _pxPerM, HeightPx - ((p.YM - _map.SouthM) * _pxPerM));

    // A dash is given in widths of the pen.
    private static XPen Pen(XColor colour, double width, double dash = 0, double gap = 0)
    {
        XPen pen = new(colour, width) { LineJoin = XLineJoin.Round, LineCap = dash > 0 && dash <= 1 ? XLineCap.Round : XLineCap.Flat };
        if (dash > 0) pen.DashPattern = [dash, gap];
        return pen;
    }
}
