using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Water;

/// <summary>
/// Sensible and latent heat and stress between lake and air by bulk Monin-Obukhov similarity: finite in calm unstable
/// nights (source: Zeng1998). A struct, so that a column keeps the last hour's scales as its next first guess.
/// </summary>
public struct SurfaceFluxes : IEquatable<SurfaceFluxes>
{
    private const double K = 0.40, G = 9.81, BoundaryLayerM = 1000.0;

    // Where the free-convection branches take over, and the stability functions' values there.
    private const double MomentumEdge = -1.574, HeatEdge = -0.465;
    private static readonly double PsiMomentumEdge = PsiMomentum(MomentumEdge), PsiHeatEdge = PsiHeat(HeatEdge);
    private static readonly double MomentumEdgeRoot = Math.Cbrt(-MomentumEdge), HeatEdgeRoot = 1.0 / Math.Cbrt(-HeatEdge);

    private double _zeta, _gust;

    /// <summary>Sensible heat the lake loses, W m-2.</summary>
    public double SensibleWPerM2 { get; private set; }

    /// <summary>Latent heat the lake loses, W m-2; below 0 when dew falls.</summary>
    public double LatentWPerM2 { get; private set; }

    /// <summary>Wind stress on the water, N m-2.</summary>
    public double StressPa { get; private set; }

    /// <summary>Friction velocity of the air, m s-1.</summary>
    public double AirFrictionMps { get; private set; }

    /// <summary>Solves for the fluxes; starts from the last solution where there is one.</summary>
    /// <param name="windMps">Mean wind at the wind height, m s-1, 0 or more.</param>
    /// <param name="airTempC">Air temperature at 10 m, degC.</param>
    /// <param name="specificHumidityShare">Specific humidity of the air, kg/kg.</param>
    /// <param name="waterC">Temperature of the surface water, degC.</param>
    /// <param name="pressurePa">Air pressure, Pa.</param>
    /// <param name="passes">Passes of the iteration: 12 from a cold start (40 in strongly stable air), 3 from the hour before.</param>
    /// <param name="heightM">Height of wind, temperature and humidity, m.</param>
    public void Solve(double windMps, double airTempC, double specificHumidityShare, double waterC, double pressurePa, int passes, double heightM = 10.0)
    {
        double saturation = MoistAir.SaturationVapourPa(waterC);
        double surfaceQ = MoistAir.SpecificHumidityShare(saturation, pressurePa);
        double theta = airTempC + (0.0098 * heightM), dT = theta - waterC, dQ = specificHumidityShare - surfaceQ;
        double kelvin = airTempC + PhysicalConstants.ZeroCelsiusK, thetaK = theta + PhysicalConstants.ZeroCelsiusK;
        double thetaV = thetaK * (1.0 + (0.61 * specificHumidityShare));
        double viscosity = MoistAir.KinematicViscosityM2PerS(airTempC);
        double friction = AirFrictionMps > 0 ? AirFrictionMps : 0.035 * Math.Max(windMps, 0.3);
        double zeta = _zeta, tStar = 0, qStar = 0, speed = Math.Max(Math.Sqrt((windMps * windMps) + (_gust * _gust)), 0.1);
        for (int pass = 0; pass < passes; pass++)
        {
            double z0 = (0.013 * friction * friction / G) + (0.11 * viscosity / friction);
            double root = Math.Sqrt(Math.Sqrt(z0 * friction / viscosity)), heatOffset = (2.67 * root) - 2.57;
            double logM = Math.Log(heightM / z0), logH = logM + heatOffset;
            double fm = Momentum(zeta, logM), fh = Heat(zeta, logH);
            friction = 0.5 * (friction + Math.Max(1e-4, K * speed / fm));
            tStar = K * dT / fh;
            qStar = K * dQ / fh;
            double virtualStar = (tStar * (1.0 + (0.61 * specificHumidityShare))) + (0.61 * thetaK * qStar);
            zeta = 0.5 * (zeta + Math.Clamp(K * heightM * G * virtualStar / (thetaV * friction * friction), -100.0, 10.0));
            _gust = virtualStar < 0 ? Math.Cbrt(-G / thetaV * friction * virtualStar * BoundaryLayerM) : 0.0;
            speed = Math.Max(Math.Sqrt((windMps * windMps) + (_gust * _gust)), 0.1);
        }

        double density = pressurePa / (287.05 * kelvin * (1.0 + (0.608 * specificHumidityShare)));
        _zeta = zeta;
        AirFrictionMps = friction;
        SensibleWPerM2 = -density * MoistAir.SpecificHeatJPerKgK(specificHumidityShare) * friction * tStar;
        LatentWPerM2 = -density * MoistAir.LatentHeatJPerKg(waterC) * friction * qStar;
        StressPa = density * friction * friction * Math.Min(1.0, windMps / speed);
    }

    /// <inheritdoc/>
    public readonly bool Equals(SurfaceFluxes other) =>
        SensibleWPerM2 == other.SensibleWPerM2 && LatentWPerM2 == other.LatentWPerM2 && StressPa == other.StressPa;

    /// <inheritdoc/>
    public override readonly bool Equals(object? obj) => obj is SurfaceFluxes other && Equals(other);

    /// <inheritdoc/>
    public override readonly int GetHashCode() => HashCode.Combine(SensibleWPerM2, LatentWPerM2, StressPa);

    /// <summary>Whether two solutions agree.</summary>
    public static bool operator ==(SurfaceFluxes left, SurfaceFluxes right) => left.Equals(right);

    /// <summary>Whether two solutions differ.</summary>
    public static bool operator !=(SurfaceFluxes left, SurfaceFluxes right) => !left.Equals(right);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Momentum(double zeta, double logM)
    {
        if (zeta < MomentumEdge)
            return logM + Math.Log(MomentumEdge / zeta) - PsiMomentumEdge + (1.14 * (Math.Cbrt(-zeta) - MomentumEdgeRoot));
        if (zeta < 0) return logM - PsiMomentum(zeta);
        return zeta <= 1 ? logM + (5.0 * zeta) : logM - Math.Log(zeta) + 5.0 + (5.0 * Math.Log(zeta)) + zeta - 1.0;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Heat(double zeta, double logH)
    {
        if (zeta < HeatEdge)
            return logH + Math.Log(HeatEdge / zeta) - PsiHeatEdge + (0.8 * (HeatEdgeRoot - (1.0 / Math.Cbrt(-zeta))));
        if (zeta < 0) return logH - PsiHeat(zeta);
        return zeta <= 1 ? logH + (5.0 * zeta) : logH - Math.Log(zeta) + 5.0 + (5.0 * Math.Log(zeta)) + zeta - 1.0;
    }

    private static double PsiMomentum(double zeta)
    {
        double square = Math.Sqrt(1.0 - (16.0 * zeta)), x = Math.Sqrt(square);
        return Math.Log((1.0 + x) * (1.0 + x) * (1.0 + square) * 0.125) - (2.0 * Math.Atan(x)) + (Math.PI / 2.0);
    }

    private static double PsiHeat(double zeta)
    {
        double square = Math.Sqrt(1.0 - (16.0 * zeta));
        return 2.0 * Math.Log((1.0 + square) * 0.5);
    }
}
