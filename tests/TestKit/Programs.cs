using System.ComponentModel;
using System.Diagnostics;

namespace SecondShore.TestKit;

/// <summary>Programs of the machine that tests start.</summary>
public static class Programs
{
    /// <summary>The program that runs these tests' own assemblies, wherever it was installed.</summary>
    public static string Dotnet { get; } = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } path ? path : "dotnet";

    /// <summary>Runs a program to its end; false where it is missing or fails.</summary>
    public static bool Runs(string program, params string[] arguments)
    {
        try
        {
            using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    /// <summary>The first of the names that is on PATH; null where none is.</summary>
    public static string? OnPath(params string[] names)
    {
        string end = OperatingSystem.IsWindows() ? ".exe" : "";
        foreach (string folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries))
        {
            foreach (string name in names)
            {
                string path = Path.Combine(folder, name + end);
                if (File.Exists(path)) return path;
            }
        }

        return null;
    }
}
