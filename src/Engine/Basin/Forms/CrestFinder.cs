using SecondShore.Engine.Basin.Terrain;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>A point's crest as found, from the shore down.</summary>
internal sealed record FoundCrest(PlanePoint[] Line, double FallM, double LeastM);

/// <summary>
/// Finds noses of land under water. On the bed turned upside down water runs up every flank to a crest and along it to
/// the shore; a crest is a point where the bed falls away on both sides of it.
/// </summary>
internal static class CrestFinder
{
    public static List<FoundCrest> Find(Bed bed)
    {
        float[] depths = new float[bed.Z.Length];
        double top = bed.DeepM + 5;
        foreach (float z in bed.Z) if (-z + 1 > top) top = -z + 1;
        List<int> shore = [];
        for (int i = 0; i < depths.Length; i++)
        {
            depths[i] = float.IsNaN(bed.Z[i]) ? float.NaN : (float)(top + bed.Z[i]);
            if (bed.IsWet(i) && bed.ShoreM[i] < 1.01 * bed.Frame.CellM) shore.Add(i);
        }

        DepthGrid turned = new(bed.Grid.Projection, bed.Frame, depths);
        FlowD8 flow = FlowD8.Of(DrainedBed.Of(turned, [.. shore]));
        shore.Sort((a, b) => flow.CellsAbove[b] != flow.CellsAbove[a] ? flow.CellsAbove[b].CompareTo(flow.CellsAbove[a]) : a.CompareTo(b));
        double least = 1.5 * bed.ScaleCells * bed.ScaleCells;
        bool[] used = new bool[bed.Frame.Count];
        List<FoundCrest> crests = [];
        foreach (int outlet in shore)
        {
            if (flow.CellsAbove[outlet] < least) break;
            if (used[outlet]) continue;
            if (Trace(bed, flow, outlet) is not { } crest) continue;
            int overlap = 0;
            foreach (PlanePoint p in crest.Line)
                if (bed.Frame.TryCellAt(p, out int ix, out int iy) && used[bed.Frame.Index(ix, iy)]) overlap++;
            if (overlap > 0.4 * crest.Line.Length) continue;
            crests.Add(crest);
            bed.Paint(used, crest.Line, _ => 1.3 * bed.ScaleM);
        }

        return crests;
    }

    private static FoundCrest? Trace(Bed bed, FlowD8 flow, int outlet)
    {
        List<int> cells = FlowLines.From(flow, outlet, double.MaxValue, Math.Max(3, 0.15 * bed.ScaleCells * bed.ScaleCells))[0].Cells;
        if (cells.Count < 2 * bed.ScaleCells) return null;
        PlanePoint[] line = FlowLines.Smooth(bed.Frame, cells, Math.Max(1, bed.ScaleCells / 3));
        double reach = 2 * bed.ScaleM;
        double[] fall = new double[line.Length];
        for (int k = 0; k < line.Length; k++)
        {
            double z = bed.At(line[k].XM, line[k].YM);
            if (double.IsNaN(z)) continue;
            (double dx, double dy) = FlowLines.Direction(line, k, Math.Max(2, bed.ScaleCells));
            fall[k] = Math.Min(bed.FallM(line[k], -dy, dx, reach, z), bed.FallM(line[k], dy, -dx, reach, z));
        }

        fall = FlowLines.Running(fall, Math.Max(1, bed.ScaleCells / 2));
        double least = Math.Max(0.25, Math.Min(bed.Options.PointTan * reach, bed.Options.PointShare * bed.DeepM)), most = 0;
        int best = 0;
        for (int k = 0; k < fall.Length; k++)
            if (fall[k] > most) (most, best) = (fall[k], k);
        if (most < least) return null;

        // From the best place out both ways while some fall to both sides remains.
        int from = best, to = best;
        while (from > 0 && fall[from - 1] > 0.15 * most) from--;
        while (to + 1 < fall.Length && fall[to + 1] > 0.3 * most && bed.At(line[to + 1].XM, line[to + 1].YM) <= bed.At(line[to].XM, line[to].YM) + 0.3) to++;
        PlanePoint[] kept = line[from..(to + 1)];
        if (kept.Length < 3) return null;
        double topZ = bed.At(kept[0].XM, kept[0].YM), tipZ = bed.At(kept[^1].XM, kept[^1].YM), lengthM = kept[0].DistanceToM(kept[^1]);
        double shoreM = bed.Frame.TryCellAt(kept[0], out int ix, out int iy) ? bed.ShoreM[bed.Frame.Index(ix, iy)] : double.MaxValue;
        if (lengthM < 1.2 * bed.ScaleM || topZ - tipZ < 0.08 * bed.DeepM || shoreM > 5 * bed.ScaleM) return null;
        return new FoundCrest(kept, most, least);
    }
}
