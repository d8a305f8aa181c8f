using Microsoft.Playwright;
using SecondShore.TestKit;

namespace SecondShore.Browser.Tests;

/// <summary>Weather asked for on the Lake place, against a stand-in of the service on this machine.</summary>
public class WeatherTests(BrowserFixture fixture)
{
    private static readonly float Patient = 900_000;

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task Weather_comes_through_the_host_when_asked_and_the_outlook_follows(int width, int height)
    {
        using WeatherStandIn service = new(DateOnly.FromDateTime(DateTime.UtcNow));
        await using PublishedHost host = await fixture.HostAsync("--weather", service.Forecast.AbsoluteUri, "--weather-archive", service.Archive.AbsoluteUri);
        IBrowserContext device = await fixture.DeviceAsync(width, height);
        AppPage app = await AppPage.OpenAsync(device, host.Address);
        await app.StopAsync();
        await app.BringTestLakeAsync("Take it in");
        Assert.Empty(service.Asked);
        string before = await app.Page.InnerTextAsync("main .answer");
        await app.Page.Locator(".wxsec").ScrollIntoViewIfNeededAsync();
        await app.Page.WaitForTimeoutAsync(600);
        await app.ShotAsync($"weather-{width}-light");
        await app.AccessibleAsync($"Lake with weather, {width} px");
        await app.Page.GetByLabel("The 15 years before as well").SetCheckedAsync(width > 1000);
        await FetchedAsync(app, service.Address.Host);

        Assert.NotEqual(before, await app.Page.InnerTextAsync("main .answer"));
        Assert.Contains("latitude=39.50&longitude=-97.20", service.Asked.First(), StringComparison.Ordinal);
        Assert.Equal(width > 1000 ? 15 : 0, await YearsAsync(app));
        await app.Page.EvaluateAsync("async () => (await import('/js/app.js')).applyTheme('dark')");
        await app.Page.Locator(".wxsec").ScrollIntoViewIfNeededAsync();
        await app.Page.WaitForTimeoutAsync(600);
        await app.ShotAsync($"weather-{width}-dark-came");
        await app.AccessibleAsync($"Lake with weather that came, {width} px, dark");
        await app.KeyboardAsync($"Lake with weather, {width} px");

        Assert.True(app.Faults.Count == 0, string.Join('\n', app.Faults));
        Assert.Empty(app.Errors);
        await device.CloseAsync();
    }

    [Fact]
    public async Task Without_a_host_the_device_asks_the_service_itself_and_says_what_failed()
    {
        using WeatherStandIn service = new(DateOnly.FromDateTime(DateTime.UtcNow));
        using StaticSite site = new(fixture.SiteFolder, service.Address.GetLeftPart(UriPartial.Authority));
        IBrowserContext device = await fixture.DeviceAsync(390, 844);
        AppPage app = await AppPage.OpenAsync(device, site.Address);
        await app.StopAsync();
        await app.BringTestLakeAsync("Take it in");
        await app.Page.GetByLabel("The 15 years before as well").UncheckAsync();
        await app.Page.GetByText("Another weather service").ClickAsync();
        await app.Page.GetByLabel("Address of its forecast").FillAsync(service.Forecast.AbsoluteUri);
        await app.Page.GetByLabel("Address of its past years").FillAsync(service.Archive.AbsoluteUri);
        await app.ShotAsync("weather-390-other-service");
        await app.AccessibleAsync("Lake, another service");

        string before = await app.Page.InnerTextAsync("main .answer");
        for (int i = 0; i < 2; i++) service.Faults.Enqueue(WeatherStandIn.Error(400, "Parameter is out of range."));
        await app.PressAsync("Fetch the weather");
        // Told at the key and at the head of the page.
        await app.Page.GetByText("Parameter is out of range.").First.WaitForAsync(new() { Timeout = Patient });
        Assert.Equal(before, await app.Page.InnerTextAsync("main .answer"));
        await app.PressAsync("Close", exact: true);
        await FetchedAsync(app, service.Address.Host);
        Assert.NotEqual(before, await app.Page.InnerTextAsync("main .answer"));
        Assert.True(app.Faults.Count == 0, string.Join('\n', app.Faults));
        Assert.DoesNotContain(app.Errors, e => !e.Contains("status of 400", StringComparison.Ordinal));
        await device.CloseAsync();
    }

    private static async Task FetchedAsync(AppPage app, string host)
    {
        await app.PressAsync("Fetch the weather");
        await app.Page.GetByText("The weather is here.").WaitForAsync(new() { Timeout = Patient });
        await app.AnsweredAsync();
        await app.Page.Locator(".wxsec").GetByText($"Weather data by {host}").First.WaitForAsync(new() { Timeout = Patient });
    }

    private static Task<int> YearsAsync(AppPage app) => app.Page.EvaluateAsync<int>("""
        async () => {
          const store = await import('/js/app.js');
          return JSON.parse(await store.hashedFiles(await store.setting('lake'))).filter((f) => f.path.startsWith('climate/')).length;
        }
        """);
}
