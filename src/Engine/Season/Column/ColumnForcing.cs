using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>What a column needs of the weather, worked out once for all members: humidity, light past the surface, longwave.</summary>
public sealed class ColumnForcing
{
    /// <summary>Works out the forcing of a place.</summary>
    /// <param name="weather">Gap-free weather; longwave must be there (<see cref="WeatherPreparation"/> finds it).</param>
    /// <param name="place">Where.</param>
    /// <param name="elevationM">Elevation of the water, m.</param>
    /// <param name="alike">Forcing of the same place and hours whose weather is the same for a while: what is equal is taken over.</param>
    /// <exception cref="ArgumentException">The weather still has a gap.</exception>
    public ColumnForcing(WeatherSeries weather, GeoPoint place, double elevationM, ColumnForcing? alike = null)
    {
        Weather = Require.NotNull(weather);
        PressurePa = MoistAir.PressureAtElevationPa(Require.InRange(elevationM, -450, 6000));
        LatitudeDeg = place.LatDeg;
        // Held to that of 15 degrees: nearer the equator the day, not the earth's turning, limits the wind's layer.
        CoriolisPerS = 2.0 * PhysicalConstants.EarthRotationRadPerS * Math.Sin(Math.Max(15.0, Math.Abs(place.LatDeg)) * Math.PI / 180.0);
        int n = weather.Count;
        SpecificHumidityShare = new double[n];
        EnteringWPerM2 = new double[n];
        for (int k = 0; k < n; k++)
        {
            if (alike is not null && SameAt(weather, alike.Weather, k))
            {
                SpecificHumidityShare[k] = alike.SpecificHumidityShare[k];
                EnteringWPerM2[k] = alike.EnteringWPerM2[k];
                continue;
            }

            double airC = weather.AirTempC[k], vapourPa = weather.RelativeHumidity[k] * MoistAir.SaturationVapourPa(airC);
            if (!double.IsFinite(airC + vapourPa + weather.WindMps[k] + weather.ShortwaveWPerM2[k] + weather.LongwaveWPerM2[k]))
                throw new ArgumentException($"The weather has a gap at {weather.TimeAt(k):u}: prepare it before a column runs on it.", nameof(weather));
            SpecificHumidityShare[k] = MoistAir.SpecificHumidityShare(vapourPa, PressurePa);
            double shortwave = Math.Max(0, weather.ShortwaveWPerM2[k]);
            if (shortwave > 0) EnteringWPerM2[k] = shortwave * (1.0 - AlbedoShare(weather, k, place, shortwave, vapourPa));
        }
    }

    /// <summary>The weather it was made from.</summary>
    public WeatherSeries Weather { get; }

    /// <summary>Air pressure, Pa.</summary>
    public double PressurePa { get; }

    /// <summary>Latitude, degrees.</summary>
    public double LatitudeDeg { get; }

    /// <summary>Coriolis parameter, s-1, above 0.</summary>
    public double CoriolisPerS { get; }

    /// <summary>Specific humidity, kg/kg, each step.</summary>
    public double[] SpecificHumidityShare { get; }

    /// <summary>Shortwave past the surface, W m-2, each step.</summary>
    public double[] EnteringWPerM2 { get; }

    /// <summary>Number of steps.</summary>
    public int Count => EnteringWPerM2.Length;

    // A gap is never the same as anything, and is found by the work itself.
    private static bool SameAt(WeatherSeries a, WeatherSeries b, int k) =>
        k < b.Count && a.StartUtc == b.StartUtc && a.StepS == b.StepS && a.AirTempC[k] == b.AirTempC[k] && a.RelativeHumidity[k] == b.RelativeHumidity[k]
        && a.ShortwaveWPerM2[k] == b.ShortwaveWPerM2[k] && double.IsFinite(a.WindMps[k] + a.LongwaveWPerM2[k]);

    private double AlbedoShare(WeatherSeries weather, int k, GeoPoint place, double shortwave, double vapourPa)
    {
        DateTimeOffset middle = weather.TimeAt(k).AddSeconds(0.5 * weather.StepS);
        double cosZenith = SolarPosition.At(middle, place).CosZenith;
        if (cosZenith <= 0.02) return UnderwaterLight.DiffuseAlbedoShare;
        double normal = Sunlight.SolarConstantWPerM2 * Sunlight.DistanceFactor(middle.DayOfYear);
        (double beam, _, double clear) = Sunlight.ClearSky(cosZenith, PressurePa, vapourPa, normal, 1.0);
        // Cloud takes the beam first: with a quarter of the clear-sky light left there is no beam.
        double beamShare = clear > 0 ? beam / clear * Math.Clamp(((shortwave / clear) - 0.25) / 0.75, 0.0, 1.0) : 0.0;
        return (beamShare * UnderwaterLight.DirectAlbedoShare(cosZenith)) + ((1.0 - beamShare) * UnderwaterLight.DiffuseAlbedoShare);
    }
}
