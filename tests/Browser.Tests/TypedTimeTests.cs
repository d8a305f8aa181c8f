using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>A time that is typed is the time that is taken.</summary>
public class TypedTimeTests(BrowserFixture fixture)
{
    [Fact]
    public async Task An_entry_typed_in_the_evening_stands_at_its_own_time_and_all_places_answer_for_the_instant_typed()
    {
        IBrowserContext device = await fixture.DeviceAsync(1440, 900);
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.WorkedOutAsync();
        await app.PlaceAsync("Log");
        await app.Page.GetByText("Type in the sheet").ClickAsync();
        ILocator form = app.Page.Locator(".edit.whole");
        await form.Locator("select").First.SelectOptionAsync("note");
        await TypeAsync(form.Locator("input[type=datetime-local]"), "2026-10-04T05:17");
        await form.GetByLabel("Note", new LocatorGetByLabelOptions { Exact = true }).FillAsync("typed at home");
        await form.GetByText("Keep").ClickAsync();
        ILocator entry = app.Page.Locator(".ent", new PageLocatorOptions { HasText = "typed at home" });
        await entry.WaitForAsync();
        Assert.Contains("5:17 am", await entry.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("Sun Oct 4", await app.Page.Locator(".entries .rulehead", new PageLocatorOptions { HasText = "Oct 4" }).First.InnerTextAsync(), StringComparison.Ordinal);

        await app.PlaceAsync("Lake");
        await app.Page.GetByText("Another day or hour").ClickAsync();
        await TypeAsync(app.Page.Locator(".instant input"), "2026-09-20T09:30");
        await app.PressAsync("Answer for then");
        await app.Page.GetByText("All places answer for Sun Sep 20, 9:30 am").WaitForAsync();
        await app.RestedAsync();
        Assert.Contains("Sun Sep 20, 9:30 am", await app.Page.Locator(".mast .m").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("Sun Sep 20, 9:30 am", await app.Page.Locator(".answer").InnerTextAsync(), StringComparison.Ordinal);
        await app.PressAsync("Back to the newest");
        await app.RestedAsync();
        Assert.Contains("Oct 6", await app.Page.Locator(".answer").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(app.Errors);
        await device.CloseAsync();
    }

    private static async Task TypeAsync(ILocator field, string time)
    {
        await field.FillAsync(time);
        await Assertions.Expect(field).ToHaveValueAsync(time);
    }
}
