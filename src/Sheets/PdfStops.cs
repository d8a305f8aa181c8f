using PdfSharp.Drawing;
using SecondShore.Answers.Sheet;

namespace SecondShore.Sheets;

/// <summary>The table of stops, with room to write what came.</summary>
internal static class PdfStops
{
    /// <summary>Draws the table and returns where it ends, px.</summary>
    public static double Draw(XGraphics graphics, PdfText text, DaySheetModel model, double y, double widthPx)
    {
        const double letterPx = 30, namePx = 126, rigPx = 190, camePx = 92, gapPx = 10;
        double whyX = letterPx + namePx + rigPx, whyPx = widthPx - whyX - camePx;
        XPen line = new(XColor.FromArgb(0xC4, 0xC7, 0xC9), 0.8), ink = new(XColor.FromArgb(0x10, 0x18, 0x1F), 1.5);
        double head = Math.Max(text.Draw(SheetWords.Say(model, "Stop"), letterPx, y, namePx, 11), 0);
        text.Draw(SheetWords.Say(model, "Rig and pass"), letterPx + namePx, y, rigPx, 11);
        text.Draw(SheetWords.Say(model, "Why"), whyX, y, whyPx, 11);
        text.Draw(SheetWords.Say(model, "What came"), widthPx - camePx + 8, y, camePx, 11);
        y += head + 2;
        double top = y;
        graphics.DrawLine(line, 0, y, widthPx, y);
        if (model.Stops.Count == 0) return y + text.Draw(SheetWords.Say(model, "No stop fits the day."), 0, y + 4, widthPx, 12.5) + 8;
        foreach (SheetStop stop in model.Stops)
        {
            double row = y + 5;
            graphics.DrawEllipse(ink, 1, row, 22, 22);
            text.Centre(stop.Letter, 12, row + 11, 12.5, true);
            double name = text.Draw(stop.Name, letterPx, row, namePx - gapPx, 13, true);
            name += text.Draw(SheetWords.Times(model, stop), letterPx, row + name, namePx - gapPx, 12.5);
            double rig = text.Draw(stop.Rig, letterPx + namePx, row, rigPx - gapPx, 12);
            rig += text.Draw(stop.How, letterPx + namePx, row + rig, rigPx - gapPx, 12);
            double why = text.Lead(SheetWords.Say(model, "because"), SheetWords.Ended(stop.Why), whyX, row, whyPx - gapPx, 12);
            y = row + Math.Max(Math.Max(26, name), Math.Max(rig, why)) + 3;
            graphics.DrawLine(line, 0, y, widthPx, y);
        }

        graphics.DrawLine(line, widthPx - camePx, top, widthPx - camePx, y);
        return y;
    }
}
