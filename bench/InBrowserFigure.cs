using Microsoft.Playwright;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Single pieces of the engine in Chromium, without the app around them.</summary>
internal sealed class InBrowserFigure : IFigure
{
    private const string Address = "http://engine.test";
    private const int Days = 10;

    public string Name => "engine-in-browser";

    public string Claim => "In Chromium: a column-year, and plans of 20 to 60 stops (2 s wanted); wall clock";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure() => MeasureAsync().GetAwaiter().GetResult();

    private static async Task<Measured[]> MeasureAsync()
    {
        string folder = Path.Combine(Path.GetTempPath(), "second-shore-engine-bench");
        await AppVisit.RunAsync($"publish -c Release bench/InBrowser -o \"{folder}\" -v q -nologo");
        using IPlaywright playwright = await Playwright.CreateAsync();
        await using IBrowser browser = await playwright.Chromium.LaunchAsync(AppVisit.Launch);
        IPage page = await browser.NewPageAsync();
        await page.RouteAsync($"{Address}/**", route => route.FulfillAsync(new RouteFulfillOptions
        {
            Path = Path.Combine(folder, "wwwroot", new Uri(route.Request.Url).AbsolutePath.TrimStart('/')),
        }));
        await page.GotoAsync($"{Address}/index.html");
        await page.WaitForFunctionAsync("() => globalThis.engine", null, new PageWaitForFunctionOptions { Timeout = 60_000 });
        double year = double.MaxValue;
        for (int i = 0; i < 9; i++) year = Math.Min(year, await page.EvaluateAsync<double>("() => engine.ColumnYearMs()"));
        List<Measured> measured = [new("season-column-year-in-browser", year, "ms", "8760 hourly steps on 100 layers, best of 9")];
        List<double> all = [];
        foreach (int stops in (int[])[20, 30, 40, 50, 60])
        {
            double slowest = 0;
            for (int day = 0; day < Days; day++)
            {
                double ms = await page.EvaluateAsync<double>("([stops, day]) => engine.PlanMs(stops, day)", new[] { stops, day });
                slowest = Math.Max(slowest, ms);
                all.Add(ms);
            }

            measured.Add(new($"day-plan-in-browser-worst-{stops}", slowest / 1000, "s", $"2 s wanted; the slowest of {Days} random days of 10 h in 5 min steps"));
        }

        all.Sort();
        measured.Add(new("day-plan-in-browser-median", all[all.Count / 2] / 1000, "s", "2 s wanted; 50 random days of 20 to 60 stops"));
        return [.. measured];
    }
}
