namespace SecondShore.Cli;

/// <summary>Exit codes of every verb.</summary>
internal static class ExitCodes
{
    public const int Done = 0;
    public const int BadUsage = 2;
    public const int BadInput = 3;
    public const int CouldNotCompute = 4;

    /// <summary>Stopped by the user, as shells number it.</summary>
    public const int Stopped = 130;
}
