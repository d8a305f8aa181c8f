using SecondShore.Host.Security;
using SecondShore.Store;

namespace SecondShore.Host.Verbs;

/// <summary>Serves until stopped. Where devices must pair and no owner's device is there yet, shows the first code.</summary>
internal static class ServeVerb
{
    public static async Task<int> RunAsync(string[] args)
    {
        await using WebApplication app = HostApp.Build(args);
        HostSettings settings = app.Services.GetRequiredService<HostSettings>();
        FreePorts.Require(settings.Addresses);
        _ = app.Services.GetRequiredService<HostStore.OpenStore>();
        await app.StartAsync().ConfigureAwait(false);
        // What the server really listens at has the last word on who may come without a token.
        if (!settings.Pairing && app.Urls.Any(u => !HostSettings.IsLoopback(HostSettings.Address(u))))
            throw new SettingsException("The server listens beyond this machine by a setting of its own (such as Kestrel:Endpoints). Give addresses with --urls, so that pairing is asked for.");
        HealthVerb.Tell(settings, HostSettings.Address(app.Urls.First()));
        foreach (string address in app.Urls) Console.WriteLine($"Second Shore is at {address}");
        if (!settings.Pairing)
        {
            StartKey key = app.Services.GetRequiredService<StartKey>();
            Console.WriteLine($"Open {new Uri(new Uri(app.Urls.First()), StartKey.Path)}?key={key.Text} in this machine's browser: without it no browser may read or write lakes here.");
        }

        if (settings.Pairing) await ShowFirstCodeAsync(app.Services.GetRequiredService<DeviceStore>()).ConfigureAwait(false);
        await app.WaitForShutdownAsync().ConfigureAwait(false);
        return 0;
    }

    private static async Task ShowFirstCodeAsync(DeviceStore devices)
    {
        if ((await devices.AllAsync(CancellationToken.None).ConfigureAwait(false)).Any(d => d.Owner != 0 && d.RevokedAt is null)) return;
        string code = await devices.NewCodeAsync(new PairingGrant(Owner: true, null, MayWrite: true), CancellationToken.None).ConfigureAwait(false);
        Console.WriteLine($"Pair your first device with the code {code} within {DeviceStore.CodeLife.TotalMinutes:0} minutes; it may see every lake and manage devices.");
    }
}
