using Microsoft.Extensions.Diagnostics.HealthChecks;
using SecondShore.Store;

namespace SecondShore.Host.Watch;

/// <summary>Ready when the store answers, is the one that lies in the data folder, was found sound, and its disk has some room left.</summary>
internal sealed class StoreHealth(IDatabase database, RecordStore records, StoreWatch watch, HostSettings settings) : IHealthCheck
{
    /// <summary>Less room than this is worth a word.</summary>
    public static readonly long LowRoomBytes = 200L << 20;

    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        try
        {
            string? epoch = await database.ReadAsync(work => work.FirstAsync<string>("select value from store where key = 'epoch'"), cancellationToken).ConfigureAwait(false);
            if (epoch != records.Epoch || (settings.Postgres is null && SqliteDatabase.EpochAt(DataFolder.DatabaseIn(Path.GetFullPath(settings.DataFolder))) != epoch))
                return HealthCheckResult.Unhealthy("The database was moved or replaced while the host runs: what it writes now is kept elsewhere. Stop the host, put the database back, and start it again.");
            if (watch.Damage is { } damage) return HealthCheckResult.Unhealthy(damage);
        }
        catch (StorageException e)
        {
            return HealthCheckResult.Unhealthy(e.Message);
        }

        return settings.Postgres is null && Disk.FreeBytes(settings.DataFolder) is { } free && free < LowRoomBytes
            ? HealthCheckResult.Degraded("The disk of the data folder is nearly full.")
            : HealthCheckResult.Healthy();
    }
}

/// <summary>Room on a disk.</summary>
internal static class Disk
{
    /// <summary>Bytes left on the disk of a folder; null where the system does not say.</summary>
    public static long? FreeBytes(string folder)
    {
        try
        {
            return new DriveInfo(Path.GetFullPath(folder)).AvailableFreeSpace;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }
}
