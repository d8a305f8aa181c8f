using System.Globalization;
using SecondShore.Answers.Wind;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.App.Shell;

/// <summary>What the wind does to the water.</summary>
public sealed partial class Session
{
    /// <summary>The wind's work; null until asked.</summary>
    public WindView? Wind { get; private set; }

    /// <summary>The place that is looked at hour by hour; null where none is.</summary>
    public PointAsk? AtPoint { get; private set; }

    /// <summary>Its hours, as <c>wind --point</c> gives them.</summary>
    public PointSeries? Point { get; private set; }

    /// <summary>Works out what the wind does, where it is not known yet for these hours.</summary>
    public async Task AskWindAsync(WindAsk ask)
    {
        if (Lake is null || View is not { HasBottom: true }) return;
        if (_engineIsCold) await WorkOutAsync();
        WorkKey key = new(string.Create(CultureInfo.InvariantCulture, $"wind.{ask.Hours}"), Lake.Id, [WorkPart.Of<BlowWind>(1)]);
        await DoAsync("work.wind", key, async () =>
        {
            Wind = await AskAsync(new BlowWind(ask), Lake.Id);
            // The hours changed: so did those of the place that is looked at.
            if (AtPoint is { } place) await ReadPointAsync(place);
        });
    }

    /// <summary>Takes a place's hours from the wind's work.</summary>
    public Task AskPointAsync(PointAsk place) => Wind is null ? Task.CompletedTask : DoAsync("work.wind", () => ReadPointAsync(place));

    /// <summary>Hands out the wind's work as the command line writes it: GeoJSON and CSV.</summary>
    public Task HandOutWindAsync() => DoAsync("work.export", async () =>
    {
        if (Lake is not null && Wind is { } wind) await HandOutAsync(new WindPapers(wind.Asked), Lake.Id);
    });

    /// <summary>Hands out the hours of the place that is looked at as the command line writes them.</summary>
    public Task HandOutPointAsync() => DoAsync("work.export", async () =>
    {
        if (Lake is not null && Wind is { } wind && AtPoint is { } place) await HandOutAsync(new PointPapers(wind.Asked, place), Lake.Id);
    });

    /// <summary>Looks at no place any more.</summary>
    public async Task LeavePointAsync()
    {
        (AtPoint, Point) = (null, null);
        await browser.Do("markPlace", null, null);
        Tell();
    }

    private async Task ReadPointAsync(PointAsk place)
    {
        if (Lake is not { } lake || Wind is not { } wind) return;
        PointSeries series = await AskAsync(new LookAtPoint(wind.Asked, place), lake.Id);
        if (Lake?.Id != lake.Id) return;
        (AtPoint, Point) = (place, series);
        await browser.Do("markPlace", place.XM, place.YM);
    }
}
