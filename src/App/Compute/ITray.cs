using SecondShore.Engine.Basin;

namespace SecondShore.App.Compute;

/// <summary>Where answers put what is too big for JSON, and say how far they are.</summary>
internal interface ITray
{
    /// <summary>Tells how far the work is.</summary>
    void Progress(double share, string what);

    /// <summary>Hands over bytes under a name.</summary>
    void Put(string name, ReadOnlySpan<byte> bytes);

    /// <summary>Hands over the bottom.</summary>
    void Grid(DepthGrid grid);
}
