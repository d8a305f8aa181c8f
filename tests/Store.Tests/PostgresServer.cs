using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Npgsql;
using SecondShore.Store.Tests;

[assembly: AssemblyFixture(typeof(PostgresServer))]

namespace SecondShore.Store.Tests;

/// <summary>
/// A PostgreSQL server of the tests' own, on this machine and in a temporary folder. Without the server's programs the
/// tests on it skip and say so; with SECONDSHORE_NEED_POSTGRES set that is a failure.
/// </summary>
public sealed class PostgresServer : IAsyncLifetime
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "second-shore-pg-" + Guid.NewGuid().ToString("N"));
    private string? _bin;
    private int _port;

    /// <summary>Why there is no server; null when it runs.</summary>
    public string? Missing { get; private set; }

    public async ValueTask InitializeAsync()
    {
        _bin = FindPrograms();
        if (_bin is null)
        {
            Missing = "PostgreSQL's programs (initdb, pg_ctl) are not on this machine; install the package 'postgresql' to run this test.";
            Assert.True(Environment.GetEnvironmentVariable("SECONDSHORE_NEED_POSTGRES") is null, Missing);
            return;
        }

        _port = FreePort();
        Directory.CreateDirectory(_folder);
        if (Environment.UserName == "root") await Run("chown", "postgres", _folder);
        await Server("initdb", "-D", Data, "-U", "shore", "--auth=trust", "--no-sync", "-E", "UTF8", "--locale=C");
        await Server("pg_ctl", "-D", Data, "-w", "-l", Path.Combine(_folder, "log"), "-o",
            $"-p {_port} -k {_folder} -c listen_addresses=127.0.0.1 -c fsync=off -c max_connections=60", "start");
    }

    /// <summary>A new, empty database; skips the test without a server.</summary>
    public async Task<string> NewDatabaseAsync()
    {
        if (Missing is not null) Assert.Skip(Missing);
        string name = "t" + Guid.NewGuid().ToString("N");
        await using NpgsqlConnection connection = new(Text("postgres"));
        await connection.OpenAsync();
        await using NpgsqlCommand command = new($"create database {name}", connection);
        await command.ExecuteNonQueryAsync();
        return Text(name);
    }

    public async ValueTask DisposeAsync()
    {
        if (_bin is null) return;
        NpgsqlConnection.ClearAllPools();
        if (File.Exists(Path.Combine(Data, "postmaster.pid"))) await Server("pg_ctl", "-D", Data, "-m", "immediate", "-w", "stop");
        try { Directory.Delete(_folder, recursive: true); }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException) { /* The system clears it. */ }
    }

    private string Data => Path.Combine(_folder, "data");

    private string Text(string database) => $"Host=127.0.0.1;Port={_port};Database={database};Username=shore";

    private Task Server(string program, params string[] arguments)
    {
        string path = Path.Combine(_bin!, program);
        return Environment.UserName == "root" ? Run("runuser", ["-u", "postgres", "--", path, .. arguments]) : Run(path, arguments);
    }

    private static async Task Run(string program, params string[] arguments)
    {
        // The server inherits the output of pg_ctl: to wait for its end would be to wait for the server.
        using Process process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", "exec \"$@\" >/dev/null 2>&1", "sh", program, .. arguments]))!;
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}.");
    }

    private static string? FindPrograms()
    {
        if (Environment.GetEnvironmentVariable("SECONDSHORE_POSTGRES_BIN") is { } given) return given;
        if (!Directory.Exists("/usr/lib/postgresql")) return null;
        return Directory.GetDirectories("/usr/lib/postgresql").Select(d => Path.Combine(d, "bin"))
            .Where(d => File.Exists(Path.Combine(d, "initdb"))).OrderByDescending(d => d, StringComparer.Ordinal).FirstOrDefault();
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
