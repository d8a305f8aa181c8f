namespace SecondShore.Store;

/// <summary>The folder that holds the host's database, held by one host at a time.</summary>
public sealed class DataFolder : IDisposable
{
    private readonly FileStream _lock;

    private DataFolder(string path, FileStream held) => (Path, _lock) = (path, held);

    /// <summary>The folder.</summary>
    public string Path { get; }

    /// <summary>The database in it.</summary>
    public string DatabasePath => DatabaseIn(Path);

    /// <summary>Where data go when nothing is said: the account's own folder for such.</summary>
    public static string Default => System.IO.Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "second-shore");

    /// <summary>The database in a folder.</summary>
    public static string DatabaseIn(string folder) => System.IO.Path.Combine(folder, "second-shore.db");

    /// <summary>Takes the folder, which is made when missing.</summary>
    /// <exception cref="StorageException">It is held by another host, or cannot be made or written.</exception>
    public static DataFolder Take(string path)
    {
        string full = System.IO.Path.GetFullPath(path);
        try
        {
            PrivateFiles.MakeFolder(full);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StorageException(StorageFault.ReadOnly, $"The data folder {full} cannot be made there. Make the folder above it writable for the account that runs the host, or name another with --data.", e);
        }

        try
        {
            return new DataFolder(full, new FileStream(System.IO.Path.Combine(full, "host.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (UnauthorizedAccessException e)
        {
            throw new StorageException(StorageFault.ReadOnly, $"The data folder {full} may not be written. Make it writable for the account that runs the host, or name another with --data.", e);
        }
        catch (IOException e) when (IsReadOnlyDisk(e))
        {
            throw new StorageException(StorageFault.ReadOnly, $"The data folder {full} lies on a disk that may not be written. Mount it writable, or name another folder with --data.", e);
        }
        catch (IOException e)
        {
            throw new StorageException(StorageFault.Busy, $"The data folder {full} is held by another host. Stop that one first, or name another folder with --data.", e);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _lock.Dispose();

    private static bool IsReadOnlyDisk(IOException e) => e.Message.Contains("Read-only", StringComparison.OrdinalIgnoreCase);
}
