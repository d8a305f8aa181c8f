namespace SecondShore.Answers.Sheet.Drawing;

/// <summary>How a mark looks on paper. The house's marks are in <see cref="SheetMarks"/>.</summary>
/// <param name="Name">Its name, which is its class in a page's style.</param>
public sealed record SheetMark(string Name)
{
    /// <summary>Colour of its face, 0xRRGGBB; null leaves it open.</summary>
    public int? Fill { get; init; }

    /// <summary>Colour of its line; null draws none.</summary>
    public int? Stroke { get; init; }

    /// <summary>Width of its line, px.</summary>
    public double WidthPx { get; init; } = 1;

    /// <summary>How much of what lies under the line it hides, 0 to 1.</summary>
    public double Opacity { get; init; } = 1;

    /// <summary>Length of a dash, px; 0 draws through.</summary>
    public double DashPx { get; init; }

    /// <summary>Gap after a dash, px.</summary>
    public double GapPx { get; init; }

    /// <summary>Whether a line's ends are round, so that short dashes are dots.</summary>
    public bool RoundEnds { get; init; }
}

/// <summary>How a text looks on paper.</summary>
/// <param name="Name">Its name, which is its class in a page's style.</param>
/// <param name="SizePx">Size, px.</param>
/// <param name="Bold">Whether it is heavy.</param>
/// <param name="OnPlate">Whether what lies under it is hidden around its letters.</param>
public sealed record SheetLettering(string Name, double SizePx, bool Bold = false, bool OnPlate = false);
