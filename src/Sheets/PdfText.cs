using PdfSharp.Drawing;

namespace SecondShore.Sheets;

/// <summary>Text on the page: wrapped to a width, measured as drawn.</summary>
internal sealed class PdfText(XGraphics graphics, double scale)
{
    private const double LineShare = 1.32;

    public static readonly XBrush Ink = new XSolidBrush(XColor.FromArgb(0x10, 0x18, 0x1F));

    /// <summary>Draws text wrapped to a width and returns the height it took, px.</summary>
    public double Draw(string text, double xPx, double yPx, double widthPx, double sizePx, bool bold = false)
    {
        XFont font = Font(sizePx, bold);
        double lineHeight = sizePx * scale * LineShare, y = yPx;
        foreach (string line in Lines(text, font, widthPx))
        {
            graphics.DrawString(line, font, Ink, new XPoint(xPx, y + (sizePx * scale)));
            y += lineHeight;
        }

        return y - yPx;
    }

    /// <summary>Draws a bold lead and text that flows on behind it; returns the height it took, px.</summary>
    public double Lead(string lead, string text, double xPx, double yPx, double widthPx, double sizePx)
    {
        XFont bold = Font(sizePx, true);
        graphics.DrawString(lead, bold, Ink, new XPoint(xPx, yPx + (sizePx * scale)));
        double indent = graphics.MeasureString(lead + " ", bold).Width;
        XFont font = Font(sizePx, false);
        double lineHeight = sizePx * scale * LineShare, y = yPx;
        bool isFirst = true;
        foreach (string line in Lines(text, font, widthPx, indent))
        {
            graphics.DrawString(line, font, Ink, new XPoint(xPx + (isFirst ? indent : 0), y + (sizePx * scale)));
            isFirst = false;
            y += lineHeight;
        }

        return Math.Max(lineHeight, y - yPx);
    }

    /// <summary>Draws one line about a point.</summary>
    public void Centre(string text, double xPx, double yPx, double sizePx, bool bold = false) =>
        graphics.DrawString(text, Font(sizePx, bold), Ink, new XPoint(xPx, yPx + (0.36 * sizePx * scale)), XStringFormats.BaseLineCenter);

    /// <summary>Width of one line, px.</summary>
    public double WidthPx(string text, double sizePx, bool bold = false) => graphics.MeasureString(text, Font(sizePx, bold)).Width;

    private XFont Font(double sizePx, bool bold) => SheetFonts.Of(sizePx * scale, bold);

    private List<string> Lines(string text, XFont font, double widthPx, double firstIndentPx = 0)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in Plain(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, font, widthPx - firstIndentPx)))
        {
            string longer = line.Length == 0 ? word : $"{line} {word}";
            double room = widthPx - (lines.Count == 0 ? firstIndentPx : 0);
            if (line.Length > 0 && graphics.MeasureString(longer, font).Width > room)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    // A word that no line can hold goes on in the next.
    private IEnumerable<string> Pieces(string word, XFont font, double widthPx)
    {
        while (word.Length > 1 && graphics.MeasureString(word, font).Width > widthPx)
        {
            int fits = word.Length - 1;
            for (double width = graphics.MeasureString(word[..fits], font).Width; fits > 1 && width > widthPx; width = graphics.MeasureString(word[..fits], font).Width)
                fits = Math.Clamp((int)(fits * widthPx / width), 1, fits - 1);
            yield return word[..fits];
            word = word[fits..];
        }

        yield return word;
    }

    /// <summary>Text without what a page cannot show.</summary>
    public static string Plain(string text) => new([.. text.Select(c => char.IsControl(c) || char.IsSurrogate(c) ? ' ' : c)]);
}
