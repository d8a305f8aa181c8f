using SecondShore.Engine.Basin.Terrain;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>
/// Tells whether a nose of land lies inside an arm: water let off the lake would run from both its flanks into one side
/// channel, above that channel's mouth. From a main-lake point, the corners of an arm's mouth included, at least one flank
/// drains into the main lake.
/// </summary>
internal sealed class ArmDrainage
{
    private const int Unknown = -2, Main = -1;

    // Of a crest's length that can be told, how much must shed into the arm on both sides.
    private static readonly double LeastShare = 0.9;

    // An arm begins where the shore is no farther from its channel than this many times the usual.
    private static readonly double MouthWidening = 2;

    private readonly Bed _bed;
    private readonly FlowD8? _flow;
    private readonly List<FoundChannel> _channels;
    private readonly Dictionary<int, (int Channel, int At)> _channelAt = [];
    private readonly int[] _mouths;

    public ArmDrainage(Bed bed, List<FoundChannel> channels, FlowD8? flow)
    {
        (_bed, _flow, _channels) = (bed, flow, channels);
        _mouths = [.. channels.Select(c => c.IsMain ? 0 : Mouth(bed, c.Line))];
        for (int c = 0; c < channels.Count; c++)
            for (int k = 0; k < channels[c].Cells.Length; k++) _channelAt.TryAdd(channels[c].Cells[k], (c, k));
    }

    /// <summary>Whether nearly all of a crest sheds into one arm on both sides.</summary>
    /// <param name="crest">From the shore down.</param>
    public bool IsInside(IReadOnlyList<PlanePoint> crest)
    {
        int inside = 0, told = 0;
        for (int k = 0; k < crest.Count; k++)
        {
            (double dx, double dy) = FlowLines.Direction(crest, k, Math.Max(2, _bed.ScaleCells));
            int left = ArmBelow(Flank(crest[k], -dy, dx)), right = ArmBelow(Flank(crest[k], dy, -dx));
            if (left == Unknown || right == Unknown) continue;
            told++;
            if (left == right && left != Main) inside++;
        }

        return told > 0 && inside > LeastShare * told;
    }

    // From the main channel up to where the shores close in on the arm's usual width.
    private static int Mouth(Bed bed, PlanePoint[] line)
    {
        double[] shore = new double[line.Length];
        for (int k = 0; k < line.Length; k++) shore[k] = bed.Frame.TryCellAt(line[k], out int ix, out int iy) ? bed.ShoreM[bed.Frame.Index(ix, iy)] : 0;
        shore = FlowLines.Running(shore, bed.ScaleCells);
        double[] sorted = [.. shore];
        Array.Sort(sorted);
        int mouth = 0;
        while (mouth < line.Length / 2 && shore[mouth] > MouthWidening * sorted[sorted.Length / 2]) mouth++;
        return mouth;
    }

    private PlanePoint Flank(PlanePoint at, double ux, double uy) => new(at.XM + (ux * 1.5 * _bed.ScaleM), at.YM + (uy * 1.5 * _bed.ScaleM));

    // The last side channel that water from here runs through on its way to the main one: branches of an arm count as the arm.
    private int ArmBelow(PlanePoint from)
    {
        if (_flow is null || !_bed.Frame.TryCellAt(from, out int ix, out int iy)) return Unknown;
        int arm = Main;
        for (int at = _bed.Frame.Index(ix, iy); at >= 0 && _bed.IsWet(at); at = _flow.Downstream[at])
        {
            if (!_channelAt.TryGetValue(at, out (int Channel, int At) hit) || hit.Channel == arm) continue;
            if (_channels[hit.Channel].IsMain) break;
            if (arm == Main && hit.At <= _mouths[hit.Channel]) return Main;
            arm = hit.Channel;
        }

        return arm;
    }
}
