using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Demo.Terrain;

/// <summary>An invented lake whose bottom and forms are known. Arrays are row-major, row 0 southmost. Treated as immutable.</summary>
public sealed record GeneratedLake
{
    /// <summary>The lake's grid.</summary>
    public required GridFrame Frame { get; init; }

    /// <summary>[Ny*Nx] depth below full pool, m; NaN on land.</summary>
    public required float[] DepthM { get; init; }

    /// <summary>[Ny*Nx] elevation over full pool, m: the bottom and the land about it.</summary>
    public required float[] ElevationM { get; init; }

    /// <summary>Every form put there or made by the valleys.</summary>
    public required IReadOnlyList<TruthForm> Forms { get; init; }

    /// <summary>[Ny*Nx] which cells are level or evenly sloping bottom, by the clean height field.</summary>
    public required GroundKind[] Ground { get; init; }

    /// <summary>[Ny*Nx] arm of each water cell, an index into <see cref="ArmNames"/>.</summary>
    public required byte[] Arm { get; init; }

    /// <summary>Names of the arms; the first is the main lake.</summary>
    public required IReadOnlyList<string> ArmNames { get; init; }

    /// <summary>The shoreline at full pool: rings in the plane, the lake's outline first, then islands.</summary>
    public required IReadOnlyList<IReadOnlyList<PlanePoint>> Shore { get; init; }

    /// <summary>The true bottom as the engine's grid, its plane's origin at a place.</summary>
    public DepthGrid ToGrid(GeoPoint origin) => new(new LocalProjection(origin), Frame, DepthM);

    /// <summary>Depth at a point, m, NaN on land.</summary>
    public double DepthAtM(PlanePoint place) => Frame.TryCellAt(place, out int ix, out int iy) ? DepthM[Frame.Index(ix, iy)] : double.NaN;
}

/// <summary>What the bottom of a cell is, where it is neither channel nor placed form.</summary>
public enum GroundKind : byte
{
    /// <summary>Neither, or not to be judged: banks, channels, placed forms, land.</summary>
    Other,

    /// <summary>Near-level bottom of some width.</summary>
    Flat,

    /// <summary>Evenly sloping bottom.</summary>
    Slope,

    /// <summary>In between, or part of a placed form: either answer is right.</summary>
    Either,
}
