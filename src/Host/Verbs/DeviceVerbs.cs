using SecondShore.Store;

namespace SecondShore.Host.Verbs;

/// <summary>Codes and devices, at the host's own console. Works beside a host that runs.</summary>
internal static class DeviceVerbs
{
    public static async Task<int> PairAsync(string[] args)
    {
        bool all = args.Contains("--all"), readOnly = args.Contains("--read-only");
        string[] rest = [.. args.Where(a => a is not ("--all" or "--read-only"))];
        string? lake = new ConfigurationBuilder().AddCommandLine(rest).Build()["lake"];
        if (all && (lake is not null || readOnly)) throw new SettingsException("--all goes with neither --lake nor --read-only.");
        await using IDatabase database = await OpenAsync(rest).ConfigureAwait(false);
        string code = await new DeviceStore(database, TimeProvider.System).NewCodeAsync(new PairingGrant(all, lake, !readOnly), CancellationToken.None).ConfigureAwait(false);
        Console.WriteLine($"{code}   holds for {DeviceStore.CodeLife.TotalMinutes:0} minutes and one device, which may {Grants(all, lake, readOnly)}.");
        return 0;
    }

    public static async Task<int> ListAsync(string[] args)
    {
        await using IDatabase database = await OpenAsync(args).ConfigureAwait(false);
        DeviceStore devices = new(database, TimeProvider.System);
        foreach (DeviceRow device in await devices.AllAsync(CancellationToken.None).ConfigureAwait(false))
            Console.WriteLine($"{device.Id}  {device.PairedAt[..16]}  {(device.Owner != 0 ? "owner" : "guest")}  {(device.RevokedAt is null ? "holds" : "revoked " + device.RevokedAt[..16])}  {device.Name}");
        foreach (AuditRow line in await devices.AuditLogAsync(50, CancellationToken.None).ConfigureAwait(false))
            Console.WriteLine($"{line.At[..19]}  {line.Action} {line.Device} {line.Detail} {(line.Remote.Length > 0 ? "from " + line.Remote : "")}".TrimEnd());
        return 0;
    }

    public static async Task<int> RevokeAsync(string device, string[] args)
    {
        await using IDatabase database = await OpenAsync(args).ConfigureAwait(false);
        bool done = await new DeviceStore(database, TimeProvider.System).RevokeAsync(device, "console", "", CancellationToken.None).ConfigureAwait(false);
        Console.WriteLine(done ? $"The token of {device} holds no more." : $"There is no device {device} whose token holds; 'devices' lists them.");
        return done ? 0 : 2;
    }

    private static string Grants(bool all, string? lake, bool readOnly)
    {
        if (all) return "see every lake and manage devices";
        if (lake is null) return "add lakes of its own and see those";
        return readOnly ? $"read the lake {lake}" : $"read and add to the lake {lake}";
    }

    private static async Task<IDatabase> OpenAsync(string[] args)
    {
        HostSettings settings = HostVerbs.Settings(args);
        if (settings.Postgres is null) Directory.CreateDirectory(settings.DataFolder);
        IDatabase database = HostStore.Open(settings);
        await Migrations.RunAsync(database, CancellationToken.None).ConfigureAwait(false);
        return database;
    }
}
