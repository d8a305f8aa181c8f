using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>Two devices and one host: what one writes while it is cut off stands on the other afterwards, and nothing twice.</summary>
public class InStepTests(BrowserFixture fixture)
{
    private static readonly float Patient = 300_000;

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task What_is_logged_without_a_signal_reaches_the_other_device_once(int width, int height)
    {
        await using PublishedHost host = await fixture.HostAsync();
        IBrowserContext phone = await fixture.DeviceAsync(width, height), laptop = await fixture.DeviceAsync(width, height, dark: true);
        AppPage here = await AppPage.OpenAsync(phone, host.Address), there = await AppPage.OpenAsync(laptop, host.Address);
        await here.StopAsync();
        await here.BringTestLakeAsync("Take it in");
        await there.StopAsync();

        await LakesAsync(here);
        await here.ShotAsync($"host-{width}-light-before");
        await here.PressAsync($"Give it to the host {TestLake.Name}");
        await InStepAsync(here);
        await LakesAsync(there);
        await there.PressAsync($"Take it onto this device {TestLake.Name}");
        await InStepAsync(there);
        foreach ((AppPage app, string light) in ((AppPage, string)[])[(here, "light"), (there, "dark")])
            await LookAsync(app, $"host-{width}-{light}", $"Lakes with a host, {width} px, {light}");
        await there.Page.Locator(".lakerow").GetByRole(AriaRole.Button, new() { Name = TestLake.Name, Exact = true }).ClickAsync();
        await there.AnsweredAsync();
        await here.PlaceAsync("Log");
        await there.PlaceAsync("Log");
        await UpToDateAsync(here);
        await UpToDateAsync(there);

        await phone.SetOfflineAsync(true);
        foreach (string key in (string[])["Bite", "Fish"]) await here.Page.Locator(".add").GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).ClickAsync();
        await here.Page.FillAsync(".note input", "moved to the point");
        await here.PressAsync("Keep", exact: true);
        await here.Page.WaitForFunctionAsync("() => document.querySelector('.sync')?.textContent.includes('3 entries wait')", null, new() { Timeout = Patient });
        await here.ShotAsync($"host-{width}-waiting");
        await there.Page.Locator(".add").GetByRole(AriaRole.Button, new() { Name = "Snag", Exact = true }).ClickAsync();
        await EntriesAsync(there, 1);
        await UpToDateAsync(there);

        await phone.SetOfflineAsync(false);
        await EntriesAsync(here, 4);
        await UpToDateAsync(here);
        await NowAsync(there);
        await EntriesAsync(there, 4);
        Assert.Equal(await WordsAsync(here), await WordsAsync(there));

        await EditNoteAsync(there, "moved to the bluff");
        await UpToDateAsync(there);
        await NowAsync(here);
        await here.Page.GetByText("moved to the bluff").WaitForAsync(new() { Timeout = Patient });
        await SameAgainAsync(here, there, 4);
        Assert.DoesNotContain("moved to the point", string.Concat(await WordsAsync(here)), StringComparison.Ordinal);
        Assert.Empty(here.Errors.Concat(there.Errors));
        string[] faults = [.. here.Faults, .. there.Faults];
        Assert.True(faults.Length == 0, string.Join('\n', faults));
        await phone.CloseAsync();
        await laptop.CloseAsync();
    }

    // Again, from a cold start of both: the same entries on each.
    private static async Task SameAgainAsync(AppPage here, AppPage there, int entries)
    {
        foreach (AppPage app in (AppPage[])[here, there])
        {
            await app.GoAsync("log");
            await app.StopAsync();
            await NowAsync(app);
            await EntriesAsync(app, entries);
        }

        Assert.Equal(await WordsAsync(here), await WordsAsync(there));
    }

    [Fact]
    public async Task An_app_from_a_plain_site_pairs_once_with_a_host_elsewhere_and_forgets_it_again()
    {
        // The site must be known to the host and the host to the site: the site's own policy is written last.
        using StaticSite site = new(fixture.SiteFolder, "http://127.0.0.1:*");
        await using PublishedHost host = await fixture.HostAsync("--app", site.Address);
        IBrowserContext phone = await fixture.DeviceAsync(390, 844);
        AppPage app = await AppPage.OpenAsync(phone, site.Address);
        await app.StopAsync();
        await app.BringTestLakeAsync("Take it in");
        await LakesAsync(app);
        await app.Page.Locator(".host summary").ClickAsync();
        await app.ShotAsync("host-390-pairing");
        await app.AccessibleAsync("Lakes, pairing");
        await PairAsync(app, host.Address, "WRONG-WRONG");
        await app.Page.GetByText("The code is wrong").WaitForAsync(new() { Timeout = Patient });
        await PairAsync(app, host.Address, host.Code);
        await app.PressAsync($"Give it to the host {TestLake.Name}");
        await InStepAsync(app);

        // The token is kept: a new visit needs no code.
        await app.GoAsync("lakes");
        await app.StopAsync();
        await InStepAsync(app);
        await app.PressAsync("Forget the host");
        await app.PressAsync("Forget it");
        await app.Page.Locator(".host summary").WaitForAsync(new() { Timeout = Patient });
        Assert.Null(await app.Page.EvaluateAsync<string?>("async () => (await import('/js/app.js')).setting('host')"));
        Assert.Equal("[]", await app.Page.EvaluateAsync<string>("async () => (await import('/js/app.js')).linksJson()"));
        Assert.True(app.Faults.Count == 0, string.Join('\n', app.Faults));
        // The refused code is told by the browser as well.
        Assert.DoesNotContain(app.Errors, e => !e.Contains("status of 403", StringComparison.Ordinal));
        await phone.CloseAsync();
    }

    private static async Task PairAsync(AppPage app, string address, string code)
    {
        await app.Page.GetByLabel("Address of the host").FillAsync(address);
        await app.Page.GetByLabel("Code", new() { Exact = true }).FillAsync(code);
        await app.PressAsync("Pair", exact: true);
    }

    private static async Task LakesAsync(AppPage app)
    {
        await app.Page.Locator(".mast .t").ClickAsync();
        await app.Page.WaitForSelectorAsync(".host", new() { Timeout = Patient });
        await app.Page.WaitForTimeoutAsync(600);
        await app.Page.Locator("#host").ScrollIntoViewIfNeededAsync();
    }

    private static async Task LookAsync(AppPage app, string picture, string where)
    {
        await app.Page.Locator("#host").ScrollIntoViewIfNeededAsync();
        await app.ShotAsync(picture);
        await app.AccessibleAsync(where);
        await app.KeyboardAsync(where);
    }

    private static Task InStepAsync(AppPage app) =>
        app.Page.Locator(".host .lakerow", new() { HasText = TestLake.Name }).GetByText("in step").WaitForAsync(new() { Timeout = Patient });

    // By the device's own count first: the words of a moment ago say the same.
    private static async Task UpToDateAsync(AppPage app)
    {
        DateTimeOffset until = TimeProvider.System.GetUtcNow().AddMilliseconds(Patient);
        while (!await app.Page.EvaluateAsync<bool>("""
            async () => Object.values(JSON.parse(await (await import('/js/app.js')).waitingCountsJson())).every((waiting) => waiting === 0)
              && (document.querySelector('.sync')?.textContent ?? '').includes('Up to date')
            """))
        {
            Assert.True(TimeProvider.System.GetUtcNow() < until, "Entries still wait for the host: " + await app.Page.InnerTextAsync("main"));
            await app.Page.WaitForTimeoutAsync(200);
        }
    }

    // By the button under Lakes, and back to the log.
    private static async Task NowAsync(AppPage app)
    {
        await LakesAsync(app);
        await app.PressAsync("Do it now");
        await InStepAsync(app);
        await app.Page.WaitForFunctionAsync("() => document.querySelector('#host .row .btn')?.disabled === false", null, new() { Timeout = Patient });
        await app.PlaceAsync("Log");
    }

    private static async Task EntriesAsync(AppPage app, int count) =>
        await app.Page.WaitForFunctionAsync("count => document.querySelectorAll('.entries .ent').length === count", count, new() { Timeout = Patient });

    private static async Task EditNoteAsync(AppPage app, string text)
    {
        ILocator entry = app.Page.Locator(".entries .ent", new() { HasText = "moved to the point" });
        await entry.GetByRole(AriaRole.Button, new() { Name = "Edit" }).ClickAsync();
        await app.Page.Locator(".edit input[maxlength='400']").FillAsync(text);
        await app.Page.Locator(".edit").GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await app.Page.Locator(".edit").WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }

    private static async Task<string[]> WordsAsync(AppPage app) =>
        [.. (await app.Page.Locator(".entries .ent").AllInnerTextsAsync()).Select(t => Regex.Replace(t, @"\s+", " ").Trim()).Order(StringComparer.Ordinal)];
}
