using System.Collections.Concurrent;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Tests;

/// <summary>A host on a free port of this machine, with a data folder of its own and its log kept.</summary>
internal sealed class HostUnderTest : IAsyncDisposable
{
    private readonly bool _ownFolder;
    private readonly WebApplication _app;

    private HostUnderTest(WebApplication app, string folder, bool ownFolder) => (_app, Folder, _ownFolder) = (app, folder, ownFolder);

    public static readonly string Lake = "ketterfold-0001";

    public string Folder { get; }

    public Uri Address => new(_app.Urls.First());

    public ConcurrentQueue<string> Log { get; } = new();

    public IServiceProvider Services => _app.Services;

    public DeviceStore Devices => _app.Services.GetRequiredService<DeviceStore>();

    public static Task<HostUnderTest> StartAsync(params string[] args) => StartInAsync(NewFolder(), true, args);

    public static async Task<HostUnderTest> StartInAsync(string folder, bool ownFolder, params string[] args)
    {
        string[] at = args.Contains("--urls") ? [] : ["--urls", "http://127.0.0.1:0"];
        WebApplication app = HostApp.Build([.. at, "--data", folder, .. args]);
        HostUnderTest host = new(app, folder, ownFolder);
        app.Services.GetRequiredService<ILoggerFactory>().AddProvider(new Keeper(host.Log));
        await app.StartAsync();
        return host;
    }

    public static string NewFolder()
    {
        string root = Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();
        return Directory.CreateDirectory(Path.Combine(root, "second-shore-host-" + Guid.NewGuid().ToString("N"))).FullName;
    }

    public HttpClient Client(string? token = null)
    {
        HttpClient client = new() { BaseAddress = Address };
        // A program of the host's own account reads the key that its start left in the data folder.
        if (token is null && File.Exists(Path.Combine(Folder, "host.key"))) token = File.ReadAllText(Path.Combine(Folder, "host.key"));
        if (token is not null) client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        return client;
    }

    /// <summary>Somebody who reaches the port and has nothing else.</summary>
    public HttpClient Stranger() => new(new HttpClientHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = Address };

    /// <summary>A paired device.</summary>
    public async Task<HttpClient> PairedAsync(PairingGrant grant)
    {
        string code = await Devices.NewCodeAsync(grant, default);
        using HttpClient stranger = Client();
        using HttpResponseMessage answer = await stranger.PostAsJsonAsync("/api/pair", new PairRequest(code, "test device"), RecordsJson.Default.PairRequest);
        answer.EnsureSuccessStatusCode();
        return Client((await answer.Content.ReadFromJsonAsync(RecordsJson.Default.PairAnswer))!.Token);
    }

    public Task<HttpClient> OwnerAsync() => PairedAsync(new PairingGrant(true, null, true));

    /// <summary>Adds a lake for a guest; the id that the host calls it by.</summary>
    public static async Task<string> OwnLakeAsync(HttpClient guest, string asked)
    {
        using HttpResponseMessage made = await AddLakeAsync(guest, asked);
        made.EnsureSuccessStatusCode();
        return (await made.Content.ReadFromJsonAsync(RecordsJson.Default.HostLake))!.Id;
    }

    public static Task<HttpResponseMessage> AddLakeAsync(HttpClient client, string lake) =>
        client.PutAsJsonAsync($"/api/lakes/{lake}", new NewHostLake(lake), RecordsJson.Default.NewHostLake);

    public static Task<HttpResponseMessage> PushAsync(HttpClient client, string lake, params LakeRecord[] records) =>
        client.PostAsJsonAsync($"/api/lakes/{lake}/records", new PushRequest(records), RecordsJson.Default.PushRequest);

    public static async Task<IReadOnlyList<LakeRecord>> PullAllAsync(HttpClient client, string lake)
    {
        List<LakeRecord> all = [];
        PullAnswer page = new("", 0, true, []);
        while (page.More)
        {
            page = (await client.GetFromJsonAsync($"/api/lakes/{lake}/records?epoch={page.Epoch}&after={page.Cursor}", RecordsJson.Default.PullAnswer))!;
            all.AddRange(page.Records);
        }

        return all;
    }

    public static LakeRecord Note(string text) => LakeRecord.Make("note", new DateTimeOffset(2026, 10, 4, 17, 0, 0, TimeSpan.Zero), null, false,
        "{\"note\":" + JsonSerializer.Serialize(text) + "}");

    public static async Task<string> ErrorAsync(HttpResponseMessage answer) => (await answer.Content.ReadFromJsonAsync(RecordsJson.Default.HostProblem))!.Detail;

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        if (_ownFolder) Directory.Delete(Folder, recursive: true);
    }

    private sealed class Keeper(ConcurrentQueue<string> log) : ILoggerProvider, ILogger
    {
        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            log.Enqueue(formatter(state, exception) + exception);

        public void Dispose()
        {
        }
    }
}
