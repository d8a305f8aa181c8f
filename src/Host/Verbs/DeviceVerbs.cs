using SecondShore.Host.Api;
using SecondShore.Store;

namespace SecondShore.Host.Verbs;

/// <summary>Codes and devices, at the host's own console. Works beside a host that runs.</summary>
internal static class DeviceVerbs
{
    public static async Task<int> PairAsync(string[] args)
    {
        (bool all, bool readOnly, string? lake, string[] rest) = Asked(args);
        await using IDatabase database = await OpenAsync(rest).ConfigureAwait(false);
        string code = await new DeviceStore(database, TimeProvider.System).NewCodeAsync(new PairingGrant(all, lake, !readOnly), CancellationToken.None).ConfigureAwait(false);
        Console.WriteLine($"{code}   holds for {DeviceStore.CodeLife.TotalMinutes:0} minutes and one device, which may {Grants(all, lake, readOnly)}.");
        return 0;
    }

    // Whatever is not understood grants nothing.
    internal static (bool All, bool ReadOnly, string? Lake, string[] Others) Asked(string[] args)
    {
        bool all = false, readOnly = false;
        string? lake = null;
        List<string> rest = [];
        for (int i = 0; i < args.Length; i++)
        {
            if (args[i] == "--all") all = true;
            else if (args[i] == "--read-only") readOnly = true;
            else if (args[i].StartsWith("--lake=", StringComparison.Ordinal)) lake = args[i]["--lake=".Length..];
            else if (args[i] == "--lake") lake = ++i < args.Length ? args[i] : "";
            else rest.Add(args[i]);
        }

        if (all && (lake is not null || readOnly)) throw new SettingsException("--all goes with neither --lake nor --read-only.");
        if (readOnly && lake is null) throw new SettingsException("--read-only needs the lake that may be read: give --lake ID; 'lakes' lists them.");
        if (lake is not null && !LakeIds.IsWellFormed(lake)) throw new SettingsException($"--lake '{lake}' is no lake's id; 'lakes' lists them.");
        return (all, readOnly, lake, [.. rest]);
    }

    public static async Task<int> ListAsync(string[] args)
    {
        await using IDatabase database = await OpenAsync(args).ConfigureAwait(false);
        DeviceStore devices = new(database, TimeProvider.System);
        foreach (DeviceRow device in await devices.AllAsync(CancellationToken.None).ConfigureAwait(false))
            Console.WriteLine($"{device.Id}  {device.PairedAt[..16]}  {(device.Owner != 0 ? "owner" : device.MayMake != 0 ? "guest" : "one lake")}  {(device.RevokedAt is null ? "holds" : "revoked " + device.RevokedAt[..16])}  {device.Name}");
        foreach (AuditRow line in await devices.AuditLogAsync(50, CancellationToken.None).ConfigureAwait(false))
        {
            string from = line.Remote.Length > 0 ? "from " + line.Remote : "";
            Console.WriteLine($"{line.At[..19]}  {line.Action} {line.Device} {line.Detail} {from}".TrimEnd());
        }


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

    internal static async Task<IDatabase> OpenAsync(string[] args)
    {
        HostSettings settings = HostVerbs.Settings(args);
        if (settings.Postgres is null) PrivateFiles.MakeFolder(Path.GetFullPath(settings.DataFolder));
        IDatabase database = HostStore.Open(settings);
        await Migrations.RunAsync(database, CancellationToken.None).ConfigureAwait(false);
        return database;
    }
}
