using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>A newcomer's path from the first visit to the restored log, as one story at each size.</summary>
public class NewcomerTests(BrowserFixture fixture)
{
    private static readonly string[] Places = ["Lake", "Shore", "Rig", "Day", "Log"];

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task A_newcomer_sees_the_answer_brings_a_lake_plans_goes_offline_and_loses_nothing(int width, int height)
    {
        IBrowserContext device = await fixture.DeviceAsync(width, height);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.StopAsync();
        Assert.Equal("Ketterfold Reservoir", (await app.Page.TextContentAsync(".mast .t"))?.Trim());

        await app.BringTestLakeAsync("Take it in");
        await ReadingMovesTheBeltAsync(app);
        await TryDepthAsync(app);
        await PlanAndPrintAsync(app, width);
        await LookAtEveryPlaceAsync(app, width);

        await app.IsOnDeviceAsync();
        await device.SetOfflineAsync(true);
        await app.Page.CloseAsync();
        AppPage again = await AppPage.OpenAsync(device, fixture.Address, "aboard");
        await again.AnsweredAsync();
        await LogTenAsync(again);
        await again.ShotAsync($"aboard-{width}-offline");
        await again.AccessibleAsync("Aboard");
        await ExportWipeImportAsync(again);
        Assert.Empty(app.Errors.Concat(again.Errors));
        string[] faults = [.. app.Faults, .. again.Faults];
        Assert.True(faults.Length == 0, string.Join('\n', faults));
        await device.CloseAsync();
    }

    private static async Task ReadingMovesTheBeltAsync(AppPage app)
    {
        await app.PlaceAsync("Shore");
        string before = await BeltAsync(app);
        await app.PlaceAsync("Lake");
        await app.Page.FillAsync(".reading input[type=number]", "34");
        await app.PressAsync("Keep", exact: true);
        await app.Page.WaitForSelectorAsync(".work, .ent", new() { Timeout = 30_000 });
        await app.AnsweredAsync();
        await app.PlaceAsync("Shore");
        await app.AnsweredAsync();
        Assert.NotEqual(before, await BeltAsync(app));
    }

    private static async Task<string> BeltAsync(AppPage app)
    {
        await app.Page.WaitForSelectorAsync(".shore .panel h1");
        return await app.Page.TextContentAsync(".shore .panel") ?? "";
    }

    private static async Task TryDepthAsync(AppPage app)
    {
        string before = await app.Page.TextContentAsync(".headline .small") ?? "";
        await app.PressAsync("Thermocline at, more");
        await app.Page.WaitForSelectorAsync(".whatif");
        Assert.NotEqual(before, await app.Page.TextContentAsync(".headline .small"));
        await app.PressAsync("Back to the outlook");
        await app.Page.WaitForSelectorAsync(".whatif", new() { State = WaitForSelectorState.Detached });
        Assert.Equal(before, await app.Page.TextContentAsync(".headline .small"));
    }

    private static async Task PlanAndPrintAsync(AppPage app, int width)
    {
        await app.PlaceAsync("Day");
        await app.PressAsync("Plan the day");
        await app.Page.WaitForSelectorAsync(".tl .rg", new() { Timeout = 900_000 });
        await app.RestedAsync();
        Assert.True(await app.Page.Locator(".tl .rg").CountAsync() > 0);
        if (await app.Page.Locator(".send").CountAsync() > 0) await app.Page.Locator(".send summary").ClickAsync();
        IDownload gpx = await app.Page.RunAndWaitForDownloadAsync(() => app.PressAsync("Route for a plotter (GPX)"));
        Assert.EndsWith(".gpx", gpx.SuggestedFilename, StringComparison.Ordinal);
        await app.Page.GetByRole(AriaRole.Link, new() { Name = "Print" }).ClickAsync();
        await app.Page.WaitForFunctionAsync("() => document.querySelector('.papersheet')?.shadowRoot?.querySelector('.sheet h1')", null, new() { Timeout = 30_000 });
        await app.ShotAsync($"sheet-{width}");
        foreach (string paper in (string[])["A4", "Letter"])
        {
            byte[] pdf = await app.Page.PdfAsync(new() { Format = paper, Path = Path.Combine(BrowserFixture.Screens, $"sheet-{paper}.pdf") });
            Assert.Single(Regex.Matches(Encoding.Latin1.GetString(pdf), @"/Type\s*/Page\b(?!s)"));
        }
    }

    private static async Task LookAtEveryPlaceAsync(AppPage app, int width)
    {
        foreach (string theme in (string[])["light", "dark"])
        {
            if (theme == "dark") await app.PressAsync("Change the light: day, night, sun");
            foreach (string place in Places)
            {
                await app.PlaceAsync(place);
                if (place == "Rig") await app.Page.WaitForSelectorAsync(".rig .out", new() { Timeout = 60_000 });
                await app.ShotAsync($"bowl-{place.ToLowerInvariant()}-{width}-{theme}");
                await app.AccessibleAsync($"{place}, {theme}");
            }
        }
    }

    private static async Task LogTenAsync(AppPage app)
    {
        string[] keys = ["Bite", "Fish", "Snag", "Nothing"];
        for (int i = 0; i < 10; i++)
        {
            await app.Page.Locator(".ab-grid").GetByRole(AriaRole.Button, new() { Name = keys[i % 4], Exact = true }).ClickAsync();
            Assert.True(await app.BecomesAsync("""
                async (count) => {
                  const store = await import('/js/app.js'), lake = await store.setting('lake');
                  return JSON.parse(await store.recordsJson(lake))
                    .filter((r) => ['bite', 'fish', 'snag', 'nothing'].includes(r.kind)).length === count;
                }
                """, i + 1), $"Entry {i + 1} of ten was not kept.");
            await app.Page.Locator(".ab-undo").WaitForAsync();
        }

        foreach (ILocator key in await app.Page.Locator(".ab-page button, .ab-page a").AllAsync())
        {
            if (!await key.IsVisibleAsync()) continue;
            LocatorBoundingBoxResult box = (await key.BoundingBoxAsync())!;
            if (!(box.Height >= 56 && box.Width >= 44)) app.Faults.Add(string.Create(CultureInfo.InvariantCulture, $"A key Aboard is {box.Width:0} by {box.Height:0} px."));
        }
    }

    private static async Task ExportWipeImportAsync(AppPage app)
    {
        await app.GoAsync("log");
        await app.Page.WaitForSelectorAsync(".ent", new() { Timeout = 120_000 });
        // Ten taps and the haze that was seen.
        Assert.Equal(11, await app.Page.Locator(".entries .ent").CountAsync());
        string[] kept = await EntriesAsync(app);
        await app.GoAsync("lakes");
        await app.Page.WaitForSelectorAsync(".lakerow", new() { Timeout = 120_000 });
        await app.RestedAsync();
        IDownload trip = await app.Page.RunAndWaitForDownloadAsync(() => app.PressAsync("Save the trip file"), new() { Timeout = 900_000 });
        string file = Path.Combine(Path.GetTempPath(), $"trip-{Guid.NewGuid():N}.zip");
        await trip.SaveAsAsync(file);
        while (await app.Page.Locator(".lakerow").CountAsync() is int left and > 0)
        {
            await app.PressAsync("Remove", exact: true);
            await app.PressAsync("Remove it");
            await app.Page.WaitForFunctionAsync("left => document.querySelectorAll('.lakerow').length < left", left);
        }

        await app.Page.SetInputFilesAsync("#lakefiles", file);
        await app.Page.WaitForSelectorAsync(".reading.check", new() { Timeout = 900_000 });
        Assert.Equal(TestLake.Name, await app.Page.InputValueAsync(".reading.check input"));
        await app.PressAsync("Take it in");
        await app.AnsweredAsync();
        Assert.Equal(TestLake.Name, (await app.Page.TextContentAsync(".mast .t"))?.Trim());
        await app.PlaceAsync("Log");
        await app.Page.WaitForSelectorAsync(".entries .ent", new() { Timeout = 60_000 });
        Assert.Equal(kept, await EntriesAsync(app));
        File.Delete(file);
    }

    // Time and words of each entry, as they stand in the log.
    private static async Task<string[]> EntriesAsync(AppPage app) =>
        [.. (await app.Page.Locator(".entries .ent").AllInnerTextsAsync()).Select(t => Regex.Replace(t, @"\s+", " ").Replace(" Edit", "", StringComparison.Ordinal).Replace(" Remove", "", StringComparison.Ordinal).Trim())];
}
