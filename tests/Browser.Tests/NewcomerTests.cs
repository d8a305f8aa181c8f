using System.Globalization;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

public class NewcomerTests(BrowserFixture fixture)
{
    private static readonly string[] Places = ["Lake", "Shore", "Rig", "Log"];

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task A_newcomer_sees_the_answer_tries_a_depth_logs_goes_offline_and_loses_nothing(int width, int height)
    {
        IBrowserContext device = await fixture.DeviceAsync(width, height);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.AnsweredAsync();
        Assert.Equal("Ketterfold Reservoir", (await app.Page.TextContentAsync(".mast .t"))?.Trim());

        foreach (string theme in (string[])["light", "dark"])
        {
            if (theme == "dark") await app.Page.GetByRole(AriaRole.Button, new() { Name = "Change the light: day, night, sun" }).ClickAsync();
            foreach (string place in Places)
            {
                await app.PlaceAsync(place);
                if (place == "Rig") await app.Page.WaitForSelectorAsync(".rig .out");
                await app.ShotAsync($"{place.ToLowerInvariant()}-{width}-{theme}");
                await AccessibleAsync(app, $"{place}, {theme}");
            }
        }

        await TryDepthAsync(app);
        await app.PlaceAsync("Aboard");
        await LogTenAsync(app);
        await app.ShotAsync($"aboard-{width}-dark");
        await AccessibleAsync(app, "Aboard");

        await app.Page.WaitForFunctionAsync("() => navigator.serviceWorker.ready.then(r => !!r.active)", null, new() { Timeout = 120_000 });
        await device.SetOfflineAsync(true);
        await app.Page.CloseAsync();
        AppPage again = await AppPage.OpenAsync(device, fixture.Address, "log");
        await again.Page.WaitForSelectorAsync(".ent", new() { Timeout = 120_000 });
        Assert.Equal(10, await again.Page.Locator(".ent").CountAsync());
        await again.ShotAsync($"log-offline-{width}");
        await ExportWipeImportAsync(again);
        Assert.Empty(app.Errors.Concat(again.Errors));
        await device.CloseAsync();
    }

    private static async Task TryDepthAsync(AppPage app)
    {
        await app.PlaceAsync("Shore");
        string before = await app.Page.TextContentAsync(".headline .small") ?? "";
        await app.Page.GetByRole(AriaRole.Button, new() { Name = "Thermocline at, more" }).ClickAsync();
        await app.Page.WaitForSelectorAsync(".whatif");
        Assert.NotEqual(before, await app.Page.TextContentAsync(".headline .small"));
        await app.Page.GetByRole(AriaRole.Button, new() { Name = "Back to the outlook" }).ClickAsync();
        await app.Page.WaitForSelectorAsync(".whatif", new() { State = WaitForSelectorState.Detached });
    }

    private static async Task LogTenAsync(AppPage app)
    {
        string[] keys = ["Bite", "Fish", "Snag", "Nothing"];
        for (int i = 0; i < 10; i++)
        {
            await app.Page.Locator(".ab-grid").GetByRole(AriaRole.Button, new() { Name = keys[i % 4], Exact = true }).ClickAsync();
            await app.Page.WaitForSelectorAsync(".ab-undo");
        }

        foreach (ILocator key in await app.Page.Locator(".ab-page button").AllAsync())
        {
            if (!await key.IsVisibleAsync()) continue;
            LocatorBoundingBoxResult box = (await key.BoundingBoxAsync())!;
            Assert.True(box.Height >= 56 && box.Width >= 56, string.Create(CultureInfo.InvariantCulture, $"A key Aboard is {box.Width:0} by {box.Height:0} px."));
        }
    }

    private static async Task ExportWipeImportAsync(AppPage app)
    {
        await app.GoAsync("lakes");
        await app.Page.WaitForFunctionAsync("() => !document.querySelector('.work')", null, new() { Timeout = 300_000 });
        IDownload trip = await app.Page.RunAndWaitForDownloadAsync(() => app.Page.GetByRole(AriaRole.Button, new() { Name = "Save the trip file" }).ClickAsync(), new() { Timeout = 300_000 });
        string file = Path.Combine(Path.GetTempPath(), $"trip-{Guid.NewGuid():N}.zip");
        await trip.SaveAsAsync(file);
        await app.Page.GetByRole(AriaRole.Button, new() { Name = "Remove", Exact = true }).ClickAsync();
        await app.Page.GetByRole(AriaRole.Button, new() { Name = "Remove it" }).ClickAsync();
        await app.Page.WaitForSelectorAsync(".lakerow", new() { State = WaitForSelectorState.Detached });
        await app.Page.SetInputFilesAsync("#lakefiles", file);
        await app.Page.WaitForSelectorAsync(".reading.check", new() { Timeout = 300_000 });
        Assert.Equal("Ketterfold Reservoir", await app.Page.InputValueAsync(".reading.check input"));
        await app.Page.GetByRole(AriaRole.Button, new() { Name = "Take it in" }).ClickAsync();
        await app.AnsweredAsync();
        Assert.Equal("Ketterfold Reservoir", (await app.Page.TextContentAsync(".mast .t"))?.Trim());
        File.Delete(file);
    }

    private static async Task AccessibleAsync(AppPage app, string where)
    {
        AxeResult result = await app.Page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });
        Assert.True(result.Violations.Length == 0, $"{where}: " + string.Join("; ", result.Violations.Select(v => $"{v.Id}: {v.Help} ({string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))})")));
    }
}
