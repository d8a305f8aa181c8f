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
        int before = await EntriesAsync(app);

        await app.Page.EvaluateAsync("() => { window.fault = 'QuotaExceededError'; }");
        await app.PressAsync("Bite");
        await app.Page.GetByText("no room left").WaitForAsync();
        Assert.Equal(before, await EntriesAsync(app));

        await app.Page.EvaluateAsync("() => { window.fault = null; }");
        await app.PressAsync("Bite");
        await EntriesBecomeAsync(app, before + 1);

        // The browser closes the database by itself, as it does when its files are cleared or damaged.
        await app.Page.EvaluateAsync("() => window.opened.forEach((db) => { db.close(); db.dispatchEvent(new Event('close')); })");
        await app.PressAsync("Bite");
        await app.Page.WaitForTimeoutAsync(1_500);
        if (await EntriesAsync(app) == before + 1)
        {
            // Not kept is said; a second try finds the database open again.
            Assert.True(await app.Page.Locator(".bar, .trouble").CountAsync() > 0, "An entry was lost in silence.");
            await app.PressAsync("Bite");
        }

        await EntriesBecomeAsync(app, before + 2);
        await app.Page.ReloadAsync();
        await app.AnsweredAsync();
        Assert.Equal(before + 2, await EntriesAsync(app));
        await device.CloseAsync();
    }

    private static Task<int> EntriesAsync(AppPage app) => app.Page.Locator(".entries .ent").CountAsync();

    private static async Task EntriesBecomeAsync(AppPage app, int wanted) =>
        await app.Page.WaitForFunctionAsync("n => document.querySelectorAll('.entries .ent').length === n", wanted, new PageWaitForFunctionOptions { Timeout = 60_000 });
}
