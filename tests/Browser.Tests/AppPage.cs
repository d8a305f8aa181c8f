using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>The app as a person drives it.</summary>
internal sealed class AppPage(IPage page, string address)
{
    private static readonly float Patient = 900_000;

    /// <summary>What says that a place has its answer.</summary>
    private static readonly string Answer = ".answer .num, .shore .headline, .ab-depth .num, .ab-depth .why, .log .add, .tl";

    public IPage Page => page;

    public List<string> Errors { get; } = [];

    public static async Task<AppPage> OpenAsync(IBrowserContext device, string address, string path = "")
    {
        AppPage app = new(await device.NewPageAsync(), address);
        app.Page.PageError += (_, error) => app.Errors.Add(error);
        app.Page.Console += (_, message) =>
        {
            // A lost connection is told by the browser itself; everything else is ours.
            if (message.Type == "error" && !message.Text.Contains("ERR_INTERNET_DISCONNECTED", StringComparison.Ordinal)) app.Errors.Add(message.Text);
        };
        // A busy machine is slow, not wrong: what does not come is told after minutes, not seconds.
        app.Page.SetDefaultTimeout(Patient / 3);
        if (PublishedHost.EntryOf(address) is { } entry) await device.APIRequest.GetAsync(entry);
        await app.GoAsync(path);
        return app;
    }

    public async Task GoAsync(string path) => await page.GotoAsync($"{address}/{path}");

    /// <summary>Waits until the answer stands and nothing is being worked out.</summary>
    public async Task AnsweredAsync()
    {
        await page.WaitForSelectorAsync(Answer, new PageWaitForSelectorOptions { Timeout = Patient });
        await RestedAsync();
    }

    /// <summary>Waits until this device itself has worked out what came with the app.</summary>
    public async Task WorkedOutAsync()
    {
        await page.WaitForFunctionAsync("() => performance.getEntriesByName('engine:rank').length > 0", null, new PageWaitForFunctionOptions { Timeout = Patient });
        await AnsweredAsync();
    }

    /// <summary>Waits until nothing is being worked out: one piece of work may follow another.</summary>
    public async Task RestedAsync() =>
        await page.WaitForFunctionAsync("""
            () => {
              if (document.querySelector('.work')) window.restedSince = 0;
              else window.restedSince ||= performance.now();
              return window.restedSince > 0 && performance.now() - window.restedSince > 400;
            }
            """, null, new PageWaitForFunctionOptions { Timeout = Patient });

    /// <summary>
    /// Whether a question to the device becomes true in time, even one whose answer is a promise: the browser driver's own
    /// waiting takes a promise for a yes.
    /// </summary>
    public async Task<bool> BecomesAsync(string question, object? about = null, double withinS = 120)
    {
        DateTimeOffset until = TimeProvider.System.GetUtcNow().AddSeconds(withinS);
        while (!await page.EvaluateAsync<bool>(question, about))
        {
            if (TimeProvider.System.GetUtcNow() > until) return false;
            await page.WaitForTimeoutAsync(100);
        }

        return true;
    }

    /// <summary>Waits until what the app needs without a signal is on the device.</summary>
    public async Task IsOnDeviceAsync() =>
        Assert.True(await BecomesAsync("async () => !!(await navigator.serviceWorker.ready).active"), "The app's own files are not on the device.");

    /// <summary>Stops the work under way: what is tested next does not need it.</summary>
    public async Task StopAsync()
    {
        await page.WaitForSelectorAsync(".places a", new PageWaitForSelectorOptions { Timeout = Patient });
        await page.WaitForSelectorAsync(".work .btn, .answer .num", new PageWaitForSelectorOptions { Timeout = Patient });
        if (await page.Locator(".work .btn").CountAsync() > 0) await page.Locator(".work .btn").ClickAsync();
        await RestedAsync();
    }

    /// <summary>Drops the test lake's files, looks at what was understood of them, and takes the lake in.</summary>
    public async Task BringTestLakeAsync(string takeIn)
    {
        await page.Locator(".mast .t").ClickAsync();
        await page.SetInputFilesAsync("#lakefiles", TestLake.Files());
        await page.WaitForSelectorAsync(".reading.check", new PageWaitForSelectorOptions { Timeout = Patient });
        await AccessibleAsync("Lakes");
        await page.FillAsync(".reading.check input >> nth=0", TestLake.Name);
        await PressAsync(takeIn);
        await page.WaitForFunctionAsync("name => document.querySelector('.mast .t')?.textContent.trim() === name", TestLake.Name, new PageWaitForFunctionOptions { Timeout = Patient });
        await AnsweredAsync();
    }

    /// <summary>Goes to a place by its word, without loading the page anew.</summary>
    public async Task PlaceAsync(string word)
    {
        await page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = word, Exact = true }).ClickAsync();
        await page.WaitForTimeoutAsync(600);
    }

    public Task PressAsync(string name, bool exact = false) =>
        page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = name, Exact = exact }).First.ClickAsync();

    public Task ShotAsync(string name) => page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(BrowserFixture.Screens, name + ".png") });

    /// <summary>What axe found fault with, and what is wider than the screen; asserted once at the end, so that one run tells all.</summary>
    public List<string> Faults { get; } = [];

    /// <summary>Walks the page with the Tab key alone: everything that can be pressed is reached, in sight, and lets go again.</summary>
    public async Task KeyboardAsync(string where)
    {
        int wanted = await page.EvaluateAsync<int>("""
            () => {
              document.activeElement?.blur();
              window.scrollTo(0, 0);
              const all = [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex="0"]')]
                .filter((e) => !e.disabled && e.tabIndex >= 0 && e.checkVisibility());
              window.toReach = new Set(all);
              return all.length;
            }
            """);
        for (int i = 0; i < (2 * wanted) + 20; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>("() => { const e = document.activeElement; window.toReach.delete(e?.shadowRoot?.activeElement ?? e); return window.toReach.size === 0; }")) return;
        }

        string[] left = await page.EvaluateAsync<string[]>("() => [...window.toReach].slice(0, 4).map((e) => e.outerHTML.slice(0, 120))");
        Faults.Add($"{where}: the Tab key does not reach {string.Join(" | ", left)}");
    }

    /// <summary>Looks for anything that moves by itself.</summary>
    public async Task StillAsync(string where)
    {
        int moving = await page.EvaluateAsync<int>("() => document.getAnimations().filter((a) => a.playState === 'running').length");
        if (moving > 0) Faults.Add($"{where}: {moving} things move though the device asked for none.");
    }

    /// <summary>Looks for faults of access, and for anything wider than the screen.</summary>
    public async Task AccessibleAsync(string where)
    {
        AxeResult result = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });
        if (result.Violations.Length > 0) Faults.Add($"{where}: " + string.Join("; ", result.Violations.Select(v => $"{v.Id}: {v.Help} ({string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))})")));
        await FitsAsync(where);
    }

    /// <summary>Looks for anything wider than the screen.</summary>
    public async Task FitsAsync(string where)
    {
        int over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        if (over <= 0) return;
        string[] wide = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('main *')].filter((e) => e.getBoundingClientRect().right > document.documentElement.clientWidth).slice(-3).map((e) => e.outerHTML.slice(0, 120))");
        Faults.Add($"{where}: the page is {over} px wider than the screen, by {string.Join(" | ", wide)}.");
    }
}
