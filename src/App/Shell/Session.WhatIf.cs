using Microsoft.JSInterop;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.App.Shell;

/// <summary>What if the thermocline, the pool or the day were another?</summary>
public sealed partial class Session
{
    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(350);
    private int _wish;

    /// <summary>What is being tried.</summary>
    public WhatIf Trying { get; private set; } = WhatIf.Nothing;

    /// <summary>Draws the belt for another depth of the thermocline, m.</summary>
    public Task TryDepthAsync(double depthM) => TryAsync(Trying with { ThermoclineM = depthM });

    /// <summary>Draws the water, the belt and the spots at another level, m below full pool.</summary>
    public Task TryPoolAsync(double belowFullPoolM) => TryAsync(Trying with { BelowFullPoolM = belowFullPoolM });

    /// <summary>Draws the belt for another day of the season's course.</summary>
    public Task TryDayAsync(DateOnly date) => TryAsync(Trying with { Date = date == OutlookDay ? null : date });

    /// <summary>Back to the outlook.</summary>
    public Task TryNothingAsync() => TryAsync(WhatIf.Nothing);

    /// <summary>The outlook's own day at the lake.</summary>
    public DateOnly? OutlookDay => Outlook is { } o ? DateOnly.FromDateTime(Words.AtLake(o.At).DateTime) : null;

    // The belt follows at once; the places are ranked anew when the wish has rested.
    private async Task TryAsync(WhatIf wish)
    {
        if (Outlook is null || Work is not null) return;
        if (_engineIsCold) await WorkOutAsync();
        bool otherWater = wish.BelowFullPoolM != Trying.BelowFullPoolM;
        int mine = ++_wish;
        Trying = wish;
        try
        {
            await TryShoreAsync(new SliceShore(wish.ThermoclineM, wish.BelowFullPoolM, wish.Date));
            Tell();
            _ = RankWhenRestedAsync(mine, wish, otherWater);
        }
        catch (JSException error)
        {
            SayUnlessStopped(error);
        }
    }

    private async Task RankWhenRestedAsync(int mine, WhatIf wish, bool otherWater)
    {
        await Task.Delay(Rest);
        if (mine != _wish || Work is not null) return;
        try
        {
            await TryShoreAsync(new RankPlaces(wish.ThermoclineM, wish.BelowFullPoolM, wish.Date));
            if (otherWater) await browser.Do("setUnits", Words.Units.IsMetric);
            Tell();
        }
        catch (JSException error)
        {
            SayUnlessStopped(error);
        }
    }

    private async Task TryShoreAsync(Question<ShoreView> question)
    {
        string? of = Lake?.Id;
        ShoreView shore = await AskBesideAsync(question, of);
        if (Lake?.Id == of) TakeShore(shore);
    }
}

/// <summary>What is being tried; null leaves a thing as the outlook has it.</summary>
/// <param name="ThermoclineM">Depth of the thermocline, m.</param>
/// <param name="BelowFullPoolM">Pool level, m below full.</param>
/// <param name="Date">Day at the lake.</param>
public sealed record WhatIf(double? ThermoclineM = null, double? BelowFullPoolM = null, DateOnly? Date = null)
{
    /// <summary>Nothing is tried.</summary>
    public static WhatIf Nothing { get; } = new();
}
