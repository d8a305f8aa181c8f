using System.Diagnostics;
using Microsoft.Playwright;
using SecondShore.Browser.Tests;
using SecondShore.TestKit;

[assembly: AssemblyFixture(typeof(BrowserFixture))]
[assembly: LongCheck]

namespace SecondShore.Browser.Tests;

/// <summary>One published app, one server and one Chromium for all browser tests.</summary>
/// <remarks>
/// Without a Chromium (<see cref="Needed.Chromium"/>) the tests skip and say so, and nothing is published. The app is published once
/// a run, since only a published one runs as users have it; SECONDSHORE_PUBLISHED names a folder that holds it already.
/// </remarks>
public sealed class BrowserFixture : IAsyncLifetime
{
    private string? _missing = Needed.Chromium.Missing;
    private PublishedHost? _host;
    private string _folder = "";
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>The server's address.</summary>
    public string Address => _host?.Address ?? "";

    /// <summary>The published app's files; skips the test without a browser.</summary>
    public string SiteFolder
    {
        get
        {
            _ = Browser;
            return Path.Combine(_folder, "wwwroot");
        }
    }

    /// <summary>Folder for pictures that people look at.</summary>
    public static string Screens { get; } = Directory.CreateDirectory(Path.Combine(SharedData.RepositoryRoot, "artifacts", "screens")).FullName;

    public async ValueTask InitializeAsync()
    {
        if (Needed.Chromium.Find() is not { } chromium) return;
        _playwright = await Playwright.CreateAsync();
        try
        {
            _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
            {
                ExecutablePath = chromium,
                Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
            });
        }
        catch (PlaywrightException e)
        {
            _missing = $"{chromium} would not start: start it by hand to see why, or install the package 'chromium' anew. It said: {e.Message.Split('\n')[0]}";
            return;
        }

        _folder = await PublishedAsync();
        _host = await PublishedHost.StartAsync(_folder);
    }

    /// <summary>The browser; skips the test, or fails it where it must run, when there is none.</summary>
    public IBrowser Browser => _browser ?? throw Needed.Chromium.Without(_missing!);

    /// <summary>Another host, with an empty data folder; skips the test without a browser.</summary>
    internal Task<PublishedHost> HostAsync(params string[] args)
    {
        // Asked for first: without a browser there is no published app to start.
        _ = Browser;
        return PublishedHost.StartAsync(_folder, args);
    }

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
        // A Release build of the host publishes it, and only when something changed since the last time.
        ProcessStartInfo start = new(Programs.Dotnet, ["build", "src/Host", "-c", "Release", "-v", "q", "-nologo"])
        {
            WorkingDirectory = SharedData.RepositoryRoot,
            RedirectStandardOutput = true,
        };
        using Process publish = Process.Start(start) ?? throw new InvalidOperationException("The app could not be published.");
        string said = await publish.StandardOutput.ReadToEndAsync();
        await publish.WaitForExitAsync();
        if (publish.ExitCode != 0) throw new InvalidOperationException($"The app could not be published: {said}");
        return Path.Combine(SharedData.RepositoryRoot, "artifacts", "publish", "SecondShore.Host", "release");
    }
}
