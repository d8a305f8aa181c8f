using Microsoft.JSInterop;
using SecondShore.App.Compute.Views;

namespace SecondShore.App.Shell;

/// <summary>Weather that the user asked for.</summary>
public sealed partial class Session
{
    /// <summary>Fetches weather into the open lake's files, and works everything out anew.</summary>
    /// <param name="hostPath">Address at the host; null asks the open service from this device.</param>
    /// <param name="ask">What is asked.</param>
    /// <returns>What came; null where nothing did, with the reason in <see cref="Trouble"/>.</returns>
    internal async Task<WeatherView?> FetchWeatherAsync(string? hostPath, WeatherAsk ask)
    {
        WeatherView? came = null;
        await DoAsync("work.weather", async () =>
        {
            if (Lake is not { } lake) return;
            string about = Json(About() with { Weather = ask });
            string? json = hostPath is null
                ? await browser.Text("weatherDirect", about, lake.Id, _self ??= DotNetObjectReference.Create(this))
                : await browser.Text("weatherFromHost", hostPath, about, lake.Id);
            came = Read(json ?? "{}", ViewsJson.Default.WeatherView);
        });
        if (came is null) return null;
        Kept?.Invoke();
        _ = WorkOutAsync();
        return came;
    }
}
