using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

public sealed partial class LakeColumn
{
    private const int StepsPerDiffusion = 6;
    private const double IceHeatJPerM3 = 3.06e8; // density 917 times latent heat 333.5 kJ/kg
    private const double IceGrowthM2PerKS = 0.025 * 0.025 / 86400.0; // D.10: h = a sqrt(FDD)

    /// <summary>Steps through one step of weather.</summary>
    /// <param name="forcing">The weather.</param>
    /// <param name="step">Index of the step, 0 to forcing.Count - 1.</param>
    public void Step(ColumnForcing forcing, int step)
    {
        WeatherSeries weather = forcing.Weather;
        double stepS = weather.StepS, area = _areaM2[_top];
        double airC = weather.AirTempC[step] + _parameters.AirTempBiasK;
        double light = forcing.EnteringWPerM2[step] * _parameters.ShortwaveFactor;
        double energyJ = 0;
        if (IceM > 0)
        {
            light *= StepIce(airC, light, stepS);
            WaterFrictionMps = 0;
            Warm(light, stepS, 0);
        }
        else
        {
            double surfaceC = _tempC[_top], windMps = Math.Max(0, weather.WindMps[step] * _parameters.WindFactor);
            double humidity = forcing.SpecificHumidityShare[step];
            airC += _parameters.AirAdjustmentShare * (surfaceC - airC);
            _fluxes.Solve(windMps, airC, humidity, surfaceC, forcing.PressurePa, _warm ? 3 : 12);
            _warm = true;
            double net = (Longwave.WaterEmissivityShare * (weather.LongwaveWPerM2[step] + _parameters.LongwaveBiasWPerM2))
                - Longwave.EmittedWPerM2(surfaceC) - _fluxes.LatentWPerM2 - _fluxes.SensibleWPerM2;
            double friction = Math.Sqrt(_fluxes.StressPa / 1000.0);
            WaterFrictionMps = friction;
            energyJ = _parameters.StirringFactor * 1000.0 * friction * friction * friction * area * stepS;
            Warm(light, stepS, net);
            FreezeIfBelowZero();
        }

        Mix(forcing, step, stepS, energyJ);
    }

    private void Mix(ColumnForcing forcing, int step, double stepS, double energyJ)
    {
        if (_parameters.Structure == MixingStructure.EddyDiffusivity)
        {
            double wind2m = forcing.Weather.WindMps[step] * _parameters.WindFactor * 0.86;
            Densities();
            WindDiffusivity(IceM > 0 ? 0 : wind2m, forcing.LatitudeDeg);
            Diffuse(stepS);
            Adjust();
            MixedTo = EndOfUniform();
            return;
        }

        _diffusionS += stepS;
        if (++_sinceDiffusion >= StepsPerDiffusion || stepS > 7200)
        {
            Densities();
            DeepDiffusivity();
            Diffuse(_diffusionS);
            _sinceDiffusion = 0;
            _diffusionS = 0;
        }

        double freedJ = Adjust();
        Entrain(energyJ + (_parameters.ConvectionFactor * Math.Max(0, freedJ)));
    }

    // Light into every layer, the rest of the balance into the surface layer.
    private void Warm(double lightWPerM2, double stepS, double netWPerM2)
    {
        double energy = lightWPerM2 * stepS;
        double[] temp = _tempC, share = _heatPerLight;
        if (energy > 0)
        {
            for (int i = _top; i < temp.Length; i++) temp[i] += energy * share[i];
        }

        double netJ = netWPerM2 * stepS * _areaM2[_top];
        temp[_top] += netJ / (_volumeM3[_top] * FreshWater.HeatCapacityJPerM3K);
        HeatInJ += (energy * _areaM2[_top]) + netJ;
    }

    private void FreezeIfBelowZero()
    {
        double surfaceC = _tempC[_top];
        if (surfaceC >= 0) return;
        double missingJ = -surfaceC * _volumeM3[_top] * FreshWater.HeatCapacityJPerM3K;
        _tempC[_top] = 0;
        HeatInJ += missingJ;
        IceM += missingJ / (IceHeatJPerM3 * _areaM2[_top]);
    }

    // Grows by the cold above it (Stefan's law), melts by air and light; returns the share of light that reaches the water.
    private double StepIce(double airC, double lightWPerM2, double stepS)
    {
        if (airC < 0)
        {
            IceM += 0.5 * IceGrowthM2PerKS * -airC * stepS / Math.Max(IceM, 0.02);
        }
        else
        {
            double meltW = (0.5 * lightWPerM2) + (20.0 * airC);
            IceM = Math.Max(0, IceM - (meltW * stepS / IceHeatJPerM3));
        }

        IceM = Math.Min(IceM, 2.0);
        return IceM > 0 ? 0.1 : 1.0;
    }
}
