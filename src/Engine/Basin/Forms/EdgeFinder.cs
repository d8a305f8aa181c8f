using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>A bluff wall or a ledge as found: its line, its drop, and its steepest slope.</summary>
internal sealed record FoundEdge(PlanePoint[] Line, double DropM, double Tan, double ShallowM, double DeepM);

/// <summary>Finds lines of sharp change: walls, and lips where near-level bottom breaks off.</summary>
internal static class EdgeFinder
{
    public static List<FoundEdge> Bluffs(Bed bed, bool[] corridor)
    {
        bool[] steep = new bool[bed.Frame.Count];
        for (int i = 0; i < steep.Length; i++) steep[i] = bed.IsWet(i) && bed.SharpTan[i] >= bed.Options.BluffTan && !corridor[i];
        steep = CellGroups.Grow(steep, bed.Frame, 1);
        List<FoundEdge> walls = [];
        foreach (List<int> group in CellGroups.Of(steep, bed.Frame, 3 * bed.ScaleCells))
        {
            if (Line(bed, group, 2.5) is not { } wall) continue;
            (double shallow, double deep) = DepthRange(bed, group, wall);
            if (deep - shallow >= 0.14 * bed.DeepM) walls.Add(wall with { DropM = deep - shallow, ShallowM = shallow, DeepM = deep });
        }

        return walls;
    }

    /// <summary>Lips: across the fall line the bottom is near level above and drops below.</summary>
    /// <param name="bed">The bed.</param>
    /// <param name="taken">Cells of channels, points, humps and walls, whose own edges are not ledges.</param>
    public static List<FoundEdge> Ledges(Bed bed, bool[] taken)
    {
        int n = bed.Frame.Count;
        float[] bite = new float[n];
        double reach = Math.Max(0.65 * bed.ScaleM, 1.6 * bed.Frame.CellM), least = Math.Max(0.25, bed.Options.LedgeShare * bed.DeepM);
        for (int i = 0; i < n; i++)
        {
            if (!bed.IsWet(i) || taken[i] || bed.ShoreM[i] < 0.7 * bed.ScaleM) continue;
            PlanePoint p = bed.Frame.Centre(i);
            double above = bed.At(p.XM - (reach * bed.FallX[i]), p.YM - (reach * bed.FallY[i]));
            double below = bed.At(p.XM + (reach * bed.FallX[i]), p.YM + (reach * bed.FallY[i]));
            if (double.IsNaN(above) || double.IsNaN(below)) continue;
            double drop = bed.Z[i] - below, rise = above - bed.Z[i];
            if (drop >= 0.7 * least && rise < 0.55 * drop && rise > -0.5 * drop) bite[i] = (float)(drop - rise);
        }

        // Keep the sharpest cell along the fall line.
        bool[] lip = new bool[n];
        for (int i = 0; i < n; i++)
        {
            if (bite[i] < least) continue;
            int stepX = (int)Math.Round(bed.FallX[i]), stepY = (int)Math.Round(bed.FallY[i]), x = i % bed.Frame.Nx, y = i / bed.Frame.Nx;
            lip[i] = !Over(x + stepX, y + stepY, bite[i]) && !Over(x - stepX, y - stepY, bite[i]);
        }

        lip = CellGroups.Grow(lip, bed.Frame, 1.5);
        List<FoundEdge> ledges = [];
        foreach (List<int> group in CellGroups.Of(lip, bed.Frame, 4 * bed.ScaleCells))
        {
            if (Line(bed, group, 3) is not { } line) continue;
            double drop = 0;
            int count = 0;
            foreach (int i in group)
                if (bite[i] >= least) { drop += bite[i]; count++; }
            (double shallow, double deep) = DepthRange(bed, group, line);
            if (count > 0) ledges.Add(line with { DropM = drop / count, ShallowM = shallow, DeepM = deep });
        }

        return ledges;

        bool Over(int x, int y, float value) => bed.Frame.Contains(x, y) && bite[bed.Frame.Index(x, y)] > value;
    }

    private static FoundEdge? Line(Bed bed, List<int> group, double leastYardsticks)
    {
        List<int> axis = CellGroups.LongAxis(group, bed.Frame);
        PlanePoint[] line = FlowLines.Smooth(bed.Frame, axis, Math.Max(1, bed.ScaleCells / 3));
        double length = 0, tan = 0;
        for (int k = 1; k < line.Length; k++) length += line[k - 1].DistanceToM(line[k]);
        foreach (int i in group) tan = Math.Max(tan, bed.SharpTan[i]);
        return length < leastYardsticks * bed.ScaleM || line.Length < 3 ? null : new FoundEdge(line, 0, tan, 0, 0);
    }

    // Depths across the line, from a yardstick up the fall to a yardstick down, in the middle half of it.
    private static (double ShallowM, double DeepM) DepthRange(Bed bed, List<int> group, FoundEdge edge)
    {
        double shallow = 0, deep = 0;
        int count = 0;
        foreach (PlanePoint p in edge.Line)
        {
            if (!bed.Frame.TryCellAt(p, out int ix, out int iy)) continue;
            int i = bed.Frame.Index(ix, iy);
            if (!bed.IsWet(i)) continue;
            shallow += -bed.Z[i] - bed.RiseM(p, -bed.FallX[i], -bed.FallY[i], bed.ScaleM, bed.Z[i]);
            deep += -bed.Z[i] + bed.FallM(p, bed.FallX[i], bed.FallY[i], bed.ScaleM, bed.Z[i]);
            count++;
        }

        return count > 0 ? (shallow / count, deep / count) : (-bed.Z[group[0]], -bed.Z[group[0]]);
    }
}
