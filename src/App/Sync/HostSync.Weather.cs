using System.Globalization;
using SecondShore.App.Compute.Views;

namespace SecondShore.App.Sync;

/// <summary>Weather for the open lake, when the user asks for it: through the host where there is one, else from the open service.</summary>
public sealed partial class HostSync
{
    /// <summary>Fetches it, puts it among the lake's files and works the outlook out anew.</summary>
    /// <param name="ask">What is asked; its addresses count only without a host.</param>
    /// <returns>What came; null where nothing did, with the reason in the session's trouble.</returns>
    public async Task<WeatherView?> FetchWeatherAsync(WeatherAsk ask)
    {
        if (session.View is not { } view) return null;
        if (!session.HasSignal)
        {
            session.Say(session.Words["weather.away"]);
            return null;
        }

        if (_way is null) await LookAsync();
        if (_way is null && Own is { Known: false })
        {
            session.Say(session.Words["weather.pairfirst"]);
            return null;
        }

        // Two decimals, about a kilometre: weather is no finer, and nobody need know the ramp.
        return await session.FetchWeatherAsync(_way is null ? null
            : string.Create(CultureInfo.InvariantCulture, $"api/weather?latitude={view.OriginLatDeg:0.00}&longitude={view.OriginLonDeg:0.00}"
                + $"&years={ask.Years}&language={session.Words.Text.Language}"), ask);
    }
}
