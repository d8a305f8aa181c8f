using System.Globalization;
using SecondShore.App.Compute.Views;

namespace SecondShore.App.Shell;

/// <summary>What the wind does to the water.</summary>
public sealed partial class Session
{
    /// <summary>The wind's work; null until asked.</summary>
    public WindView? Wind { get; private set; }

    /// <summary>Works out what the wind does, where it is not known yet for these hours.</summary>
    public async Task AskWindAsync(WindAsk ask)
    {
        if (Lake is null || View?.Chart is null) return;
        if (_engineIsCold) await WorkOutAsync();
        WorkKey key = new(string.Create(CultureInfo.InvariantCulture, $"wind.{ask.Hours}"), Lake.Id, [new("wind", 1)]);
        await DoAsync("work.wind", key, async () =>
        {
            Wind = await ReadAsync(await AskAsync("wind", About() with { Wind = ask }, Lake.Id), ViewsJson.Default.WindView);
        });
    }
}
