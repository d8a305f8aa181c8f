using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>Pictures of the demo lake's places for people to look at, and what no look or language may break.</summary>
public class PictureTests(BrowserFixture fixture)
{
    [Theory]
    [InlineData(390, 844, "de-DE", new[] { "See", "Ufer", "Montage", "Tag", "Logbuch" })]
    [InlineData(1440, 900, "en-US", new[] { "Lake", "Shore", "Rig", "Day", "Log" })]
    public async Task The_demo_lake_is_planned_and_drawn_in_every_light(int width, int height, string locale, string[] places)
    {
        IBrowserContext device = await fixture.DeviceAsync(width, height, locale: locale);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.AnsweredAsync();
        await app.PlaceAsync(places[3]);
        await app.Page.Locator(".dayform button[type=submit]").ClickAsync();
        await app.Page.WaitForSelectorAsync(".tl .rg", new() { Timeout = 900_000 });
        await app.RestedAsync();
        foreach (string theme in (string[])["light", "dark"])
        {
            if (theme == "dark") await app.Page.EvaluateAsync("async () => (await import('/js/app.js')).applyTheme('dark')");
            for (int i = 0; i < places.Length; i++)
            {
                await app.PlaceAsync(places[i]);
                if (i == 2) await app.Page.WaitForSelectorAsync(".rig .out", new() { Timeout = 60_000 });
                await app.ShotAsync($"demo-{i}-{width}-{theme}");
                await app.AccessibleAsync($"{places[i]}, {theme}, {locale}");
            }
        }

        await app.Page.EvaluateAsync("async () => (await import('/js/app.js')).applyTheme('sun')");
        await app.GoAsync("aboard");
        await app.AnsweredAsync();
        await app.Page.WaitForTimeoutAsync(800);
        await app.ShotAsync($"demo-aboard-{width}-sun");
        await app.AccessibleAsync("Aboard, sun");
        if (width < 1000)
        {
            int over = await app.Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight - innerHeight");
            if (over > 0) app.Faults.Add($"Aboard needs {over} px of scrolling.");
        }

        Assert.Empty(app.Errors);
        Assert.Empty(app.Faults);
        await device.CloseAsync();
    }
}
