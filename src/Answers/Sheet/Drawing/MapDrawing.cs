using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Sheet.Drawing;

/// <summary>The sheet's map: washes of depth, contours, second shore, ways, passes, hazards, ramp and stops, in a frame that is the scale.</summary>
public sealed class MapDrawing
{
    /// <summary>Width of the map within its frame, px.</summary>
    public static readonly double WidthPx = 464;

    /// <summary>Height of the map within its frame, px.</summary>
    public static readonly double HeightPx = 440;

    /// <summary>Width of the frame around it, px.</summary>
    public static readonly double FramePx = 8;

    private readonly ISheetCanvas _canvas;
    private readonly SheetMap _map;
    private readonly double _pxPerM;

    private MapDrawing(ISheetCanvas canvas, SheetMap map)
    {
        (_canvas, _map) = (canvas, map);
        _pxPerM = WidthPx / map.WidthM;
    }

    /// <summary>Draws the map with its corner at 0, 0; the frame lies around it.</summary>
    public static void Draw(ISheetCanvas canvas, DaySheetModel model)
    {
        MapDrawing drawing = new(Require.NotNull(canvas), Require.NotNull(model).Map);
        canvas.BeginClip(WidthPx, HeightPx);
        drawing.Water();
        foreach (PlannedLeg leg in model.Plan.Legs) drawing.Line(leg.Line, false, SheetMarks.Leg);
        foreach (PlannedStop stop in model.Plan.Stops) drawing.Pass(stop.Candidate);
        foreach (HazardArea hazard in model.Map.Hazards) drawing.Hazard(hazard);
        drawing.Ramp(model.RampName);
        drawing.Stops(model.Plan);
        canvas.EndClip();
        drawing.Frame(model.Units.IsMetric ? 500 : Length.MetresPerMile / 4);
    }

    private void Water()
    {
        for (int w = 0; w < _map.Washes.Count; w++) _canvas.Area(_map.Washes[w].Select(Px), SheetMarks.Washes[Math.Min(w, SheetMarks.Washes.Count - 1)]);
        foreach (SheetContour line in _map.Contours) Line(line.Points, line.Closed, line.Heavy ? SheetMarks.HeavyContour : SheetMarks.Contour);
        if (_map.Washes.Count > 0)
            foreach (PlanePoint[] ring in _map.Washes[0]) Line(ring, true, SheetMarks.Shore);
        foreach (SheetContour line in _map.SecondShore) Line(line.Points, line.Closed, SheetMarks.SecondShoreGap);
        foreach (SheetContour line in _map.SecondShore) Line(line.Points, line.Closed, SheetMarks.SecondShore);
    }

    private void Pass(StopCandidate candidate)
    {
        if (candidate.Pass.Count < 2) return;
        Line(candidate.Pass, false, SheetMarks.PassGap);
        Line(candidate.Pass, false, SheetMarks.Pass);
        SheetPoint tip = Px(candidate.Pass[^1]), before = Px(candidate.Pass[^2]);
        (double sin, double cos) = Math.SinCos(Math.Atan2(tip.Y - before.Y, tip.X - before.X));
        _canvas.Area([[At(9, 0), At(-4, -5.5), At(-1, 0), At(-4, 5.5)]], SheetMarks.Full);

        SheetPoint At(double along, double across) => new(tip.X + (along * cos) - (across * sin), tip.Y + (along * sin) + (across * cos));
    }

    private void Hazard(HazardArea hazard)
    {
        SheetPoint p = Px(hazard.Centre);
        _canvas.Circle(p, 8, SheetMarks.HazardRing);
        _canvas.Line([new(p.X - 4, p.Y - 4), new(p.X + 4, p.Y + 4)], false, SheetMarks.Thin);
        _canvas.Line([new(p.X - 4, p.Y + 4), new(p.X + 4, p.Y - 4)], false, SheetMarks.Thin);
    }

    private void Ramp(string name)
    {
        SheetPoint p = Px(_map.Ramp);
        _canvas.Area([[new(p.X - 6, p.Y - 8), new(p.X + 6, p.Y - 8), new(p.X + 8.5, p.Y + 8), new(p.X - 8.5, p.Y + 8)]], SheetMarks.Plate);
        _canvas.Line([new(p.X - 6.6, p.Y - 3), new(p.X + 6.6, p.Y - 3)], false, SheetMarks.Thin);
        _canvas.Line([new(p.X - 7.4, p.Y + 2.4), new(p.X + 7.4, p.Y + 2.4)], false, SheetMarks.Thin);
        bool right = p.X < WidthPx * 0.7;
        _canvas.Text(name, new(right ? p.X + 14 : p.X - 14, p.Y + 4), SheetMarks.Name, right ? SheetAnchor.Start : SheetAnchor.End);
    }

    private void Stops(DayPlan plan)
    {
        SheetPoint[] anchors = [.. plan.Stops.Select(s => Px(Middle(s.Candidate)))];
        SheetPoint ramp = Px(_map.Ramp);
        IReadOnlyList<(double DxPx, double DyPx)> offsets = StopLabels.Place([.. anchors.Select(a => (a.X, a.Y))], (ramp.X, ramp.Y), WidthPx, HeightPx);
        for (int i = 0; i < anchors.Length; i++)
        {
            SheetPoint anchor = anchors[i], label = new(anchor.X + offsets[i].DxPx, anchor.Y + offsets[i].DyPx);
            _canvas.BeginGroup("stop");
            _canvas.Line([anchor, label], false, SheetMarks.Thin);
            _canvas.Circle(anchor, 2.6, SheetMarks.Full);
            _canvas.Circle(label, 12.5, SheetMarks.Plate);
            _canvas.Text(plan.Stops[i].Candidate.Letter, label with { Y = label.Y + 5 }, SheetMarks.Letter, SheetAnchor.Middle);
            _canvas.EndGroup();
        }
    }

    private static PlanePoint Middle(StopCandidate candidate) => candidate.Pass.Count > 1 ? candidate.Pass[candidate.Pass.Count / 2] : candidate.Place;

    // The frame is the scale: each bar and each gap is as long.
    private void Frame(double barM)
    {
        double barPx = barM * _pxPerM, mid = FramePx / 2;
        Box(0, 0, WidthPx, HeightPx);
        Box(-FramePx, -FramePx, WidthPx + FramePx, HeightPx + FramePx);
        for (double at = 0; at < WidthPx; at += 2 * barPx)
            foreach (double y in (double[])[-mid, HeightPx + mid]) _canvas.Line([new(at, y), new(Math.Min(WidthPx, at + barPx), y)], false, SheetMarks.ScaleBar);
        for (double at = 0; at < HeightPx; at += 2 * barPx)
            foreach (double x in (double[])[-mid, WidthPx + mid]) _canvas.Line([new(x, at), new(x, Math.Min(HeightPx, at + barPx))], false, SheetMarks.ScaleBar);
    }

    private void Box(double left, double top, double right, double bottom) =>
        _canvas.Line([new(left, top), new(right, top), new(right, bottom), new(left, bottom)], true, SheetMarks.Frame);

    private void Line(IReadOnlyList<PlanePoint> points, bool closed, SheetMark mark) => _canvas.Line(Px(points), closed, mark);

    private SheetPoint[] Px(IReadOnlyList<PlanePoint> points) => [.. points.Select(Px)];

    private SheetPoint Px(PlanePoint p) => new((p.XM - _map.WestM) * _pxPerM, HeightPx - ((p.YM - _map.SouthM) * _pxPerM));
}
