using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>A device whose room ends, or whose database is taken from under the app: what was not kept is said, and kept once it can be.</summary>
public class DeviceFaultTests(BrowserFixture fixture)
{
    // The device's faults, as the browser throws them; each lasts until it is taken back.
    private static readonly string Faults = """
        const add = IDBObjectStore.prototype.add;
        window.fault = null;
        IDBObjectStore.prototype.add = function (...args) {
          if (window.fault) throw new DOMException('made for a test', window.fault);
          return add.apply(this, args);
        };
        const open = indexedDB.open.bind(indexedDB);
        window.opened = [];
        indexedDB.open = (...args) => {
          const request = open(...args);
          request.addEventListener('success', () => window.opened.push(request.result));
          return request;
        };
        """;

    [Fact]
    public async Task An_entry_that_finds_no_room_or_no_database_is_said_and_is_kept_afterwards()
    {
        IBrowserContext device = await fixture.DeviceAsync(390, 844);
        await device.AddInitScriptAsync(Faults);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.WorkedOutAsync();
        await app.PlaceAsync("Log");
        int before = await BitesAsync(app);

        await app.Page.EvaluateAsync("() => { window.fault = 'QuotaExceededError'; }");
        await app.PressAsync("Bite");
        await app.Page.GetByText("no room left").WaitForAsync();
        Assert.Equal(before, await BitesAsync(app));

        await app.Page.EvaluateAsync("() => { window.fault = null; }");
        await app.PressAsync("Bite");
        await BitesBecomeAsync(app, before + 1);

        // The browser closes the database by itself, as it does when its files are cleared or damaged.
        await app.Page.EvaluateAsync("() => window.opened.forEach((db) => { db.close(); db.dispatchEvent(new Event('close')); })");
        await app.PressAsync("Bite");
        await app.Page.WaitForTimeoutAsync(1_500);
        if (await BitesAsync(app) == before + 1)
        {
            // Not kept is said; a second try finds the database open again.
            Assert.True(await app.Page.Locator(".bar, .trouble").CountAsync() > 0, "An entry was lost in silence.");
            await app.PressAsync("Bite");
        }

        await BitesBecomeAsync(app, before + 2);
        await app.Page.ReloadAsync();
        // The page stands before its entries are read.
        await BitesBecomeAsync(app, before + 2);
        await device.CloseAsync();
    }

    // The head of the log counts all bites, those of the lake's files too; the list shows the newest entries only.
    private static async Task<int> BitesAsync(AppPage app) =>
        int.Parse(Regex.Match(await app.Page.InnerTextAsync("main.log h1"), @"\d+").Value, CultureInfo.InvariantCulture);

    private static async Task BitesBecomeAsync(AppPage app, int wanted) => Assert.True(
        await app.BecomesAsync("n => new RegExp('(^|\\\\D)' + n + '(\\\\D|$)').test(document.querySelector('main.log h1')?.innerText ?? '')", wanted, 60), $"{wanted} bites are not there.");
}
