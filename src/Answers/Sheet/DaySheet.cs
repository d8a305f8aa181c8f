using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Words;

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
            .Append(E($"{model.LakeName}, {Date(model)}")).Append("</title><style>").Append(SheetHtml.Style).Append("</style></head><body>");
        html.Append(Plain, $"<main class=\"sheet\" style=\"--print:{PrintScale(model.Stops.Count):0.##}\">");
        Head(html, model);
        html.Append(Plain, $"<div class=\"two\" style=\"grid-template-columns:{MapWidthPx(model.Stops.Count)}px 1fr\"><div>").Append(SheetSvg.Map(model.Map, model.Plan, model.RampName, model.Units.IsMetric));
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
            .Append(E(model.Units.Speech.Say($"{Date(model)}. Launch {model.RampName} {model.Units.Speech.Clock(model.Plan.Launch)}, home by {model.Units.Speech.Clock(model.Plan.Home)}."))).Append("</div>");
        if (model.Invented) html.Append("<div class=\"small\">").Append(E(T(model, "This lake is invented: a demonstration, not a place."))).Append("</div>");
        html.Append("</div><div class=\"nums\">");
        Number(html, model, T(model, "Thermocline"), model.ThermoclineM);
        Number(html, model, T(model, "Oxygen out"), model.OxygenOutM);
        html.Append("</div></header>");
        if (model.Because.Length > 0) html.Append("<p class=\"why\"><b>").Append(T(model, "because")).Append("</b> ").Append(E(model.Because.TrimEnd('.'))).Append(".</p>");
    }

    private static void Number(StringBuilder html, DaySheetModel model, string label, Spread? depthM)
    {
        if (depthM is not Spread spread) return;
        html.Append("<div><div class=\"small\">").Append(label).Append("</div><div class=\"num\">").Append(model.Units.DepthNumber(spread.P50)).Append("<i>").Append(model.Units.DepthUnit)
            .Append("</i><span class=\"sp\"><span>").Append(model.Units.DepthNumber(spread.P10)).Append("</span><span>").Append(model.Units.DepthNumber(spread.P90)).Append("</span></span></div></div>");
    }

    private static void Side(StringBuilder html, DaySheetModel model)
    {
        html.Append("<h2 style=\"margin-top:0\">").Append(T(model, "Wind")).Append(", ").Append(model.Units.IsMetric ? "m/s" : "mph").Append("</h2><p class=\"small\">")
            .Append(E(T(model, "Stems are gusts. The thick line is when you are on a stop."))).Append("</p>")
            .Append("<div class=\"wind\">").Append(WindStrip.Draw(model)).Append("</div>");
        Rows(html, T(model, "If the haze is elsewhere"), model.IfHazeElsewhere);
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
                .Append(Times(model, stop.Arrive, stop.Leave)).Append("</td><td>").Append(E(stop.Rig)).Append("<br/>").Append(E(stop.How)).Append("</td><td><span class=\"be\">").Append(T(model, "because")).Append("</span> ")
                .Append(E(stop.Why.TrimEnd('.'))).Append(".</td><td class=\"came\">&#160;</td></tr>");
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

        Speech speech = model.Units.Speech;
        html.Append("<div class=\"blanks\"><span>").Append(speech.Say($"Haze seen at ______ {model.Units.DepthUnit}, time ______")).Append("</span><span>")
            .Append(speech.Say($"Surface ______ {model.Units.TemperatureUnit}")).Append("</span><span class=\"end\">")
            .Append(E(speech.Plain("Plans, does not navigate."))).Append(' ').Append(E(model.MapKey)).Append(' ').Append(E(model.MadeBy)).Append("</span></div></footer>");
    }

    private static string Times(DaySheetModel model, DateTimeOffset arrive, DateTimeOffset leave) => model.Units.Speech.Language == "en"
        ? $"{arrive.ToString("h:mm", Plain)} to {leave.ToString("h:mm", Plain)}"
        : model.Units.Speech.Say($"{model.Units.Speech.Clock(arrive)} to {model.Units.Speech.Clock(leave)}");

    private static string Date(DaySheetModel model) => model.Units.Speech.Say($"{model.Plan.Launch:dddd d MMMM}");

    private static string T(DaySheetModel model, string english) => model.Units.Speech.Plain(english);

    private static string E(string text) => SheetHtml.Escape(text);
}
