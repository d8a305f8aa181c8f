using SecondShore.Store;

namespace SecondShore.Host.Verbs;

/// <summary>Backup beside a host that runs, restore with it stopped.</summary>
internal static class BackupVerbs
{
    public static int BackUp(string to, HostSettings settings)
    {
        RequireSqlite(settings, "pg_dump");
        string path = DataFolder.DatabaseIn(Path.GetFullPath(settings.DataFolder));
        if (!File.Exists(path)) throw new StorageException(StorageFault.Unreachable, $"There is no database in {settings.DataFolder} yet; name its folder with --data.");
        SqliteBackup.Copy($"Data Source={path};Mode=ReadWrite;Pooling=False;Default Timeout=30", path, to);
        Console.WriteLine($"{Path.GetFullPath(to)} holds everything acknowledged up to now ({new FileInfo(to).Length / 1024} KB), and was checked.");
        return 0;
    }

    public static int Restore(string from, HostSettings settings)
    {
        RequireSqlite(settings, "pg_restore");
        using DataFolder folder = DataFolder.Take(settings.DataFolder);
        Restored restored = SqliteBackup.Restore(from, folder.DatabasePath, TimeProvider.System.GetUtcNow());
        Console.WriteLine($"{folder.DatabasePath} is as it was in {from}. Devices send again at their next sync what it lacks.");
        if (restored.Kept is not null) Console.WriteLine($"What stood there before is kept in {restored.Kept}.");
        SayDevices(restored.Devices);
        return 0;
    }

    private static void SayDevices(RestoredDevices devices)
    {
        if (devices.StillRevoked.Count > 0) Console.WriteLine($"Revoked since the backup, and still so: {string.Join(", ", devices.StillRevoked)}.");
        if (devices.Hold.Count == 0) return;
        Console.WriteLine($"These devices are let in: {string.Join(", ", devices.Hold)}.");
        if (!devices.Known) Console.WriteLine("ATTENTION: what was revoked after the backup is not known here. Look through that list and 'revoke' what must not be let in.");
    }

    private static void RequireSqlite(HostSettings settings, string tool)
    {
        if (settings.Postgres is not null) throw new SettingsException($"The records are in PostgreSQL: use its own {tool}.");
    }
}
