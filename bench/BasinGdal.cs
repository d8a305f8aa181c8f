using System.Diagnostics;
using System.Globalization;

namespace SecondShore.Bench;

/// <summary>Runs GDAL's command-line tools, where installed, as the yardstick of gridding and contouring.</summary>
internal static class BasinGdal
{
    public static bool Present { get; } = Exists("gdal_grid") && Exists("gdal_contour");

    /// <summary>Runs a tool; returns seconds of processor time, all threads: other work on the machine then does not count.</summary>
    public static double Run(string tool, params string[] arguments)
    {
        ProcessStartInfo start = new(tool) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in arguments) start.ArgumentList.Add(argument);
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        double seconds = 0;
        while (!process.WaitForExit(2))
        {
            try { seconds = process.TotalProcessorTime.TotalSeconds; }
            catch (Exception e) when (e is InvalidOperationException or System.ComponentModel.Win32Exception) { /* It has just ended: the last reading stands. */ }
            process.Refresh();
        }

        output.Wait();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{tool} ended with {process.ExitCode}: {error.Result}");
        return seconds;
    }

    /// <summary>Seconds of processor time that this process took for an action, all threads.</summary>
    public static double Own(Action action)
    {
        using Process self = Process.GetCurrentProcess();
        TimeSpan before = self.TotalProcessorTime;
        action();
        self.Refresh();
        return (self.TotalProcessorTime - before).TotalSeconds;
    }

    public static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static bool Exists(string tool) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, tool)));
}
