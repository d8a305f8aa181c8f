using System.Globalization;
using System.Security.Cryptography.X509Certificates;
using SecondShore.Host.Watch;
using SecondShore.Store;

namespace SecondShore.Host.Verbs;

/// <summary>Looks at everything the host stands on and says in words what is wrong and what to do.</summary>
internal static class DoctorVerb
{
    public static async Task<int> RunAsync(HostSettings settings, TextWriter output)
    {
        List<Finding> findings = [new(true, $"Second Shore host {ProgramVersion.Text} on {Environment.OSVersion.Platform}, .NET {Environment.Version}."), Listening(settings)];
        if (settings.Certificate is { } certificate) findings.Add(CertificateOf(certificate));
        if (settings.Postgres is null) findings.AddRange(Folder(settings.DataFolder));
        findings.AddRange(await StoreAsync(settings).ConfigureAwait(false));
        foreach (Finding finding in findings) await output.WriteLineAsync($"{(finding.Well ? "well " : "WRONG")}  {finding.Says}").ConfigureAwait(false);
        int wrong = findings.Count(f => !f.Well);
        await output.WriteLineAsync(wrong == 0 ? "Nothing is wrong." : string.Create(CultureInfo.InvariantCulture, $"{wrong} wrong.")).ConfigureAwait(false);
        return wrong == 0 ? 0 : 3;
    }

    private static Finding Listening(HostSettings settings)
    {
        string at = string.Join(", ", settings.Addresses.Select(a => a.OriginalString));
        return new(true, settings.Pairing ? $"Listens at {at}; devices must pair." : $"Listens at {at}, this machine only; no pairing is needed.");
    }

    private static Finding CertificateOf(string file)
    {
        try
        {
            using X509Certificate2 certificate = X509CertificateLoader.LoadCertificateFromFile(file);
            TimeSpan left = certificate.NotAfter.ToUniversalTime() - TimeProvider.System.GetUtcNow().UtcDateTime;
            if (left < TimeSpan.Zero) return new(false, $"The certificate {file} ran out on {certificate.NotAfter:yyyy-MM-dd}; browsers refuse it. Renew it and start again.");
            return left < TimeSpan.FromDays(14)
                ? new(false, $"The certificate {file} runs out on {certificate.NotAfter:yyyy-MM-dd}. Renew it now.")
                : new(true, $"The certificate {file} holds until {certificate.NotAfter:yyyy-MM-dd}.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or System.Security.Cryptography.CryptographicException)
        {
            return new(false, $"The certificate {file} cannot be read: {e.Message}");
        }
    }

    private static IEnumerable<Finding> Folder(string folder)
    {
        string full = Path.GetFullPath(folder);
        if (!Directory.Exists(full))
        {
            yield return new(true, $"The data folder {full} is not there yet; it is made at the first start.");
            yield break;
        }

        string? fault = null;
        bool running = false;
        try { DataFolder.Take(full).Dispose(); }
        catch (StorageException e) when (e.Fault == StorageFault.Busy) { running = true; }
        catch (StorageException e) { fault = e.Message; }
        yield return fault is not null ? new(false, fault) : new(true, $"The data folder is {full}; {(running ? "a host is using it" : "no host is using it now")}.");
        if (Disk.FreeBytes(full) is { } free)
        {
            bool well = free >= StoreHealth.LowRoomBytes;
            yield return new(well, string.Create(CultureInfo.InvariantCulture, $"Its disk has {free / 1e9:0.0} GB left{(well ? "" : ": make room, writes will soon be refused")}."));
        }

        if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(full) & (UnixFileMode.OtherRead | UnixFileMode.OtherExecute)) != 0)
            yield return new(false, $"Other accounts of this machine may look into {full}: run chmod 700 on it.");
    }

    private static async Task<IReadOnlyList<Finding>> StoreAsync(HostSettings settings)
    {
        if (settings.Postgres is null && !File.Exists(DataFolder.DatabaseIn(Path.GetFullPath(settings.DataFolder)))) return [];
        List<Finding> findings = [];
        try
        {
            await using IDatabase database = HostStore.Open(settings);
            string form = await database.ReadAsync(work => work.FirstAsync<string>("select value from store where key = 'form'"), CancellationToken.None).ConfigureAwait(false) ?? "0";
            findings.Add(new(int.Parse(form, CultureInfo.InvariantCulture) <= Migrations.Current, $"{database.Kind} has form {form}; this program works with forms up to {Migrations.Current}."));
            if (settings.Postgres is null)
            {
                string? sound = await database.ReadAsync(work => work.FirstAsync<string>("pragma quick_check"), CancellationToken.None).ConfigureAwait(false);
                findings.Add(sound == "ok" ? new(true, "The database is sound.") : new(false, $"The database is damaged ({sound}). Stop the host and restore the last backup; devices send again what it lacks."));
            }

            Counts counts = (await database.ReadAsync(work => work.FirstAsync<Counts>(
                "select (select count(*) from lakes) as Lakes, (select count(*) from records) as Records, (select count(*) from devices where revoked_at is null) as Devices"), CancellationToken.None).ConfigureAwait(false))!;
            findings.Add(new(true, string.Create(CultureInfo.InvariantCulture, $"It holds {counts.Lakes} lakes, {counts.Records} records and {counts.Devices} paired devices.")));
        }
        catch (StorageException e)
        {
            findings.Add(new(false, e.Message));
        }

        return findings;
    }

    private sealed record Finding(bool Well, string Says);

    private sealed record Counts(long Lakes, long Records, long Devices);
}
