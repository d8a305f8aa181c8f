using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion;

/// <summary>The current from the surface to the bottom at one place and hour. Immutable.</summary>
/// <remarks>
/// Sum of the wind's drift near the surface, its circulation in the wind-mixed layer (no net flow; over the bottom no slip,
/// over a thermocline free slip), the drift of the waves, and the layers' rocking. Equations: science page, motion.
/// </remarks>
public sealed class ColumnCurrent
{
    /// <summary>Water roughness under waves, m (choice: the middle of 0.002 to 0.02).</summary>
    public static readonly double RoughnessM = 0.005;

    /// <summary>Half thickness over which the layers' velocities blend, m (choice).</summary>
    public static readonly double BlendM = 1.0;

    private const double BedLayerM = 1.0;
    private const double BedRoughnessM = 0.003;
    private const double ViscosityShare = 0.067;
    private readonly double _stressPa;
    private readonly double _downwindEast;
    private readonly double _downwindNorth;
    private readonly WaveState _waves;

    /// <summary>Makes a column.</summary>
    /// <param name="depthM">Depth of the water, m, above 0.</param>
    /// <param name="thermoclineM">Depth of the thermocline here and now, m; infinite or below the bottom where there is none.</param>
    /// <param name="eastPa">Eastward stress at this place over the last hours, Pa.</param>
    /// <param name="northPa">Northward stress, Pa.</param>
    /// <param name="waves">Waves here.</param>
    /// <param name="upper">Velocity of the upper layer from its rocking.</param>
    /// <param name="lower">Velocity of the lower layer.</param>
    public ColumnCurrent(double depthM, double thermoclineM, double eastPa, double northPa, WaveState waves, Current upper, Current lower)
    {
        DepthM = Require.Positive(depthM);
        ThermoclineM = double.IsNaN(thermoclineM) ? double.PositiveInfinity : Math.Max(0.1, thermoclineM);
        _stressPa = Math.Sqrt((Require.Finite(eastPa) * eastPa) + (Require.Finite(northPa) * northPa));
        _downwindEast = _stressPa > 0 ? eastPa / _stressPa : 0.0;
        _downwindNorth = _stressPa > 0 ? northPa / _stressPa : 0.0;
        _waves = waves;
        Upper = upper;
        Lower = lower;
    }

    /// <summary>Depth of the water, m.</summary>
    public double DepthM { get; }

    /// <summary>Depth of the thermocline, m; infinite where there is none.</summary>
    public double ThermoclineM { get; }

    /// <summary>Velocity of the upper layer from its rocking.</summary>
    public Current Upper { get; }

    /// <summary>Velocity of the lower layer.</summary>
    public Current Lower { get; }

    /// <summary>Whether the column has a thermocline above its bottom.</summary>
    public bool IsLayered => ThermoclineM < DepthM;

    /// <summary>Drift at the very surface.</summary>
    public Current Surface => At(0.0);

    /// <summary>Current at a depth; at the bottom for greater depths.</summary>
    /// <param name="depthM">Depth below the surface, m, 0 or more.</param>
    public Current At(double depthM)
    {
        double z = Math.Min(Require.NotNegative(depthM), DepthM);
        double downwind = Math.Max(CirculationMps(z), SurfaceShearMps(z));
        Current wind = new(downwind * _downwindEast, downwind * _downwindNorth);
        double stokes = WaveTheory.StokesDriftMps(_waves.HeightM / Math.Sqrt(2.0), _waves.PeriodS, z);
        Current waves = Current.Toward(stokes, _waves.FromDeg + 180.0);
        return wind + waves + Rocking(z).Times(BedShare(z));
    }

    /// <summary>Circulation that a steady wind drives with no net flow, m s-1 downwind; negative is the return flow.</summary>
    public double CirculationMps(double depthM)
    {
        if (_stressPa == 0 || (IsLayered && depthM >= ThermoclineM)) return 0.0;
        double layerM = Math.Min(ThermoclineM, DepthM), s = 1.0 - (depthM / layerM);
        double friction = Math.Sqrt(_stressPa / PhysicalConstants.RoundWaterDensityKgPerM3);
        // tau h/(rho nu) with nu = 0.067 u* h.
        double scaleMps = friction / ViscosityShare;
        return IsLayered ? scaleMps * ((0.5 * s * s) - (1.0 / 6.0)) : scaleMps * ((0.75 * s * s) - (0.5 * s));
    }

    /// <summary>Log layer under the surface, m s-1 downwind; falls below the circulation within a metre or so.</summary>
    public double SurfaceShearMps(double depthM)
    {
        if (_stressPa == 0) return 0.0;
        double surfaceMps = 0.55 * Math.Sqrt(_stressPa / WindStress.AirDensityKgPerM3);
        double friction = Math.Sqrt(_stressPa / PhysicalConstants.RoundWaterDensityKgPerM3);
        double shear = surfaceMps - (friction / PhysicalConstants.VonKarman * Math.Log(Math.Max(depthM, RoughnessM) / RoughnessM));
        return depthM > 2.0 ? double.NegativeInfinity : shear;
    }

    private Current Rocking(double z)
    {
        if (!IsLayered) return Upper;
        double below = Math.Clamp((z - ThermoclineM + BlendM) / (2.0 * BlendM), 0.0, 1.0);
        return Upper.Times(1.0 - below) + Lower.Times(below);
    }

    // Within a metre of the bottom the flow falls off by the log law.
    private double BedShare(double z)
    {
        double aboveM = DepthM - z;
        if (aboveM >= BedLayerM) return 1.0;
        return Math.Max(0.0, Math.Log(Math.Max(aboveM, BedRoughnessM) / BedRoughnessM) / Math.Log(BedLayerM / BedRoughnessM));
    }
}
