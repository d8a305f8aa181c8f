using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Tests.Water;

public class WaterCheckValueTests
{
    private static readonly GeoPoint Place = new(45, -93);
    private static readonly SolarPosition Sun = SolarPosition.At(new DateTimeOffset(2025, 10, 15, 18, 0, 0, TimeSpan.Zero), Place);
    private static readonly double Vapour15 = 0.6 * MoistAir.SaturationVapourPa(15);

    private static readonly Check[] Checks =
    [
        new("A01", 998.20675, 0.001, () => FreshWater.DensityKgPerM3(20)),
        new("A02", 999.7027, 0.001, () => FreshWater.DensityKgPerM3(10)),
        new("A03", 999.97495, 0.001, () => FreshWater.DensityKgPerM3(4)),
        new("A04", 0.000206867, 2e-7, () => FreshWater.ExpansionPerK(20)),
        new("A05", 0.0013059, 3e-6, () => FreshWater.DynamicViscosityPaS(10)),
        new("A06", 1.00337e-6, 3e-9, () => FreshWater.KinematicViscosityM2PerS(20)),
        new("A07", 4185.49, 0.5, () => FreshWater.SpecificHeatJPerKgK(15)),
        new("A08", 2339.32, 1, () => MoistAir.SaturationVapourPa(20)),
        new("A09", 97772.6, 5, () => MoistAir.PressureAtElevationPa(300)),
        new("A10", 1.17739, 0.001, () => MoistAir.DensityKgPerM3(15, Vapour15, 97772.6)),
        new("A11", 2465580, 500, () => MoistAir.LatentHeatJPerKg(15)),
        new("A12", 9.09243, 0.005, () => DissolvedOxygen.SaturationMgPerL(20, 101325)),
        new("A13", 10.8877, 0.01, () => DissolvedOxygen.SaturationMgPerL(10, MoistAir.PressureAtElevationPa(300))),
        new("A14", 215458, 50, () => FreshWater.PressureAtDepthPa(MoistAir.PressureAtElevationPa(300), 12, 10)),
        new("B01", 53.8087, 0.05, () => Sun.ZenithDeg),
        new("B02", -8.80608, 0.03, () => Sun.DeclinationDeg),
        new("B03", 14.3547, 0.1, () => Sun.EquationOfTimeMinutes),
        new("B04", 10.9719, 0.03, () => DayLight.On(new DateOnly(2025, 10, 15), Place).LengthH),
        new("B05", 748.485, 1, () => (DayLight.On(new DateOnly(2025, 10, 15), Place).Rise!.Value - new DateTimeOffset(2025, 10, 15, 0, 0, 0, TimeSpan.Zero)).TotalMinutes),
        new("B06", 227.225, 1, () => Sunlight.DailyTopOfAirWPerM2(45, 288)),
        new("B07", 641.435, 2, () => Sunlight.ClearSkyWPerM2(Math.Cos(50 * Math.PI / 180), 98000, 1000, 1361)),
        new("B08", 556.696, 1, () => 641.4 * Sunlight.CloudTransmissionShare(0.6)),
        new("B09", 0.763763, 0.002, () => Sunlight.CloudFromRatioShare(0.7)),
        new("B10", 0.0596909, 0.0005, () => UnderwaterLight.FresnelShare(60)),
        new("B11", 0.0697451, 0.0005, () => UnderwaterLight.DirectAlbedoShare(0.5)),
        new("B12", 0.566667, 0.001, () => UnderwaterLight.ExtinctionPerM(3)),
        new("B13", 45.9249, 0.2, () => UnderwaterLight.AtDepthWPerM2(600 * (1 - 0.07), 0.5667, 3)),
        new("B14", 120.566, 0.1, () => Sunlight.FromTemperatureRangeWPerM2(5, 16, 227.2)),
        new("C01", 294.853, 0.3, () => Longwave.ClearSkyWPerM2(15, Vapour15)),
        new("C02", 304.191, 0.3, () => Longwave.ClearSkyPrataWPerM2(15, Vapour15)),
        new("C03", 300.906, 0.3, () => Longwave.ClearSkyBrutsaertWPerM2(15, Vapour15)),
        new("C04", 335.201, 0.4, () => Longwave.AllSkyWPerM2(Longwave.ClearSkyWPerM2(15, Vapour15), 15, 0.5)),
        new("C05", 384.482, 0.2, () => Longwave.EmittedWPerM2(16)),
        new("C06", 44.5526, 0.9, () => Fluxes(4, 10, 0.7, 16).SensibleWPerM2),
        new("C07", 113.276, 2.3, () => Fluxes(4, 10, 0.7, 16).LatentWPerM2),
        new("C08", 0.151252, 0.0015, () => Fluxes(4, 10, 0.7, 16).AirFrictionMps),
        new("C09", -8.04139, 0.5, () => Fluxes(4, 20, 0.6, 14).SensibleWPerM2),
        new("C10", 0.00198275, 1e-5, () => WindOverWater.CapillaryDragShare(2)),
        new("C11", 0.00114888, 3e-6, () => WindOverWater.CharnockDragShare(7)),
        new("C12", 0.0675541, 0.0003, () => WindOverWater.StressPa(7, 1.2)),
        new("C13", 0.00821913, 3e-5, () => WindOverWater.WaterFrictionMps(WindOverWater.StressPa(7, 1.2), 1000)),
        new("C14", 4.6778, 0.01, () => 4 * WindOverWater.HeightFactor(2, 10)),
        new("C15", 0.139292, 0.001, () => WindOverWater.AreaExposureShare(5e5)),
        new("C16", 0.144294, 0.001, () => WindOverWater.CanopyExposureShare(1000, 750)),
        new("C18", 157.189, 1, () => PondEvaporation.LatentWPerM2(3.5, 10, 0.7 * MoistAir.SaturationVapourPa(10), 16, 98000)),
        new("D16", 1.90986, 0.001, () => WindOverWater.MeanCubeFactor(2)),
        new("E10", 0.10763, 0.001, () => FreshWater.DensityKgPerM3(11) - FreshWater.DensityKgPerM3(12)),
        new("F04", 0.463193, 0.001, () => DissolvedOxygen.TemperatureFactor(10, 1.08)),
        new("F05", 689.328, 1, () => DissolvedOxygen.SchmidtNumber(15)),
        new("F06", 4.33955, 0.02, () => DissolvedOxygen.Transfer600Mps(4) * 360000),
        new("F07", 0.97167, 0.01, () => DissolvedOxygen.TransferMps(4, 15) * 86400),
    ];

    public static TheoryData<string> Ids => Check.Ids(Checks);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Formula_gives_its_check_value(string id) => Checks.First(c => c.Id == id).Assert();

    private static SurfaceFluxes Fluxes(double windMps, double airC, double humidity, double waterC)
    {
        SurfaceFluxes fluxes = default;
        double q = MoistAir.SpecificHumidityShare(humidity * MoistAir.SaturationVapourPa(airC), 98000);
        fluxes.Solve(windMps, airC, q, waterC, 98000, 40);
        return fluxes;
    }
}
