using System.Text;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Sheet.Drawing;

namespace SecondShore.Answers.Sheet;

/// <summary>The pocket card as a page to print: the weight, the line under water to scale, the table, cautions. One file, no script.</summary>
public static class RigCardHtml
{
    /// <summary>The page.</summary>
    /// <param name="reply">The answer.</param>
    /// <param name="place">What it is for, such as a lake and stop; empty when worked out by hand.</param>
    public static string Page(RigReply reply, string place = "")
    {
        ArgumentNullException.ThrowIfNull(reply);
        ArgumentNullException.ThrowIfNull(place);
        UnitSystem units = reply.Request.Units;
        RigCard card = RigCard.Of(reply);
        IReadOnlyList<string> words = RigWords.Of(reply);
        StringBuilder html = new();
        html.Append("<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>").Append(E(card.Title)).Append("</title><style>")
            .Append(SheetHtml.Style).Append(SheetMarks.Css).Append(Style).Append("</style></head><body><main class=\"sheet\"><header><div><p class=\"small\">").Append(E(place))
            .Append("</p><h1>").Append(E(words[0])).Append("</h1></div><p class=\"small\">").Append(E(card.Title)).Append("</p></header><p class=\"why\">")
            .Append(E(string.Join(" ", words.Skip(1).Take(2)))).Append("</p>").Append(Picture(reply));
        html.Append("<h2>Weight by depth and speed</h2><table class=\"card\"><tr><th></th>");
        foreach (string head in card.SpeedHeads) html.Append("<th>").Append(E(head)).Append("</th>");
        html.Append("</tr>");
        foreach (RigCard.Row row in card.Rows)
        {
            html.Append("<tr><td><b>").Append(E(row.DepthHead)).Append("</b></td>");
            foreach (string cell in row.Cells) html.Append("<td>").Append(E(cell)).Append("</td>");
            html.Append("</tr>");
        }

        html.Append("</table><h2>").Append(E($"Each weight at {units.Depth(reply.Conditions.DepthM)} and {units.Pace(reply.Conditions.SpeedMps)}"))
            .Append("</h2><table class=\"card\"><tr><th></th><th>stays down</th><th>of its weight on the bottom</th><th>fall</th><th>holds up to</th></tr>");
        foreach (var size in reply.Sizes)
        {
            html.Append("<tr><td><b>").Append(E(size.Size.Label)).Append("</b></td>")
                .Append(FormattableString.Invariant($"<td>{size.HoldsChance * 100:0} %</td><td>{size.Tow.WeightOnBottomShare * 100:0} %</td>"))
                .Append(size.FallS < 3599 ? FormattableString.Invariant($"<td>{size.FallS:0} s</td>") : "<td>may hang</td>")
                .Append("<td>").Append(E(size.FastestMps >= 2.99 ? "any speed" : units.Pace(size.FastestMps))).Append("</td></tr>");
        }

        html.Append("</table>");
        List(html, "To do", [.. words.Skip(3)]);
        List(html, "Holds for", card.Notes);
        List(html, "Cautions", card.Cautions);
        List(html, "Assumed", reply.Assumed);
        return html.Append("</main></body></html>").ToString();
    }

    private static readonly string Style = ".card td,.card th{text-align:right;padding:4px 8px}.card td:first-child{text-align:left}.small{max-width:60%}ul{margin:4px 0;padding-left:18px}";

    private static string Picture(RigReply reply)
    {
        SvgCanvas canvas = new("chart", (0, 0, RigDrawing.WidthPx, RigDrawing.HeightPx(reply)), RigDrawing.Instead(reply));
        RigDrawing.Draw(canvas, reply);
        return canvas.Close();
    }

    private static void List(StringBuilder html, string title, IReadOnlyList<string> lines)
    {
        if (lines.Count == 0) return;
        html.Append("<h2>").Append(E(title)).Append("</h2><ul>");
        foreach (string line in lines) html.Append("<li>").Append(E(line)).Append("</li>");
        html.Append("</ul>");
    }

    private static string E(string text) => SheetHtml.Escape(text);
}
