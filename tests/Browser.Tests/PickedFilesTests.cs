using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>Files picked while the app is busy with something else are the ones that are read.</summary>
public class PickedFilesTests(BrowserFixture fixture)
{
    [Fact]
    public async Task Files_picked_while_the_app_fetches_its_own_lake_reach_the_engine()
    {
        IBrowserContext device = await fixture.DeviceAsync(1440, 900);
        TaskCompletionSource picked = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await device.RouteAsync("**/demo/ketterfold.zip", async route =>
        {
            await picked.Task;
            await route.ContinueAsync();
        });
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.Page.Locator(".work .btn").ClickAsync();
        await app.Page.Locator(".mast .t").ClickAsync();
        await app.Page.SetInputFilesAsync("#lakefiles", TestLake.Files());
        // The page has read the files; now the lake of the app's own comes, and must not be taken for them.
        await app.Page.WaitForTimeoutAsync(1_000);
        picked.SetResult();
        await app.Page.WaitForSelectorAsync(".found");
        Assert.Contains("bowl.csv", await app.Page.Locator(".found").InnerTextAsync(), StringComparison.Ordinal);
        await app.RestedAsync();
        // What was stopped did not go on by itself, and the way on stands there.
        Assert.Equal(0, await app.Page.Locator(".lakerow").CountAsync());
        await app.PressAsync("Take the demo lake in");
        await app.Page.WaitForSelectorAsync(".lakerow");
        await app.RestedAsync();
        Assert.Empty(app.Errors);
        await device.CloseAsync();
    }
}
