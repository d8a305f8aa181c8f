using SecondShore.Engine.Basin.Terrain;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>A drowned channel as found, from its lower end up; <paramref name="Cells"/> are the cells that its flow runs through.</summary>
internal sealed record FoundChannel(bool IsMain, PlanePoint[] Line, int[] Cells, double[] HalfWidthM, double[] BankM, PlanePoint? Joins)
{
    public double LengthM
    {
        get
        {
            double sum = 0;
            for (int k = 1; k < Line.Length; k++) sum += Line[k - 1].DistanceToM(Line[k]);
            return sum;
        }
    }
}

/// <summary>Finds the beds of the drained lake's streams: where flow gathers and banks rise on both sides.</summary>
internal static class ChannelFinder
{
    /// <summary>The channels, main one first, and the flow of the drained bed; no flow on a bed too small for channels.</summary>
    public static (List<FoundChannel> Channels, FlowD8? Flow) Find(Bed bed)
    {
        List<FoundChannel> found = [];
        if (bed.WaterCells < 50) return (found, null);
        // A dam closes the valley, so the stream's way out is not on the shore: the bed is drained into its deepest cell.
        int deepest = -1;
        for (int i = 0; i < bed.Z.Length; i++)
            if (bed.IsWet(i) && (deepest < 0 || bed.Z[i] < bed.Z[deepest])) deepest = i;
        FlowD8 flow = FlowD8.Of(DrainedBed.Of(new DepthGrid(bed.Grid.Projection, bed.Frame, Depths(bed)), [deepest]));
        double branch = Math.Max(0.008 * bed.WaterCells, 9.0 * bed.ScaleCells * bed.ScaleCells), end = Math.Max(8, 0.0004 * bed.WaterCells);
        foreach (FlowLines.Line line in FlowLines.From(flow, deepest, branch, end)) Keep(bed, line, found);
        return (Distinct(bed, found), flow);
    }

    // Flow on a wide bed runs side by side: of lines in one bed only the longest is the channel. Without a stem the longest is the main one.
    private static List<FoundChannel> Distinct(Bed bed, List<FoundChannel> found)
    {
        found.Sort((a, b) => a.IsMain != b.IsMain ? (a.IsMain ? -1 : 1) : b.LengthM.CompareTo(a.LengthM));
        bool[] bedCells = new bool[bed.Frame.Count];
        List<FoundChannel> kept = [];
        foreach (FoundChannel channel in found)
        {
            int inside = 0;
            foreach (PlanePoint p in channel.Line)
                if (bed.Frame.TryCellAt(p, out int ix, out int iy) && bedCells[bed.Frame.Index(ix, iy)]) inside++;
            if (inside > 0.4 * channel.Line.Length) continue;
            kept.Add(kept.Count == 0 ? channel with { IsMain = true, Joins = null } : channel);
            bed.Paint(bedCells, channel.Line, k => channel.HalfWidthM[k] + (0.5 * bed.ScaleM));
        }

        return kept;
    }

    private static void Keep(Bed bed, FlowLines.Line line, List<FoundChannel> found)
    {
        int lag = Math.Max(2, bed.ScaleCells), n = line.Cells.Count;
        if (n < 4 * bed.ScaleCells) return;
        PlanePoint[] points = FlowLines.Smooth(bed.Frame, line.Cells, Math.Max(1, (int)(0.45 * bed.ScaleCells)));
        double reach = 1.5 * bed.ScaleM, least = Math.Max(0.25, bed.Options.BankShare * bed.DeepM);
        double[] bank = new double[n];
        for (int k = 0; k < n; k++)
        {
            double z = bed.At(points[k].XM, points[k].YM);
            if (double.IsNaN(z)) continue;
            (double dx, double dy) = FlowLines.Direction(points, k, lag);
            bank[k] = Math.Min(bed.RiseM(points[k], -dy, dx, reach, z), bed.RiseM(points[k], dy, -dx, reach, z));
        }

        // A side flow that only runs down the main channel's bank or along its bed is not a channel of its own.
        double[] along = FlowLines.Running(bank, 3 * bed.ScaleCells);
        (int from, int to) = LongestRun(along, least, 6 * bed.ScaleCells);
        if (to - from < (line.Joins < 0 ? 6 : 8) * bed.ScaleCells) return;
        if (line.Joins >= 0 && from < 8 * bed.ScaleCells) from = 0;
        PlanePoint[] kept = points[from..to];
        double[] half = new double[kept.Length];
        for (int k = 0; k < kept.Length; k++) half[k] = HalfWidthM(bed, points, from + k, lag, Math.Max(bank[from + k], least), reach);
        half = FlowLines.Running(half, 3 * bed.ScaleCells);
        found.Add(new FoundChannel(line.Joins < 0, kept, [.. line.Cells[from..to]], half, along[from..to], line.Joins >= 0 && from == 0 ? bed.Frame.Centre(line.Joins) : null));
    }

    // The longest stretch above the threshold, bridging gaps up to a length.
    private static (int From, int To) LongestRun(double[] values, double least, int gap)
    {
        (int From, int To) best = (0, 0);
        int start = -1, last = -1;
        for (int k = 0; k < values.Length; k++)
        {
            if (values[k] < least) continue;
            if (start < 0 || k - last > gap) start = k;
            last = k;
            if (last + 1 - start > best.To - best.From) best = (start, last + 1);
        }

        return best;
    }

    private static double HalfWidthM(Bed bed, PlanePoint[] line, int k, int lag, double bankM, double reachM)
    {
        double z = bed.At(line[k].XM, line[k].YM);
        if (double.IsNaN(z)) return bed.Frame.CellM;
        (double dx, double dy) = FlowLines.Direction(line, k, lag);
        return 0.5 * (Edge(-dy, dx) + Edge(dy, -dx));

        double Edge(double ux, double uy)
        {
            for (double t = 0.5 * bed.Frame.CellM; t <= reachM; t += 0.5 * bed.Frame.CellM)
            {
                double there = bed.At(line[k].XM + (ux * t), line[k].YM + (uy * t));
                if (double.IsNaN(there) || there - z >= 0.8 * bankM) return t;
            }

            return reachM;
        }
    }

    private static float[] Depths(Bed bed)
    {
        float[] depths = new float[bed.Z.Length];
        for (int i = 0; i < depths.Length; i++) depths[i] = float.IsNaN(bed.Z[i]) ? float.NaN : Math.Max(0.01f, -bed.Z[i]);
        return depths;
    }
}
