using System.Buffers.Binary;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>Places on paper, and charts as pictures, from the answer that the app comes with.</summary>
public class PaperTests(BrowserFixture fixture)
{
    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task Lake_and_shore_print_as_paper_and_every_chart_is_a_picture_with_lake_date_and_caption(int width, int height)
    {
        IBrowserContext device = await fixture.DeviceAsync(width, height, dark: true);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.Page.WaitForSelectorAsync(".answer .num.xl");
        await app.Page.WaitForSelectorAsync(".season svg.chart");
        await PaperAsync(app, "lake", width);
        await SvgAsync(app, ".season", "Ketterfold Reservoir");
        await PngAsync(app, ".prof", $"profile-{width}");
        await app.PlaceAsync("Shore");
        await app.Page.WaitForSelectorAsync(".shore .map[data-drawn]");
        await app.Page.WaitForTimeoutAsync(1_000);
        Assert.Matches(@"^[\d.,]+ (ft|mi)$", await app.Page.InnerTextAsync(".shore .map .scale"));
        await PngAsync(app, ".papers", $"shore-{width}");
        await PaperAsync(app, "shore", width);
        // Printing leaves the screen as it was.
        Assert.False(await app.Page.EvaluateAsync<bool>("() => document.documentElement.classList.contains('printing') || 'theme' in document.documentElement.dataset"));
        Assert.Empty(app.Errors);
        await device.CloseAsync();
    }

    private static async Task PaperAsync(AppPage app, string place, int width)
    {
        foreach (string paper in (string[])["A4", "Letter"])
        {
            byte[] pdf = await app.Page.PdfAsync(new() { Format = paper, PreferCSSPageSize = false, Path = Path.Combine(BrowserFixture.Screens, $"paper-{place}-{width}-{paper}.pdf") });
            // One page, though nobody waits for charts to draw themselves anew; a screen printed as it stands takes four and more.
            Assert.Equal(1, Regex.Count(Encoding.Latin1.GetString(pdf), @"/Type\s*/Page\b(?!s)"));
        }
    }

    private static async Task<byte[]> SavedAsync(AppPage app, string under, string kind)
    {
        ILocator keys = app.Page.Locator($"{under} .aspicture").First;
        if (await keys.GetAttributeAsync("open") is null) await keys.Locator("summary").ClickAsync();
        IDownload file = await app.Page.RunAndWaitForDownloadAsync(() => keys.GetByRole(AriaRole.Button, new() { Name = kind, Exact = true }).ClickAsync());
        Assert.EndsWith("." + kind.ToLowerInvariant(), file.SuggestedFilename, StringComparison.Ordinal);
        return await File.ReadAllBytesAsync(await file.PathAsync());
    }

    private static async Task SvgAsync(AppPage app, string under, string lake)
    {
        string text = Encoding.UTF8.GetString(await SavedAsync(app, under, "SVG"));
        XElement svg = XDocument.Parse(text).Root!;
        XNamespace space = "http://www.w3.org/2000/svg";
        Assert.StartsWith(lake, svg.Element(space + "title")!.Value, StringComparison.Ordinal);
        Assert.Matches(@"20\d\d", svg.Element(space + "title")!.Value);
        Assert.NotEmpty(svg.Element(space + "desc")!.Value);
        Assert.NotEmpty(svg.Descendants(space + "path"));
        // It stands alone: nothing is fetched, and no style is left behind.
        Assert.DoesNotMatch(@"(href|url\()\W*https?:", text);
        Assert.DoesNotContain(svg.Descendants(), e => e.Attribute("class") is not null);
    }

    private static async Task PngAsync(AppPage app, string under, string name)
    {
        byte[] png = await SavedAsync(app, under, "PNG");
        await File.WriteAllBytesAsync(Path.Combine(BrowserFixture.Screens, $"picture-{name}.png"), png);
        Assert.Equal("89504E470D0A1A0A", Convert.ToHexString(png[..8]));
        Assert.Equal(1440, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16, 4)));
        // Ink on it: a blank picture of this size packs far smaller.
        Assert.True(png.Length > 30_000, $"{png.Length} bytes");
    }
}
