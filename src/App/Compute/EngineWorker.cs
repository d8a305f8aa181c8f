using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace SecondShore.App.Compute;

[SupportedOSPlatform("browser")]
internal static partial class EngineWorker
{
    [JSExport]
    internal static void Begin() { }

    [JSExport]
    internal static void AddFile(string path, byte[] bytes) { _ = path; _ = bytes; }

    [JSExport]
    internal static string Ask(string verb, string json) => verb + json + TimeZoneInfo.FindSystemTimeZoneById("America/Chicago").GetUtcOffset(DateTimeOffset.UnixEpoch);
}
