using System.Diagnostics;
using Microsoft.Playwright;
using SecondShore.Browser.Tests;
using SecondShore.TestKit;

[assembly: AssemblyFixture(typeof(BrowserFixture))]

namespace SecondShore.Browser.Tests;

/// <summary>One published app, one server and one Chromium for all browser tests.</summary>
/// <remarks>
/// Chromium is taken from the variable SECONDSHORE_CHROMIUM or from PATH. Without one the tests skip and say so, unless
/// SECONDSHORE_NEED_BROWSER is set, as CI sets it: then they fail. The app is published once a run, since only a published one
/// runs as users have it; SECONDSHORE_PUBLISHED names a folder that holds it already.
/// </remarks>
public sealed class BrowserFixture : IAsyncLifetime
{
    private PublishedHost? _host;
    private string _folder = "";
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>The server's address.</summary>
    public string Address => _host?.Address ?? "";

    /// <summary>The published app's files.</summary>
    public string SiteFolder => Path.Combine(_folder, "wwwroot");

    /// <summary>Why there is no browser; null when there is one.</summary>
    public string? Missing { get; private set; }

    /// <summary>Folder for pictures that people look at.</summary>
    public static string Screens { get; } = Directory.CreateDirectory(Path.Combine(SharedData.RepositoryRoot, "artifacts", "screens")).FullName;

    public async ValueTask InitializeAsync()
    {
        string? chromium = FindChromium();
        if (chromium is null)
        {
            Missing = "No Chromium was found: set SECONDSHORE_CHROMIUM to one, or put chromium on PATH.";
            return;
        }

        _folder = await PublishedAsync();
        _host = await HostAsync();
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = chromium,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    /// <summary>The browser; skips the test, or fails it under CI, when there is none.</summary>
    public IBrowser Browser
    {
        get
        {
            if (_browser is not null) return _browser;
            if (Environment.GetEnvironmentVariable("SECONDSHORE_NEED_BROWSER") is { Length: > 0 }) Assert.Fail(Missing);
            Assert.Skip(Missing ?? "No browser.");
            throw new UnreachableException();
        }
    }

    /// <summary>Another host, with an empty data folder.</summary>
    internal Task<PublishedHost> HostAsync(params string[] args) => PublishedHost.StartAsync(_folder, args);

    /// <summary>A device of its own: nothing stored. A calm one asks for reduced motion.</summary>
    public Task<IBrowserContext> DeviceAsync(int width, int height, bool dark = false, string locale = "en-US", bool calm = false) =>
        Browser.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            Locale = locale,
            ReducedMotion = calm ? ReducedMotion.Reduce : ReducedMotion.NoPreference,
            TimezoneId = "America/Chicago",
            AcceptDownloads = true,
        });

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.CloseAsync();
        _playwright?.Dispose();
        if (_host is not null) await _host.DisposeAsync();
    }

    private static async Task<string> PublishedAsync()
    {
        if (Environment.GetEnvironmentVariable("SECONDSHORE_PUBLISHED") is { Length: > 0 } given) return given;
        string folder = Path.Combine(SharedData.RepositoryRoot, "artifacts", "browser-tests");
        // Files go over this machine's own wire: packing them would take longer than sending them.
        ProcessStartInfo start = new("dotnet", ["publish", "src/Host", "-c", "Release", "-o", folder, "-v", "q", "-nologo", "-p:CompressionEnabled=false"])
        {
            WorkingDirectory = SharedData.RepositoryRoot,
            RedirectStandardOutput = true,
        };
        using Process publish = Process.Start(start) ?? throw new InvalidOperationException("The app could not be published.");
        string said = await publish.StandardOutput.ReadToEndAsync();
        await publish.WaitForExitAsync();
        return publish.ExitCode == 0 ? folder : throw new InvalidOperationException($"The app could not be published: {said}");
    }

    private static string? FindChromium()
    {
        if (Environment.GetEnvironmentVariable("SECONDSHORE_CHROMIUM") is { Length: > 0 } given) return File.Exists(given) ? given : null;
        foreach (string folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator))
        {
            foreach (string name in (string[])["chromium", "chromium-browser", "google-chrome"])
            {
                string path = Path.Combine(folder, name);
                if (folder.Length > 0 && File.Exists(path)) return path;
            }
        }

        return null;
    }
}
