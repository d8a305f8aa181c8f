namespace SecondShore.Store;

/// <summary>Folders and files that only the account that runs the host may look into, where the system knows accounts.</summary>
public static class PrivateFiles
{
    private const UnixFileMode OwnFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode OwnFolder = OwnFile | UnixFileMode.UserExecute;

    // SQLite's own files beside a database; they take the database's mode when they are made.
    private static readonly string[] Beside = ["", "-wal", "-shm", "-journal"];

    /// <summary>Makes a folder where there is none; one that is there is left as it is.</summary>
    public static void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(path);
        else Directory.CreateDirectory(path, OwnFolder);
    }

    /// <summary>Makes an empty file where there is none, and closes one that is there, and a database's files beside it, to others.</summary>
    public static void Make(string path)
    {
        if (OperatingSystem.IsWindows()) return;
        if (!File.Exists(path))
        {
            using FileStream made = new(path, new FileStreamOptions { Mode = FileMode.OpenOrCreate, Access = FileAccess.Write, UnixCreateMode = OwnFile });
            return;
        }

        foreach (string end in Beside)
        {
            string file = path + end;
            try
            {
                if (File.Exists(file) && (File.GetUnixFileMode(file) & ~OwnFile) != 0) File.SetUnixFileMode(file, OwnFile);
            }
            catch (UnauthorizedAccessException)
            {
                // Another account's file, or a disk that may not be written: opening it says what is wrong.
            }
        }
    }

    /// <summary>Whether two folders are one, by whatever links they are called: what is made in one is seen in the other.</summary>
    public static bool IsSameFolder(string one, string other)
    {
        if (!Directory.Exists(one) || !Directory.Exists(other)) return false;
        string mark = "." + Guid.NewGuid().ToString("N");
        string made = Path.Combine(one, mark);
        try
        {
            using (new FileStream(made, FileMode.CreateNew, FileAccess.Write, FileShare.ReadWrite, 1, FileOptions.DeleteOnClose)) return File.Exists(Path.Combine(other, mark));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Nothing can be made there, so nothing can be harmed there either.
            return false;
        }
    }
}
