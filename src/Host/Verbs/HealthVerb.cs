using SecondShore.Store;

namespace SecondShore.Host.Verbs;

/// <summary>Asks the host that runs on a data folder whether it is ready; for containers and service managers, which have no other way.</summary>
internal static class HealthVerb
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>Tells, for this folder, where the host that runs on it listens.</summary>
    public static void Tell(HostSettings settings, Uri address)
    {
        string file = FileIn(settings);
        PrivateFiles.MakeFolder(Path.GetDirectoryName(file)!);
        PrivateFiles.Make(file);
        File.WriteAllText(file, address.GetLeftPart(UriPartial.Authority));
    }

    /// <summary>0 when it is ready, else 3 with the reason.</summary>
    public static async Task<int> RunAsync(HostSettings settings)
    {
        string file = FileIn(settings);
        if (!File.Exists(file) || !Uri.TryCreate(await File.ReadAllTextAsync(file).ConfigureAwait(false), UriKind.Absolute, out Uri? address))
            throw new StorageException(StorageFault.Unreachable, $"No host was started on {settings.DataFolder}; name its folder with --data.");
        // Asked over loopback, where the certificate's name is not the one that is called.
        string host = address.Host is "0.0.0.0" or "[::]" ? "127.0.0.1" : address.Host;
        using HttpClientHandler handler = new() { AllowAutoRedirect = false };
        if (HostSettings.IsLoopback(new Uri($"{address.Scheme}://{host}"))) handler.ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator;
        using HttpClient http = new(handler) { Timeout = Patience };
        try
        {
            using HttpResponseMessage answer = await http.GetAsync(new Uri($"{address.Scheme}://{host}:{address.Port}/health/ready")).ConfigureAwait(false);
            Console.WriteLine(answer.IsSuccessStatusCode ? "The host is ready." : $"The host is not ready (status {(int)answer.StatusCode}); 'doctor' says what is wrong.");
            return answer.IsSuccessStatusCode ? 0 : 3;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            Console.WriteLine($"No host answers at {address.GetLeftPart(UriPartial.Authority)}; start it, or look into its log.");
            return 3;
        }
    }

    private static string FileIn(HostSettings settings) => Path.Combine(Path.GetFullPath(settings.DataFolder), "host.address");
}
