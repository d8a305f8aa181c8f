namespace SecondShore.Store;

/// <summary>Room granted, so that one paired device cannot fill the disk.</summary>
/// <param name="Lakes">Most lakes.</param>
/// <param name="RecordsPerLake">Most records of a lake.</param>
/// <param name="BytesPerLake">Most bytes of a lake: bodies of records and files.</param>
public sealed record StoreQuota(int Lakes, long RecordsPerLake, long BytesPerLake)
{
    /// <summary>Most lakes that one guest's device makes.</summary>
    public int LakesPerDevice { get; init; } = 30;

    /// <summary>Most bytes that one guest's device adds, to whatever lakes.</summary>
    public long BytesPerDevice { get; init; } = 8L << 30;

    /// <summary>Most records of a lake that name versions of files: they are read together.</summary>
    public int FileRecordsPerLake { get; init; } = 20_000;

    /// <summary>Most bytes of the whole store, as it lies on its disk.</summary>
    public long StoreBytes { get; init; } = 64L << 30;

    /// <summary>Where none is given.</summary>
    public static StoreQuota Default { get; } = new(500, 1_000_000, 4L << 30);
}

/// <summary>Who writes, as far as room is concerned.</summary>
/// <param name="Device">Id of the device.</param>
/// <param name="IsOwner">Whether it is the owner's: bounded by lake and store only.</param>
public sealed record Writer(string Device, bool IsOwner)
{
    /// <summary>The host itself, and upkeep at its console.</summary>
    public static Writer Host { get; } = new("host", true);
}

/// <summary>Holds writes to the room granted. What is refused was not kept: the work it is part of is undone.</summary>
internal static class RoomRules
{
    private static readonly string Kept = ": nothing of this was kept. ";

    /// <summary>Counts bytes that a device added, and holds device and store to their room.</summary>
    /// <exception cref="StorageException">There is no room.</exception>
    public static async Task CountAsync(Work work, SqlDialect dialect, StoreQuota quota, Writer writer, long bytes)
    {
        if (!writer.IsOwner)
        {
            long used = await work.FirstAsync<long?>("update devices set bytes = bytes + @bytes where id = @Device returning bytes", new { bytes, writer.Device }).ConfigureAwait(false) ?? 0;
            if (used > quota.BytesPerDevice) throw Full("This device has used the room that the host grants it" + Kept + "Its owner can raise the limit (--device-megabytes).");
        }

        if (await work.FirstAsync<long>(dialect.StoreBytes).ConfigureAwait(false) + bytes > quota.StoreBytes)
            throw Full("The host's store has used all the room it is granted" + Kept + "Its owner can remove lakes ('lakes' lists them) or raise the limit (--store-megabytes).");
    }

    /// <summary>Holds the number of lakes, in all and by device, to what is granted.</summary>
    /// <exception cref="StorageException">There are as many as granted.</exception>
    public static async Task RequireLakeAsync(Work work, StoreQuota quota, Writer writer)
    {
        if (await work.FirstAsync<long>("select count(*) from lakes").ConfigureAwait(false) >= quota.Lakes)
            throw Full($"This host keeps at most {quota.Lakes} lakes. Its owner can remove one ('lakes' lists them) or raise the limit (--lakes).");
        if (!writer.IsOwner && await work.FirstAsync<long>("select count(*) from lakes where made_by = @Device", new { writer.Device }).ConfigureAwait(false) >= quota.LakesPerDevice)
            throw Full($"This device has added {quota.LakesPerDevice} lakes, as many as the host grants one device. Its owner can remove one or raise the limit (--lakes-per-device).");
    }

    public static StorageException Full(string message) => new(StorageFault.Full, message);
}
