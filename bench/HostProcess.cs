using System.Diagnostics;
using System.Globalization;

namespace SecondShore.Bench;

/// <summary>The host's Release build as a process of its own: <c>dotnet build -c Release src/Host</c> first.</summary>
internal static class HostProcess
{
    /// <summary>Starts a host on the database of its data folder.</summary>
    public static Process Start(string data, params string[] more) => Start(HostDatabase.Sqlite, data, more);

    /// <exception cref="CannotMeasureException">The host is not built, or no database server is told.</exception>
    public static Process Start(HostDatabase database, string data, params string[] more)
    {
        string dll = Path.Combine(Root(), "artifacts", "bin", "SecondShore.Host", "release", "SecondShore.Host.dll");
        if (!File.Exists(dll)) throw new CannotMeasureException("The host is not built: dotnet build -c Release src/Host");
        ProcessStartInfo start = new("dotnet", [dll, "--urls", "http://127.0.0.1:0", "--data", data, "--requests-per-second", "100000", .. more]) { RedirectStandardOutput = true };
        // The bench's own settings are none of the host's, which refuses what it does not know.
        foreach (string own in start.Environment.Keys.Where(k => k.StartsWith("SECONDSHORE_", StringComparison.Ordinal)).ToArray()) start.Environment.Remove(own);
        // Not on the command line, which others of the machine can read.
        if (database.Connection() is { } connection) start.Environment["SECONDSHORE_POSTGRES"] = connection;
        return Process.Start(start)!;
    }

    /// <summary>What a program of the host's own account sends: the key that this start left in the data folder.</summary>
    public static string Bearer(string data) => "Bearer " + File.ReadAllText(Path.Combine(data, "host.key"));

    public static async Task<Uri> AddressAsync(Process host)
    {
        string mark = "Second Shore is at ";
        while (await host.StandardOutput.ReadLineAsync() is { } line)
            if (line.StartsWith(mark, StringComparison.Ordinal)) return new Uri(line[mark.Length..]);
        throw new InvalidOperationException("The host ended before it listened.");
    }

    public static double MostMemoryMb(Process host)
    {
        string line = File.ReadLines($"/proc/{host.Id}/status").First(l => l.StartsWith("VmHWM", StringComparison.Ordinal));
        return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024;
    }

    private static string Root()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "SecondShore.slnx"))) return folder.FullName;
        throw new DirectoryNotFoundException("No folder above the bench holds SecondShore.slnx.");
    }
}
