using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace SecondShore.Bench;

/// <summary>A first visit to the published app in Chromium, measured.</summary>
internal sealed record AppVisit(double TransferBytes, double UsableS, double AnswerS, double OpenS, double OutlookS, double ShoreS, double DayS, double ReplanS, double ResliceMs, double RigMs, double LongestTaskMs)
{
    // The device itself has worked out what came with the app.
    internal static readonly string WorkedOut = "() => performance.getEntriesByName('engine:rank').length > 0 && !document.querySelector('.work')";
    private static Task<AppVisit>? _once;

    /// <summary>The visit; made on first use.</summary>
    public static Task<AppVisit> Once => _once ??= MakeAsync();

    private static Task<AppVisit> MakeAsync() => ServeAsync(VisitAsync);

    /// <summary>Publishes the app, opens it in Chromium on a laptop's screen, waits for its first answer and hands the page over.</summary>
    public static Task<T> WithPageAsync<T>(Func<IPage, Task<T>> visit) => ServeAsync(async address =>
    {
        using IPlaywright playwright = await Playwright.CreateAsync();
        await using IBrowser browser = await playwright.Chromium.LaunchAsync(Launch);
        IBrowserContext device = await browser.NewContextAsync(new BrowserNewContextOptions { ServiceWorkers = ServiceWorkerPolicy.Block, ViewportSize = new ViewportSize { Width = 1440, Height = 900 } });
        IPage page = await device.NewPageAsync();
        await page.GotoAsync(address);
        await page.WaitForSelectorAsync(".answer .num", new PageWaitForSelectorOptions { Timeout = 300_000 });
        await page.WaitForFunctionAsync(WorkedOut, null, new PageWaitForFunctionOptions { Timeout = 300_000 });
        return await visit(page);
    });

    /// <summary>Chromium as every figure starts it.</summary>
    public static BrowserTypeLaunchOptions Launch => new()
    {
        ExecutablePath = Environment.GetEnvironmentVariable("SECONDSHORE_CHROMIUM") ?? "/usr/bin/chromium",
        Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
    };

    /// <summary>The key of the host that serves now: what a program of its own account sends.</summary>
    public static string Key { get; private set; } = "";

    /// <summary>Serves the published app, which a Release build of the host leaves behind, and hands its address over.</summary>
    public static async Task<T> ServeAsync<T>(Func<string, Task<T>> visit)
    {
        await RunAsync("build -c Release src/Host -v q -nologo");
        string folder = Path.Combine(FindRoot(), "artifacts", "publish", "SecondShore.Host", "release");
        string data = Directory.CreateTempSubdirectory("second-shore-app-bench-").FullName;
        using Process host = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(folder, "SecondShore.Host.dll"), "--urls", "http://127.0.0.1:0", "--data", data]) { RedirectStandardOutput = true, WorkingDirectory = folder })!;
        try
        {
            string? line;
            const string Said = "Second Shore is at ";
            do line = await host.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException("The server ended early.");
            while (!line.StartsWith(Said, StringComparison.Ordinal));
            _ = host.StandardOutput.ReadToEndAsync();
            Key = (await File.ReadAllTextAsync(Path.Combine(data, "host.key"))).Trim();
            return await visit(line[Said.Length..].Trim());
        }
        finally
        {
            host.Kill(entireProcessTree: true);
        }
    }

    private static async Task<AppVisit> VisitAsync(string address)
    {
        using IPlaywright playwright = await Playwright.CreateAsync();
        await using IBrowser browser = await playwright.Chromium.LaunchAsync(Launch);
        // The service worker fetches everything a second time, from the HTTP cache where it can: the first visit is measured without it.
        IBrowserContext device = await browser.NewContextAsync(new BrowserNewContextOptions { ServiceWorkers = ServiceWorkerPolicy.Block, ViewportSize = new ViewportSize { Width = 390, Height = 844 } });
        IPage page = await device.NewPageAsync();
        ICDPSession session = await device.NewCDPSessionAsync(page);
        double bytes = 0;
        session.Event("Network.loadingFinished").OnEvent += (_, e) =>
        {
            if (e?.GetProperty("encodedDataLength").GetDouble() is { } got) bytes += got;
        };
        await session.SendAsync("Network.enable");
        await page.AddInitScriptAsync("window.longTasks = []; new PerformanceObserver((l) => window.longTasks.push(...l.getEntries())).observe({ type: 'longtask', buffered: true });");
        Stopwatch clock = Stopwatch.StartNew();
        await page.GotoAsync(address);
        await page.WaitForSelectorAsync(".places a", new PageWaitForSelectorOptions { Timeout = 120_000 });
        double usableS = clock.Elapsed.TotalSeconds, usableAtMs = await page.EvaluateAsync<double>("() => performance.now()");
        await page.WaitForSelectorAsync(".answer .num", new PageWaitForSelectorOptions { Timeout = 300_000 });
        double answerS = clock.Elapsed.TotalSeconds;
        await page.WaitForFunctionAsync(WorkedOut, null, new PageWaitForFunctionOptions { Timeout = 300_000 });
        await PlaceAsync(page, "Shore");
        for (int i = 0; i < 5; i++)
        {
            await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Thermocline at, more" }).ClickAsync();
            await page.WaitForTimeoutAsync(1500);
        }

        await PlaceAsync(page, "Day");
        await page.Locator(".dayform button[type=submit]").ClickAsync();
        await page.WaitForSelectorAsync(".tl .rg", new PageWaitForSelectorOptions { Timeout = 300_000 });
        await page.WaitForFunctionAsync("() => !document.querySelector('.work')", null, new PageWaitForFunctionOptions { Timeout = 300_000 });
        // The same day without its first stop: the water is known, the plan is made anew.
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Leave out" }).First.ClickAsync();
        await page.WaitForFunctionAsync("() => performance.getEntriesByName('engine:plan').length > 1 && !document.querySelector('.work')", null, new PageWaitForFunctionOptions { Timeout = 300_000 });
        await PlaceAsync(page, "Rig");
        await page.WaitForSelectorAsync(".rig .out", new PageWaitForSelectorOptions { Timeout = 60_000 });
        for (int i = 0; i < 5; i++)
        {
            await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Depth, more" }).ClickAsync();
            await page.WaitForTimeoutAsync(800);
        }

        double longest = await page.EvaluateAsync<double>("since => Math.max(0, ...window.longTasks.filter((t) => t.startTime > since).map((t) => t.duration))", usableAtMs);
        return new AppVisit(bytes, usableS, answerS, await LastSAsync(page, "open"), await LastSAsync(page, "outlook"), await NthSAsync(page, "rank", 0), await NthSAsync(page, "plan", 0), await NthSAsync(page, "plan", 1),
            await MedianMsAsync(page, "slice"), await MedianMsAsync(page, "rig"), longest);
    }

    private static async Task PlaceAsync(IPage page, string word) =>
        await page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = word, Exact = true }).ClickAsync();

    private static async Task<double> LastSAsync(IPage page, string verb) =>
        0.001 * await page.EvaluateAsync<double>("verb => performance.getEntriesByName('engine:' + verb).at(-1)?.duration ?? NaN", verb);

    // A plan is asked in two parts: itself, then those that differ from it in kind.
    private static async Task<double> NthSAsync(IPage page, string verb, int n) =>
        0.001 * await page.EvaluateAsync<double>("([verb, n]) => performance.getEntriesByName('engine:' + verb)[n]?.duration ?? NaN", new object[] { verb, n });

    private static async Task<double> MedianMsAsync(IPage page, string verb) => await page.EvaluateAsync<double>(
        "verb => { const all = performance.getEntriesByName('engine:' + verb).map((e) => e.duration).sort((a, b) => a - b); return all[all.length >> 1] ?? NaN; }", verb);

    /// <summary>Runs dotnet in the repository.</summary>
    public static async Task RunAsync(string arguments)
    {
        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"# dotnet {arguments}"));
        using Process process = Process.Start(new ProcessStartInfo("dotnet", arguments) { WorkingDirectory = FindRoot() })!;
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException("The app could not be published.");
    }

    internal static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "SecondShore.slnx"))) return folder.FullName;
        throw new DirectoryNotFoundException("No folder above the bench holds SecondShore.slnx.");
    }
}
