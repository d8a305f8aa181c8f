using Microsoft.JSInterop;
using SecondShore.App.Compute.Views;

namespace SecondShore.App.Shell;

/// <summary>The day's plan and where the boat is in it.</summary>
public sealed partial class Session
{
    private int _stopAt;

    /// <summary>The plan; null until one was made.</summary>
    public DayView? Day { get; private set; }

    /// <summary>The stop the boat is at or going to.</summary>
    public StopView? Stop => Day is { } day && _stopAt < day.Stops.Count ? day.Stops[_stopAt] : null;

    /// <summary>The stop after that.</summary>
    public StopView? NextStop => Day is { } day && _stopAt + 1 < day.Stops.Count ? day.Stops[_stopAt + 1] : null;

    /// <summary>What to tie on; null until asked.</summary>
    public RigView? Rig { get; private set; }

    /// <summary>Asks what to tie on.</summary>
    public async Task AskRigAsync(RigAsk ask)
    {
        try
        {
            Rig = Read(await AskAsync("rig", new AskAbout(Metric: Words.Units.IsMetric, Rig: ask), null), ViewsJson.Default.RigView);
            Tell();
        }
        catch (JSException error)
        {
            Say(ExplainedTrouble(error));
        }
    }

    /// <summary>Goes on to the next stop.</summary>
    public void GoOn()
    {
        if (NextStop is not null) _stopAt++;
        Tell();
    }
}
