using System.Globalization;
using System.Text;

namespace SecondShore.Answers.Sheet.Drawing;

/// <summary>Draws into a picture of a page: well-formed SVG, no script; marks look as <see cref="SheetMarks.Css"/> says.</summary>
internal sealed class SvgCanvas : ISheetCanvas
{
    private readonly StringBuilder _svg = new();

    /// <summary>Opens a picture.</summary>
    /// <param name="name">Class of the picture; the frame that clips is named after it.</param>
    /// <param name="viewBox">What is seen of it: left, top, width and height, px.</param>
    /// <param name="instead">What it says to who cannot see it.</param>
    public SvgCanvas(string name, (double Left, double Top, double Width, double Height) viewBox, string instead)
    {
        Name = name;
        (double left, double top, double width, double height) = viewBox;
        Put($"<svg class=\"{name}\" viewBox=\"{left} {top} {width} {height}\" role=\"img\" aria-label=\"{SheetHtml.Escape(instead)}\">");
    }

    private string Name { get; }

    /// <summary>The picture.</summary>
    public string Close() => _svg.Append("</svg>").ToString();

    /// <inheritdoc/>
    public void Line(IReadOnlyList<SheetPoint> points, bool closed, SheetMark mark)
    {
        if (points.Count < 2) return;
        Put($"<path class=\"{mark.Name}\" d=\"");
        Data(points, closed);
        _svg.Append("\"/>");
    }

    /// <inheritdoc/>
    public void Area(IEnumerable<IReadOnlyList<SheetPoint>> rings, SheetMark mark)
    {
        bool any = false;
        foreach (IReadOnlyList<SheetPoint> ring in rings)
        {
            if (ring.Count < 3) continue;
            if (!any) Put($"<path class=\"{mark.Name}\" fill-rule=\"evenodd\" d=\"");
            any = true;
            Data(ring, true);
        }

        if (any) _svg.Append("\"/>");
    }

    /// <inheritdoc/>
    public void Circle(SheetPoint centre, double radiusPx, SheetMark mark) =>
        Put($"<circle class=\"{mark.Name}\" cx=\"{centre.X:0.#}\" cy=\"{centre.Y:0.#}\" r=\"{radiusPx:0.#}\"/>");

    /// <inheritdoc/>
    public void Text(string text, SheetPoint at, SheetLettering lettering, SheetAnchor anchor)
    {
        string end = anchor switch { SheetAnchor.Middle => " text-anchor=\"middle\"", SheetAnchor.End => " text-anchor=\"end\"", _ => "" };
        Put($"<text class=\"{lettering.Name}\" x=\"{at.X:0.#}\" y=\"{at.Y:0.#}\"{end}>{SheetHtml.Escape(text)}</text>");
    }

    /// <inheritdoc/>
    public void BeginGroup(string name) => Put($"<g class=\"{name}\">");

    /// <inheritdoc/>
    public void EndGroup() => _svg.Append("</g>");

    /// <inheritdoc/>
    public void BeginClip(double widthPx, double heightPx)
    {
        Put($"<defs><clipPath id=\"in-{Name}\"><rect width=\"{widthPx}\" height=\"{heightPx}\"/></clipPath></defs>");
        Put($"<g clip-path=\"url(#in-{Name})\">");
    }

    /// <inheritdoc/>
    public void EndClip() => EndGroup();

    private void Data(IReadOnlyList<SheetPoint> points, bool closed)
    {
        for (int i = 0; i < points.Count; i++) Put($"{(i == 0 ? 'M' : 'L')}{points[i].X:0.#},{points[i].Y:0.#}");
        if (closed) _svg.Append('Z');
    }

    private void Put(FormattableString text) => _svg.Append(text.ToString(CultureInfo.InvariantCulture));
}
