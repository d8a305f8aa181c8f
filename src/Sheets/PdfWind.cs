using System.Globalization;
using PdfSharp.Drawing;
using SecondShore.Answers.Sheet;
using SecondShore.Engine.Core.Units;

namespace SecondShore.Sheets;

/// <summary>The wind by hour: bars are wind, stems gusts, arrows fly with it, dark hours are grey, stops lie on the axis.</summary>
internal static class PdfWind
{
    public static readonly double HeightPx = 140;
    private const double Left = 26, Width = 180, Top = 30, Floor = 116;

    public static void Draw(XGraphics graphics, PdfText text, DaySheetModel model, double xPx, double yPx)
    {
        DateTimeOffset start = model.Wind[0].At, end = model.Wind[^1].At.AddHours(1);
        double hours = (end - start).TotalHours, perUnit = model.Units.IsMetric ? 1.0 : 1.0 / Speed.MpsPerMph, most = model.Units.IsMetric ? 10 : 20;
        foreach (SheetWind hour in model.Wind) most = Math.Max(most, hour.GustMps * perUnit);
        double X(DateTimeOffset at) => xPx + Left + (Width * Math.Clamp((at - start).TotalHours / hours, 0, 1));
        double Y(double mps) => yPx + Floor - ((Floor - Top) * mps * perUnit / most);

        XPen ink = new(XColor.FromArgb(0x10, 0x18, 0x1F), 1.2), grid = new(XColor.FromArgb(0xCF, 0xD1, 0xD2), 0.8);
        XBrush dark = new XSolidBrush(XColor.FromArgb(0xDD, 0xDD, 0xDD));
        if (model.LightAt is { } light && light > start) graphics.DrawRectangle(dark, xPx + Left, yPx + 8, X(light) - xPx - Left, Floor - 8);
        if (model.DarkAt is { } night && night < end) graphics.DrawRectangle(dark, X(night), yPx + 8, xPx + Left + Width - X(night), Floor - 8);
        double step = model.Units.IsMetric ? 5 : 10;
        for (double level = step; level <= most; level += step)
        {
            graphics.DrawLine(grid, xPx + Left, Y(level / perUnit), xPx + Left + Width, Y(level / perUnit));
            text.Centre(level.ToString("0", CultureInfo.InvariantCulture), xPx + Left - 12, Y(level / perUnit), 11);
        }

        int label = 0, every = Math.Max(1, (int)Math.Ceiling(hours / 6));
        foreach (SheetWind hour in model.Wind)
        {
            double x = X(hour.At.AddMinutes(30)), width = Width / hours * 0.55;
            graphics.DrawLine(ink, x, Y(hour.WindMps), x, Y(hour.GustMps));
            graphics.DrawLine(ink, x - 4, Y(hour.GustMps), x + 4, Y(hour.GustMps));
            graphics.DrawRectangle(PdfText.Ink, x - (0.5 * width), Y(hour.WindMps), width, yPx + Floor - Y(hour.WindMps));
            if (double.IsFinite(hour.FromDeg)) Arrow(graphics, ink, x, yPx + 18, double.DegreesToRadians(hour.FromDeg + 180));
            if (label++ % every == 0) text.Centre(hour.At.ToString("h tt", CultureInfo.InvariantCulture).ToLowerInvariant(), x, yPx + 131, 10.5);
        }

        graphics.DrawLine(ink, xPx + Left, yPx + Floor, xPx + Left + Width, yPx + Floor);
        XPen accent = new(XColor.FromArgb(0xB0, 0x2C, 0x00), 5);
        foreach (SheetStop stop in model.Stops) graphics.DrawLine(accent, X(stop.Arrive), yPx + Floor + 2, X(stop.Leave), yPx + Floor + 2);
    }

    private static void Arrow(XGraphics graphics, XPen pen, double x, double y, double toRad)
    {
        XPoint At(double across, double along) => new(x + (along * Math.Sin(toRad)) + (across * Math.Cos(toRad)), y - (along * Math.Cos(toRad)) + (across * Math.Sin(toRad)));
        graphics.DrawLine(pen, At(0, -7), At(0, 7));
        graphics.DrawLines(pen, [At(-3.2, 3), At(0, 7), At(3.2, 3)]);
    }
}
