using PdfSharp.Drawing;
using SecondShore.Answers.Sheet.Drawing;

namespace SecondShore.Sheets;

/// <summary>Draws into a page of PDF, as vectors and text.</summary>
internal sealed class PdfCanvas(XGraphics graphics) : ISheetCanvas
{
    private const double PlateEdgePx = 2;
    private readonly Stack<XGraphicsState> _clips = new();

    /// <summary>Runs a drawing with its corner at a place, at a scale.</summary>
    public static void At(XGraphics graphics, double xPx, double yPx, double scale, Action<ISheetCanvas> draw)
    {
        XGraphicsState outer = graphics.Save();
        graphics.TranslateTransform(xPx, yPx);
        graphics.ScaleTransform(scale);
        draw(new PdfCanvas(graphics));
        graphics.Restore(outer);
    }

    /// <inheritdoc/>
    public void Line(IReadOnlyList<SheetPoint> points, bool closed, SheetMark mark)
    {
        if (points.Count < 2 || Pen(mark) is not { } pen) return;
        if (closed && points.Count > 2) graphics.DrawPolygon(pen, Px(points));
        else graphics.DrawLines(pen, Px(points));
    }

    /// <inheritdoc/>
    public void Area(IEnumerable<IReadOnlyList<SheetPoint>> rings, SheetMark mark)
    {
        XGraphicsPath path = new() { FillMode = XFillMode.Alternate };
        bool any = false;
        foreach (IReadOnlyList<SheetPoint> ring in rings.Where(r => r.Count > 2))
        {
            path.StartFigure();
            path.AddPolygon(Px(ring));
            any = true;
        }

        if (!any) return;
        if (mark.Fill is int fill) graphics.DrawPath(Brush(fill, 1), path);
        if (Pen(mark) is { } pen) graphics.DrawPath(pen, path);
    }

    /// <inheritdoc/>
    public void Circle(SheetPoint centre, double radiusPx, SheetMark mark)
    {
        XRect box = new(centre.X - radiusPx, centre.Y - radiusPx, 2 * radiusPx, 2 * radiusPx);
        if (mark.Fill is int fill) graphics.DrawEllipse(Brush(fill, 1), box);
        if (Pen(mark) is { } pen) graphics.DrawEllipse(pen, box);
    }

    /// <inheritdoc/>
    public void Text(string text, SheetPoint at, SheetLettering lettering, SheetAnchor anchor)
    {
        XFont font = SheetFonts.Of(lettering.SizePx, lettering.Bold);
        string plain = PdfText.Plain(text);
        double width = graphics.MeasureString(plain, font).Width;
        double left = at.X - anchor switch { SheetAnchor.Middle => width / 2, SheetAnchor.End => width, _ => 0 };
        if (lettering.OnPlate)
            graphics.DrawRectangle(Brush(0xFFFFFF, 0.88), left - PlateEdgePx, at.Y - lettering.SizePx, width + (2 * PlateEdgePx), lettering.SizePx * 4 / 3);
        graphics.DrawString(plain, font, PdfText.Ink, new XPoint(left, at.Y));
    }

    /// <inheritdoc/>
    public void BeginGroup(string name)
    {
    }

    /// <inheritdoc/>
    public void EndGroup()
    {
    }

    /// <inheritdoc/>
    public void BeginClip(double widthPx, double heightPx)
    {
        _clips.Push(graphics.Save());
        graphics.IntersectClip(new XRect(0, 0, widthPx, heightPx));
    }

    /// <inheritdoc/>
    public void EndClip() => graphics.Restore(_clips.Pop());

    private static XPoint[] Px(IReadOnlyList<SheetPoint> points) => [.. points.Select(p => new XPoint(p.X, p.Y))];

    private static XSolidBrush Brush(int rgb, double opacity) => new(Colour(rgb, opacity));

    private static XColor Colour(int rgb, double opacity) => XColor.FromArgb((int)Math.Round(255 * opacity), rgb >> 16, (rgb >> 8) & 0xFF, rgb & 0xFF);

    // A dash is given in widths of the pen.
    private static XPen? Pen(SheetMark mark)
    {
        if (mark.Stroke is not int stroke) return null;
        XPen pen = new(Colour(stroke, mark.Opacity), mark.WidthPx) { LineJoin = XLineJoin.Round, LineCap = mark.RoundEnds ? XLineCap.Round : XLineCap.Flat };
        if (mark.DashPx > 0) pen.DashPattern = [mark.DashPx / mark.WidthPx, mark.GapPx / mark.WidthPx];
        return pen;
    }
}
