using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Tells whether a place lies inside an arm: beyond the mouth of the side channel nearest to it.</summary>
internal sealed class ArmMouths
{
    private readonly List<FoundChannel> _channels;
    private readonly int[] _mouths;
    private readonly double[] _halfArmM;

    public ArmMouths(Bed bed, List<FoundChannel> channels)
    {
        _channels = channels;
        _mouths = new int[channels.Count];
        _halfArmM = new double[channels.Count];
        for (int c = 0; c < channels.Count; c++)
        {
            if (channels[c].IsMain) continue;
            PlanePoint[] line = channels[c].Line;
            double[] shore = new double[line.Length];
            for (int k = 0; k < line.Length; k++) shore[k] = bed.Frame.TryCellAt(line[k], out int ix, out int iy) ? bed.ShoreM[bed.Frame.Index(ix, iy)] : 0;
            shore = FlowLines.Running(shore, bed.ScaleCells);
            double[] sorted = [.. shore];
            Array.Sort(sorted);
            _halfArmM[c] = sorted[sorted.Length / 2];
            int mouth = 0;
            while (mouth < line.Length / 2 && shore[mouth] > 1.35 * _halfArmM[c]) mouth++;
            _mouths[c] = mouth;
        }
    }

    /// <summary>Whether the shallow end of a crest lies well up an arm.</summary>
    public bool IsInside(IReadOnlyList<PlanePoint> crest)
    {
        PlanePoint root = crest[0];
        double nearest = double.MaxValue;
        int channel = -1, at = 0;
        for (int c = 0; c < _channels.Count; c++)
        {
            for (int k = 0; k < _channels[c].Line.Length; k++)
            {
                double d = _channels[c].Line[k].SquaredDistanceToM2(root);
                if (d < nearest) (nearest, channel, at) = (d, c, k);
            }
        }

        if (channel < 0 || _channels[channel].IsMain) return false;
        double beyondM = 0;
        PlanePoint[] line = _channels[channel].Line;
        for (int k = _mouths[channel] + 1; k <= at; k++) beyondM += line[k - 1].DistanceToM(line[k]);
        return at > _mouths[channel] && beyondM > 1.0 * _halfArmM[channel];
    }
}
