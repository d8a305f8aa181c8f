using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using SecondShore.TestKit;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>When, on what commit, on which machine and beside what load a figure is measured.</summary>
internal static class Circumstances
{
    /// <summary>The figure's file as it begins, still without numbers.</summary>
    public static FigureFile Now(IFigure figure) => new(figure.Name, figure.Claim, $"dotnet run -c Release --project bench -- {figure.Name}",
        figure.LeftOut, DateOnly.FromDateTime(DateTime.UtcNow), Commit(), new FigureMachine(Environment.ProcessorCount, Processor()), Load(), null, []);

    // The figures themselves may have changed: measuring two in a row must not mark the second.
    private static string? Commit()
    {
        string? hash = Git("rev-parse --short HEAD");
        if (string.IsNullOrEmpty(hash)) return null;
        return string.IsNullOrEmpty(Git("status --porcelain -- . :!docs/figures :!docs/figures.md")) ? hash : hash + "+";
    }

    private static string? Git(string arguments)
    {
        try
        {
            using Process? git = Process.Start(new ProcessStartInfo("git", arguments)
            {
                WorkingDirectory = SharedData.RepositoryRoot,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            });
            if (git is null) return null;
            git.ErrorDataReceived += static (_, _) => { };
            git.BeginErrorReadLine();
            string said = git.StandardOutput.ReadToEnd().Trim();
            git.WaitForExit();
            return git.ExitCode == 0 ? said : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private static string Processor()
    {
        const string cpus = "/proc/cpuinfo";
        string? line = File.Exists(cpus) ? File.ReadLines(cpus).FirstOrDefault(l => l.StartsWith("model name", StringComparison.Ordinal)) : null;
        return line?.Split(':', 2)[1].Trim() ?? RuntimeInformation.ProcessArchitecture.ToString();
    }

    private static double? Load()
    {
        const string loads = "/proc/loadavg";
        return File.Exists(loads) ? double.Parse(File.ReadAllText(loads).Split(' ')[0], CultureInfo.InvariantCulture) : null;
    }
}
