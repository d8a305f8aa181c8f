using System.Text.Json;

namespace SecondShore.Cli.Tests;

/// <summary>The demo lake and one day planned on it, made once for all tests that look at the plan.</summary>
public sealed class DemoDay : IDisposable
{
    public DemoDay(DemoLake demo)
    {
        Lake = demo.Lake;
        Plan = Path.Combine(Path.GetDirectoryName(demo.Lake)!, "the-plan");
        Terminal.Run run = Terminal.Do("day", demo.Lake, "--json", "--members", "20", "--out", Plan);
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        Answer = JsonDocument.Parse(run.Out);
    }

    public string Lake { get; }

    /// <summary>Folder of the plan's files.</summary>
    public string Plan { get; }

    /// <summary>What <c>--json</c> printed.</summary>
    public JsonDocument Answer { get; }

    public void Dispose() => Answer.Dispose();
}
