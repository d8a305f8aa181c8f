using System.Runtime.CompilerServices;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>Chance that a doubtful bottom lies within reach of a doubtful thermocline, by depth and by the depth's standard error.</summary>
/// <remarks>
/// For a sure depth the chance is F(d + reach) - F(d - reach) of the thermocline's distribution F; a doubtful depth averages
/// that over its own normal law. Tabulated once, so that a lake's cells cost two look-ups each.
/// </remarks>
internal sealed class ReachTable
{
    private const int Steps = 640;
    private const int SdSteps = 12;
    private readonly float[] _table;
    private readonly double _firstM;
    private readonly double _perM;
    private readonly double _sdScale;
    private readonly int _width;

    /// <summary>Builds the table.</summary>
    /// <param name="thermoclineM">Thermocline depth, m.</param>
    /// <param name="reachM">Reach, m, above 0.</param>
    /// <param name="mostSdM">Largest standard error asked for, m.</param>
    public ReachTable(SampleDistribution thermoclineM, double reachM, double mostSdM)
    {
        double tail = reachM + (4 * mostSdM);
        double firstM = thermoclineM.Values[0] - tail, lastM = thermoclineM.Values[^1] + tail;
        double stepM = Math.Max((lastM - firstM) / (Steps - 1), 1e-6);
        _width = Steps + 2;
        (_firstM, _perM) = (firstM - stepM, 1.0 / stepM);
        _sdScale = mostSdM > 0 ? SdSteps / Math.Sqrt(mostSdM) : 0;
        _table = new float[_width * (SdSteps + 2)];
        double[] sure = new double[_width];
        for (int k = 0; k < _width; k++)
        {
            double depthM = _firstM + (k * stepM);
            sure[k] = MeanShare(thermoclineM, depthM + reachM, stepM) - MeanShare(thermoclineM, depthM - reachM, stepM);
        }

        double[] kernel = new double[_width];
        for (int s = 0; s <= SdSteps + 1; s++)
        {
            double root = _sdScale > 0 ? Math.Min(s, SdSteps) / _sdScale : 0;
            Smooth(sure, root * root / stepM, kernel, _table.AsSpan(s * _width, _width));
        }
    }

    /// <summary>Chance at a depth below the rest position, m, whose standard error is given, m (0 to the largest told).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public float At(double depthM, float sdM)
    {
        double x = (depthM - _firstM) * _perM;
        if (!(x >= 0) || x >= _width - 1) return 0f;
        float y = (float)_sdScale * MathF.Sqrt(sdM);
        int k = (int)x, s = Math.Min((int)y, SdSteps);
        float tx = (float)(x - k), ty = Math.Min(y - s, 1f);
        int low = (s * _width) + k, high = low + _width;
        float a = _table[low] + (tx * (_table[low + 1] - _table[low]));
        float b = _table[high] + (tx * (_table[high + 1] - _table[high]));
        return a + (ty * (b - a));
    }

    // The share below a depth, averaged over one step so that a single sample does not fall between the nodes.
    private static double MeanShare(SampleDistribution thermoclineM, double depthM, double stepM) =>
        0.25 * (thermoclineM.ShareBelow(depthM - (0.375 * stepM)) + thermoclineM.ShareBelow(depthM - (0.125 * stepM))
            + thermoclineM.ShareBelow(depthM + (0.125 * stepM)) + thermoclineM.ShareBelow(depthM + (0.375 * stepM)));

    private static void Smooth(double[] from, double sdSteps, double[] kernel, Span<float> to)
    {
        int half = 0;
        if (sdSteps > 0.05)
        {
            half = (int)Math.Min(from.Length - 1, Math.Ceiling(4 * sdSteps));
            double sum = 0;
            for (int j = 0; j <= half; j++)
            {
                kernel[j] = NormalLaw.ShareBelow((j + 0.5) / sdSteps) - NormalLaw.ShareBelow((j - 0.5) / sdSteps);
                sum += j == 0 ? kernel[j] : 2 * kernel[j];
            }

            for (int j = 0; j <= half; j++) kernel[j] /= sum;
        }
        else
        {
            kernel[0] = 1;
        }

        for (int k = 0; k < to.Length; k++)
        {
            double sum = kernel[0] * from[k];
            for (int j = 1; j <= half; j++)
            {
                double below = k - j >= 0 ? from[k - j] : 0, above = k + j < from.Length ? from[k + j] : 0;
                sum += kernel[j] * (below + above);
            }

            to[k] = (float)Math.Clamp(sum, 0, 1);
        }
    }
}
