using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Water;

/// <summary>
/// Sensible and latent heat and stress between lake and air by bulk Monin-Obukhov similarity: finite in calm unstable
/// nights (source: Zeng1998). A struct, so that a column keeps the last hour's scales as its next first guess.
/// </summary>
public struct SurfaceFluxes : IEquatable<SurfaceFluxes>
{
    private const double BoundaryLayerM = 1000.0;
    private static readonly double K = PhysicalConstants.VonKarman, G = PhysicalConstants.GravityMps2;

    // Where the free-convection branches take over, and the stability functions' values there.
    private const double MomentumEdge = -1.574, HeatEdge = -0.465;
    private static readonly double PsiMomentumEdge = PsiMomentum(MomentumEdge), PsiHeatEdge = PsiHeat(HeatEdge);
    private static readonly double MomentumEdgeRoot = Math.Cbrt(-MomentumEdge), HeatEdgeRoot = 1.0 / Math.Cbrt(-HeatEdge);

    // Of the last solution: gustiness, the speed its friction belongs to, and how its stability stood to the bulk Richardson number.
    // Friction goes nearly with the speed and stability with that number, so scaled by them the last hour is a good guess of this one.
    private const double FirstStabilityShare = 10.0, LeastStabilityShare = 2.0, MostStabilityShare = 60.0;
    private double _gust, _speedMps, _stabilityShare;

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
    /// <param name="passes">Passes of the iteration: 12 from a cold start (40 in strongly stable air), 1 from the hour before (1 W m-2 off in the mean square).</param>
    /// <param name="heightM">Height of wind, temperature and humidity, m.</param>
    public void Solve(double windMps, double airTempC, double specificHumidityShare, double waterC, double pressurePa, int passes, double heightM = 10.0)
    {
        double saturation = MoistAir.SaturationVapourPa(waterC);
        double surfaceQ = MoistAir.SpecificHumidityShare(saturation, pressurePa);
        double theta = airTempC + (0.0098 * heightM), dT = theta - waterC, dQ = specificHumidityShare - surfaceQ;
        double kelvin = airTempC + PhysicalConstants.ZeroCelsiusK, thetaK = theta + PhysicalConstants.ZeroCelsiusK;
        double thetaV = thetaK * (1.0 + (0.61 * specificHumidityShare));
        double viscosity = MoistAir.KinematicViscosityM2PerS(airTempC);
        double driveK = (dT * (1.0 + (0.61 * specificHumidityShare))) + (0.61 * thetaK * dQ);
        // A cold start may swing and is damped; from a solution of the hour before only stable air needs it.
        bool warm = AirFrictionMps > 0;
        double keep = warm ? 0.0 : 0.5;
        double speed = Math.Max(Math.Sqrt((windMps * windMps) + (_gust * _gust)), 0.1);
        double friction = warm ? AirFrictionMps * speed / _speedMps : 0.035 * Math.Max(windMps, 0.3);
        double zeta = Math.Clamp((warm ? _stabilityShare : FirstStabilityShare) * Richardson(driveK, thetaV, speed, heightM), -100.0, 10.0);
        double tStar = 0, qStar = 0;
        for (int pass = 0; pass < passes; pass++)
        {
            double z0 = (0.013 * friction * friction / G) + (0.11 * viscosity / friction);
            double root = Math.Sqrt(Math.Sqrt(z0 * friction / viscosity)), heatOffset = (2.67 * root) - 2.57;
            double logM = Math.Log(heightM / z0), logH = logM + heatOffset;
            double fm = Momentum(zeta, logM), fh = Heat(zeta, logH);
            friction = (keep * friction) + ((1.0 - keep) * Math.Max(1e-4, K * speed / fm));
            tStar = K * dT / fh;
            qStar = K * dQ / fh;
            double virtualStar = (tStar * (1.0 + (0.61 * specificHumidityShare))) + (0.61 * thetaK * qStar);
            double next = Math.Clamp(K * heightM * G * virtualStar / (thetaV * friction * friction), -100.0, 10.0);
            zeta = next > 0 ? 0.5 * (zeta + next) : (keep * zeta) + ((1.0 - keep) * next);
            _gust = virtualStar < 0 ? Math.Cbrt(-G / thetaV * friction * virtualStar * BoundaryLayerM) : 0.0;
            speed = Math.Max(Math.Sqrt((windMps * windMps) + (_gust * _gust)), 0.1);
        }

        double density = pressurePa / (287.05 * kelvin * (1.0 + (0.608 * specificHumidityShare)));
        double richardson = Richardson(driveK, thetaV, speed, heightM);
        _stabilityShare = Math.Abs(richardson) > 1e-6 ? Math.Clamp(zeta / richardson, LeastStabilityShare, MostStabilityShare) : FirstStabilityShare;
        _speedMps = speed;
        AirFrictionMps = friction;
        SensibleWPerM2 = -density * MoistAir.SpecificHeatJPerKgK(specificHumidityShare) * friction * tStar;
        LatentWPerM2 = -density * MoistAir.LatentHeatJPerKg(waterC) * friction * qStar;
        StressPa = density * friction * friction * Math.Min(1.0, windMps / speed);
    }

    // Bulk Richardson number of the air over the water, from the difference of virtual temperature, K.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Richardson(double driveK, double virtualK, double speedMps, double heightM) =>
        G * heightM * driveK / (virtualK * speedMps * speedMps);

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

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double PsiMomentum(double zeta)
    {
        double square = Math.Sqrt(1.0 - (16.0 * zeta)), x = Math.Sqrt(square);
        return Math.Log((1.0 + x) * (1.0 + x) * (1.0 + square) * 0.125) - (2.0 * Math.Atan(x)) + (Math.PI / 2.0);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double PsiHeat(double zeta)
    {
        double square = Math.Sqrt(1.0 - (16.0 * zeta));
        return 2.0 * Math.Log((1.0 + square) * 0.5);
    }
}
