using Microsoft.Playwright;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>The rig's table and the wind's five days, in the published app in Chromium.</summary>
internal sealed class AppWater : IFigure
{
    public string Name => "app-water";

    public string Claim => "The whole rig answer redrawn (100 ms wanted) and five days of wind at 50 m (30 s wanted) in Chromium on the demo lake.";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure() => AppVisit.WithPageAsync(VisitAsync).GetAwaiter().GetResult();

    private static async Task<Measured[]> VisitAsync(IPage page)
    {
        await PlaceAsync(page, "Rig");
        await page.WaitForSelectorAsync(".rig .out", new PageWaitForSelectorOptions { Timeout = 120_000 });
        for (int i = 0; i < 12; i++)
        {
            await page.Locator(".rig .step button").Nth(i % 2 == 0 ? 1 : 0).ClickAsync();
            await page.WaitForTimeoutAsync(700);
        }

        double rig = await MedianAsync(page, "rig"), least = await LeastAsync(page, "rig");
        await PlaceAsync(page, "Wind");
        await page.WaitForSelectorAsync(".wind .scrub", new PageWaitForSelectorOptions { Timeout = 300_000 });
        double day = await LastAsync(page, "wind");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Five days" }).ClickAsync();
        await page.WaitForFunctionAsync("() => performance.getEntriesByName('engine:wind').length > 1", null, new PageWaitForFunctionOptions { Timeout = 600_000 });
        double five = await LastAsync(page, "wind");
        double frames = await FramesAsync(page);
        return
        [
            new("app-rig-table", rig, "ms", "100 ms wanted; the whole answer: choice with its doubt, table of 40 cells, shape; median of 12"),
            new("app-rig-table-least", least, "ms", "the quickest of the same"),
            new("app-wind-day", day / 1000, "s", "24 hours with the five days before, five members, 50 m"),
            new("app-wind-five-days", five / 1000, "s", "30 s wanted; 120 hours with the five days before, five members, 50 m"),
            new("app-wind-frames", frames, "frames/s", "60 wanted, playing at 1440 x 900"),
        ];
    }

    private static async Task PlaceAsync(IPage page, string word) =>
        await page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = word, Exact = true }).ClickAsync();

    private static Task<double> MedianAsync(IPage page, string verb) => page.EvaluateAsync<double>(
        "verb => { const all = performance.getEntriesByName('engine:' + verb).map(e => e.duration).sort((a, b) => a - b); return all[all.length >> 1] ?? -1; }", verb);

    private static Task<double> LeastAsync(IPage page, string verb) => page.EvaluateAsync<double>(
        "verb => Math.min(...performance.getEntriesByName('engine:' + verb).map(e => e.duration))", verb);

    private static Task<double> LastAsync(IPage page, string verb) => page.EvaluateAsync<double>(
        "verb => performance.getEntriesByName('engine:' + verb).at(-1)?.duration ?? -1", verb);

    private static async Task<double> FramesAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Play" }).ClickAsync();
        return await page.EvaluateAsync<double>("() => new Promise(done => { let n = 0; const t0 = performance.now(); const next = t => { n++; t - t0 < 4000 ? requestAnimationFrame(next) : done(1000 * n / (t - t0)); }; requestAnimationFrame(next); })");
    }
}
