using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>
/// Oxygen beside a lake column, stepped once a day: mixed as deep as the day's mixing went, exchanged with the air, diffused,
/// and eaten below by water and mud (source: LivingstoneImboden1996; season's oxygen page).
/// </summary>
public sealed class OxygenColumn
{
    /// <summary>Oxygen under which deep water counts as poor, mg/L.</summary>
    public static readonly double FloorMgPerL = 3.0;

    private const double HalfSaturation = 1.4, ReferenceC = 10.0, MudShare = 0.6;

    // Following a reading: less missing than this cannot be scaled, more than this many times is not believed of one reading.
    // Water this near the surface's warmth lies in the upper layer.
    private const double MissingMgPerL = 0.3, MostTimes = 20, UpperWaterK = 1.0;

    // What each degree adds to the demand of water and mud, as logarithms: factors of 1.047 and 1.07.
    private static readonly double WaterPerK = Math.Log(1.047), MudPerK = Math.Log(1.07);
    private readonly LakeColumn _column;
    private int _mixedTo;
    private readonly double[] _oxygen, _lower, _diagonal, _upper;
    private readonly double _waterDemand, _mudDemand, _pressurePa, _reaeration;

    /// <summary>Makes oxygen at saturation throughout.</summary>
    /// <param name="column">The column it rides on.</param>
    /// <param name="demand">What the deep water uses.</param>
    /// <param name="pressurePa">Air pressure, Pa.</param>
    public OxygenColumn(LakeColumn column, OxygenDemand demand, double pressurePa)
    {
        _column = Require.NotNull(column);
        double areal = Require.Positive(Require.NotNull(demand).ArealGPerM2DayValue);
        int n = column.Grid.Count;
        (_oxygen, _lower, _diagonal, _upper) = (new double[n], new double[n], new double[n], new double[n]);
        (_pressurePa, _reaeration) = (pressurePa, demand.ReaerationFactor);
        // The water's share is that of a hypolimnion a third of the depth thick.
        _mudDemand = MudShare * areal;
        _waterDemand = (1 - MudShare) * areal / Math.Max(2.0, column.DepthM / 3.0);
        for (int i = 0; i < n; i++) _oxygen[i] = DissolvedOxygen.SaturationMgPerL(column.TempC[i], pressurePa);
    }

    /// <summary>Oxygen of each layer, mg/L.</summary>
    public ReadOnlySpan<double> OxygenMgPerL => _oxygen;

    /// <summary>Sets the layers from a measured profile (straight between points, held beyond).</summary>
    public void NudgeTo(ReadOnlySpan<double> depthM, ReadOnlySpan<double> oxygenMgPerL, double share)
    {
        if (depthM.Length == 0) return;
        for (int i = _column.Top; i < _oxygen.Length; i++)
        {
            double z = _column.LayerDepthM(i);
            int k = 0;
            while (k < depthM.Length - 1 && depthM[k + 1] < z) k++;
            int j = Math.Min(k + 1, depthM.Length - 1);
            double span = depthM[j] - depthM[k], t = span > 0 ? Math.Clamp((z - depthM[k]) / span, 0, 1) : 0;
            double seen = oxygenMgPerL[k] + (t * (oxygenMgPerL[j] - oxygenMgPerL[k]));
            _oxygen[i] += share * (Math.Max(0, seen) - _oxygen[i]);
        }
    }

    /// <summary>
    /// Takes over one reading: what is missing under the mixed water is scaled until it is what was read there, as by a demand that was
    /// so much larger or smaller all the time; a reading in the mixed water itself tells nothing of below.
    /// </summary>
    /// <param name="depthM">Its depth, m.</param>
    /// <param name="mgPerL">What was read, mg/L.</param>
    /// <param name="share">Share of the difference that is taken over.</param>
    public void Follow(double depthM, double mgPerL, double share)
    {
        int at = _column.Top;
        while (at < _oxygen.Length - 1 && _column.LayerDepthM(at + 1) <= depthM) at++;
        int upper = Math.Max(_mixedTo, UpperTo());
        if (at <= upper) return;
        double Full(int layer) => DissolvedOxygen.SaturationMgPerL(_column.TempC[layer], _pressurePa);
        double here = AtMgPerL(depthM), want = here + (share * (mgPerL - here)), missing = Math.Max(MissingMgPerL, Full(at) - here);
        double factor = Math.Clamp((Full(at) - want) / missing, 0, MostTimes);
        for (int i = upper + 1; i < _oxygen.Length; i++)
        {
            double full = Full(i);
            _oxygen[i] = Math.Clamp(full - (factor * Math.Max(MissingMgPerL, full - _oxygen[i])), 0, Math.Max(full, _oxygen[i]));
        }
    }

    /// <summary>Lets the deep water use oxygen for some days as it lies: what went on before the first cast.</summary>
    /// <param name="days">Days since the lake last mixed to the bottom.</param>
    public void Age(int days)
    {
        if (days <= 0) return;
        int mixedTo = UpperTo();
        ReadOnlySpan<double> temp = _column.TempC;
        for (int day = 0; day < days; day++)
        {
            Consume(mixedTo, temp, _column.LayerVolumesM3);
            Diffuse(_column.LayerVolumesM3);
            for (int i = _column.Top; i <= mixedTo; i++) _oxygen[i] = DissolvedOxygen.SaturationMgPerL(temp[i], _pressurePa);
        }
    }

    // Deepest layer of the upper water, as its warmth tells.
    private int UpperTo()
    {
        int to = _column.Top;
        while (to < _oxygen.Length - 2 && _column.TempC[_column.Top] - _column.TempC[to + 1] < UpperWaterK) to++;
        return to;
    }

    /// <summary>Oxygen at a depth below today's surface, mg/L.</summary>
    public double AtMgPerL(double depthM)
    {
        int best = _column.Top;
        for (int i = _column.Top; i < _oxygen.Length && _column.LayerDepthM(i) <= depthM; i++) best = i;
        if (best >= _oxygen.Length - 1) return _oxygen[^1];
        double a = _column.LayerDepthM(best), b = _column.LayerDepthM(best + 1), t = Math.Clamp((depthM - a) / (b - a), 0, 1);
        return _oxygen[best] + (t * (_oxygen[best + 1] - _oxygen[best]));
    }

    /// <summary>Takes note of how deep the column's last step mixed: called after every step.</summary>
    public void Watch() => _mixedTo = Math.Max(_mixedTo, _column.MixedTo);

    /// <summary>Steps one day, mixed as deep as was noted since the last.</summary>
    /// <param name="windMps">Mean wind of the day, m s-1.</param>
    public void StepDay(double windMps)
    {
        ReadOnlySpan<double> temp = _column.TempC, volume = _column.LayerVolumesM3;
        int top = _column.Top;
        int mixedTo = Math.Clamp(_mixedTo, top, _oxygen.Length - 1);
        double sum = 0, water = 0;
        for (int i = top; i <= mixedTo; i++)
        {
            sum += volume[i] * _oxygen[i];
            water += volume[i];
        }

        double mixed = sum / water;
        if (_column.IceM <= 0)
        {
            double exchange = _reaeration * DissolvedOxygen.TransferMps(windMps, temp[top])
                * _column.SurfaceAreaM2 * PhysicalConstants.DayS / water;
            mixed = (mixed + (exchange * DissolvedOxygen.SaturationMgPerL(temp[top], _pressurePa))) / (1.0 + exchange);
        }

        for (int i = top; i <= mixedTo; i++) _oxygen[i] = mixed;
        Consume(mixedTo, temp, volume);
        Diffuse(volume);
        _mixedTo = top;
    }

    /// <summary>Depth below which all water holds less than <see cref="FloorMgPerL"/>, m below today's surface; NaN when the bottom has enough.</summary>
    public double FloorM()
    {
        int i = _oxygen.Length - 1;
        if (_oxygen[i] >= FloorMgPerL) return double.NaN;
        while (i > _column.Top && _oxygen[i - 1] < FloorMgPerL) i--;
        if (i == _column.Top) return 0;
        double t = (FloorMgPerL - _oxygen[i - 1]) / (_oxygen[i] - _oxygen[i - 1]);
        return _column.LayerDepthM(i - 1) + (t * (_column.LayerDepthM(i) - _column.LayerDepthM(i - 1)));
    }

    /// <summary>How fast oxygen falls with depth over a metre to either side of a depth, mg/L per m.</summary>
    public double SlopeMgPerLPerM(double depthM) => 0.5 * (AtMgPerL(Math.Max(0, depthM - 1)) - AtMgPerL(depthM + 1));

    // The mixed layer makes what it breathes; below it water and mud eat, slower where little is left.
    private void Consume(int mixedTo, ReadOnlySpan<double> temp, ReadOnlySpan<double> volume)
    {
        ReadOnlySpan<double> area = _column.FaceAreas;
        for (int i = mixedTo + 1; i < _oxygen.Length; i++)
        {
            double mud = i == _oxygen.Length - 1 ? area[i] : area[i] - area[i + 1];
            double rate = (_waterDemand * Math.Exp(WaterPerK * (temp[i] - ReferenceC))) + (_mudDemand * mud / volume[i] * Math.Exp(MudPerK * (temp[i] - ReferenceC)));
            // Implicit in the saturating share, so oxygen never falls below 0.
            _oxygen[i] /= 1.0 + (rate / (_oxygen[i] + HalfSaturation));
        }
    }

    private void Diffuse(ReadOnlySpan<double> volume)
    {
        ReadOnlySpan<double> diffusivity = _column.DiffusivityNow(), area = _column.FaceAreas, centre = _column.Centres;
        int first = _column.Top, n = _oxygen.Length - first;
        for (int i = 0; i < n; i++) (_lower[i], _upper[i]) = (0, 0);
        for (int i = first + 1; i < _oxygen.Length; i++)
        {
            double exchange = PhysicalConstants.DayS * area[i] * diffusivity[i] / (centre[i] - centre[i - 1]);
            _lower[i - first] = -exchange / volume[i];
            _upper[i - 1 - first] = -exchange / volume[i - 1];
        }

        for (int i = 0; i < n; i++) _diagonal[i] = 1.0 - _lower[i] - _upper[i];
        Tridiagonal.Solve(_lower.AsSpan(0, n), _diagonal.AsSpan(0, n), _upper.AsSpan(0, n), _oxygen.AsSpan(first, n));
    }
}
