using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Day;

/// <summary>Where the boat may run at today's level, and how fast, cell by cell of the depth grid. Immutable.</summary>
public sealed class NavigableWater
{
    private const byte Blocked = 0, Idle = 1, Open = 2;
    private readonly byte[] _cells;

    /// <summary>Marks the cells of a lake.</summary>
    /// <param name="grid">The lake at today's level.</param>
    /// <param name="boat">The boat.</param>
    /// <param name="hazards">Water no route may cross.</param>
    /// <param name="noWake">Areas to idle in.</param>
    public NavigableWater(DepthGrid grid, Boat boat, IEnumerable<HazardArea> hazards, IEnumerable<NoWakeArea> noWake)
    {
        Grid = Require.NotNull(grid);
        Boat = Require.NotNull(boat);
        _cells = new byte[grid.Frame.Count];
        float leastM = (float)boat.LeastDepthM;
        for (int i = 0; i < _cells.Length; i++) _cells[i] = grid.DepthM[i] >= leastM ? Open : Blocked;
        foreach (NoWakeArea area in Require.NotNull(noWake)) MarkNoWake(area);
        foreach (HazardArea hazard in Require.NotNull(hazards)) Block(hazard);
    }

    /// <summary>The lake.</summary>
    public DepthGrid Grid { get; }

    /// <summary>The boat.</summary>
    public Boat Boat { get; }

    /// <summary>The frame of the cells.</summary>
    public GridFrame Frame => Grid.Frame;

    /// <summary>Whether a cell may be crossed.</summary>
    public bool IsOpen(int ix, int iy) => Frame.Contains(ix, iy) && _cells[Frame.Index(ix, iy)] != Blocked;

    /// <summary>Whether a point may be crossed.</summary>
    public bool IsOpen(PlanePoint point) => Frame.TryCellAt(point, out int ix, out int iy) && IsOpen(ix, iy);

    /// <summary>The open cell nearest to a point, searched within a distance; false when there is none.</summary>
    public bool TryNearestOpen(PlanePoint point, double withinM, out PlanePoint open)
    {
        open = point;
        if (IsOpen(point)) return true;
        int cx = (int)Math.Floor((point.XM - Frame.WestM) / Frame.CellM), cy = (int)Math.Floor((point.YM - Frame.SouthM) / Frame.CellM);
        int reach = (int)Math.Ceiling(withinM / Frame.CellM) + 1;
        double best = withinM * withinM;
        bool found = false;
        for (int iy = Math.Max(0, cy - reach); iy <= Math.Min(Frame.Ny - 1, cy + reach); iy++)
        {
            for (int ix = Math.Max(0, cx - reach); ix <= Math.Min(Frame.Nx - 1, cx + reach); ix++)
            {
                if (_cells[Frame.Index(ix, iy)] == Blocked) continue;
                PlanePoint centre = Frame.Centre(ix, iy);
                double squared = centre.SquaredDistanceToM2(point);
                if (squared > best) continue;
                best = squared;
                open = centre;
                found = true;
            }
        }

        return found;
    }

    /// <summary>Time to run straight from a to b, s; infinite when the line touches a cell that is blocked.</summary>
    /// <param name="a">Start.</param>
    /// <param name="b">End.</param>
    /// <param name="slowness">Factor on the time of each cell, or empty; [Ny*Nx] in blocks, see <paramref name="block"/>.</param>
    /// <param name="block">Side of a block of cells that shares a factor.</param>
    /// <param name="blocksX">Blocks in a row.</param>
    /// <remarks>Every cell the line touches counts; where it passes a corner exactly, both neighbours must be open.</remarks>
    internal double StraightS(PlanePoint a, PlanePoint b, ReadOnlySpan<float> slowness, int block, int blocksX)
    {
        double cell = Frame.CellM;
        double x0 = (a.XM - Frame.WestM) / cell, y0 = (a.YM - Frame.SouthM) / cell;
        double dx = ((b.XM - Frame.WestM) / cell) - x0, dy = ((b.YM - Frame.SouthM) / cell) - y0;
        int ix = (int)Math.Floor(x0), iy = (int)Math.Floor(y0), nx = Frame.Nx, ny = Frame.Ny;
        int stepX = dx > 0 ? 1 : -1, stepY = dy > 0 ? 1 : -1;
        double perX = dx == 0 ? double.PositiveInfinity : Math.Abs(1.0 / dx), perY = dy == 0 ? double.PositiveInfinity : Math.Abs(1.0 / dy);
        double nextX = dx == 0 ? double.PositiveInfinity : (dx > 0 ? ix + 1 - x0 : x0 - ix) * perX;
        double nextY = dy == 0 ? double.PositiveInfinity : (dy > 0 ? iy + 1 - y0 : y0 - iy) * perY;
        double at = 0, lengthM = Math.Sqrt((dx * dx) + (dy * dy)) * cell, timeS = 0;
        double openSPerM = 1.0 / Boat.CruiseMps, idleSPerM = 1.0 / Boat.NoWakeMps;
        while (true)
        {
            if ((uint)ix >= (uint)nx || (uint)iy >= (uint)ny) return double.PositiveInfinity;
            byte kind = _cells[(iy * nx) + ix];
            if (kind == Blocked) return double.PositiveInfinity;
            double to = Math.Min(1.0, Math.Min(nextX, nextY));
            double spanS = (to - at) * lengthM * (kind == Open ? openSPerM : idleSPerM);
            if (!slowness.IsEmpty && kind == Open) spanS *= slowness[((iy / block) * blocksX) + (ix / block)];
            timeS += spanS;
            if (to >= 1.0) return timeS;
            at = to;
            if (Math.Abs(nextX - nextY) < 1e-12)
            {
                if (!IsOpen(ix + stepX, iy) || !IsOpen(ix, iy + stepY)) return double.PositiveInfinity;
                ix += stepX;
                iy += stepY;
                nextX += perX;
                nextY += perY;
            }
            else if (nextX < nextY)
            {
                ix += stepX;
                nextX += perX;
            }
            else
            {
                iy += stepY;
                nextY += perY;
            }
        }
    }

    private void Block(HazardArea hazard)
    {
        // Half a cell's diagonal more, so that no part of a crossed cell lies inside the hazard.
        double reachM = hazard.RadiusM + (Frame.CellM * 0.7072);
        ForCells(hazard.Centre.XM - reachM, hazard.Centre.YM - reachM, hazard.Centre.XM + reachM, hazard.Centre.YM + reachM, (ix, iy) =>
        {
            if (Frame.Centre(ix, iy).DistanceToM(hazard.Centre) <= reachM) _cells[Frame.Index(ix, iy)] = Blocked;
        });
    }

    private void MarkNoWake(NoWakeArea area)
    {
        double west = double.MaxValue, south = double.MaxValue, east = double.MinValue, north = double.MinValue;
        foreach (PlanePoint corner in area.Ring)
        {
            west = Math.Min(west, corner.XM);
            east = Math.Max(east, corner.XM);
            south = Math.Min(south, corner.YM);
            north = Math.Max(north, corner.YM);
        }

        ForCells(west, south, east, north, (ix, iy) =>
        {
            int i = Frame.Index(ix, iy);
            if (_cells[i] == Open && Inside(area.Ring, Frame.Centre(ix, iy))) _cells[i] = Idle;
        });
    }

    private void ForCells(double westM, double southM, double eastM, double northM, Action<int, int> action)
    {
        int x0 = Math.Max(0, (int)Math.Floor((westM - Frame.WestM) / Frame.CellM)), x1 = Math.Min(Frame.Nx - 1, (int)Math.Floor((eastM - Frame.WestM) / Frame.CellM));
        int y0 = Math.Max(0, (int)Math.Floor((southM - Frame.SouthM) / Frame.CellM)), y1 = Math.Min(Frame.Ny - 1, (int)Math.Floor((northM - Frame.SouthM) / Frame.CellM));
        for (int iy = y0; iy <= y1; iy++)
            for (int ix = x0; ix <= x1; ix++) action(ix, iy);
    }

    private static bool Inside(IReadOnlyList<PlanePoint> ring, PlanePoint p)
    {
        bool inside = false;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
        {
            if (ring[i].YM > p.YM != ring[j].YM > p.YM
                && p.XM < ((ring[j].XM - ring[i].XM) * (p.YM - ring[i].YM) / (ring[j].YM - ring[i].YM)) + ring[i].XM)
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
