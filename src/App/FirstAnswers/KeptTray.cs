using SecondShore.Desk;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;

namespace SecondShore.FirstAnswers;

/// <summary>Keeps the files and the drawing that the desk hands over; the arrays of charts are left to the device, which makes them itself.</summary>
internal sealed class KeptTray : ITray
{
    /// <summary>Files by path.</summary>
    public Dictionary<string, byte[]> Files { get; } = new(StringComparer.Ordinal);

    /// <summary>What was drawn last.</summary>
    public Drawing? Drawing { get; set; }

    /// <inheritdoc/>
    public void Progress(double share, string what)
    {
    }

    /// <inheritdoc/>
    public void Put(string name, ReadOnlySpan<byte> bytes)
    {
        if (name.StartsWith(ITray.FilePrefix, StringComparison.Ordinal)) Files[name[ITray.FilePrefix.Length..]] = bytes.ToArray();
    }

    /// <inheritdoc/>
    public void Grid(DepthGrid grid)
    {
    }

    /// <inheritdoc/>
    public void Draw(Drawing drawing) => Drawing = drawing;
}
