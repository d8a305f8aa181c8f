using System.Globalization;
using System.Net;
using SecondShore.Store;

namespace SecondShore.Host;

/// <summary>The host is told something it cannot do; the message says what to do instead.</summary>
internal sealed class SettingsException(string message) : Exception(message);

/// <summary>What the host is told by its arguments, or by environment variables that begin with SECONDSHORE_.</summary>
internal sealed record HostSettings
{
    /// <summary>The address used when none is given: this machine only.</summary>
    public static readonly string DefaultAddress = "http://127.0.0.1:5080";

    /// <summary>Addresses to listen at.</summary>
    public required IReadOnlyList<Uri> Addresses { get; init; }

    /// <summary>Folder of the database.</summary>
    public required string DataFolder { get; init; }

    /// <summary>Connection to PostgreSQL in the place of the folder's SQLite; null for SQLite.</summary>
    public string? Postgres { get; init; }

    /// <summary>Proxies whose word on the caller's address is taken.</summary>
    public IReadOnlyList<IPAddress> Proxies { get; init; } = [];

    /// <summary>Origins of apps served from elsewhere that paired devices may use, such as <c>https://app.example</c>.</summary>
    public IReadOnlyList<string> Apps { get; init; } = [];

    /// <summary>Certificate (PEM) for HTTPS; null for none.</summary>
    public string? Certificate { get; init; }

    /// <summary>Its key (PEM); null when it stands in the certificate's file.</summary>
    public string? CertificateKey { get; init; }

    /// <summary>Whether devices must pair: always beyond loopback, and behind a proxy.</summary>
    public bool Pairing { get; init; }

    /// <summary>Connections that one address may hold open.</summary>
    public int ConnectionsPerAddress { get; init; } = 200;

    /// <summary>Requests a second that one device may make for long.</summary>
    public int RequestsPerSecond { get; init; } = 100;

    /// <summary>Pairings that one address may try in a minute.</summary>
    public int PairingsPerMinute { get; init; } = 5;

    /// <summary>Whether logs are JSON lines.</summary>
    public bool JsonLogs { get; init; }

    /// <summary>Room granted.</summary>
    public StoreQuota Quota { get; init; } = StoreQuota.Default;

    /// <summary>Address of the weather service's forecast.</summary>
    public Uri? WeatherForecast { get; init; }

    /// <summary>Address of the weather service's archive.</summary>
    public Uri? WeatherArchive { get; init; }

    /// <summary>Reads the settings.</summary>
    /// <exception cref="SettingsException">One of them is not understood, or would lay the lakes open.</exception>
    public static HostSettings From(IConfiguration configuration)
    {
        Uri[] addresses = [.. Split(configuration["urls"] ?? DefaultAddress).Select(Address)];
        foreach (string key in (string[])["http_ports", "https_ports"])
            if (configuration["urls"] is null && configuration[key] is { Length: > 0 } ports)
                addresses = [.. Split(ports).Select(p => Address($"{key[..^6]}://0.0.0.0:{p}"))];
        IPAddress[] proxies = [.. Split(configuration["proxy"] ?? "").Select(p => IPAddress.TryParse(p, out IPAddress? ip) ? ip
            : throw new SettingsException($"--proxy {p} is no address; name the proxy's IP address, such as --proxy 127.0.0.1."))];
        string[] apps = [.. Split(configuration["app"] ?? "").Select(Origin)];
        bool open = addresses.Any(a => !IsLoopback(a));
        HostSettings settings = new()
        {
            Addresses = addresses,
            DataFolder = configuration["data"] is { Length: > 0 } folder ? folder : Store.DataFolder.Default,
            Postgres = configuration["postgres"] is { Length: > 0 } text ? text : null,
            Proxies = proxies,
            Apps = apps,
            Certificate = configuration["certificate"],
            CertificateKey = configuration["certificate-key"],
            // A page from elsewhere is known by its device's token and by nothing else.
            Pairing = open || proxies.Length > 0 || apps.Length > 0 || OneOf(configuration, "pairing", "by-address", "always") == "always",
            RequestsPerSecond = Number(configuration, "requests-per-second", 100, 1, 100_000),
            PairingsPerMinute = Number(configuration, "pairings-per-minute", 5, 1, 1000),
            ConnectionsPerAddress = Number(configuration, "connections-per-address", 200, 1, 100_000),
            JsonLogs = OneOf(configuration, "log", "text", "json") == "json",
            Quota = StoreQuota.Default with
            {
                Lakes = Number(configuration, "lakes", StoreQuota.Default.Lakes, 1, 1_000_000),
                LakesPerDevice = Number(configuration, "lakes-per-device", StoreQuota.Default.LakesPerDevice, 0, 1_000_000),
                BytesPerLake = Megabytes(configuration, "lake-megabytes", StoreQuota.Default.BytesPerLake),
                BytesPerDevice = Megabytes(configuration, "device-megabytes", StoreQuota.Default.BytesPerDevice),
                StoreBytes = Megabytes(configuration, "store-megabytes", StoreQuota.Default.StoreBytes),
            },
            WeatherForecast = Optional(configuration, "weather"),
            WeatherArchive = Optional(configuration, "weather-archive"),
        };
        if (addresses.Any(a => a.Scheme == Uri.UriSchemeHttps) && settings.Certificate is null)
            throw new SettingsException("An https address needs a certificate: give --certificate FILE.pem, and --certificate-key KEY.pem when the key stands apart.");
        if (addresses.FirstOrDefault(a => !IsLoopback(a) && a.Scheme == Uri.UriSchemeHttp) is { } bare && proxies.Length == 0)
            throw new SettingsException($"{bare.OriginalString} would carry tokens and lakes over the network in the clear. Use https with --certificate, or name the proxy in front with --proxy, or listen at {DefaultAddress}.");
        return settings;
    }

    private static string[] Split(string text) => text.Split([';', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    internal static Uri Address(string text)
    {
        string plain = text.Replace("://*", "://0.0.0.0", StringComparison.Ordinal).Replace("://+", "://0.0.0.0", StringComparison.Ordinal);
        return Uri.TryCreate(plain, UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https"
            ? new Uri(plain)
            : throw new SettingsException($"--urls {text} is no address to listen at; write it like {DefaultAddress}.");
    }

    private static string Origin(string text) => Uri.TryCreate(text, UriKind.Absolute, out Uri? address) && address.PathAndQuery == "/" && address.UserInfo.Length == 0
        && (address.Scheme == Uri.UriSchemeHttps || (address.Scheme == Uri.UriSchemeHttp && address.IsLoopback)) ? address.GetLeftPart(UriPartial.Authority)
        : throw new SettingsException($"--app {text} is no place an app comes from; write it like https://app.example, without a path.");

    internal static bool IsLoopback(Uri address) => address.IsLoopback;

    private static Uri? Optional(IConfiguration configuration, string key) => configuration[key] is not { Length: > 0 } text ? null
        : Uri.TryCreate(text, UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https" ? new Uri(text)
        : throw new SettingsException($"--{key} {text} is no web address; write it like https://weather.example/v1/forecast.");

    // A word that is not one of those expected must not count as the lesser of them.
    private static string OneOf(IConfiguration configuration, string key, params ReadOnlySpan<string> words)
    {
        if (configuration[key] is not { Length: > 0 } text) return words[0];
        foreach (string word in words) if (word == text) return word;
        throw new SettingsException($"--{key} {text} is not understood; use {string.Join(" or ", words.ToArray())}.");
    }

    private static long Megabytes(IConfiguration configuration, string key, long otherwise) =>
        (long)Number(configuration, key, (int)(otherwise >> 20), 1, 100_000_000) << 20;

    private static int Number(IConfiguration configuration, string key, int otherwise, int low, int high)
    {
        if (configuration[key] is not { Length: > 0 } text) return otherwise;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value >= low && value <= high ? value
            : throw new SettingsException(string.Create(CultureInfo.InvariantCulture, $"--{key} {text} is out of range; use {low} to {high}."));
    }
}
