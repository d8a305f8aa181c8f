using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Whether the seconds that the app says are left are true: read off its screen at half of each piece of work, beside other load.</summary>
/// <remarks>Writes the runs as the app keeps them to <c>artifacts/pace</c>, one file a load; the tests' recorded runs are from there.</remarks>
internal sealed class AppProgress : IFigure
{
    // Threads kept busy beside each visit, in an order that mixes them.
    private static readonly int[] BusyThreads = [0, 1, 0, 2, 0, 4, 1, 2, 0, 4, 1, 0];
    private static readonly string Watch = """
        window.bar = []; setInterval(() => {
          const what = document.querySelector('.work .what');
          window.bar.push([performance.now() / 1000, what ? what.textContent : '']);
        }, 100);
        """;

    public string Name => "app-progress";

    public string Claim => "Seconds left as shown at half time of opening and planning, within a factor of 2 of the truth (9 of 10 wanted), in Chromium beside 0 to 4 busy threads";

    public FigureMargin Margin => FigureMargin.Within(0.1);

    public IEnumerable<Measured> Measure() => AppVisit.ServeAsync(VisitsAsync).GetAwaiter().GetResult();

    private static async Task<Measured[]> VisitsAsync(string address)
    {
        string folder = Directory.CreateDirectory(Path.Combine(AppVisit.FindRoot(), "artifacts", "pace")).FullName;
        using IPlaywright playwright = await Playwright.CreateAsync();
        await using IBrowser browser = await playwright.Chromium.LaunchAsync(AppVisit.Launch);
        IBrowserContext device = await browser.NewContextAsync(new BrowserNewContextOptions { ServiceWorkers = ServiceWorkerPolicy.Block });
        await device.AddInitScriptAsync(Watch);
        int told = 0, near = 0;
        for (int visit = 0; visit < BusyThreads.Length; visit++)
        {
            IPage page = await device.NewPageAsync();
            using (new Busy(BusyThreads[visit])) await WorkAsync(page, address);
            foreach ((double halfLeftS, double? shownS) in Halves(await page.EvaluateAsync<JsonElement>("() => window.bar")))
            {
                // The first visit has no former runs, and says no seconds.
                if (visit == 0) continue;
                told++;
                bool isNear = shownS is { } s && s <= 2 * halfLeftS && s >= 0.5 * halfLeftS;
                if (isNear) near++;
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"# visit {visit}, {BusyThreads[visit]} busy: {halfLeftS:0.0} s left, shown {shownS:0}{(isNear ? "" : " FAR")}"));
            }

            await KeepAsync(page, Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{visit:00}-busy-{BusyThreads[visit]}.txt")));
            await page.CloseAsync();
        }

        return [new("app-progress-half-time", (double)near / told, "of 1", $"0.9 wanted; {told} pieces of work on one device; runs of former visits only")];
    }

    private static async Task WorkAsync(IPage page, string address)
    {
        PageWaitForFunctionOptions patient = new() { Timeout = 600_000 };
        await page.GotoAsync(address);
        await page.WaitForFunctionAsync(AppVisit.WorkedOut, null, patient);
        await page.WaitForTimeoutAsync(500);
        await page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "Day", Exact = true }).ClickAsync();
        await page.Locator(".dayform button[type=submit]").ClickAsync();
        await page.WaitForFunctionAsync("() => performance.getEntriesByName('engine:papers').length > 0 && !document.querySelector('.work')", null, patient);
        await page.WaitForTimeoutAsync(500);
    }

    // Stretches of the bar of three seconds and more: what it said at half of each, and what was left then.
    private static IEnumerable<(double LeftS, double? ShownS)> Halves(JsonElement bar)
    {
        List<(double S, string What)> stretch = [];
        foreach (JsonElement row in bar.EnumerateArray())
        {
            (double second, string what) = (row[0].GetDouble(), row[1].GetString() ?? "");
            if (what.Length > 0)
            {
                stretch.Add((second, what));
                continue;
            }

            if (stretch.Count > 30)
            {
                double halfS = 0.5 * (stretch[0].S + stretch[^1].S);
                string said = stretch.Last(t => t.S <= halfS).What;
                yield return (stretch[^1].S - halfS, said.EndsWith("s left", StringComparison.Ordinal) ? double.Parse(said.Split(' ')[^3], CultureInfo.InvariantCulture) : null);
            }

            stretch.Clear();
        }
    }

    private static async Task KeepAsync(IPage page, string file)
    {
        string kept = await page.EvaluateAsync<string>("""
            async () => {
              const base = (await indexedDB.databases())[0];
              const db = await new Promise((done) => { const open = indexedDB.open(base.name); open.onsuccess = () => done(open.result); });
              const rows = db.transaction('settings').objectStore('settings'),
                of = (all) => new Promise((done) => { all.onsuccess = () => done(all.result); });
              const [keys, values] = [await of(rows.getAllKeys()), await of(rows.getAll())];
              return keys.map((key, i) => key.startsWith('pace-') ? key + ' ' + values[i].split('\n').at(-1) : '')
                .filter((line) => line).join('\n');
            }
            """);
        await File.WriteAllTextAsync(file, kept + "\n");
    }

    /// <summary>Threads that only keep processors busy.</summary>
    private sealed class Busy : IDisposable
    {
        private volatile bool _stop;

        public Busy(int threads)
        {
            for (int i = 0; i < threads; i++) new Thread(Spin) { IsBackground = true }.Start();
        }

        public void Dispose() => _stop = true;

        private void Spin()
        {
            while (!_stop) Thread.SpinWait(1000);
        }
    }
}
