using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using SecondShore.Desk;
using SecondShore.Desk.Questions;

namespace SecondShore.App.Compute;

/// <summary>The desk's door in its own worker: files in, a question, an answer as JSON; big arrays leave by the side.</summary>
[SupportedOSPlatform("browser")]
internal static partial class EngineWorker
{
    private static readonly Dictionary<string, byte[]> Files = new(StringComparer.Ordinal);
    private static readonly LakeDesk Desk = new(new BrowserTray());

    /// <summary>Forgets the files handed over.</summary>
    [JSExport]
    internal static void Begin() => Files.Clear();

    /// <summary>Hands a file over, to be laid on the desk or to go beside the next question.</summary>
    [JSExport]
    internal static void AddFile(string path, byte[] bytes) => Files[path] = bytes;

    /// <summary>The files handed over are the lake's.</summary>
    [JSExport]
    internal static void Lay(string lake)
    {
        Desk.Lay(lake, Files);
        Files.Clear();
    }

    /// <summary>Whose words the answers are in from now on.</summary>
    [JSExport]
    internal static void ReadBy(string reader) => Desk.Reader = Reader.OfJson(reader);

    /// <summary>Answers a question.</summary>
    [JSExport]
    internal static Task<string> Ask(string question)
    {
        Question asked = Question.OfJson(question);
        return asked is FetchWeather weather ? FetchAsync(weather) : Task.FromResult(Desk.AskJson(asked, Files));
    }

    // Apart, since the client's assembly is fetched with the first such question only.
    private static async Task<string> FetchAsync(FetchWeather weather)
    {
        // Each try has its own time limit.
        using HttpClient http = new() { Timeout = Timeout.InfiniteTimeSpan };
        return weather.WriteAnswer(await Desk.FetchWeatherAsync(weather, http));
    }
}
