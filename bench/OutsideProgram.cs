using System.Diagnostics;

namespace SecondShore.Bench;

/// <summary>A program of another house that a figure is measured with or against; where it is not on PATH a sentence says what to install.</summary>
/// <param name="Name">What it is called on PATH.</param>
/// <param name="Package">The Debian package that it comes in.</param>
internal sealed record OutsideProgram(string Name, string Package)
{
    private bool IsPresent =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, Name)));

    /// <exception cref="CannotMeasureException">It is not on this machine.</exception>
    public void Require()
    {
        if (!IsPresent) throw new CannotMeasureException($"{Name} is not on this machine: install the Debian package {Package}.");
    }

    /// <exception cref="CannotMeasureException">It is not on this machine.</exception>
    public Process Start(bool withInput, params string[] arguments)
    {
        Require();
        ProcessStartInfo start = new(Name, arguments)
        {
            RedirectStandardInput = withInput,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        return Process.Start(start)!;
    }
}

/// <summary>What a figure needs is not here; the message says what, and what to do.</summary>
internal sealed class CannotMeasureException(string message) : Exception(message);
