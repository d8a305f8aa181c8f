using SecondShore.Engine.Core;

namespace SecondShore.Engine.Water;

/// <summary>Oxygen in fresh water: saturation, exchange with the air, temperature factor of demand.</summary>
public static class DissolvedOxygen
{
    /// <summary>Saturation under wet air, mg/L, 0 to 40 degC, 0.5 to 1.1 atm, 0.1 % (source: BensonKrause1984).</summary>
    /// <param name="tempC">Water temperature, degC.</param>
    /// <param name="pressurePa">Air pressure at the surface, Pa.</param>
    public static double SaturationMgPerL(double tempC, double pressurePa)
    {
        double kelvin = tempC + PhysicalConstants.ZeroCelsiusK, r = 1.0 / kelvin;
        double atOneAtm = Math.Exp(-139.34411 + (r * (1.575701e5 + (r * (-6.642308e7 + (r * (1.243800e10 - (r * 8.621949e11))))))));
        double pressureAtm = pressurePa / MoistAir.SeaLevelPressurePa;
        double vapourAtm = Math.Exp(11.8571 - (3840.70 * r) - (216961.0 * r * r));
        double theta = 0.000975 - (1.426e-5 * tempC) + (6.436e-8 * tempC * tempC);
        return atOneAtm * pressureAtm * (1.0 - (vapourAtm / pressureAtm)) * (1.0 - (theta * pressureAtm))
            / ((1.0 - vapourAtm) * (1.0 - theta));
    }

    /// <summary>Schmidt number of oxygen in fresh water, dimensionless (source: Wanninkhof1992).</summary>
    public static double SchmidtNumber(double tempC) =>
        1800.6 + (tempC * (-120.10 + (tempC * (3.7818 - (0.047608 * tempC)))));

    /// <summary>Gas transfer velocity at Schmidt number 600, m s-1; published as 2.07 + 0.215 U10^1.7 cm/h (source: ColeCaraco1998).</summary>
    /// <param name="windMps">Wind at 10 m, m s-1, 0 or more.</param>
    public static double Transfer600Mps(double windMps) => (2.07 + (0.215 * Math.Pow(windMps, 1.7))) / 360000.0;

    /// <summary>Transfer velocity of oxygen through the surface, m s-1.</summary>
    public static double TransferMps(double windMps, double waterC) =>
        Transfer600Mps(windMps) / Math.Sqrt(SchmidtNumber(waterC) / 600.0);

    /// <summary>Factor on a rate known at 20 degC (source: Bowie1985; theta 1.047 water, 1.065 to 1.08 sediment).</summary>
    public static double TemperatureFactor(double tempC, double perKelvinFactor) => Math.Pow(perKelvinFactor, tempC - 20.0);
}
