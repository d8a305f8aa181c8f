namespace SecondShore.Engine.Core;

/// <summary>Constants shared by every domain: one home each, with unit and source.</summary>
/// <remarks>Static read-only fields rather than <c>const</c>, so that an assembly never carries a stale copy.</remarks>
public static class PhysicalConstants
{
    /// <summary>Acceleration of gravity, m s-2 (mid-latitude value used by all check values).</summary>
    public static readonly double GravityMps2 = 9.81;

    /// <summary>Standard gravity, m s-2, exact: what turns a kilogram on a line's label into newtons (CGPM of 1901).</summary>
    public static readonly double StandardGravityMps2 = 9.80665;

    /// <summary>Stefan-Boltzmann constant, W m-2 K-4 (CODATA 2018).</summary>
    public static readonly double StefanBoltzmannWPerM2K4 = 5.670374e-8;

    /// <summary>Von Karman constant, dimensionless.</summary>
    public static readonly double VonKarman = 0.40;

    /// <summary>0 degC in kelvin.</summary>
    public static readonly double ZeroCelsiusK = 273.15;

    /// <summary>Seconds in an hour.</summary>
    public static readonly double HourS = 3600.0;

    /// <summary>Seconds in a day.</summary>
    public static readonly double DayS = 86400.0;

    /// <summary>Earth's rotation rate, rad s-1 (sidereal).</summary>
    public static readonly double EarthRotationRadPerS = 7.292115e-5;

    /// <summary>Semi-major axis of the WGS 84 ellipsoid, m.</summary>
    public static readonly double EarthSemiMajorM = 6378137.0;

    /// <summary>Flattening of the WGS 84 ellipsoid, dimensionless.</summary>
    public static readonly double EarthFlattening = 1.0 / 298.257223563;

    /// <summary>Round density of fresh water for stress and wave formulas, kg m-3 (0.2 % low at 20 degC).</summary>
    public static readonly double RoundWaterDensityKgPerM3 = 1000.0;
}
