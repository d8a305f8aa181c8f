using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>A device on a trip: what its user does with it.</summary>
internal sealed partial class TripDevice : IAsyncDisposable
{
    private readonly IBrowserContext _device;
    private readonly string _address, _locale;
    private readonly List<AppPage> _pages = [];
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

    /// <summary>Nothing went wrong in any page, and nothing was found fault with.</summary>
    public async Task EndAsync()
    {
        Assert.Empty(_pages.SelectMany(p => p.Errors));
        string[] faults = [.. _pages.SelectMany(p => p.Faults)];
        Assert.True(faults.Length == 0, string.Join('\n', faults));
        await _device.CloseAsync();
    }

    public async ValueTask DisposeAsync() => await _device.CloseAsync();

    private async Task<double> DepthAsync() => Number(Regex.Match(await App.Page.InnerTextAsync(".ab-depth .num"), @"^[\d.,]+").Value);

    private async Task ShotAsync(string place, bool whole = false) =>
        await App.Page.ScreenshotAsync(new() { Path = Path.Combine(BrowserFixture.Screens, $"trip-{place}-{_width}x{App.Page.ViewportSize!.Height}-{_locale[..2]}.png"), FullPage = whole });

    private string Say(string key, params object[] parts) => Said.In(_locale, key, parts);

    private static double Number(string text) => double.Parse(Regex.Match(text, @"[\d.,]+").Value.Replace(',', '.'), CultureInfo.InvariantCulture);

    private static string Plain(string text) => Regex.Replace(text, @"\s+", " ");

    private static readonly string Standing = "() => ['.ab-stop h2 b', '.ab-rig', '.ab-grid .act', '.ab-depth .num'].map((s) => document.querySelector(s)?.innerText ?? '').join(' | ')";
}
