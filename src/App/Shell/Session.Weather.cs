using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

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
            came = hostPath is null
                ? await ChangeFilesAsync(new FetchWeather(ask), lake.Id)
                : await browser.AskThrough("weatherFromHost", [hostPath], new TakeWeather(), lake.Id, ColdOpener(new TakeWeather())?.ToJson());
        });
        if (came is null) return null;
        Kept?.Invoke();
        _ = WorkOutAsync();
        return came;
    }
}
