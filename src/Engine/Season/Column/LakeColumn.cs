using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>
/// One vertical column of a lake, stepped through weather: surface energy balance, light, convection, wind stirring, deep
/// diffusion, pool level and flows. Heat and volume close to rounding in every step; a step allocates nothing.
/// </summary>
/// <remarks>
/// Source: science page season.md (exact potential-energy bookkeeping on a fixed grid). Not safe for use from two threads
/// at once. State: temperatures of layers from <see cref="Top"/> (the surface) to the grid's last.
/// </remarks>
public sealed partial class LakeColumn
{
    private readonly ColumnGrid _grid;
    private readonly double[] _tempC, _densityKgPerM3, _volumeM3, _centreM, _areaM2, _heatPerLight, _perDistance, _perVolume;
    private readonly double[] _drawnC, _passedOn, _scratch, _diffusivity;
    private ColumnParameters _parameters;
    private SurfaceFluxes _fluxes;
    private bool _warm;
    // Layers down to these may have changed since their densities were worked out, and since they were last put in order.
    private int _staleTo, _looseTo;
    private int _top, _sinceDiffusion, _lightTo;
    private double _extinctionPerM, _dropM, _diffusionS;

    /// <summary>Makes a column at one temperature.</summary>
    /// <param name="grid">Its layers.</param>
    /// <param name="parameters">Its numbers.</param>
    /// <param name="tempC">Temperature of all layers, degC, 0 to 45.</param>
    /// <param name="dropM">How far the surface lies below full pool, m; negative above it, within the grid's room.</param>
    public LakeColumn(ColumnGrid grid, ColumnParameters parameters, double tempC = 4.0, double dropM = 0)
    {
        _grid = Require.NotNull(grid);
        _parameters = Require.NotNull(parameters);
        Require.InRange(tempC, 0, 45);
        int n = grid.Count;
        _tempC = new double[n];
        _densityKgPerM3 = new double[n];
        _volumeM3 = [.. grid.VolumeM3];
        _centreM = [.. grid.CentreM];
        _areaM2 = [.. grid.FaceAreaM2];
        _heatPerLight = new double[n];
        (_perDistance, _perVolume) = ([.. grid.PerDistance], [.. grid.PerVolume]);
        (_drawnC, _passedOn, _scratch, _diffusivity) = (new double[n], new double[n], new double[n], new double[n]);
        Array.Fill(_tempC, tempC);
        _extinctionPerM = parameters.LightExtinctionPerM;
        PlaceSurface(Math.Clamp(dropM, -grid.AboveM, LowestDropM));
    }

    /// <summary>The layers.</summary>
    public ColumnGrid Grid => _grid;

    /// <summary>Its numbers; new ones hold from the next step.</summary>
    public ColumnParameters Parameters
    {
        get => _parameters;
        set
        {
            _parameters = Require.NotNull(value);
            SetExtinction(value.LightExtinctionPerM);
        }
    }

    /// <summary>Index of the surface layer; layers above it are dry.</summary>
    public int Top => _top;

    /// <summary>How far the surface lies below full pool, m.</summary>
    public double DropM => _dropM;

    /// <summary>Depth of the water today, m.</summary>
    public double DepthM => _grid.FaceDepthM[^1] - _dropM;

    /// <summary>Temperatures, degC; wet from <see cref="Top"/>.</summary>
    public ReadOnlySpan<double> TempC => _tempC;

    /// <summary>Temperature of the surface layer, degC.</summary>
    public double SurfaceTempC => _tempC[_top];

    /// <summary>Index of the last layer of the surface mixed layer of the last step.</summary>
    public int MixedTo { get; private set; }

    /// <summary>Ice, m of thickness.</summary>
    public double IceM { get; private set; }

    /// <summary>Fluxes of the last step.</summary>
    public SurfaceFluxes Fluxes => _fluxes;

    /// <summary>Friction velocity in the water in the last step, m s-1.</summary>
    public double WaterFrictionMps { get; private set; }

    /// <summary>All heat put in since the start, J: through the surface, with water in and out, from and to ice.</summary>
    public double HeatInJ { get; private set; }

    /// <summary>Heat held above 0 degC, J.</summary>
    public double HeatContentJ
    {
        get
        {
            double sum = 0;
            for (int i = _top; i < _tempC.Length; i++) sum += _volumeM3[i] * _tempC[i];
            return sum * FreshWater.HeatCapacityJPerM3K;
        }
    }

    /// <summary>Volume of water, m3.</summary>
    public double VolumeM3
    {
        get
        {
            double sum = 0;
            for (int i = _top; i < _volumeM3.Length; i++) sum += _volumeM3[i];
            return sum;
        }
    }

    /// <summary>Volumes of the layers today, m3; wet from <see cref="Top"/>.</summary>
    public ReadOnlySpan<double> LayerVolumesM3 => _volumeM3;

    /// <summary>Area of the surface today, m2.</summary>
    public double SurfaceAreaM2 => _areaM2[_top];

    /// <summary>Depth of a layer's centre of volume below today's surface, m.</summary>
    public double LayerDepthM(int layer) => _centreM[layer] - _dropM;

    /// <summary>Temperature at a depth below today's surface, degC, straight between layer centres.</summary>
    public double TempAtC(double depthM)
    {
        double depthBelowFull = depthM + _dropM;
        int n = _tempC.Length;
        if (depthBelowFull <= _centreM[_top]) return _tempC[_top];
        if (depthBelowFull >= _centreM[n - 1]) return _tempC[n - 1];
        int i = Math.Clamp((int)((depthBelowFull + _grid.AboveM) / _grid.LayerM), _top, n - 1);
        while (i > _top && _centreM[i] > depthBelowFull) i--;
        while (i < n - 2 && _centreM[i + 1] < depthBelowFull) i++;
        double t = (depthBelowFull - _centreM[i]) / (_centreM[i + 1] - _centreM[i]);
        return _tempC[i] + (t * (_tempC[i + 1] - _tempC[i]));
    }

    /// <summary>Temperatures at depths below today's surface, degC: <see cref="TempAtC"/> in one walk down.</summary>
    /// <param name="depthM">Depths, m, increasing.</param>
    /// <param name="tempC">Receives the temperatures, same length.</param>
    internal void TempsAtC(ReadOnlySpan<double> depthM, Span<float> tempC)
    {
        double[] centre = _centreM, temp = _tempC, perDistance = _perDistance;
        int i = _top, last = temp.Length - 1;
        for (int k = 0; k < depthM.Length; k++)
        {
            double z = depthM[k] + _dropM;
            while (i < last && centre[i + 1] < z) i++;
            tempC[k] = (float)(z <= centre[i] || i == last ? temp[i] : temp[i] + ((z - centre[i]) * perDistance[i + 1] * (temp[i + 1] - temp[i])));
        }
    }

    /// <summary>Sets the temperatures from a profile: straight between points, held beyond them, then made stable.</summary>
    /// <param name="depthM">Depths below today's surface, m, increasing.</param>
    /// <param name="tempC">Temperatures, degC; clamped to 0 to 45.</param>
    public void SetProfile(ReadOnlySpan<double> depthM, ReadOnlySpan<double> tempC)
    {
        Require.SameLength(tempC.Length, depthM.Length, nameof(tempC));
        Require.InRange(depthM.Length, 1, int.MaxValue, nameof(depthM));
        for (int i = 0, k = 0; i < _tempC.Length; i++)
        {
            double z = Math.Max(0, _centreM[i] - _dropM);
            while (k < depthM.Length - 2 && depthM[k + 1] < z) k++;
            double value = depthM.Length == 1 || z <= depthM[0] ? tempC[0]
                : z >= depthM[^1] ? tempC[^1]
                : tempC[k] + ((z - depthM[k]) / (depthM[k + 1] - depthM[k]) * (tempC[k + 1] - tempC[k]));
            _tempC[i] = Math.Clamp(Require.Finite(value, nameof(tempC)), 0, 45);
        }

        TouchAll();
        Adjust();
        HeatInJ = 0;
        IceM = 0;
        _warm = false;
    }

    /// <summary>Moves the state toward a measured profile: within its depths by a share of the difference, fading beyond its ends.</summary>
    /// <param name="depthM">Depths below today's surface, m, increasing.</param>
    /// <param name="tempC">Temperatures, degC.</param>
    /// <param name="share">Share of the difference taken over, 0 to 1.</param>
    public void NudgeTo(ReadOnlySpan<double> depthM, ReadOnlySpan<double> tempC, double share)
    {
        Require.SameLength(tempC.Length, depthM.Length, nameof(tempC));
        if (depthM.Length == 0) return;
        double before = HeatContentJ, reachM = 2.0;
        for (int i = _top, k = 0; i < _tempC.Length; i++)
        {
            double z = Math.Max(0, _centreM[i] - _dropM);
            while (k < depthM.Length - 2 && depthM[k + 1] < z) k++;
            int j = Math.Min(k + 1, depthM.Length - 1);
            double span = depthM[j] - depthM[k], t = span > 0 ? Math.Clamp((z - depthM[k]) / span, 0, 1) : 0;
            double beyond = Math.Max(0, Math.Max(depthM[0] - z, z - depthM[^1]));
            // Above the first reading the surface layer is one; below the last the difference fades over some metres.
            double reach = z < depthM[0] ? 1.0 : Math.Exp(-beyond / (reachM + (0.2 * depthM[^1])));
            double seen = tempC[k] + (t * (tempC[j] - tempC[k]));
            double here = beyond > 0 ? TempAtC(z < depthM[0] ? depthM[0] : depthM[^1]) : _tempC[i];
            _scratch[i] = Math.Clamp(_tempC[i] + (share * reach * (seen - here)), 0, 45);
        }

        for (int i = _top; i < _tempC.Length; i++) _tempC[i] = _scratch[i];
        TouchAll();
        Adjust();
        HeatInJ += HeatContentJ - before;
    }

    /// <summary>Moves a step of the profile from one depth to another: the water above stretches, the water below gives way.</summary>
    /// <param name="fromM">Depth of the step below today's surface, m, above 0 and under the water's depth.</param>
    /// <param name="toM">Where it shall stand, m; held away from surface and bottom.</param>
    public void MoveStep(double fromM, double toM)
    {
        double depthM = DepthM, edgeM = Math.Min(0.5, 0.1 * depthM);
        double from = Math.Clamp(Require.Finite(fromM), edgeM, depthM - edgeM), to = Math.Clamp(Require.Finite(toM), edgeM, depthM - edgeM);
        double before = HeatContentJ;
        for (int i = _top; i < _tempC.Length; i++)
        {
            double z = Math.Max(0, _centreM[i] - _dropM);
            _scratch[i] = TempAtC(z <= to ? z * from / to : from + ((z - to) * (depthM - from) / (depthM - to)));
        }

        for (int i = _top; i < _tempC.Length; i++) _tempC[i] = _scratch[i];
        TouchAll();
        Adjust();
        HeatInJ += HeatContentJ - before;
    }

    /// <summary>Lays ice of a thickness on the lake, m, 0 to 2: for a start in winter.</summary>
    public void SetIce(double thicknessM) => IceM = Require.InRange(thicknessM, 0, 2);

    /// <summary>Light extinction from now on, m-1: clarity may change over the season.</summary>
    public void SetExtinction(double extinctionPerM)
    {
        if (extinctionPerM == _extinctionPerM) return;
        _extinctionPerM = Require.InRange(extinctionPerM, 0.01, 50);
        WorkOutLight();
    }

    // Less light than this share is not carried further down: a thousandth of a watt at noon.
    private const double LeastLightShare = 1e-5;

    private double LowestDropM => _grid.FaceDepthM[^1] - Math.Min(4.0 * _grid.LayerM, 0.9 * (_grid.FaceDepthM[^1] + _grid.AboveM));

    /// <summary>Puts the surface at a level: the surface layer keeps between half and one and a half thicknesses.</summary>
    private void PlaceSurface(double dropM)
    {
        int n = _grid.Count, before = _top;
        _dropM = dropM;
        double exact = (dropM + _grid.AboveM) / _grid.LayerM;
        _top = Math.Clamp((int)Math.Floor(exact + 0.5), 0, n - 2);
        // Only the surface layer differs from the grid: the one before is put back.
        (_volumeM3[before], _centreM[before], _areaM2[before]) = (_grid.VolumeM3[before], _grid.CentreM[before], _grid.FaceAreaM2[before]);
        (_perVolume[before], _perDistance[before]) = (_grid.PerVolume[before], _grid.PerDistance[before]);
        _perDistance[before + 1] = _grid.PerDistance[before + 1];
        double lowerM = _grid.FaceDepthM[_top + 1];
        _areaM2[_top] = _grid.Basin.AreaAtM2(dropM);
        _volumeM3[_top] = _grid.VolumeBetweenM3(dropM, lowerM);
        _centreM[_top] = _grid.CentreBetweenM(dropM, lowerM);
        MixedTo = Math.Max(MixedTo, _top);
        _perVolume[_top] = 1.0 / _volumeM3[_top];
        _perDistance[_top + 1] = 1.0 / (_centreM[_top + 1] - _centreM[_top]);
        _waterVolumeM3 = _volumeM3[_top] + _grid.BelowM3[_top + 1];
        WorkOutLight();
        TouchAll();
    }

    private void TouchAll() => (_staleTo, _looseTo) = (_tempC.Length - 1, _tempC.Length - 1);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Touch(int to)
    {
        _staleTo = Math.Max(_staleTo, to);
        _looseTo = Math.Max(_looseTo, to);
    }

    // Heating of each layer, K per J m-2 of light past the surface; the last layer that light reaches keeps the rest, so the sum is exact.
    private void WorkOutLight()
    {
        double left = 1.0;
        int n = _tempC.Length;
        // The faces are evenly spaced but for the surface and the bottom, where light ends anyway.
        LightWalk light = new(_extinctionPerM, _grid.FaceDepthM[_top + 1] - _dropM, _grid.LayerM);
        for (int i = _top; i < n; i++)
        {
            double under = i == n - 1 ? 0.0 : light.LeftShare;
            light.Down();
            if (under < LeastLightShare) under = 0;
            double heat = (_areaM2[i] * left) - (_areaM2[i + 1] * under);
            _heatPerLight[i] = heat * _perVolume[i] / FreshWater.HeatCapacityJPerM3K;
            left = under;
            _lightTo = i;
            if (under == 0) break;
        }
    }
}
