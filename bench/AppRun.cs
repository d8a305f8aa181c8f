using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>A newcomer's first minutes: the host started as the README says in a fresh clone, against the released host.</summary>
internal sealed class AppRun : IFigure
{
    private const int Rounds = 3;

    public string Name => "app-run";

    public string Claim => "dotnet run -c Release in a fresh clone gives the published app: first plan in Chromium within 1.15 of the released host's";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure() => MeasureAsync().GetAwaiter().GetResult();

    private static async Task<Measured[]> MeasureAsync()
    {
        string folder = Directory.CreateTempSubdirectory("second-shore-app-run-").FullName, clone = Path.Combine(folder, "clone");
        try
        {
            await ProgramAsync("git", folder, "clone", "-q", AppVisit.FindRoot(), clone);
            Stopwatch clock = Stopwatch.StartNew();
            await using (Started first = await Started.StartAsync(clone, "dotnet", RunAsReadmeSays)) Tell("first start", clock);
            double firstS = clock.Elapsed.TotalSeconds;
            string load = await LoadAsync();
            await ProgramAsync("env", clone, "ONLY=Host", "bash", "eng/publish.sh", Path.Combine(folder, "out"), "linux-x64");
            Tell("released", clock);
            string released = Directory.CreateDirectory(Path.Combine(folder, "released")).FullName;
            await ProgramAsync("tar", released, "-xzf", Path.Combine(folder, "out", "second-shore-linux-x64.tar.gz"));
            // The release was built in the same folders with other settings: one start more brings the clone back to its own.
            await using (Started again = await Started.StartAsync(clone, "dotnet", RunAsReadmeSays)) Tell("start after the release was built", clock);
            clock.Restart();
            await using Started run = await Started.StartAsync(clone, "dotnet", RunAsReadmeSays);
            double secondS = clock.Elapsed.TotalSeconds;
            await using Started published = await Started.StartAsync(released, Path.Combine(released, "SecondShore.Host"), []);
            return [.. await CompareAsync(run.Address, published.Address, load), new("app-run-first-start", firstS, "s", $"from the command to the address, in a fresh clone with a warm package cache; load {load}"),
                new("app-run-next-start", secondS, "s", "the same again, nothing changed")];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string[] RunAsReadmeSays => ["run", "-c", "Release", "--project", "src/Host"];

    private static async Task<Measured[]> CompareAsync(string run, string published, string load)
    {
        List<Visit> runs = [], releases = [];
        for (int round = 0; round < Rounds; round++)
        {
            // In turn and in both orders, so that what else the machine does falls on both.
            if (round % 2 == 0) runs.Add(await VisitAsync(run));
            releases.Add(await VisitAsync(published));
            if (round % 2 == 1) runs.Add(await VisitAsync(run));
        }

        double runS = Median(runs, v => v.ShownS), releasedS = Median(releases, v => v.ShownS);
        string against = string.Create(CultureInfo.InvariantCulture, $"medians of {Rounds} first visits in turn; load {load} before");
        return
        [
            new("app-run-first-plan-ratio", runS / releasedS, "", $"1.15 wanted; time to the first plan, run against released; {against}"),
            new("app-run-askable", Median(runs, v => v.AskableS), "s", $"until a plan can be asked; released {Median(releases, v => v.AskableS):0.0} s"),
            new("app-run-first-plan", runS, "s", string.Create(CultureInfo.InvariantCulture, $"until it is shown; released {releasedS:0.0} s")),
        ];
    }

    private static async Task<Visit> VisitAsync(string address)
    {
        using IPlaywright playwright = await Playwright.CreateAsync();
        await using IBrowser browser = await playwright.Chromium.LaunchAsync(AppVisit.Launch);
        IPage page = await (await browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 390, Height = 844 } })).NewPageAsync();
        PageWaitForFunctionOptions patient = new() { Timeout = 600_000 };
        Stopwatch clock = Stopwatch.StartNew();
        await page.GotoAsync(address);
        await page.WaitForFunctionAsync(AppVisit.WorkedOut, null, patient);
        double askableS = clock.Elapsed.TotalSeconds;
        await page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "Day", Exact = true }).ClickAsync();
        await page.Locator(".dayform button[type=submit]").ClickAsync();
        await page.WaitForSelectorAsync(".tl .rg", new PageWaitForSelectorOptions { Timeout = 600_000 });
        return new Visit(askableS, clock.Elapsed.TotalSeconds);
    }

    private static double Median(List<Visit> visits, Func<Visit, double> value) => visits.Select(value).Order().ElementAt(visits.Count / 2);

    private static void Tell(string what, Stopwatch clock) => Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"# {what}: {clock.Elapsed.TotalSeconds:0} s"));

    private static async Task<string> LoadAsync() => File.Exists("/proc/loadavg") ? (await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0] : "not known";

    private static async Task ProgramAsync(string program, string folder, params string[] args)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, args) { WorkingDirectory = folder, RedirectStandardOutput = true })!;
        await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} {string.Join(' ', args)} ended with {process.ExitCode}.");
    }

    private sealed record Visit(double AskableS, double ShownS);

    /// <summary>A host that runs, on a free port and with an empty data folder.</summary>
    private sealed class Started(Process process, string address) : IAsyncDisposable
    {
        public string Address => address;

        public static async Task<Started> StartAsync(string folder, string program, string[] args)
        {
            ProcessStartInfo start = new(program, args) { WorkingDirectory = folder, RedirectStandardOutput = true };
            start.Environment["SECONDSHORE_URLS"] = "http://127.0.0.1:0";
            start.Environment["SECONDSHORE_DATA"] = Directory.CreateTempSubdirectory("second-shore-app-run-data-").FullName;
            Process process = Process.Start(start)!;
            const string Said = "Second Shore is at ";
            while (await process.StandardOutput.ReadLineAsync() is { } line)
            {
                Console.Error.WriteLine($"#   {line}");
                if (!line.StartsWith(Said, StringComparison.Ordinal)) continue;
                _ = process.StandardOutput.ReadToEndAsync();
                return new Started(process, line[Said.Length..].Trim());
            }

            throw new InvalidOperationException("The host ended before it told its address.");
        }

        public async ValueTask DisposeAsync()
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
            process.Dispose();
        }
    }
}
