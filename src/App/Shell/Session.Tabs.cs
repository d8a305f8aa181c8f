using System.Globalization;
using Microsoft.JSInterop;

namespace SecondShore.App.Shell;

/// <summary>What other tabs of this device kept: none goes on showing what another has changed.</summary>
public sealed partial class Session
{
    /// <summary>Raised when another tab went on with the open lake's trip.</summary>
    internal event Func<Task>? TripWentOn;

    /// <summary>Another tab kept something.</summary>
    /// <param name="what">records, files, lakes, papers, stop, trip or units.</param>
    /// <param name="lake">The lake's id; empty for what belongs to none.</param>
    [JSInvokable]
    public async Task OnOtherTab(string what, string lake)
    {
        if (what == "lakes") await TakeLakesAsync();
        else if (what == "units") await TakeUnitsAsync();
        if (Lake?.Id != lake) return;
        switch (what)
        {
            case "records": await CameAsync(lake, records: 1, files: 0); break;
            case "files": await CameAsync(lake, records: 0, files: 1); break;
            case "trip": await (TripWentOn?.Invoke() ?? Task.CompletedTask); break;
            case "stop": await TakeStopAsync(lake); break;
            case "papers":
                Hold = null;
                await RecallDayAsync(lake);
                break;
        }

        Tell();
    }

    private async Task TakeLakesAsync()
    {
        await ReadLakesAsync();
        if (Lake is { } gone && Lakes.Count > 0 && Lakes.All(l => l.Id != gone.Id)) await OpenAsync(Lakes[0]);
        else Tell();
    }

    private async Task TakeUnitsAsync()
    {
        bool metric = await browser.Text("setting", "units") == "metric";
        if (metric != Words.Units.IsMetric) await ShowMetricAsync(metric);
    }

    private async Task TakeStopAsync(string lake)
    {
        int.TryParse(await browser.Text("setting", "stop:" + lake), NumberStyles.Integer, CultureInfo.InvariantCulture, out _stopAt);
        await browser.Do("goToStop", Stop?.Letter ?? "");
    }
}
