using SecondShore.App.Compute;
using SecondShore.Engine.Basin;

namespace SecondShore.App.FirstAnswers;

/// <summary>Keeps the files that the desk hands over; what charts need is left to the device, which draws it itself.</summary>
internal sealed class KeptTray : ITray
{
    private static readonly string FilePrefix = "file:";

    /// <summary>Files by path.</summary>
    public Dictionary<string, byte[]> Files { get; } = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public void Progress(double share, string what)
    {
    }

    /// <inheritdoc/>
    public void Put(string name, ReadOnlySpan<byte> bytes)
    {
        if (name.StartsWith(FilePrefix, StringComparison.Ordinal)) Files[name[FilePrefix.Length..]] = bytes.ToArray();
    }

    /// <inheritdoc/>
    public void Grid(DepthGrid grid)
    {
    }
}
