using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using SecondShore.Answers.Sheet;
using SecondShore.Answers.Sheet.Drawing;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Tests.Sheet;

public class DaySheetTests
{
    [Fact]
    public void The_sheet_is_well_formed_and_says_what_the_day_needs()
    {
        string html = DaySheet.Html(SheetModels.Model("Made Lake"));
        XDocument page = Parse(html);
        string text = page.Root!.Value;
        foreach (string needed in (string[])["Made Lake", "Thermocline", "27", "because", "What came", "Watch for", "does not navigate", "Tie tonight", "invented"])
            Assert.Contains(needed, text, StringComparison.Ordinal);
        Assert.DoesNotContain("http", html.Replace("http://www.w3.org/1999/xhtml", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.True(html.Length < 600_000, $"{html.Length} characters");
        string? saveTo = Environment.GetEnvironmentVariable("SECONDSHORE_SHEET_OUT");
        if (saveTo is not null) File.WriteAllText(saveTo, html);
    }

    [Fact]
    public void Every_stop_has_its_letter_on_the_map_inside_the_frame()
    {
        DaySheetModel model = SheetModels.Model("Made Lake");
        XDocument page = Parse(DaySheet.Html(model));
        XElement map = page.Descendants().First(e => e.Name.LocalName == "svg");
        List<XElement> stops = [.. map.Descendants().Where(e => (string?)e.Attribute("class") == "stop")];
        Assert.Equal(model.Plan.Stops.Select(s => s.Candidate.Letter), stops.Select(s => s.Value));
        foreach (XElement letter in stops.Select(s => s.Elements().Last()))
        {
            Assert.InRange(double.Parse((string)letter.Attribute("x")!, CultureInfo.InvariantCulture), 12, MapDrawing.WidthPx - 12);
            Assert.InRange(double.Parse((string)letter.Attribute("y")!, CultureInfo.InvariantCulture), 12, MapDrawing.HeightPx - 4);
        }
    }

    [Fact]
    public void Every_mark_and_lettering_of_the_pictures_has_its_look_in_the_page()
    {
        XDocument page = Parse(DaySheet.Html(SheetModels.Model("Made Lake")));
        string style = page.Descendants().First(e => e.Name.LocalName == "style").Value;
        string[] drawn = ["path", "circle", "text"];
        string[] marks = [.. page.Descendants().Where(e => drawn.Contains(e.Name.LocalName)).Select(e => (string)e.Attribute("class")!).Distinct()];
        Assert.True(marks.Length > 12, string.Join(", ", marks));
        Assert.All(marks, mark => Assert.Contains($".{mark}{{", style, StringComparison.Ordinal));
    }

    [Fact]
    public void Hostile_names_stay_text()
    {
        string html = DaySheet.Html(SheetModels.Model("<script>alert('x')</script> & \u0001 \"lake\""));
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("<script>", Parse(html).Root!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Metric_and_feet_say_the_same_depth()
    {
        Assert.Contains(">8.2<", DaySheet.Html(SheetModels.Model("L") with { Units = UnitSystem.Metric }), StringComparison.Ordinal);
        Assert.Contains(">27<", DaySheet.Html(SheetModels.Model("L")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_calendar_reads_back_with_every_stop_at_its_time()
    {
        DaySheetModel model = SheetModels.Model("Made, Lake; with \\ signs");
        string text = DayCalendar.Write(model.Plan, model.LakeName, SheetModels.Grid.Projection, SheetModels.Morning, ["Wear the life jacket, always.", "Größe über Straße é"]);
        Assert.All(text.Split("\r\n"), line => Assert.True(System.Text.Encoding.UTF8.GetByteCount(line) <= 75, line));
        Ical.Net.Calendar calendar = Ical.Net.Calendar.Load(text)!;
        Assert.Equal(model.Plan.Stops.Count + 2, calendar.Events.Count);
        foreach (PlannedStop stop in model.Plan.Stops)
        {
            Ical.Net.CalendarComponents.CalendarEvent found = calendar.Events.First(e => e.Summary == $"{stop.Candidate.Letter} {stop.Candidate.Name}");
            Assert.Equal(stop.Arrive.UtcDateTime, found.DtStart!.AsUtc);
            Assert.Equal(stop.Leave.UtcDateTime, found.DtEnd!.AsUtc);
            Assert.Equal(model.LakeName, found.Location);
        }

        Assert.Equal(calendar.Events.Count, calendar.Events.Select(e => e.Uid).Distinct().Count());
    }

    private static XDocument Parse(string html)
    {
        using var reader = XmlReader.Create(new StringReader(html), new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        return XDocument.Load(reader);
    }
}
