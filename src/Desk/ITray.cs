using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;

namespace SecondShore.Desk;

/// <summary>Where answers put what does not cross as their own JSON, and say how far they are.</summary>
public interface ITray
{
    /// <summary>What stands before the name of a file on the tray; other names are arrays for the chart.</summary>
    static readonly string FilePrefix = "file:";

    /// <summary>Tells how far the work is.</summary>
    void Progress(double share, string what);

    /// <summary>Hands over bytes under a name.</summary>
    void Put(string name, ReadOnlySpan<byte> bytes);

    /// <summary>Hands over the bottom.</summary>
    void Grid(DepthGrid grid);

    /// <summary>Hands over what the chart takes in.</summary>
    void Draw(Drawing drawing);
}
