using System.Globalization;
using System.Text;
using SecondShore.Answers.Sheet.Drawing;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Answers.Sheet;

/// <summary>The day on one printed page: self-contained HTML that is also well-formed XML, with no script and nothing to fetch.</summary>
public static class DaySheet
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    /// <summary>Writes the sheet.</summary>
    /// <param name="model">What it says.</param>
    public static string Html(DaySheetModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        StringBuilder html = new();
        html.Append(Plain, $"<!DOCTYPE html>\n<html lang=\"{model.Units.Speech.Language}\" xmlns=\"http://www.w3.org/1999/xhtml\"><head><meta charset=\"utf-8\"/><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"/><title>")
            .Append(E($"{model.LakeName}, {SheetWords.Date(model)}")).Append("</title><style>").Append(SheetHtml.Style).Append(SheetMarks.Css).Append("</style></head><body>");
        html.Append(Plain, $"<main class=\"sheet\" style=\"--print:{PrintScale(model.Stops.Count):0.##}\">");
        Head(html, model);
        html.Append(Plain, $"<div class=\"two\" style=\"grid-template-columns:{MapWidthPx(model.Stops.Count)}px 1fr\"><div>").Append(MapOf(model));
        Rows(html, T(model, "Tie tonight"), model.Tie);
        html.Append("</div><div>");
        Side(html, model);
        html.Append("</div></div>");
        Stops(html, model);
        Foot(html, model);
        return html.Append("</main></body></html>\n").ToString();
    }

    // One page, Letter or A4: the more stops, the smaller the map.
    private static int MapWidthPx(int stops) => Math.Clamp(482 - (34 * (stops - 6)), 300, 482);

    // More than nine stops are printed smaller, so that the page stays one.
    private static double PrintScale(int stops) => stops <= 9 ? 1 : Math.Max(0.6, 0.93 - (0.04 * (stops - 9)));

    private static void Head(StringBuilder html, DaySheetModel model)
    {
        html.Append("<header><div><h1>").Append(E(model.LakeName)).Append("</h1><div>")
            .Append(E(SheetWords.Launch(model))).Append("</div>");
        if (model.Invented) html.Append("<div class=\"small\">").Append(E(T(model, "This lake is invented: a demonstration, not a place."))).Append("</div>");
        html.Append("</div><div class=\"nums\">");
        Number(html, model, T(model, "Thermocline"), model.ThermoclineM);
        Number(html, model, T(model, "Oxygen out"), model.OxygenOutM);
        html.Append("</div></header>");
        if (model.Because.Length > 0) html.Append("<p class=\"why\"><b>").Append(T(model, "because")).Append("</b> ").Append(E(SheetWords.Ended(model.Because))).Append("</p>");
    }

    private static void Number(StringBuilder html, DaySheetModel model, string label, Spread? depthM)
    {
        if (depthM is not Spread spread) return;
        html.Append("<div><div class=\"small\">").Append(label).Append("</div><div class=\"num\">").Append(model.Units.DepthNumber(spread.P50)).Append("<i>").Append(model.Units.DepthUnit)
            .Append("</i><span class=\"sp\"><span>").Append(model.Units.DepthNumber(spread.P10)).Append("</span><span>").Append(model.Units.DepthNumber(spread.P90)).Append("</span></span></div></div>");
    }

    private static void Side(StringBuilder html, DaySheetModel model)
    {
        html.Append("<h2 style=\"margin-top:0\">").Append(E(SheetWords.WindHeading(model))).Append("</h2><p class=\"small\">")
            .Append(E(T(model, "Stems are gusts. The thick line is when you are on a stop."))).Append("</p>")
            .Append("<div class=\"wind\">").Append(WindOf(model)).Append("</div>");
        Rows(html, T(model, "If the haze is elsewhere"), model.IfHazeElsewhere);
    }

    private static string MapOf(DaySheetModel model)
    {
        string stops = string.Join(", ", model.Plan.Stops.Select(s => $"{s.Candidate.Letter} {s.Candidate.Name}"));
        double edge = MapDrawing.FramePx + 1;
        SvgCanvas canvas = new("map", (-edge, -edge, MapDrawing.WidthPx + (2 * edge), MapDrawing.HeightPx + (2 * edge)),
            model.Units.Speech.Say($"Map of the plan: {stops}"));
        MapDrawing.Draw(canvas, model);
        return canvas.Close();
    }

    private static string WindOf(DaySheetModel model)
    {
        if (model.Wind.Count == 0) return $"<p class=\"small\">{E(T(model, "No wind in the folder's weather for this day."))}</p>";
        SvgCanvas canvas = new("chart", (0, 0, WindDrawing.WidthPx, WindDrawing.HeightPx), WindDrawing.Instead(model));
        WindDrawing.Draw(canvas, model);
        return canvas.Close();
    }

    private static void Rows(StringBuilder html, string title, IReadOnlyList<SheetRow> rows)
    {
        if (rows.Count == 0) return;
        html.Append("<h2>").Append(title).Append("</h2><table class=\"tight\"><tbody>");
        foreach (SheetRow row in rows) html.Append("<tr><td>").Append(E(row.Head)).Append("</td><td>").Append(E(row.Text)).Append("</td></tr>");
        html.Append("</tbody></table>");
    }

    private static void Stops(StringBuilder html, DaySheetModel model)
    {
        html.Append("<table class=\"stops\"><thead><tr><th></th><th style=\"width:116px\">").Append(T(model, "Stop")).Append("</th><th style=\"width:234px\">").Append(T(model, "Rig and pass"))
            .Append("</th><th>").Append(T(model, "Why")).Append("</th><th>").Append(T(model, "What came")).Append("</th></tr></thead><tbody>");
        foreach (SheetStop stop in model.Stops)
        {
            html.Append("<tr><td><span class=\"let\">").Append(E(stop.Letter)).Append("</span></td><td><h3>").Append(E(stop.Name)).Append("</h3>")
                .Append(E(SheetWords.Times(model, stop))).Append("</td><td>").Append(E(stop.Rig)).Append("<br/>").Append(E(stop.How)).Append("</td><td><span class=\"be\">").Append(T(model, "because")).Append("</span> ")
                .Append(E(SheetWords.Ended(stop.Why))).Append("</td><td class=\"came\">&#160;</td></tr>");
        }

        if (model.Stops.Count == 0) html.Append("<tr><td colspan=\"5\">").Append(T(model, "No stop fits the day.")).Append("</td></tr>");
        html.Append("</tbody></table>");
    }

    private static void Foot(StringBuilder html, DaySheetModel model)
    {
        html.Append("<footer>");
        if (model.Cautions.Count > 0)
        {
            html.Append("<div><b>").Append(T(model, "Watch for")).Append("</b> ");
            foreach (string caution in model.Cautions) html.Append(E(caution)).Append(' ');
            html.Append("</div>");
        }

        html.Append("<div class=\"blanks\"><span>").Append(E(SheetWords.HazeBlank(model))).Append("</span><span>")
            .Append(E(SheetWords.SurfaceBlank(model))).Append("</span><span class=\"end\">")
            .Append(E(T(model, "Plans, does not navigate."))).Append(' ').Append(E(model.MapKey)).Append(' ').Append(E(model.MadeBy)).Append("</span></div></footer>");
    }

    private static string T(DaySheetModel model, string english) => SheetWords.Say(model, english);

    private static string E(string text) => SheetHtml.Escape(text);
}
