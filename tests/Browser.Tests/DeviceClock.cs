using System.Globalization;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>
/// What a device's pages take for the present: a moment that stands still until it is set on. The browser's own marks of performance
/// go on as they are, which the driver's clock would stop with the date.
/// </summary>
internal sealed class DeviceClock
{
    private static readonly string Script = """
        (() => {
          const real = Date;
          window.setClock = (ms) => { localStorage.setItem('test.now', String(ms)); window.clockMs = ms; };
          window.clockMs = Number(localStorage.getItem('test.now') ?? real.now());
          const now = () => window.clockMs;
          window.Date = new Proxy(real, {
            construct: (of, given) => given.length === 0 ? new of(now()) : new of(...given),
            apply: (of) => new of(now()).toString(),
            get: (of, name) => name === 'now' ? now : of[name],
          });
        })();
        """;

    private readonly IBrowserContext _device;

    private DeviceClock(IBrowserContext device) => _device = device;

    /// <summary>A clock for all pages of a device, from the next one on.</summary>
    /// <param name="device">The device.</param>
    /// <param name="address">Where its pages come from: the moment is kept there from page to page.</param>
    /// <param name="now">The present.</param>
    public static async Task<DeviceClock> OnAsync(IBrowserContext device, string address, DateTime now)
    {
        DeviceClock clock = new(device);
        await device.AddInitScriptAsync(Script);
        IPage page = await device.NewPageAsync();
        await page.GotoAsync(address + "/health");
        await clock.SetAsync(now);
        await page.CloseAsync();
        return clock;
    }

    /// <summary>Sets the present of all its pages.</summary>
    public async Task SetAsync(DateTime now)
    {
        string call = string.Create(CultureInfo.InvariantCulture, $"() => window.setClock({new DateTimeOffset(now).ToUnixTimeMilliseconds()})");
        foreach (IPage page in _device.Pages) await page.EvaluateAsync(call);
    }
}
