using PdfSharp.Drawing;
using PdfSharp.Pdf;
using SecondShore.Answers.Sheet;
using SecondShore.Answers.Sheet.Drawing;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Sheets;

/// <summary>The day on one printed page as PDF: the map is drawn, the text can be searched, the fonts are inside.</summary>
/// <remarks>Made without native code. The page is Letter for feet and A4 for metres; text shrinks until everything fits.</remarks>
public static class DayPdf
{
    // The layout is in px of 1/96 inch, as the web sheet is; the page is in points.
    private const double PtPerPx = 0.75, SheetPx = 710;
    private static readonly double[] Scales = [1.0, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6];

    /// <summary>Makes the page.</summary>
    /// <param name="model">What it says.</param>
    /// <param name="madeAt">When it is made, for the document's date.</param>
    /// <returns>The bytes of the file.</returns>
    public static byte[] Write(DaySheetModel model, DateTimeOffset madeAt)
    {
        ArgumentNullException.ThrowIfNull(model);
        double scale = Scales[^1];
        foreach (double candidate in Scales)
        {
            using PdfDocument trial = new();
            if (Compose(trial, model, candidate) > 0) continue;
            scale = candidate;
            break;
        }

        using PdfDocument document = new();
        document.Info.Title = $"{model.LakeName}, {SheetWords.Date(model)}";
        document.Info.Creator = "Second Shore";
        document.Info.CreationDate = madeAt.UtcDateTime;
        Compose(document, model, scale);
        using MemoryStream bytes = new();
        document.Save(bytes, closeStream: false);
        return bytes.ToArray();
    }

    // Draws the page and returns by how much it ran over, px.
    private static double Compose(PdfDocument document, DaySheetModel model, double scale)
    {
        PdfPage page = document.AddPage();
        (page.Width, page.Height) = model.Units.IsMetric ? (XUnit.FromPoint(595), XUnit.FromPoint(842)) : (XUnit.FromPoint(612), XUnit.FromPoint(792));
        using XGraphics graphics = XGraphics.FromPdfPage(page);
        double marginPx = ((page.Width.Point / PtPerPx) - SheetPx) / 2, heightPx = page.Height.Point / PtPerPx;
        graphics.ScaleTransform(PtPerPx);
        graphics.TranslateTransform(marginPx, 0);
        PdfText text = new(graphics, scale);
        XPen heavy = new(XColor.FromArgb(0x10, 0x18, 0x1F), 2);

        double y = Head(text, model, 34);
        graphics.DrawLine(heavy, 0, y, SheetPx, y);
        y += 8;
        if (model.Because.Length > 0) y += text.Lead(SheetWords.Say(model, "because"), SheetWords.Ended(model.Because), 0, y, SheetPx, 12.5) + 6;
        double mapScale = Math.Min(1, 0.55 + (0.5 * scale)), mapPx = MapDrawing.WidthPx * mapScale, edgePx = MapDrawing.FramePx + 1;
        PdfCanvas.At(graphics, edgePx, y + edgePx, mapScale, canvas => MapDrawing.Draw(canvas, model));
        double side = Side(graphics, text, model, mapPx + 34, y, SheetPx - mapPx - 34);
        y = Math.Max(y + (MapDrawing.HeightPx * mapScale) + 26, side + 8);
        y = PdfStops.Draw(graphics, text, model, y, SheetPx);
        graphics.DrawLine(heavy, 0, y + 6, SheetPx, y + 6);
        y = Foot(text, model, y + 12);
        return y - (heightPx - 30);
    }

    private static double Head(PdfText text, DaySheetModel model, double y)
    {
        double right = SheetPx;
        right -= Number(text, model, SheetWords.Say(model, "Oxygen out"), model.OxygenOutM, right, y);
        right -= Number(text, model, SheetWords.Say(model, "Thermocline"), model.ThermoclineM, right, y);
        double height = text.Draw(model.LakeName, 0, y, right - 10, 25, true);
        height += text.Draw(SheetWords.Launch(model), 0, y + height, right - 10, 12.5);
        if (model.Invented) height += text.Draw(SheetWords.Say(model, "This lake is invented: a demonstration, not a place."), 0, y + height, right - 10, 11);
        return y + Math.Max(height, 56) + 6;
    }

    // A depth with its range, ending at the right; returns the width it took.
    private static double Number(PdfText text, DaySheetModel model, string label, Spread? depthM, double right, double y)
    {
        if (depthM is not { } spread) return 0;
        string number = $"{model.Units.DepthNumber(spread.P50)} {model.Units.DepthUnit}", range = $"{model.Units.DepthNumber(spread.P10)} to {model.Units.DepthNumber(spread.P90)}";
        double width = Math.Max(text.WidthPx(number, 24, true), Math.Max(text.WidthPx(range, 12, true), text.WidthPx(label, 11)));
        text.Draw(label, right - width, y, width + 4, 11);
        text.Draw(number, right - width, y + 14, width + 4, 24, true);
        text.Draw(range, right - width, y + 44, width + 4, 12, true);
        return width + 22;
    }

    private static double Side(XGraphics graphics, PdfText text, DaySheetModel model, double x, double y, double width)
    {
        y += text.Draw(SheetWords.WindHeading(model), x, y, width, 15, true);
        if (model.Wind.Count == 0) y += text.Draw(SheetWords.Say(model, "No wind in the folder's weather for this day."), x, y, width, 11);
        else
        {
            y += text.Draw(SheetWords.Say(model, "Stems are gusts. The thick line is when you are on a stop."), x, y, width, 11);
            double scale = Math.Min(1, width / WindDrawing.WidthPx);
            PdfCanvas.At(graphics, x, y, scale, canvas => WindDrawing.Draw(canvas, model));
            y += WindDrawing.HeightPx * scale;
        }

        y = Rows(text, SheetWords.Say(model, "If the haze is elsewhere"), model.IfHazeElsewhere, x, y, width);
        return Rows(text, SheetWords.Say(model, "Tie tonight"), model.Tie, x, y, width);
    }

    private static double Rows(PdfText text, string title, IReadOnlyList<SheetRow> rows, double x, double y, double width)
    {
        if (rows.Count == 0) return y;
        y += 8 + text.Draw(title, x, y + 8, width, 15, true) + 2;
        foreach (SheetRow row in rows) y += text.Lead(row.Head, row.Text, x, y, width, 12) + 4;
        return y;
    }

    private static double Foot(PdfText text, DaySheetModel model, double y)
    {
        if (model.Cautions.Count > 0) y += text.Lead(SheetWords.Say(model, "Watch for"), string.Join(" ", model.Cautions), 0, y, SheetPx, 11.5) + 7;
        string last = $"{SheetWords.HazeBlank(model)};  {SheetWords.SurfaceBlank(model)}.  {SheetWords.Say(model, "Plans, does not navigate.")} {model.MapKey} {model.MadeBy}";
        return y + text.Draw(last, 0, y, SheetPx, 11.5);
    }
}
