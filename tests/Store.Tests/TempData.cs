namespace SecondShore.Store.Tests;

/// <summary>A folder of one test, in memory where the system offers that, removed with the test.</summary>
internal sealed class TempData : IDisposable
{
    public TempData(bool onDisk = false)
    {
        string root = !onDisk && Directory.Exists("/dev/shm") ? "/dev/shm" : System.IO.Path.GetTempPath();
        Path = System.IO.Path.Combine(root, "second-shore-test-" + Guid.NewGuid().ToString("N"));
        Directory.CreateDirectory(Path);
    }

    public string Path { get; }

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose()
    {
        try { Directory.Delete(Path, recursive: true); }
        catch (IOException) { /* Something still holds it; the system clears it. */ }
    }
}
