using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Browser.Tests;

/// <summary>A device on a trip: what its user does with it, and what then stands in its log.</summary>
internal sealed class TripDevice : IAsyncDisposable
{
    private readonly IBrowserContext _device;
    private readonly string _address, _locale;
    private readonly List<AppPage> _pages = [];
    private readonly List<string> _kinds = [];
    private int _width;

    private TripDevice(IBrowserContext device, DeviceClock clock, string address, string locale, int width) =>
        (_device, Clock, _address, _locale, _width) = (device, clock, address, locale, width);

    /// <summary>Seven in the evening before the day.</summary>
    public static DateTime Evening { get; } = new(2026, 10, 7, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>The device's clock.</summary>
    public DeviceClock Clock { get; }

    /// <summary>The page that is open.</summary>
    public AppPage App => _pages[^1];

    /// <summary>A time of the day at the lake, five hours behind the zero meridian.</summary>
    public static DateTime At(int hour, int minute) => new DateTime(2026, 10, 7, 0, 0, 0, DateTimeKind.Utc).AddHours(hour + 5).AddMinutes(minute);

    public static async Task<TripDevice> OnAsync(BrowserFixture fixture, int width, int height, string locale)
    {
        IBrowserContext device = await fixture.DeviceAsync(width, height, locale: locale);
        DeviceClock clock = await DeviceClock.OnAsync(device, fixture.Address, Evening);
        await DeviceBoat.OnAsync(device);
        return new TripDevice(device, clock, fixture.Address, locale, width);
    }

    /// <summary>Opens a place, at a time; the page open before is closed.</summary>
    public async Task OpenAsync(string path, DateTime? at = null)
    {
        if (at is { } moment) await Clock.SetAsync(moment);
        IPage[] before = [.. _device.Pages];
        _pages.Add(await AppPage.OpenAsync(_device, _address, path));
        // A clock that is set stands still, and so would the chart halfway to a place.
        await App.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        foreach (IPage page in before) await page.CloseAsync();
    }

    /// <summary>The ramp: no signal from here on. What the app needs is on the device by then.</summary>
    public async Task OfflineAsync()
    {
        await App.IsOnDeviceAsync();
        await _device.SetOfflineAsync(true);
    }

    public Task OnlineAsync() => _device.SetOfflineAsync(false);

    /// <summary>The system ends the tab, as it does when memory is short; nothing is asked of the page.</summary>
    /// <param name="next">The time at which another is opened.</param>
    public async Task KillAsync(DateTime next)
    {
        IPage page = App.Page;
        await Clock.SetAsync(next);
        ICDPSession session = await _device.NewCDPSessionAsync(page);
        _ = session.SendAsync("Page.crash").ContinueWith(ended => ended.Exception, TaskScheduler.Default);
        await page.CloseAsync();
    }

    public async Task SizeAsync(int width, int height)
    {
        _width = width;
        await App.Page.SetViewportSizeAsync(width, height);
    }

    public async Task PlanAsync()
    {
        await App.Page.Locator(".places a[href=day]").ClickAsync();
        await App.Page.Locator(".dayform button[type=submit]").ClickAsync();
        await App.Page.WaitForSelectorAsync(".tl .rg", new() { Timeout = 900_000 });
        await App.RestedAsync();
    }

    /// <summary>The plan's route, sent to a plotter.</summary>
    public async Task<string> RouteAsync()
    {
        await App.Page.Locator(".send summary").ClickAsync();
        IDownload route = await App.Page.RunAndWaitForDownloadAsync(() => App.PressAsync(Say("day.send.gpx")));
        return await File.ReadAllTextAsync(await route.PathAsync());
    }

    /// <summary>The first jig of the box with a trailer.</summary>
    public async Task TieOnAsync(string trailer)
    {
        await App.Page.Locator(".ab-rig").ClickAsync();
        await App.Page.Locator(".ab-box .picks >> nth=0").Locator("button").First.ClickAsync();
        ILocator wanted = App.Page.Locator(".ab-box .picks >> nth=1").Locator("button", new() { HasText = trailer });
        if (await wanted.GetAttributeAsync("aria-pressed") != "true") await wanted.ClickAsync();
        await App.Page.Locator(".ab-rig").ClickAsync();
        Assert.Contains(trailer, await App.Page.InnerTextAsync(".ab-rig"), StringComparison.Ordinal);
    }

    /// <summary>One tap on a key.</summary>
    public async Task TapAsync(DateTime at, string kind)
    {
        await Clock.SetAsync(at);
        await App.Page.Locator(".ab-grid").GetByRole(AriaRole.Button, new() { Name = Say("key." + kind), Exact = true }).ClickAsync();
        await StandAsync(kind);
    }

    /// <summary>A tap that is taken back once it is seen.</summary>
    public async Task WrongTapAsync(DateTime at, string kind)
    {
        string before = await App.Page.InnerTextAsync(".ab-undo span");
        await TapAsync(at, kind);
        await App.Page.WaitForFunctionAsync("before => document.querySelector('.ab-undo span').innerText !== before", before);
        await App.Page.Locator(".ab-undo button").Last.ClickAsync();
        _kinds.Remove(kind);
        await StandAsync();
    }

    /// <summary>On to the next stop, or home: the stretch ends and becomes an entry.</summary>
    public async Task NextAsync(DateTime at)
    {
        await Clock.SetAsync(at);
        await App.Page.Locator(".ab-grid .act").ClickAsync();
        await StandAsync("effort");
    }

    /// <summary>A haze five feet deeper than told: the depth moves, and the plan says what it loses.</summary>
    public async Task HazeAsync(DateTime at, bool planAgain)
    {
        await Clock.SetAsync(at);
        double toldFt = await DepthAsync();
        int steps = 0;
        while (Number(await App.Page.InnerTextAsync(".ab-mid b")) < toldFt + 5 && steps++ < 40) await App.Page.Locator(".ab-haze button").Last.ClickAsync();
        await App.Page.Locator(".ab-mid").ClickAsync();
        await StandAsync("haze");
        await App.Page.WaitForSelectorAsync(".ab-hold", new() { Timeout = 900_000 });
        await App.RestedAsync();
        double nowFt = await DepthAsync();
        Assert.True(nowFt > toldFt + 1, $"{toldFt} to {nowFt} ft");
        // The line tells whole feet, the large number halves.
        Assert.InRange(Number(await App.Page.InnerTextAsync(".ab-hold span")), nowFt - 0.8, nowFt + 0.8);
        await ShotAsync("haze");
        if (_width >= 1000) Assert.NotEqual("0", await App.Page.GetAttributeAsync(".ab-map .map", "data-places"));
        if (!planAgain) return;
        await App.Page.Locator(".ab-hold button").ClickAsync();
        await App.Page.WaitForSelectorAsync(".ab-hold", new() { State = WaitForSelectorState.Detached, Timeout = 900_000 });
        await App.RestedAsync();
    }

    /// <summary>What Aboard stands at: the stop, the rig, the next step, the depth.</summary>
    public async Task<string> AboardAsync() => Plain(await App.Page.EvaluateAsync<string>(Standing));

    /// <summary>Waits until Aboard stands at what it stood at.</summary>
    public async Task AgainAsync(string before)
    {
        try
        {
            await App.Page.WaitForFunctionAsync($"before => ({Standing})().replace(/\\s+/g, ' ') === before", before, new() { Timeout = 120_000 });
        }
        catch (TimeoutException)
        {
            Assert.Equal(before, await AboardAsync());
        }
    }

    /// <summary>A place of the app, by its key, without loading the page anew.</summary>
    public async Task PlaceAsync(string key)
    {
        await App.PlaceAsync(Say("place." + key));
        if (key == "rig") await App.Page.WaitForSelectorAsync(".rig .out", new() { Timeout = 300_000 });
    }

    /// <summary>An entry typed from the sheet.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="at">When it happened.</param>
    /// <param name="fields">Key of the field's text, its value, its unit; no key is the reading's own value.</param>
    public async Task TypeAsync(string kind, DateTime at, params (string Key, string Value, string Unit)[] fields)
    {
        await App.Page.GetByText(Say("log.sheet"), new() { Exact = true }).ClickAsync();
        ILocator form = App.Page.Locator(".edit.whole");
        await form.Locator("select").First.SelectOptionAsync(kind);
        await form.Locator("input[type=datetime-local]").FillAsync(at.AddHours(-5).ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture));
        foreach ((string key, string value, string unit) in fields)
            await (key.Length == 0 ? form.Locator("input[type=number]").First : form.Locator("label", new() { HasTextRegex = new Regex("^" + Regex.Escape(Say(key, unit))) }).Locator("input")).FillAsync(value);
        await form.Locator("button[type=submit]").ClickAsync();
        await StandAsync(kind);
        await ClosedAsync(form);
    }

    // A form that stays open says why.
    private async Task ClosedAsync(ILocator form)
    {
        try
        {
            await form.WaitForAsync(new() { State = WaitForSelectorState.Detached, Timeout = 60_000 });
        }
        catch (TimeoutException)
        {
            await ShotAsync("form", whole: true);
            Assert.Fail($"The form stays: {Plain(await form.InnerTextAsync())} {string.Join(' ', await App.Page.Locator(".work, [role=alert]").AllInnerTextsAsync())} {string.Join(' ', App.Errors)}");
        }
    }

    /// <summary>The oldest fish in the log gets a weight: a new record in the place of the old.</summary>
    public async Task WeighAsync(string pounds)
    {
        // What came with the lake's files cannot be changed here, and has no such button.
        ILocator edit = App.Page.GetByRole(AriaRole.Button, new() { Name = Say("entry.edit"), Exact = true });
        await App.Page.Locator(".entries .ent", new() { HasText = Say("kind.fish"), Has = edit }).Last.GetByRole(AriaRole.Button, new() { Name = Say("entry.edit"), Exact = true }).ClickAsync();
        await App.Page.Locator(".edit.whole").GetByLabel(Say("entry.weight", "lb")).FillAsync(pounds);
        await App.Page.Locator(".edit.whole button[type=submit]").ClickAsync();
        await ClosedAsync(App.Page.Locator(".edit.whole"));
        await StandAsync();
    }

    /// <summary>Waits until the log's lessons stand, and sees that they are of this day.</summary>
    public async Task LearnedAsync()
    {
        await App.RestedAsync();
        await App.Page.WaitForSelectorAsync(".learned .rates", new() { Timeout = 900_000 });
        string day = At(12, 0).ToString("d. MMM", CultureInfo.GetCultureInfo(_locale)).Split(' ')[0].TrimEnd('.');
        Assert.Contains(day, await App.Page.Locator(".learned .rulehead h2").Nth(1).InnerTextAsync(), StringComparison.Ordinal);
    }

    /// <summary>The place of the newest entry of a kind, to the device's own doubt.</summary>
    public async Task<GeoPoint?> PlaceOfLastAsync(string kind)
    {
        double[]? place = await App.Page.EvaluateAsync<double[]?>("""
            async (kind) => {
              const store = await import('/js/app.js'), rows = JSON.parse(await store.recordsJson(await store.setting('lake')));
              const entry = JSON.parse(rows.filter((r) => r.kind === kind).at(-1).json);
              return entry.latDeg === undefined ? null : [entry.latDeg, entry.lonDeg];
            }
            """, kind);
        return place is null ? null : new GeoPoint(place[0], place[1]);
    }

    /// <summary>Kinds of the entries that should stand, in order of the alphabet.</summary>
    public string Kinds => string.Join(' ', _kinds.Order(StringComparer.Ordinal));

    /// <summary>A picture, and whether all of it can be seen.</summary>
    public async Task LookAsync(string place)
    {
        await App.Page.WaitForTimeoutAsync(300);
        await App.FitsAsync($"{place}, {_width} px, {_locale}");
        if (place == "aboard")
        {
            int over = await App.Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight - innerHeight");
            if (over > 0) App.Faults.Add($"Aboard at {_width} px, {_locale} needs {over} px of scrolling.");
        }

        await ShotAsync(place, whole: place != "aboard");
    }

    /// <summary>The trip file holds the day, and the command line learns from it what the app shows.</summary>
    public async Task AgreesAsync()
    {
        string inApp = await TripFiles.LearnedInAppAsync(App.Page, _locale[..2]);
        string shown = Plain(await App.Page.InnerTextAsync(".learned"));
        await App.PlaceAsync(Say("place.log"));
        await App.Page.Locator(".mast .t").ClickAsync();
        await App.Page.WaitForSelectorAsync(".lakerow", new() { Timeout = 120_000 });
        await App.RestedAsync();
        IDownload file = await App.Page.RunAndWaitForDownloadAsync(() => App.Page.Locator(".export button, button.export").First.ClickAsync(), new() { Timeout = 900_000 });
        string zip = Path.Combine(Path.GetTempPath(), $"trip-{Guid.NewGuid():N}.zip");
        await file.SaveAsAsync(zip);
        try
        {
            TripFiles.Agree(inApp, await TripFiles.LearnedByCommandLineAsync(zip), shown, _locale);
            TripFiles.Holds(await File.ReadAllBytesAsync(zip), At(0, 0), _kinds);
        }
        finally
        {
            File.Delete(zip);
        }
    }

    /// <summary>Nothing went wrong in any page, and nothing was found fault with.</summary>
    public async Task EndAsync()
    {
        Assert.Empty(_pages.SelectMany(p => p.Errors));
        string[] faults = [.. _pages.SelectMany(p => p.Faults)];
        Assert.True(faults.Length == 0, string.Join('\n', faults));
        await _device.CloseAsync();
    }

    public async ValueTask DisposeAsync() => await _device.CloseAsync();

    // Waits until the device's own entries that stand are those that should, one more of a kind where one was made.
    private async Task StandAsync(string? more = null)
    {
        if (more is not null) _kinds.Add(more);
        if (!await App.BecomesAsync($"async (kinds) => await ({Kept})() === kinds", Kinds)) Assert.Equal(Kinds, await App.Page.EvaluateAsync<string>(Kept));
    }

    private async Task<double> DepthAsync() => Number(Regex.Match(await App.Page.InnerTextAsync(".ab-depth .num"), @"^[\d.,]+").Value);

    private async Task ShotAsync(string place, bool whole = false) =>
        await App.Page.ScreenshotAsync(new() { Path = Path.Combine(BrowserFixture.Screens, $"trip-{place}-{_width}x{App.Page.ViewportSize!.Height}-{_locale[..2]}.png"), FullPage = whole });

    private string Say(string key, params object[] parts) => Said.In(_locale, key, parts);

    private static double Number(string text) => double.Parse(Regex.Match(text, @"[\d.,]+").Value.Replace(',', '.'), CultureInfo.InvariantCulture);

    private static string Plain(string text) => Regex.Replace(text, @"\s+", " ");

    private static readonly string Standing = "() => ['.ab-stop h2 b', '.ab-rig', '.ab-grid .act', '.ab-depth .num'].map((s) => document.querySelector(s)?.innerText ?? '').join(' | ')";

    private static readonly string Kept = """
        async () => {
          const store = await import('/js/app.js'), rows = JSON.parse(await store.recordsJson(await store.setting('lake')));
          const gone = new Set(rows.map((r) => r.replaces));
          return rows.filter((r) => !r.removed && !gone.has(r.id)).map((r) => r.kind).sort().join(' ');
        }
        """;
}
