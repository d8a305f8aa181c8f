using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using SecondShore.App.Shell;
using SecondShore.Records;

namespace SecondShore.App.Sync;

/// <summary>A host did not do what was asked.</summary>
/// <param name="status">Its status; 0 where nothing answered.</param>
/// <param name="sentence">Its own sentence; empty where it gave none.</param>
public sealed class HostException(int status, string sentence) : Exception(sentence)
{
    /// <summary>The status; 0 where nothing answered.</summary>
    public int Status => status;

    /// <summary>Whether it may well answer later: nobody there, too busy, or asked too often.</summary>
    public bool IsAway => status is 0 or 408 or 429 or >= 500;
}

/// <summary>The host's interface as the page calls it, through the browser's own requests.</summary>
internal sealed class HostCalls(Browser browser)
{
    /// <summary>How a host stands to this device.</summary>
    /// <param name="address">Its address; empty for the place the app came from.</param>
    /// <returns>Null where no host is.</returns>
    public async Task<HostStanding?> StandingAsync(string address)
    {
        HostAnswer answer = Read(await browser.Text("hostTry", address, "GET", "api/host", null));
        return answer.Status == 200 ? Parsed(answer.Body, RecordsJson.Default.HostStanding) : null;
    }

    /// <summary>Pairs this device.</summary>
    /// <exception cref="HostException">The code does not hold, or nobody answers.</exception>
    public async Task<PairAnswer> PairAsync(string address, string code, string name) => Required(
        Read(await browser.Text("hostTry", address, "POST", "api/pair", JsonSerializer.Serialize(new PairRequest(code, name), RecordsJson.Default.PairRequest))), RecordsJson.Default.PairAnswer);

    /// <summary>Lakes that this device may see.</summary>
    /// <exception cref="HostException">They do not come.</exception>
    public async Task<IReadOnlyList<HostLake>> LakesAsync() => Required(await CallAsync("GET", "api/lakes", null), RecordsJson.Default.IReadOnlyListHostLake);

    /// <summary>Makes a lake at the host, or finds it there; asked again after a cut it is the same one.</summary>
    /// <returns>The lake, with the id that the host calls it by.</returns>
    /// <exception cref="HostException">The host does not take it.</exception>
    public async Task<HostLake> AddLakeAsync(string id, string name)
    {
        HostAnswer answer = await CallAsync("PUT", $"api/lakes/{id}", JsonSerializer.Serialize(new NewHostLake(name), RecordsJson.Default.NewHostLake));
        return answer.Status is 200 or 201 && Parsed(answer.Body, RecordsJson.Default.HostLake) is { } made ? made : throw Refused(answer);
    }

    /// <summary>Sends records.</summary>
    /// <exception cref="HostException">They were not taken.</exception>
    public async Task<PushAnswer> PushAsync(string lake, PushRequest request) => Required(
        await CallAsync("POST", $"api/lakes/{lake}/records", JsonSerializer.Serialize(request, RecordsJson.Default.PushRequest)), RecordsJson.Default.PushAnswer);

    /// <summary>Records in one message: few enough that reading them holds up the page for a moment only.</summary>
    public static readonly int RecordsAtOnce = 60;

    /// <summary>Asks for records.</summary>
    /// <exception cref="HostException">They do not come.</exception>
    public async Task<PullAnswer> PullAsync(string lake, string epoch, long cursor) => Required(
        await CallAsync("GET", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"api/lakes/{lake}/records?epoch={epoch}&after={cursor}&limit={RecordsAtOnce}"), null), RecordsJson.Default.PullAnswer);

    private async Task<HostAnswer> CallAsync(string method, string path, string? json) => Read(await browser.Text("hostCall", method, path, json));

    private static HostAnswer Read(string? json) => JsonSerializer.Deserialize(json ?? "{}", SyncJson.Default.HostAnswer) ?? new HostAnswer(0, "");

    private static T Required<T>(HostAnswer answer, JsonTypeInfo<T> type) where T : class =>
        answer.Status == 200 && Parsed(answer.Body, type) is { } read ? read : throw Refused(answer);

    private static HostException Refused(HostAnswer answer) => new(answer.Status, Parsed(answer.Body, RecordsJson.Default.HostProblem)?.Detail ?? "");

    private static T? Parsed<T>(string body, JsonTypeInfo<T> type) where T : class
    {
        try
        {
            return body.Length == 0 ? null : JsonSerializer.Deserialize(body, type);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>An answer of the host.</summary>
/// <param name="Status">Status; 0 where nothing answered.</param>
/// <param name="Body">JSON; empty where there was none.</param>
internal sealed record HostAnswer(int Status, string Body);

/// <summary>The host that the user chose.</summary>
/// <param name="Address">Its address; empty for the place the app came from.</param>
/// <param name="Token">The token it gave this device; empty where it asks for none.</param>
internal sealed record HostWay(string Address, string Token);

/// <summary>A lake kept in step with the host.</summary>
/// <param name="Lake">Its id on this device.</param>
/// <param name="At">Its id at the host.</param>
/// <param name="Name">What the host calls it.</param>
/// <param name="MayWrite">Whether this device may add to it.</param>
/// <param name="Epoch">The host's epoch; see <see cref="SyncPlace"/>.</param>
/// <param name="Cursor">The number of the last record pulled.</param>
internal sealed record LakeLink(string Lake, string At, string Name, bool MayWrite, string Epoch = "", long Cursor = 0);

/// <summary>A file of a shared lake on this device.</summary>
/// <param name="Path">Name inside the lake's folder.</param>
/// <param name="Sha256">Hash of its bytes.</param>
/// <param name="SizeBytes">Length in bytes.</param>
/// <param name="SavedAt">When it was written, milliseconds since 1970.</param>
/// <param name="Base">Record that names these bytes at the host; null while they wait.</param>
/// <param name="Was">Record of the bytes they took the place of.</param>
internal sealed record DeviceFile(string Path, string Sha256, long SizeBytes, double SavedAt, string? Base, string? Was);

/// <summary>Records that are settled with the host.</summary>
internal sealed record Settled(IReadOnlyList<string> Acknowledged, IReadOnlyList<string> Refused);

/// <summary>What the page and its database say about sharing, without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(HostAnswer))]
[JsonSerializable(typeof(HostWay))]
[JsonSerializable(typeof(LakeLink))]
[JsonSerializable(typeof(IReadOnlyList<LakeLink>))]
[JsonSerializable(typeof(IReadOnlyList<DeviceFile>))]
[JsonSerializable(typeof(Settled))]
[JsonSerializable(typeof(Dictionary<string, int>))]
internal sealed partial class SyncJson : JsonSerializerContext;
