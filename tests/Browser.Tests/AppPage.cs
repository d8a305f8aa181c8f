using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>The app as a person drives it.</summary>
internal sealed class AppPage(IPage page, string address)
{
    private static readonly float Patient = 300_000;

    public IPage Page => page;

    public List<string> Errors { get; } = [];

    public static async Task<AppPage> OpenAsync(IBrowserContext device, string address, string path = "")
    {
        AppPage app = new(await device.NewPageAsync(), address);
        app.Page.PageError += (_, error) => app.Errors.Add(error);
        await app.GoAsync(path);
        return app;
    }

    public async Task GoAsync(string path) => await page.GotoAsync($"{address}/{path}");

    /// <summary>Waits until the answer stands and nothing is being worked out.</summary>
    public async Task AnsweredAsync()
    {
        await page.WaitForSelectorAsync(".answer .num, .shore .headline, .ab-depth .num, .log .add", new PageWaitForSelectorOptions { Timeout = Patient });
        await page.WaitForFunctionAsync("() => !document.querySelector('.work')", null, new PageWaitForFunctionOptions { Timeout = Patient });
    }

    /// <summary>Goes to a place by its word, without loading the page anew.</summary>
    public async Task PlaceAsync(string word)
    {
        await page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = word, Exact = true }).ClickAsync();
        await page.WaitForTimeoutAsync(600);
    }

    public Task ShotAsync(string name) => page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(BrowserFixture.Screens, name + ".png") });
}
