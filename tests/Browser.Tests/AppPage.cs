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

    /// <summary>Waits until nothing is being worked out.</summary>
    public async Task RestedAsync() =>
        await page.WaitForFunctionAsync("() => !document.querySelector('.work')", null, new PageWaitForFunctionOptions { Timeout = Patient });

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

    /// <summary>Looks for faults of access, and for anything wider than the screen.</summary>
    public async Task AccessibleAsync(string where)
    {
        AxeResult result = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });
        if (result.Violations.Length > 0) Faults.Add($"{where}: " + string.Join("; ", result.Violations.Select(v => $"{v.Id}: {v.Help} ({string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))})")));
        int over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        if (over > 0) Faults.Add($"{where}: the page is {over} px wider than the screen.");
    }
}
