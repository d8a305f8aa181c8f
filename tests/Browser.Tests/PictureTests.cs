using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>Pictures of the demo lake's places for people to look at, and what no size, light or language may break.</summary>
public class PictureTests(BrowserFixture fixture)
{
    private static readonly (int Width, int Height)[] Sizes = [(1440, 900), (390, 844)];

    [Fact]
    public async Task The_demo_lake_is_planned_and_drawn_in_every_size_and_light()
    {
        IBrowserContext device = await fixture.DeviceAsync(Sizes[0].Width, Sizes[0].Height);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.Page.WaitForSelectorAsync(".answer .num.xl");
        string first = await app.Page.Locator(".answer .num.xl").InnerTextAsync();
        await app.ShotAsync("demo-first");
        await app.WorkedOutAsync();
        // What came with the app is what the device finds itself.
        Assert.Equal(first, await app.Page.Locator(".answer .num.xl").InnerTextAsync());
        await app.PlaceAsync("Day");
        await app.Page.Locator(".dayform button[type=submit]").ClickAsync();
        await app.Page.WaitForSelectorAsync(".tl .rg", new() { Timeout = 900_000 });
        await app.RestedAsync();
        foreach ((int width, int height) in Sizes)
        {
            await app.Page.SetViewportSizeAsync(width, height);
            foreach (string theme in (string[])["light", "dark"])
            {
                await LightAsync(app, theme);
                await LookAsync(app, ["Lake", "Shore", "Rig", "Day", "Log"], $"demo-{width}-{theme}", $"{width} px, {theme}");
            }
        }

        await AboardAsync(app);
        Assert.Empty(app.Errors);
        Assert.True(app.Faults.Count == 0, string.Join('\n', app.Faults));
        await device.CloseAsync();
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task Long_German_words_fit_the_keyboard_reaches_all_and_nothing_moves_for_who_asked(int width, int height)
    {
        IBrowserContext device = await fixture.DeviceAsync(width, height, locale: "de-DE", calm: true);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.StopAsync();
        await app.BringTestLakeAsync("Übernehmen");
        await LookAsync(app, ["See", "Ufer", "Montage", "Tag", "Logbuch"], $"german-{width}", $"{width} px, German", calm: true);
        Assert.Empty(app.Errors);
        Assert.True(app.Faults.Count == 0, string.Join('\n', app.Faults));
        await device.CloseAsync();
    }

    private static async Task LookAsync(AppPage app, string[] places, string picture, string where, bool calm = false)
    {
        for (int i = 0; i < places.Length; i++)
        {
            await app.PlaceAsync(places[i]);
            if (i == 2) await app.Page.WaitForSelectorAsync(".rig .out", new() { Timeout = 300_000 });
            await app.ShotAsync($"{picture}-{i}");
            await app.AccessibleAsync($"{places[i]}, {where}");
            if (!calm) continue;
            await app.KeyboardAsync($"{places[i]}, {where}");
            await app.StillAsync($"{places[i]}, {where}");
        }
    }

    private static async Task AboardAsync(AppPage app)
    {
        await app.PlaceAsync("Aboard");
        await app.AnsweredAsync();
        foreach (string theme in (string[])["light", "dark", "sun"])
        {
            await LightAsync(app, theme);
            await app.Page.WaitForTimeoutAsync(600);
            await app.ShotAsync($"demo-aboard-{theme}");
            await app.AccessibleAsync($"Aboard, {theme}");
        }

        int over = await app.Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight - innerHeight");
        if (over > 0) app.Faults.Add($"Aboard needs {over} px of scrolling.");
    }

    private static async Task LightAsync(AppPage app, string theme) =>
        await app.Page.EvaluateAsync("async theme => (await import('/js/app.js')).applyTheme(theme)", theme);
}
