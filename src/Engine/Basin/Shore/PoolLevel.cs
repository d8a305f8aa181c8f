using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>Land that stands out of the water only because the water is low.</summary>
/// <param name="Top">Its highest place.</param>
/// <param name="HeightM">How far the top stands out, m.</param>
/// <param name="AreaM2">Its area, m2.</param>
public readonly record struct NewIsland(PlanePoint Top, double HeightM, double AreaM2);

/// <summary>Bottom just under the surface, away from the shore, where a hull or a propeller meets it.</summary>
/// <param name="Top">Its shallowest place.</param>
/// <param name="DepthM">Depth there, m.</param>
/// <param name="AreaM2">Area shallower than the draft asked for, m2.</param>
/// <param name="OffShoreM">How far the shallowest place lies from today's shore, m.</param>
public readonly record struct ShallowHazard(PlanePoint Top, double DepthM, double AreaM2, double OffShoreM);

/// <summary>What today's level does to a lake that was surveyed at full pool. Immutable.</summary>
public sealed class PoolLevel
{
    private readonly float[] _toWaterCells;

    private PoolLevel(DepthGrid fullPool, DepthGrid today, double dropM, IReadOnlyList<NewIsland> islands, IReadOnlyList<ShallowHazard> hazards)
    {
        (FullPool, Today, DropM, Islands, Hazards) = (fullPool, today, dropM, islands, hazards);
        bool[] water = new bool[today.Frame.Count];
        for (int i = 0; i < water.Length; i++) water[i] = today.DepthM[i] > 0;
        _toWaterCells = NearestCell.Of(water, today.Frame.Nx, today.Frame.Ny).SquaredCells;
    }

    /// <summary>The lake at full pool.</summary>
    public DepthGrid FullPool { get; }

    /// <summary>The lake at today's level.</summary>
    public DepthGrid Today { get; }

    /// <summary>How far the surface lies below full pool, m.</summary>
    public double DropM { get; }

    /// <summary>Islands that appear, largest first.</summary>
    public IReadOnlyList<NewIsland> Islands { get; }

    /// <summary>Hazards just under the surface, shallowest first.</summary>
    public IReadOnlyList<ShallowHazard> Hazards { get; }

    /// <summary>Brings a lake to a level.</summary>
    /// <param name="fullPool">Depths at full pool.</param>
    /// <param name="dropM">How far the surface lies below full pool, m; negative for higher water.</param>
    /// <param name="draftM">Water shallower than this is a hazard, m, 0 or more.</param>
    /// <param name="offShoreM">How far from today's shore shallow water surprises, m, 0 or more.</param>
    public static PoolLevel At(DepthGrid fullPool, double dropM, double draftM = 1.0, double offShoreM = 30.0)
    {
        Require.NotNull(fullPool);
        Require.Finite(dropM);
        Require.NotNegative(draftM);
        Require.NotNegative(offShoreM);
        DepthGrid today = fullPool.Lowered(dropM);
        return new PoolLevel(fullPool, today, dropM, IslandsOf(fullPool, dropM), HazardsOf(today, draftM, offShoreM));
    }

    /// <summary>Today's shoreline as polygons of water with islands; null when the lake has fallen dry.</summary>
    public Shoreline? Shoreline() => ShorelineTrace.Of(Today);

    /// <summary>Distance from a place (such as a ramp's foot) to today's water, m, to half a cell; 0 in the water, infinite when the lake is dry.</summary>
    /// <param name="place">Place in the lake's plane; outside the grid the grid's edge stands for it.</param>
    public double ToWaterM(PlanePoint place)
    {
        GridFrame frame = Today.Frame;
        int ix = (int)Math.Clamp(Math.Round(frame.ColumnAt(place.XM)), 0, frame.Nx - 1);
        int iy = (int)Math.Clamp(Math.Round(frame.RowAt(place.YM)), 0, frame.Ny - 1);
        double outsideM = frame.Centre(ix, iy).DistanceToM(place);
        double insideM = Math.Sqrt(_toWaterCells[frame.Index(ix, iy)]) * frame.CellM;
        return outsideM > frame.CellM ? insideM + outsideM : insideM;
    }

    // Dry ground that was water at full pool and touches neither the old shore nor the end of the survey.
    private static List<NewIsland> IslandsOf(DepthGrid fullPool, double dropM)
    {
        GridFrame frame = fullPool.Frame;
        float[] dry = new float[frame.Count];
        for (int i = 0; i < dry.Length; i++) dry[i] = fullPool.DepthM[i] > 0 && fullPool.DepthM[i] <= dropM ? 1f : 0f;
        WaterPieces pieces = WaterPieces.Of(dry, frame);
        bool[] attached = new bool[pieces.Count];
        int[] top = new int[pieces.Count];
        Array.Fill(top, -1);
        for (int i = 0; i < dry.Length; i++)
        {
            int piece = pieces.Label[i];
            if (piece < 0) continue;
            if (top[piece] < 0 || fullPool.DepthM[i] < fullPool.DepthM[top[piece]]) top[piece] = i;
            attached[piece] |= TouchesLand(fullPool, i);
        }

        List<NewIsland> islands = [];
        for (int p = 0; p < pieces.Count; p++)
            if (!attached[p]) islands.Add(new NewIsland(frame.Centre(top[p]), dropM - fullPool.DepthM[top[p]], pieces.Cells[p] * frame.CellAreaM2));
        islands.Sort((a, b) => b.AreaM2.CompareTo(a.AreaM2));
        return islands;
    }

    private static bool TouchesLand(DepthGrid grid, int i)
    {
        int x = i % grid.Frame.Nx, y = i / grid.Frame.Nx;
        for (int k = 0; k < 9; k++)
            if (!grid.IsWater(x + (k % 3) - 1, y + (k / 3) - 1)) return true;
        return false;
    }

    private static List<ShallowHazard> HazardsOf(DepthGrid today, double draftM, double offShoreM)
    {
        GridFrame frame = today.Frame;
        bool[] land = new bool[frame.Count];
        for (int i = 0; i < land.Length; i++) land[i] = !(today.DepthM[i] > 0);
        float[] squared = NearestCell.Of(land, frame.Nx, frame.Ny).SquaredCells;
        float[] shallow = new float[frame.Count];
        double far2 = offShoreM / frame.CellM * (offShoreM / frame.CellM);
        for (int i = 0; i < shallow.Length; i++) shallow[i] = !land[i] && today.DepthM[i] <= draftM && squared[i] >= far2 ? 1f : 0f;
        WaterPieces pieces = WaterPieces.Of(shallow, frame);
        int[] top = new int[pieces.Count];
        Array.Fill(top, -1);
        for (int i = 0; i < shallow.Length; i++)
        {
            int piece = pieces.Label[i];
            if (piece >= 0 && (top[piece] < 0 || today.DepthM[i] < today.DepthM[top[piece]])) top[piece] = i;
        }

        List<ShallowHazard> hazards = [];
        for (int p = 0; p < pieces.Count; p++)
        {
            double offM = Math.Sqrt(squared[top[p]]) * frame.CellM;
            hazards.Add(new ShallowHazard(frame.Centre(top[p]), today.DepthM[top[p]], pieces.Cells[p] * frame.CellAreaM2, offM));
        }

        hazards.Sort((a, b) => a.DepthM.CompareTo(b.DepthM));
        return hazards;
    }
}
