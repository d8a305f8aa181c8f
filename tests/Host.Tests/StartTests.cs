using System.ComponentModel;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace SecondShore.Host.Tests;

/// <summary>What stands in the way of a start is one sentence and an exit code, without a stack trace.</summary>
public class StartTests
{
    [Fact]
    public async Task A_port_in_use_is_named_with_what_to_do()
    {
        using TcpListener other = new(IPAddress.Loopback, 0);
        other.Start();
        int port = ((IPEndPoint)other.LocalEndpoint).Port;
        string folder = HostUnderTest.NewFolder();
        string said = await RefusedAsync("--urls", $"http://127.0.0.1:{port}", "--data", folder);
        Assert.StartsWith($"http://127.0.0.1:{port} is in use by another program", said, StringComparison.Ordinal);
        Assert.Contains("--urls", said, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_data_folder_that_cannot_be_made_is_named_with_what_to_do()
    {
        string folder = HostUnderTest.NewFolder(), file = Path.Combine(folder, "file");
        await File.WriteAllTextAsync(file, "in the way");
        string said = await RefusedAsync("--urls", "http://127.0.0.1:0", "--data", Path.Combine(file, "data"));
        Assert.StartsWith($"The data folder {Path.Combine(file, "data")} cannot be made", said, StringComparison.Ordinal);
        Assert.Contains("--data", said, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_data_folder_that_may_not_be_written_is_named_with_what_to_do()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Folders are closed in another way on Windows.");
            return;
        }

        // Root may write everywhere: it starts the program as nobody.
        string[] asNobody = Environment.IsPrivilegedProcess ? ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"] : [];
        if (asNobody.Length > 0 && !await EndsWellAsync([.. asNobody, "test", "-r", Program]))
            Assert.Skip("Root may write everywhere, and nobody cannot be asked: install setpriv (util-linux), or run the tests from an account of your own.");
        string folder = HostUnderTest.NewFolder();
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute);
        string said = await RefusedByAsync([.. asNobody, "dotnet", Program, "--urls", "http://127.0.0.1:0", "--data", folder]);
        Assert.StartsWith($"The data folder {folder} may not be written.", said, StringComparison.Ordinal);
        Assert.Contains("--data", said, StringComparison.Ordinal);
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Directory.Delete(folder, recursive: true);
    }

    private static string Program => Path.Combine(AppContext.BaseDirectory, "SecondShore.Host.dll");

    private static Task<string> RefusedAsync(params string[] args) => RefusedByAsync(["dotnet", Program, .. args]);

    private static async Task<bool> EndsWellAsync(string[] command)
    {
        try
        {
            using Process process = Process.Start(command[0], command[1..]);
            await process.WaitForExitAsync();
            return process.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    // All that the program says, which is one line.
    private static async Task<string> RefusedByAsync(string[] command)
    {
        using Process host = Process.Start(new ProcessStartInfo(command[0], command[1..])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        Task<string> said = host.StandardOutput.ReadToEndAsync(), complained = host.StandardError.ReadToEndAsync();
        await host.WaitForExitAsync();
        Assert.Equal("", await said);
        Assert.Equal(3, host.ExitCode);
        return Assert.Single((await complained).Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }
}
