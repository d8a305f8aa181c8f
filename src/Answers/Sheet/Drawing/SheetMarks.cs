using System.Globalization;
using System.Text;

namespace SecondShore.Answers.Sheet.Drawing;

/// <summary>The marks of the printed sheet: readable in black and white, the second shore alone in colour.</summary>
public static class SheetMarks
{
    private const int InkColour = 0x10181F, AccentColour = 0xB02C00, White = 0xFFFFFF;

    private static readonly int[] WashColours = [0xF3F2EF, 0xEAE9E6, 0xE1E1DE, 0xD7D8D6, 0xCCCDCC, 0xC0C2C2, 0xB3B6B7, 0xA6AAAC, 0x999EA1, 0x8C9296];

    /// <summary>Washes of depth, shallow to deep.</summary>
    public static IReadOnlyList<SheetMark> Washes { get; } = [.. WashColours.Select((colour, i) => new SheetMark($"w{i}") { Fill = colour })];

    /// <summary>A contour.</summary>
    public static SheetMark Contour { get; } = new("cn") { Stroke = 0x1A2A38, WidthPx = 0.6, Opacity = 0.44 };

    /// <summary>Every fifth contour.</summary>
    public static SheetMark HeavyContour { get; } = new("ix") { Stroke = 0x1A2A38, WidthPx = 1.1, Opacity = 0.6 };

    /// <summary>The shore.</summary>
    public static SheetMark Shore { get; } = new("shore") { Stroke = InkColour, WidthPx = 1.5 };

    /// <summary>What keeps other lines off the second shore.</summary>
    public static SheetMark SecondShoreGap { get; } = new("s2c") { Stroke = White, WidthPx = 6.5, Opacity = 0.9 };

    /// <summary>The second shore.</summary>
    public static SheetMark SecondShore { get; } = new("s2") { Stroke = AccentColour, WidthPx = 2.8 };

    /// <summary>A run between stops.</summary>
    public static SheetMark Leg { get; } = new("leg") { Stroke = InkColour, WidthPx = 1.5, DashPx = 1, GapPx = 5, RoundEnds = true };

    /// <summary>What keeps other lines off a pass.</summary>
    public static SheetMark PassGap { get; } = new("pass0") { Stroke = White, WidthPx = 6, Opacity = 0.8 };

    /// <summary>A pass over good bottom.</summary>
    public static SheetMark Pass { get; } = new("pass") { Stroke = InkColour, WidthPx = 2.6, DashPx = 9, GapPx = 4 };

    /// <summary>What is drawn full.</summary>
    public static SheetMark Full { get; } = new("f") { Fill = InkColour };

    /// <summary>A thin line of ink.</summary>
    public static SheetMark Thin { get; } = new("k") { Stroke = InkColour, WidthPx = 1.6 };

    /// <summary>A white face with a line of ink around it.</summary>
    public static SheetMark Plate { get; } = new("bg") { Fill = White, Stroke = InkColour, WidthPx = 1.6 };

    /// <summary>The dotted ring around a hazard.</summary>
    public static SheetMark HazardRing { get; } = new("hz") { Stroke = InkColour, WidthPx = 1.4, DashPx = 1.5, GapPx = 2.5 };

    /// <summary>The frame's lines.</summary>
    public static SheetMark Frame { get; } = new("fr") { Stroke = InkColour };

    /// <summary>The frame's bars, which are the scale.</summary>
    public static SheetMark ScaleBar { get; } = new("bar") { Stroke = InkColour, WidthPx = 3 };

    /// <summary>A chart's grid.</summary>
    public static SheetMark Grid { get; } = new("gr") { Stroke = InkColour, Opacity = 0.2 };

    /// <summary>A chart's axis and its curves.</summary>
    public static SheetMark Curve { get; } = new("cv") { Stroke = InkColour, WidthPx = 1.2 };

    /// <summary>When the boat is on a stop.</summary>
    public static SheetMark OnStop { get; } = new("ac") { Stroke = AccentColour, WidthPx = 5 };

    /// <summary>A line under water, from rod to jig.</summary>
    public static SheetMark LineUnderWater { get; } = new("uw") { Stroke = AccentColour, WidthPx = 2 };

    /// <summary>What a number may be, from low to high.</summary>
    public static SheetMark Range { get; } = new("rr") { Stroke = InkColour, WidthPx = 3 };

    /// <summary>The hatching of dark hours.</summary>
    public static SheetMark Hatch { get; } = new("hx") { Stroke = InkColour, WidthPx = 0.8, Opacity = 0.4 };

    /// <summary>The letter of a stop.</summary>
    public static SheetLettering Letter { get; } = new("letter", 14, Bold: true);

    /// <summary>A name on the map.</summary>
    public static SheetLettering Name { get; } = new("ln", 12, Bold: true, OnPlate: true);

    /// <summary>A number at an axis.</summary>
    public static SheetLettering Axis { get; } = new("axis", 11.5);

    /// <summary>The marks and letterings as rules of a page's style.</summary>
    public static string Css { get; } = string.Concat(
        [.. Washes.Concat([Contour, HeavyContour, Shore, SecondShoreGap, SecondShore, Leg, PassGap, Pass, Full, Thin, Plate, HazardRing, Frame, ScaleBar, Grid, Curve, OnStop, LineUnderWater, Range, Hatch]).Select(Rule),
        .. ((SheetLettering[])[Letter, Name, Axis]).Select(Rule)]);

    private static string Rule(SheetMark mark)
    {
        StringBuilder rule = new();
        rule.Append(CultureInfo.InvariantCulture, $".{mark.Name}{{fill:{(mark.Fill is int fill ? Colour(fill) : "none")}");
        if (mark.Stroke is int stroke)
        {
            rule.Append(CultureInfo.InvariantCulture, $";stroke:{Colour(stroke)};stroke-width:{mark.WidthPx:0.##}");
            if (mark.Opacity < 1) rule.Append(CultureInfo.InvariantCulture, $";stroke-opacity:{mark.Opacity:0.##}");
            if (mark.DashPx > 0) rule.Append(CultureInfo.InvariantCulture, $";stroke-dasharray:{mark.DashPx:0.##} {mark.GapPx:0.##}");
            if (mark.RoundEnds) rule.Append(";stroke-linecap:round");
        }

        return rule.Append("}\n").ToString();
    }

    private static string Rule(SheetLettering lettering)
    {
        string weight = lettering.Bold ? "font-weight:700;" : "";
        string plate = lettering.OnPlate ? ";paint-order:stroke;stroke:#fff;stroke-width:3.5px;stroke-linejoin:round" : "";
        return FormattableString.Invariant($"text.{lettering.Name}{{{weight}font-size:{lettering.SizePx:0.#}px{plate}}}\n");
    }

    private static string Colour(int rgb) => string.Create(CultureInfo.InvariantCulture, $"#{rgb:X6}");
}
