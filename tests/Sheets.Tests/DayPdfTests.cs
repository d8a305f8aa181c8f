using System.Globalization;
using System.Xml.Linq;
using SecondShore.Answers.Sheet;
using SecondShore.Answers.Tests.Sheet;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace SecondShore.Sheets.Tests;

public class DayPdfTests
{
    [Fact]
    public void The_page_opens_its_text_is_found_and_its_fonts_are_inside()
    {
        DaySheetModel model = SheetModels.Model("Größe Lake & Pond");
        byte[] bytes = DayPdf.Write(model, SheetModels.Morning);
        string? saveTo = Environment.GetEnvironmentVariable("SECONDSHORE_SHEET_OUT");
        if (saveTo is not null) File.WriteAllBytes(saveTo + ".pdf", bytes);
        using PdfDocument document = PdfDocument.Open(bytes);
        Page page = Assert.Single(document.GetPages());
        string text = Squeezed(page.Text);
        foreach (string needed in (string[])["Größe Lake & Pond", "Thermocline", "27 ft", "Chapel Ramp", "Tie tonight", "Watch for", "does not navigate", "What came", "invented"])
            Assert.Contains(Squeezed(needed), text, StringComparison.Ordinal);
        foreach (SheetStop stop in model.Stops) Assert.Contains(Squeezed(stop.Name), text, StringComparison.Ordinal);
        Assert.All(page.Letters, l => Assert.Contains("DejaVu", l.FontName ?? "", StringComparison.Ordinal));
        Assert.True(bytes.Length < 600_000, $"{bytes.Length} bytes");
    }

    [Fact]
    public void The_map_is_drawn_and_every_letter_stands_on_the_page()
    {
        DaySheetModel model = SheetModels.Model("Made Lake");
        using PdfDocument document = PdfDocument.Open(DayPdf.Write(model, SheetModels.Morning));
        Page page = document.GetPage(1);
        Assert.True(page.Paths.Count > 40, $"{page.Paths.Count} paths");
        Assert.Empty(page.GetImages());
        Assert.All(page.Letters.Where(l => l.Value.Trim().Length > 0), l =>
        {
            Assert.InRange(l.StartBaseLine.X, 0, page.Width);
            Assert.InRange(l.StartBaseLine.Y, 15, page.Height);
        });
    }

    [Fact]
    public void The_map_has_the_same_letters_at_the_same_places_as_the_page_for_browsers()
    {
        DaySheetModel model = SheetModels.Model("Made Lake");
        using PdfDocument document = PdfDocument.Open(DayPdf.Write(model, SheetModels.Morning));
        Page page = document.GetPage(1);
        XDocument html = XDocument.Parse(DaySheet.Html(model).Replace("<!DOCTYPE html>", "", StringComparison.Ordinal));
        XElement[] stops = [.. html.Descendants().Where(e => (string?)e.Attribute("class") == "stop")];
        (string Letter, double X, double Y)[] wanted = [.. stops.Select(s => s.Elements().Last()).Select(t => (t.Value, At(t, "x"), At(t, "y")))];
        (double X, double Y)[] found = [.. wanted.Select(w => Middle(page.Letters.First(l => l.Value == w.Letter && Math.Abs(l.PointSize - 10.5) < 0.01)))];
        Assert.True(wanted.Length > 1, "one stop fixes no scale");
        // Points of the page for px of the drawing: one scale, and a shift.
        double scale = (found[1].X - found[0].X) / (wanted[1].X - wanted[0].X);
        Assert.InRange(scale, 0.4, 0.76);
        for (int i = 1; i < wanted.Length; i++)
        {
            Assert.Equal(scale * (wanted[i].X - wanted[0].X), found[i].X - found[0].X, 1.0);
            Assert.Equal(-scale * (wanted[i].Y - wanted[0].Y), found[i].Y - found[0].Y, 1.0);
        }

        static double At(XElement text, string name) => double.Parse((string)text.Attribute(name)!, CultureInfo.InvariantCulture);
        static (double X, double Y) Middle(Letter letter) => (letter.StartBaseLine.X + (letter.Width / 2), letter.StartBaseLine.Y);
    }

    [Fact]
    public void In_another_language_no_english_heading_is_left()
    {
        DaySheetModel english = SheetModels.Model("Made Lake");
        UnitSystem metric = UnitSystem.Metric.In(Sentences.SpeechFor("de"));
        using PdfDocument document = PdfDocument.Open(DayPdf.Write(english with { Units = metric }, SheetModels.Morning));
        string text = Squeezed(document.GetPage(1).Text);
        foreach (string heading in (string[])["Montage und Zug", "Was kam", "Achten auf", "Plant, navigiert nicht."]) Assert.Contains(Squeezed(heading), text, StringComparison.Ordinal);
        foreach (string heading in (string[])["Rig and pass", "What came", "Watch for", "because", "Tie tonight"])
            Assert.DoesNotContain(Squeezed(heading), text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_day_still_fits_one_page_and_metres_ask_for_a4()
    {
        DaySheetModel model = SheetModels.Model("Made Lake");
        string why = "ledge at 18 to 50 ft; side channel edge 65 ft away; standing timber 160 ft away; nine bites in 2.6 h at such places";
        model = model with
        {
            Units = UnitSystem.Metric,
            Stops = [.. Enumerable.Range(0, 11).Select(i => model.Stops[0] with { Letter = ((char)('A' + i)).ToString(), Why = why, How = "pass 250 yd, heading 193°, keep 30 to 33 ft" })],
            Cautions = [.. model.Cautions, .. model.Cautions, .. model.Cautions],
        };
        using PdfDocument document = PdfDocument.Open(DayPdf.Write(model, SheetModels.Morning));
        Page page = Assert.Single(document.GetPages());
        Assert.Equal(595, page.Width, 1.0);
        Assert.All(page.Letters.Where(l => l.Value.Trim().Length > 0), l => Assert.InRange(l.StartBaseLine.Y, 12, page.Height));
    }

    [Theory]
    [InlineData(") Tj ET endstream endobj (")]
    [InlineData("back\\slash \\) %PDF-1.7 <</JS (x)>>")]
    [InlineData("bell\u0007 nul\0 escape\u001b[31m")]
    [InlineData("right\u202Eleft \u200F mark\uFEFF")]
    [InlineData("lone\uD800surrogate and \uD83C\uDFA3 fish")]
    [InlineData("<script>alert(1)</script> & \"quotes\"")]
    [InlineData(null)]
    public void Names_that_others_made_up_do_no_harm(string? name)
    {
        // One word that no line can hold, where none is given.
        name ??= new string('w', 600);
        DaySheetModel model = SheetModels.Model(name);
        model = model with { Stops = [.. model.Stops.Select(s => s with { Name = name, Why = name, Rig = name })] };
        using PdfDocument document = PdfDocument.Open(DayPdf.Write(model, SheetModels.Morning));
        Page page = document.GetPage(1);
        string text = Squeezed(page.Text);
        Assert.Contains("doesnotnavigate", text, StringComparison.Ordinal);
        Assert.DoesNotContain(text, char.IsControl);
        Assert.All(page.Letters.Where(l => l.Value.Trim().Length > 0), l => Assert.InRange(l.StartBaseLine.X, 0, page.Width));
        Assert.False(document.Structure.Catalog.CatalogDictionary.ContainsKey(UglyToad.PdfPig.Tokens.NameToken.Create("OpenAction")));
    }

    // Readers join words by their gaps; the letters and their order are what must be right.
    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
