using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Npgsql;
using SecondShore.Store.Tests;
using SecondShore.TestKit;

[assembly: AssemblyFixture(typeof(PostgresServer))]

namespace SecondShore.Store.Tests;

/// <summary>A PostgreSQL server of the tests' own, on this machine and in a temporary folder; tests on it skip where it cannot be had.</summary>
public sealed class PostgresServer : IAsyncLifetime
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "second-shore-pg-" + Guid.NewGuid().ToString("N"));
    private readonly string? _bin = Needed.Postgres.Find();
    private int _port;

    /// <summary>Why there is no server; null when it runs.</summary>
    public string? Missing { get; private set; }

    public async ValueTask InitializeAsync()
    {
        // A server that is missing or will not start is told by the tests on it alone: the others of the assembly go on.
        if (_bin is null || OperatingSystem.IsWindows())
        {
            Missing = Needed.Postgres.Missing;
            return;
        }

        if (Environment.UserName == "root" && (Programs.OnPath("chown") is null || Programs.OnPath("runuser") is null))
        {
            Missing = "PostgreSQL will not run as root, and chown and runuser are not on PATH to run it as 'postgres': install coreutils and util-linux, or run the tests as another user.";
            return;
        }

        _port = FreePort();
        Directory.CreateDirectory(_folder);
        bool runs = (Environment.UserName != "root" || await Run("chown", "postgres", _folder))
            && await Server("initdb", "-D", Data, "-U", "shore", "--auth=trust", "--no-sync", "-E", "UTF8", "--locale=C")
            && await StartAsync();
        if (!runs) Missing = $"PostgreSQL of {_bin} would not start: try initdb and pg_ctl there by hand, or install the package 'postgresql' anew.";
    }

    /// <summary>A new, empty database; skips the test without a server.</summary>
    public async Task<string> NewDatabaseAsync()
    {
        if (Missing is not null) throw Needed.Postgres.Without(Missing);
        string name = "t" + Guid.NewGuid().ToString("N");
        await using NpgsqlConnection connection = new(Text("postgres"));
        await connection.OpenAsync();
        await using NpgsqlCommand command = new($"create database {name}", connection);
        await command.ExecuteNonQueryAsync();
        return Text(name);
    }

    /// <summary>Every process of the server dies in the middle of what it does; then it starts again.</summary>
    public async Task KillAndStartAsync()
    {
        await Server("pg_ctl", "-D", Data, "-m", "immediate", "-w", "stop");
        Assert.True(await StartAsync(), "The server did not come back.");
    }

    /// <summary>Whether new transactions may write.</summary>
    public async Task TakeWritesAsync(bool taken)
    {
        // Of its own: one from the pool may be left over from before the server died.
        await using NpgsqlConnection connection = new(Text("postgres") + ";Pooling=false");
        await connection.OpenAsync();
        foreach (string text in (string[])[$"alter system set default_transaction_read_only = {(taken ? "off" : "on")}", "select pg_reload_conf()"])
        {
            await using NpgsqlCommand command = new(text, connection);
            await command.ExecuteNonQueryAsync();
        }

        // The server reads its settings when it comes to it: a session that begins with them shows that the others were told as well.
        while (await TakesWritesAsync() != taken) await Task.Delay(20);
    }

    private async Task<bool> TakesWritesAsync()
    {
        await using NpgsqlConnection connection = new(Text("postgres") + ";Pooling=false");
        await connection.OpenAsync();
        await using NpgsqlCommand command = new("show default_transaction_read_only", connection);
        return (string?)await command.ExecuteScalarAsync() == "off";
    }

    public async ValueTask DisposeAsync()
    {
        if (!Directory.Exists(_folder)) return;
        NpgsqlConnection.ClearAllPools();
        // Files of the server's own user may not be readable to ours: whether it runs is asked of it.
        if (Missing is null) await Server("pg_ctl", "-D", Data, "-m", "immediate", "-w", "stop");
        try { Directory.Delete(_folder, recursive: true); }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException) { /* The system clears it. */ }
    }

    private Task<bool> StartAsync() => Server("pg_ctl", "-D", Data, "-w", "-l", Path.Combine(_folder, "log"), "-o",
        $"-p {_port} -k {_folder} -c listen_addresses=127.0.0.1 -c fsync=off -c max_connections=60", "start");

    private string Data => Path.Combine(_folder, "data");

    private string Text(string database) => $"Host=127.0.0.1;Port={_port};Database={database};Username=shore";

    private Task<bool> Server(string program, params string[] arguments)
    {
        string path = Path.Combine(_bin!, program);
        return Environment.UserName == "root" ? Run("runuser", ["-u", "postgres", "--", path, .. arguments]) : Run(path, arguments);
    }

    private static async Task<bool> Run(string program, params string[] arguments)
    {
        // The server inherits the output of pg_ctl: to wait for its end would be to wait for the server.
        using Process process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", "exec \"$@\" >/dev/null 2>&1", "sh", program, .. arguments]))!;
        await process.WaitForExitAsync();
        return process.ExitCode == 0;
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
