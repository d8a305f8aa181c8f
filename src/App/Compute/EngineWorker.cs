using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace SecondShore.App.Compute;

/// <summary>The engine's door in its own worker: files in, a question, an answer as JSON; big arrays leave by the side.</summary>
[SupportedOSPlatform("browser")]
internal static partial class EngineWorker
{
    private static readonly Dictionary<string, byte[]> Files = new(StringComparer.Ordinal);
    private static readonly LakeDesk Desk = new(new BrowserTray());

    [JSExport]
    internal static void Begin() => Files.Clear();

    [JSExport]
    internal static void AddFile(string path, byte[] bytes) => Files[path] = bytes;

    [JSExport]
    internal static string Ask(string verb, string json) => Desk.Answer(verb, json, Files);

    [JSExport]
    internal static async Task<string> AskWeather(string json)
    {
        // Each try has its own time limit.
        using HttpClient http = new() { Timeout = Timeout.InfiniteTimeSpan };
        return await Desk.AskWeatherAsync(json, http, TimeProvider.System);
    }
}
