using CsCheck;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Water;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Water;

public class WaterPropertyTests
{
    [Fact]
    public void Expansion_is_the_slope_of_density()
    {
        Gen.Double[0.5, 39.5].Hold(t =>
        {
            double slope = (FreshWater.DensityKgPerM3(t + 1e-4) - FreshWater.DensityKgPerM3(t - 1e-4)) / 2e-4;
            return Math.Abs((-slope / FreshWater.DensityKgPerM3(t)) - FreshWater.ExpansionPerK(t)) < 1e-9;
        });
    }

    [Fact]
    public void Dew_point_undoes_saturation()
    {
        Gen.Double[-20, 45].Hold(t => Math.Abs(MoistAir.DewPointC(MoistAir.SaturationVapourPa(t)) - t) < 1e-6);
    }

    [Fact]
    public void Warm_temperature_of_a_density_undoes_density()
    {
        Gen.Double[5, 35].Hold(t => Math.Abs(FreshWater.WarmTempOfDensityC(FreshWater.DensityKgPerM3(t)) - t) < 1e-6);
    }

    [Fact]
    public void Day_length_at_equator_stays_near_twelve_hours()
    {
        for (int day = 0; day < 365; day += 5)
        {
            DayLight light = DayLight.On(new DateOnly(2025, 1, 1).AddDays(day), new GeoPoint(0, 20));
            Assert.InRange(light.LengthH, 12.0, 12.25);
        }
    }

    [Fact]
    public void Sun_stands_on_the_edge_at_sunrise_and_highest_at_noon()
    {
        Gen.Select(Gen.Double[-60, 60], Gen.Double[-180, 179], Gen.Int[0, 364]).Hold((lat, lon, day) =>
        {
            GeoPoint place = new(lat, lon);
            DayLight light = DayLight.On(new DateOnly(2025, 1, 1).AddDays(day), place);
            if (light.Rise is not { } rise) return true;
            double noonZenith = SolarPosition.At(light.Noon, place).ZenithDeg;
            return Math.Abs(SolarPosition.At(rise, place).ZenithDeg - 90.833) < 0.4
                && noonZenith <= SolarPosition.At(light.Noon.AddMinutes(20), place).ZenithDeg
                && noonZenith <= SolarPosition.At(light.Noon.AddMinutes(-20), place).ZenithDeg;
        });
    }

    [Fact]
    public void Polar_winter_has_no_sunrise_and_polar_summer_no_sunset()
    {
        Assert.Null(DayLight.On(new DateOnly(2025, 12, 21), new GeoPoint(80, 0)).Rise);
        Assert.Equal(24, DayLight.On(new DateOnly(2025, 6, 21), new GeoPoint(80, 0)).LengthH);
    }

    [Fact]
    public void Fluxes_stay_finite_and_three_passes_from_the_hour_before_are_enough()
    {
        Gen.Select(Gen.Double[0, 30], Gen.Double[-30, 45], Gen.Double[0.01, 1], Gen.Double[0, 35]).Hold((wind, air, humidity, water) =>
        {
            double q = MoistAir.SpecificHumidityShare(humidity * MoistAir.SaturationVapourPa(air), 98000);
            SurfaceFluxes fluxes = default;
            fluxes.Solve(wind, air, q, water, 98000, 60);
            double exact = fluxes.LatentWPerM2;
            fluxes.Solve(wind, air, q, water, 98000, 3);
            return double.IsFinite(fluxes.SensibleWPerM2) && double.IsFinite(exact) && fluxes.StressPa >= 0
                && Math.Abs(fluxes.LatentWPerM2 - exact) < 0.02 * Math.Abs(exact) + 0.5;
        });
    }

    [Fact]
    public void Light_followed_down_in_steps_is_the_light_at_each_depth()
    {
        Gen.Select(Gen.Double[0.1, 5], Gen.Double[0, 2], Gen.Double[0.1, 2]).Hold((extinction, depth, step) =>
        {
            LightWalk light = new(extinction, depth, step);
            for (int i = 0; i < 30; i++)
            {
                if (Math.Abs(light.LeftShare - UnderwaterLight.LeftThreeBandShare(extinction, depth + (i * step))) > 1e-12) return false;
                light.Down();
            }

            return true;
        });
    }

    [Fact]
    public void Wind_stress_and_loss_of_heat_grow_with_wind()
    {
        double q = MoistAir.SpecificHumidityShare(0.7 * MoistAir.SaturationVapourPa(12), 98000), stress = -1, loss = -1;
        for (double wind = 0; wind <= 20; wind += 1)
        {
            SurfaceFluxes fluxes = default;
            fluxes.Solve(wind, 12, q, 18, 98000, 40);
            Assert.True(fluxes.StressPa > stress && fluxes.LatentWPerM2 + fluxes.SensibleWPerM2 > loss);
            stress = fluxes.StressPa;
            loss = fluxes.LatentWPerM2 + fluxes.SensibleWPerM2;
        }
    }

    [Fact]
    public void Cloud_from_shortwave_undoes_shortwave_from_cloud()
    {
        Gen.Double[0.2, 1].Hold(n => Math.Abs(Sunlight.CloudFromRatioShare(Sunlight.CloudTransmissionShare(n)) - n) < 1e-9);
    }
}
