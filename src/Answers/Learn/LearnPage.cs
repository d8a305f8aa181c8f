using System.Globalization;
using System.Text;
using SecondShore.Answers.Sheet;
using SecondShore.Answers.Sheet.Drawing;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Answers.Learn;

/// <summary>After the trip: what was learned, on a page to print or keep. Self-contained and well-formed, no script, nothing to fetch.</summary>
public static class LearnPage
{
    // Width of a range's strip, px, and the rate at its right end, by table.
    private const double StripPx = 190;

    /// <summary>Writes the page.</summary>
    /// <param name="result">What was learned.</param>
    /// <param name="units">Units of the words.</param>
    public static string Html(LearnResult result, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(units);
        StringBuilder html = new();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\" xmlns=\"http://www.w3.org/1999/xhtml\"><head><meta charset=\"utf-8\"/><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"/><title>")
            .Append(E($"{result.Lake}: after the trip")).Append("</title><style>").Append(SheetHtml.Style).Append(SheetMarks.Css).Append(Extra).Append("</style></head><body><main class=\"sheet\">");
        Head(html, result);
        if (result.LastTrip is { } trip) Trip(html, trip);
        Lines(html, "What the log says of the lake and the season", result.Learned);
        Lines(html, "Tie on first", [.. result.TieOn.Select(a => LearnWords.Say(a, units))]);
        Lines(html, "Try next", [.. result.NextTry.Select(a => LearnWords.Say(a, units))]);
        Leave(html, result.Leave);
        Lines(html, "What would teach most next time", result.TeachesMost);
        foreach (FactorRates table in result.Choices) Rates(html, table);
        Lines(html, "Assumed", result.Assumed.Say(units));
        html.Append("<footer>A range holds the true rate four times in five. Places not fished and stretches not logged teach nothing. ")
            .Append("Seasons, sizes, limits and closed areas are your agency's to say.</footer></main></body></html>\n");
        return html.ToString();
    }

    private static void Head(StringBuilder html, LearnResult result)
    {
        LogTotals t = result.Totals;
        html.Append("<header><div><h1>").Append(E(result.Lake)).Append("</h1><div>");
        if (t.From is { } from && t.To is { } to)
            html.Append(Fmt($"{t.Days} {(t.Days == 1 ? "day" : "days")}, {from:d MMM} to {to:d MMM yyyy}: ") + Of(t.Stretches, t.Blanks));
        else html.Append("No stretch of fishing is logged.");
        html.Append("</div>");
        if (result.Invented) html.Append("<div class=\"small\">This lake is invented: a demonstration, not a place.</div>");
        html.Append("</div><div class=\"nums\">");
        Number(html, "Hours", Fmt($"{t.HoursH:0.#}"));
        Number(html, "Bites", Fmt($"{t.Bites}"));
        Number(html, "An hour", Fmt($"{result.RatePerH.P50:0.0}"), Fmt($"{result.RatePerH.P90:0.0}"), Fmt($"{result.RatePerH.P10:0.0}"));
        html.Append("</div></header><p class=\"why\">").Append(E(result.Trust)).Append("</p>");
    }

    private static void Number(StringBuilder html, string label, string number, string? top = null, string? bottom = null)
    {
        html.Append("<div><div class=\"small\">").Append(label).Append("</div><div class=\"num\">").Append(number);
        if (top is not null) html.Append("<span class=\"sp\"><span>").Append(top).Append("</span><span>").Append(bottom).Append("</span></span>");
        html.Append("</div></div>");
    }

    private static void Trip(StringBuilder html, LastTrip trip)
    {
        string bites = trip.Totals.Bites == 1 ? "bite" : "bites";
        List<string> lines = [Fmt($"{trip.Totals.Bites} {bites}, {trip.Totals.Fish} in the boat, in {trip.Totals.HoursH:0.#} h over ")
            + Of(trip.Totals.Stretches, trip.Totals.Blanks)];
        if (trip.BestStretch.Length > 0) lines.Add($"Best stretch: {trip.BestStretch}");
        Lines(html, $"The last day, {trip.Day.ToString("dddd d MMMM", CultureInfo.InvariantCulture)}", [.. lines, .. trip.Changed]);
    }

    private static void Leave(StringBuilder html, LeaveTable leave)
    {
        html.Append("<section><h2>When to leave</h2><p>").Append(E(leave.Words)).Append("</p><table class=\"tight\"><tbody><tr><td>Bites so far</td>");
        foreach (LeaveRow row in leave.Rows) html.Append(Fmt($"<td>{row.Bites}</td>"));
        html.Append("</tr><tr><td>Leave after, minutes in all</td>");
        foreach (LeaveRow row in leave.Rows) html.Append(Fmt($"<td>{row.AfterMinutes}</td>"));
        html.Append("</tr></tbody></table></section>");
    }

    private static void Rates(StringBuilder html, FactorRates table)
    {
        double most = Math.Max(0.5, table.Rows.Max(r => r.Rate.RatePerH.P90));
        html.Append("<section><h2>").Append(E(table.Heading)).Append("</h2><table class=\"tight\"><thead><tr><th></th><th>Fished</th><th>Bites</th><th>Bites an hour</th><th>Range</th><th>Best</th></tr></thead><tbody>");
        foreach (LevelRate row in table.Rows)
        {
            html.Append("<tr><td>").Append(E(row.Words)).Append("</td><td>").Append(row.Rate.HoursH < 0.05 ? "not yet" : E(LearnWords.Hours(row.Rate.HoursH))).Append("</td><td>")
                .Append(Fmt($"{row.Rate.BitesCount}")).Append("</td><td>").Append(E(LearnWords.Range(row.Rate.RatePerH))).Append("</td><td>")
                .Append(Picture(row.Rate.RatePerH, StripPx / most))
                .Append("</td><td>").Append(E(LearnWords.Chance(row.Rate.BestChance))).Append("</td></tr>");
        }

        html.Append("</tbody></table></section>");
    }

    private static string Picture(Spread rate, double pxPerUnit)
    {
        const double edge = 4, y = 7;
        SvgCanvas canvas = new("rg", (0, 0, StripPx + (2 * edge), 2 * y), Fmt($"{rate.P10:0.0} to {rate.P90:0.0}"));
        canvas.Line([new(edge, y), new(edge + StripPx, y)], false, SheetMarks.Grid);
        canvas.Line([new(edge + (rate.P10 * pxPerUnit), y), new(edge + (rate.P90 * pxPerUnit), y)], false, SheetMarks.Range);
        canvas.Circle(new(edge + (rate.P50 * pxPerUnit), y), 3.4, SheetMarks.Full);
        return canvas.Close();
    }

    private static void Lines(StringBuilder html, string title, IReadOnlyList<string> lines)
    {
        if (lines.Count == 0) return;
        html.Append("<section><h2>").Append(E(title)).Append("</h2>");
        foreach (string line in lines) html.Append("<p>").Append(E(line)).Append("</p>");
        html.Append("</section>");
    }

    private static string E(string text) => SheetHtml.Escape(text);

    private static string Of(int stretches, int blanks) => Fmt($"{stretches} stretches, {blanks} of them blank.");

    private static string Fmt(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static readonly string Extra = """

        section{break-inside:avoid}section p{margin:3px 0}h2{margin-top:15px;margin-bottom:2px}
        .rg{width:198px;height:14px}
        """;
}
