using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

public class WindPlaceTests(BrowserFixture fixture)
{
    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task The_hours_are_scrubbed_and_played_and_the_depths_move_with_them(int width, int height)
    {
        IBrowserContext device = await fixture.DeviceAsync(width, height);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.StopAsync();
        await app.BringTestLakeAsync("Take it in");
        await app.PlaceAsync("Wind");
        await app.Page.WaitForSelectorAsync(".wind .scrub", new() { Timeout = 300_000 });
        await app.Page.WaitForTimeoutAsync(1500);
        await app.ShotAsync($"wind-{width}");
        string before = await app.Page.TextContentAsync(".wind .side") ?? "", picture = await PictureAsync(app);

        ILocator scrub = app.Page.Locator(".scrub input");
        await scrub.FocusAsync();
        await app.Page.Keyboard.PressAsync("Home");
        await app.Page.WaitForTimeoutAsync(600);
        Assert.NotEqual(before, await app.Page.TextContentAsync(".wind .side"));
        Assert.NotEqual(picture, await PictureAsync(app));
        await app.ShotAsync($"wind-{width}-first-hour");

        string first = await scrub.InputValueAsync();
        await app.Page.GetByRole(AriaRole.Button, new() { Name = "Play" }).ClickAsync();
        await app.Page.WaitForFunctionAsync("() => Number(document.querySelector('.scrub input').value) > 2", null, new() { Timeout = 60_000 });
        await app.Page.GetByRole(AriaRole.Button, new() { Name = "Pause" }).ClickAsync();
        Assert.NotEqual(first, await scrub.InputValueAsync());

        await app.Page.GetByText("As a table").First.ClickAsync();
        Assert.True(await app.Page.Locator(".wind table tbody tr").CountAsync() >= 12);
        // The layer tips and comes back: not one depth for all hours.
        Assert.True((await app.Page.Locator(".wind table tbody tr td:nth-child(4)").AllInnerTextsAsync()).Distinct().Count() > 1, "The layer tips alike in every hour.");
        Assert.Empty(app.Errors);
        await device.CloseAsync();
    }

    private static Task<string> PictureAsync(AppPage app) =>
        app.Page.EvaluateAsync<string>("() => document.querySelector('.wind canvas').toDataURL().slice(-4000)");
}
