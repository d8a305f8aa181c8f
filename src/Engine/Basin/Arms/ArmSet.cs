using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>The arms of a lake. Immutable.</summary>
public sealed class ArmSet
{
    internal ArmSet(DepthGrid grid, short[] label, IReadOnlyList<Arm> arms) => (Grid, Label, Arms) = (grid, label, arms);

    /// <summary>The lake.</summary>
    public DepthGrid Grid { get; }

    /// <summary>[Ny*Nx] index of the arm in <see cref="Arms"/>, -1 on land.</summary>
    public short[] Label { get; }

    /// <summary>Arms, deepest first; at least one where there is water.</summary>
    public IReadOnlyList<Arm> Arms { get; }

    /// <summary>The arm at a point of the lake's plane, or null on land and outside.</summary>
    public Arm? ArmAt(PlanePoint point)
    {
        if (!Grid.Frame.TryCellAt(point, out int ix, out int iy)) return null;
        int label = Label[Grid.Frame.Index(ix, iy)];
        return label < 0 ? null : Arms[label];
    }

    /// <summary>The arm at a place, or null on land and outside.</summary>
    public Arm? ArmAt(GeoPoint place) => ArmAt(Grid.Projection.ToPlane(place));
}
