using System.Runtime.CompilerServices;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

public sealed partial class LakeColumn
{
    private const int StepsPerDiffusion = 6;
    private const double TiltMemoryS = 6 * 3600.0;
    private const double MostTilting = 3; // the water drifts at 3 % of the wind: more would be over a tenth of the power that drift takes up
    private double _tiltStress, _tiltResistance;
    private const double IceExchangeWPerM2K = 12.0, LightUnderIce = 0.05;
    private const double IceHeatJPerM3 = 3.06e8; // density 917 times latent heat 333.5 kJ/kg
    private const double IceGrowthM2PerKS = 0.025 * 0.025 / 86400.0; // Stefan1891: h = a sqrt(FDD)

    /// <summary>Steps through one step of weather.</summary>
    /// <param name="forcing">The weather.</param>
    /// <param name="step">Index of the step, 0 to forcing.Count - 1.</param>
    public void Step(ColumnForcing forcing, int step)
    {
        WeatherSeries weather = forcing.Weather;
        double stepS = weather.StepS, area = _areaM2[_top];
        double airC = weather.AirTempC[step] + _parameters.AirTempBiasK;
        double light = forcing.EnteringWPerM2[step] * _parameters.ShortwaveFactor;
        double energyJ = 0, nearJ = 0;
        if (IceM > 0)
        {
            light *= StepIce(airC, light, stepS);
            WaterFrictionMps = 0;
            // The water under ice gives its warmth to the ice.
            double toIce = IceExchangeWPerM2K * _tempC[_top];
            IceM = Math.Max(0, IceM - (toIce * stepS / IceHeatJPerM3));
            Warm(light, stepS, -toIce);
        }
        else
        {
            double surfaceC = _tempC[_top], windMps = Math.Max(0, weather.WindMps[step] * _parameters.WindFactor);
            double humidity = forcing.SpecificHumidityShare[step];
            airC += _parameters.AirAdjustmentShare * (surfaceC - airC);
            _fluxes.Solve(windMps, airC, humidity, surfaceC, forcing.PressurePa, _warm ? 1 : 12);
            _warm = true;
            double net = (Longwave.WaterEmissivityShare * (weather.LongwaveWPerM2[step] + _parameters.LongwaveBiasWPerM2))
                - Longwave.EmittedWPerM2(surfaceC) - _fluxes.LatentWPerM2 - _fluxes.SensibleWPerM2;
            double friction = Math.Sqrt(_fluxes.StressPa / 1000.0);
            WaterFrictionMps = friction;
            double faded = Fading(friction, forcing.CoriolisPerS) + Tilting(friction, stepS);
            double power = 1000.0 * friction * friction * friction * area * stepS;
            energyJ = faded * _parameters.StirringFactor * power;
            nearJ = _parameters.NearStirringFactor * power;
            Warm(light, stepS, net);
            FreezeIfBelowZero();
        }

        Mix(forcing, step, stepS, energyJ, nearJ);
    }

    // Eddies die on the way down: over a depth that goes with the wind and against the earth's turning.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private double Fading(double frictionMps, double coriolisPerS) =>
        frictionMps <= 0 ? 0 : Math.Exp(-_mixedM * coriolisPerS / (_parameters.StirringReachFactor * frictionMps));

    // Wind that tilts the layers drags them past each other: the shear at the thermocline stirs where the surface's eddies no longer reach.
    // Its power goes with the inverse of the Wedderburn number (SpigelImberger1980), felt over some hours of wind.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private double Tilting(double frictionMps, double stepS)
    {
        if (_parameters.TiltFactor <= 0) return 0;
        _tiltStress += ((frictionMps * frictionMps) - _tiltStress) * Math.Min(1.0, stepS / TiltMemoryS);
        return Math.Min(MostTilting, _parameters.TiltFactor * _tiltStress / Math.Max(1e-12, _tiltResistance));
    }

    private void Mix(ColumnForcing forcing, int step, double stepS, double energyJ, double nearJ)
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

        RememberRocking(energyJ, stepS);
        _diffusionS += stepS;
        if (++_sinceDiffusion >= StepsPerDiffusion || stepS > 7200)
        {
            Densities();
            DeepDiffusivity();
            Diffuse(_diffusionS);
            RememberResistance();
            _sinceDiffusion = 0;
            _diffusionS = 0;
        }

        double freedJ = Adjust();
        Entrain(energyJ + (_parameters.ConvectionFactor * Math.Max(0, freedJ)), nearJ, _parameters.NearStirringReachM);
    }

    /// <summary>Works out what resists a tilt now, m2 s-2: for tests of the law.</summary>
    internal double TiltResistanceNow()
    {
        Densities();
        RememberResistance();
        return _tiltResistance;
    }

    // What resists a tilt, m2 s-2: g' h^2 / L of the two layers with the profile's own density difference and first moment. Integrals
    // over the whole depth, so neither the thickness of the column's layers nor a warm skin of an afternoon moves it.
    private void RememberResistance()
    {
        int last = _tempC.Length - 1;
        double bottom = _densityKgPerM3[last], moment = 0, upperM = _dropM;
        for (int i = _top; i <= last; i++)
        {
            double lowerM = _grid.FaceDepthM[i + 1];
            moment += (bottom - _densityKgPerM3[i]) * (lowerM - upperM);
            upperM = lowerM;
        }

        double difference = bottom - _densityKgPerM3[_top];
        _tiltResistance = difference > 1e-6 && moment > 0
            ? Gravity / 1000.0 * moment * moment / difference / Math.Sqrt(4.0 * _areaM2[_top] / Math.PI)
            : 0;
    }

    // Light into every layer, the rest of the balance into the surface layer.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Warm(double lightWPerM2, double stepS, double netWPerM2)
    {
        double energy = lightWPerM2 * stepS;
        double[] temp = _tempC, share = _heatPerLight;
        if (energy > 0)
        {
            for (int i = _top; i <= _lightTo; i++) temp[i] += energy * share[i];
            Touch(_lightTo);
        }

        double netJ = netWPerM2 * stepS * _areaM2[_top];
        temp[_top] += netJ * _perVolume[_top] / FreshWater.HeatCapacityJPerM3K;
        Touch(_top);
        HeatInJ += (energy * _areaM2[_top]) + netJ;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void FreezeIfBelowZero()
    {
        double surfaceC = _tempC[_top];
        if (surfaceC >= 0) return;
        double missingJ = -surfaceC * _volumeM3[_top] * FreshWater.HeatCapacityJPerM3K;
        _tempC[_top] = 0;
        HeatInJ += missingJ;
        IceM += missingJ / (IceHeatJPerM3 * _areaM2[_top]);
    }

    /// <summary>Ice that the weather before a step would have left, m: growth by cold, melt by warmth and light over up to 150 days.</summary>
    /// <param name="forcing">The weather.</param>
    /// <param name="step">The step the column starts at.</param>
    public static double IceBeforeM(ColumnForcing forcing, int step)
    {
        double stepS = forcing.Weather.StepS, ice = 0;
        for (int k = Math.Max(0, step - (int)(150 * 86400.0 / stepS)); k < step; k++)
        {
            double airC = forcing.Weather.AirTempC[k];
            if (ice > 0 || airC < 0) ice = NextIce(Math.Max(ice, 1e-4), airC, forcing.EnteringWPerM2[k], stepS);
        }

        return ice;
    }

    // Grows by the cold above it (Stefan's law), melts by air and light; returns the share of light that reaches the water.
    private double StepIce(double airC, double lightWPerM2, double stepS)
    {
        IceM = NextIce(IceM, airC, lightWPerM2, stepS);
        return IceM > 0 ? LightUnderIce : 1.0;
    }

    private static double NextIce(double iceM, double airC, double lightWPerM2, double stepS)
    {
        if (airC < 0) return Math.Min(2.0, iceM + (0.5 * IceGrowthM2PerKS * -airC * stepS / Math.Max(iceM, 0.02)));
        // Degree days: 4 to 5 mm of water a day and kelvin, which counts the light that comes with warm air.
        double meltWPerM2 = (0.05 * lightWPerM2) + (16.0 * airC);
        return Math.Max(0, iceM - (meltWPerM2 * stepS / IceHeatJPerM3));
    }
}
