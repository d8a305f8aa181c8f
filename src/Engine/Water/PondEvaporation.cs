using SecondShore.Engine.Core;

namespace SecondShore.Engine.Water;

/// <summary>Latent heat by forced and free convection in closed form: an upper bound beside <see cref="SurfaceFluxes"/>.</summary>
public static class PondEvaporation
{
    /// <summary>Latent heat the water loses, W m-2; reads 35 to 40 % high on natural lakes (source: Ryan1974).</summary>
    /// <param name="wind2mMps">Wind at 2 m, m s-1.</param>
    /// <param name="airTempC">Air temperature, degC.</param>
    /// <param name="vapourPa">Vapour pressure of the air, Pa.</param>
    /// <param name="waterC">Surface temperature, degC.</param>
    /// <param name="pressurePa">Air pressure, Pa.</param>
    public static double LatentWPerM2(double wind2mMps, double airTempC, double vapourPa, double waterC, double pressurePa)
    {
        double saturation = MoistAir.SaturationVapourPa(waterC);
        double difference = Virtual(waterC, saturation) - Virtual(airTempC, vapourPa);
        return ((2.7 * Math.Cbrt(Math.Max(0, difference))) + (3.2 * wind2mMps)) * (saturation - vapourPa) / 100.0;

        double Virtual(double tempC, double e) => (tempC + PhysicalConstants.ZeroCelsiusK) * (1.0 + (0.61 * MoistAir.SpecificHumidityShare(e, pressurePa)));
    }
}
