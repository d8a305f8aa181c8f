namespace SecondShore.Answers.Sheet.Drawing;

/// <summary>A surface that the sheet's pictures are drawn on: px of 1/96 inch, x to the right, y down. A browser's page and a PDF each have one.</summary>
public interface ISheetCanvas
{
    /// <summary>Draws a line through points; two at least, else nothing.</summary>
    void Line(IReadOnlyList<SheetPoint> points, bool closed, SheetMark mark);

    /// <summary>Fills rings; a ring within another is a hole.</summary>
    void Area(IEnumerable<IReadOnlyList<SheetPoint>> rings, SheetMark mark);

    /// <summary>Draws a circle.</summary>
    void Circle(SheetPoint centre, double radiusPx, SheetMark mark);

    /// <summary>Writes one line of text; <paramref name="at"/> is on its base line.</summary>
    void Text(string text, SheetPoint at, SheetLettering lettering, SheetAnchor anchor);

    /// <summary>Begins what belongs together, as one mark among others of a name; ended by <see cref="EndGroup"/>.</summary>
    void BeginGroup(string name);

    /// <summary>Ends the group begun last.</summary>
    void EndGroup();

    /// <summary>From here on nothing is drawn outside a box, until <see cref="EndClip"/>.</summary>
    void BeginClip(double widthPx, double heightPx);

    /// <summary>Ends <see cref="BeginClip"/>.</summary>
    void EndClip();
}

/// <summary>A point of a drawing, px.</summary>
public readonly record struct SheetPoint(double X, double Y);

/// <summary>Which end of a text stands at its point.</summary>
public enum SheetAnchor
{
    /// <summary>Its first letter.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its last letter.</summary>
    End,
}
