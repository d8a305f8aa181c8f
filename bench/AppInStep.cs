using System.Globalization;
using System.Net.Http.Json;
using Microsoft.Playwright;
using SecondShore.Records;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>A lake with a long log taken from the host in the published app: how long the page's own thread is held up at most.</summary>
internal sealed class AppInStep : IFigure
{
    private static readonly int Entries = 3000;
    private static readonly string Lake = "bench-lake-0001";

    public string Name => "app-in-step";

    public string Claim => "Longest task of the page's thread while a lake with 3,000 entries is taken from the host";

    public FigureMargin Margin => FigureMargin.OfValue(0.3);

    public IEnumerable<Measured> Measure() => AppVisit.WithPageAsync(VisitAsync).GetAwaiter().GetResult();

    private static async Task<Measured[]> VisitAsync(IPage page)
    {
        await FillAsync(new Uri(page.Url));
        await page.APIRequest.GetAsync($"{new Uri(page.Url).GetLeftPart(UriPartial.Authority)}/api/open?key={AppVisit.Key}");
        await page.ReloadAsync();
        await page.Locator(".mast .t").ClickAsync();
        ILocator take = page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take it onto this device Bench lake" });
        await take.WaitForAsync();
        await page.EvaluateAsync("() => { window.held = []; new PerformanceObserver((l) => window.held.push(...l.getEntries())).observe({ type: 'longtask' }); }");
        double began = await page.EvaluateAsync<double>("() => performance.now()");
        await take.ClickAsync();
        await page.Locator(".host .lakerow", new PageLocatorOptions { HasText = "Bench lake" }).GetByText("in step").WaitForAsync(new LocatorWaitForOptions { Timeout = 300_000 });
        await page.WaitForFunctionAsync("() => document.querySelector('#host .row .btn')?.disabled === false", null, new PageWaitForFunctionOptions { Timeout = 300_000 });
        double tookMs = await page.EvaluateAsync<double>("() => performance.now()") - began;
        double longestMs = await page.EvaluateAsync<double>("() => Math.max(0, ...window.held.map((t) => t.duration))");
        string load = File.ReadAllText("/proc/loadavg").Split(' ')[0];
        return
        [
            new("app-in-step-held", longestMs, "ms", $"100 ms wanted; wall clock, load {load}", FigureMargin.Within(50)),
            new("app-in-step-time", tookMs / 1000, "s", string.Create(CultureInfo.InvariantCulture, $"{Entries} entries in pages of 60, load {load}")),
        ];
    }

    private static async Task FillAsync(Uri page)
    {
        using HttpClient http = new() { BaseAddress = new Uri(page.GetLeftPart(UriPartial.Authority)) };
        http.DefaultRequestHeaders.Authorization = new("Bearer", AppVisit.Key);
        (await http.PutAsJsonAsync($"/api/lakes/{Lake}", new NewHostLake("Bench lake"), RecordsJson.Default.NewHostLake)).EnsureSuccessStatusCode();
        DateTimeOffset at = new(2026, 9, 1, 0, 0, 0, TimeSpan.Zero);
        foreach (int[] batch in Enumerable.Range(0, Entries).Chunk(RecordRules.MaxRecordsPerMessage))
        {
            LakeRecord[] records = [.. batch.Select(i => LakeRecord.Make("bite", at.AddMinutes(i), null, false,
                $$"""{"mark":"{{i}}","latDeg":44.251,"lonDeg":-83.777,"depthM":8.4,"speedMps":0.27,"spot":"North point","jigWeightG":21.3"""
                + ""","note":"on the edge, slow"}"""))];
            (await http.PostAsJsonAsync($"/api/lakes/{Lake}/records", new PushRequest(records), RecordsJson.Default.PushRequest)).EnsureSuccessStatusCode();
        }
    }
}
