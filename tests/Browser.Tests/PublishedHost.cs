using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Browser.Tests;

/// <summary>A host as users run it: the published program in a process of its own, with an empty data folder.</summary>
internal sealed partial class PublishedHost : IAsyncDisposable
{
    private readonly Process _process;
    private readonly string _data;

    private PublishedHost(Process process, string data) => (_process, _data) = (process, data);

    /// <summary>Its address.</summary>
    public string Address { get; private set; } = "";

    /// <summary>The address that the host of an address printed for this machine's browser; null where it asks for pairing.</summary>
    public static string? EntryOf(string address) => Entries.GetValueOrDefault(address);

    private static readonly ConcurrentDictionary<string, string> Entries = new();

    /// <summary>The code for the first device, where devices must pair.</summary>
    public string Code { get; private set; } = "";

    public static async Task<PublishedHost> StartAsync(string folder, params string[] args)
    {
        string data = Directory.CreateTempSubdirectory("second-shore-browser-").FullName;
        ProcessStartInfo start = new(Programs.Dotnet, [Path.Combine(folder, "SecondShore.Host.dll"), "--urls", "http://127.0.0.1:0", "--data", data, .. args])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = folder,
        };
        PublishedHost host = new(Process.Start(start) ?? throw new InvalidOperationException("The server could not be started."), data);
        bool pairs = args.Contains("--app") || args.Contains("--pairing");
        while (await host._process.StandardOutput.ReadLineAsync() is { } line)
        {
            const string Said = "Second Shore is at ";
            if (line.StartsWith(Said, StringComparison.Ordinal)) host.Address = line[Said.Length..].Trim();
            if (EntryShown().Match(line) is { Success: true } entry) Entries[host.Address] = entry.Value;
            if (CodeShown().Match(line) is { Success: true } code) host.Code = code.Value;
            if (host.Address.Length == 0 || (pairs ? host.Code.Length == 0 : EntryOf(host.Address) is null)) continue;
            _ = host._process.StandardOutput.ReadToEndAsync();
            return host;
        }

        throw new InvalidOperationException("The server ended before it told its address.");
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
        }

        _process.Dispose();
        Directory.Delete(_data, recursive: true);
    }

    [GeneratedRegex(@"http\S+/api/open\?key=\w+")]
    private static partial Regex EntryShown();

    [GeneratedRegex(@"\b[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4}\b")]
    private static partial Regex CodeShown();
}
