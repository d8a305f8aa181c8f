using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;
using SecondShore.Engine.Water;

namespace SecondShore.Demo.Weather;

/// <summary>
/// Made-up hourly weather of an inland, mid-latitude place: seasons, days, fronts that turn the wind, spells of a few
/// days and of a month; sun and sky radiation follow from cloud, vapour and the sun's height. Own coefficients.
/// </summary>
internal sealed class MadeUpYear
{
    private readonly SeededRandom _random;
    private readonly GeoPoint _place;
    private readonly double _pressurePa;
    private readonly double _yearC;
    private double _monthC, _spellC, _dampC, _gustiness, _cloudiness;
    private double _frontInH, _sinceFrontH, _frontStrength, _nextStrength;

    public MadeUpYear(ulong seed, int year, GeoPoint place, double elevationM)
    {
        _random = new SeededRandom(seed, (ulong)year);
        _place = place;
        _pressurePa = MoistAir.PressureAtElevationPa(elevationM);
        _yearC = (0.03 * (year - 2018)) + (0.5 * _random.NextNormal());
        (_monthC, _spellC, _dampC) = (1.2 * _random.NextNormal(), 2.5 * _random.NextNormal(), 1.5 * _random.NextNormal());
        (_frontInH, _sinceFrontH, _frontStrength, _nextStrength) = (70, 60, 0.5, 0.6);
    }

    /// <summary>Makes hours from a start on.</summary>
    public WeatherSeries Hours(DateTimeOffset startUtc, int count)
    {
        double[] air = new double[count], humidity = new double[count], wind = new double[count], from = new double[count], sun = new double[count],
            sky = new double[count], cloud = new double[count], rain = new double[count], gust = new double[count];
        for (int i = 0; i < count; i++)
        {
            DateTimeOffset middle = startUtc.AddHours(i + 0.5);
            Step(middle);
            double season = Math.Cos(2 * Math.PI * (middle.DayOfYear - 201) / 365.25), solarH = ((middle.UtcDateTime.TimeOfDay.TotalHours + (_place.LonDeg / 15)) % 24 + 24) % 24;
            double post = Math.Exp(-_sinceFrontH / 50), near = Math.Exp(-Math.Min(_frontInH, 48) / 12);
            cloud[i] = Math.Clamp(0.32 + (0.5 * near) + (0.55 * _frontStrength * Math.Exp(-_sinceFrontH / 10)) - (0.25 * post) + (0.3 * _cloudiness), 0, 1);
            double day = (5.6 + (1.2 * season)) * (1 - (0.6 * cloud[i])) * Math.Cos(2 * Math.PI * (solarH - 15) / 24);
            double mean = 12.2 + (13.2 * season) + _yearC + _monthC + _spellC + (3.0 * near * _nextStrength) - (FallC(season) * _frontStrength * post * Math.Min(1, _sinceFrontH / 8));
            air[i] = mean + day;
            double dewC = Math.Min(air[i] - 0.3, mean - 6.5 + (2 * near) - (3.5 * _frontStrength * post) + _dampC);
            double vapourPa = MoistAir.SaturationVapourPa(dewC);
            humidity[i] = Math.Clamp(vapourPa / MoistAir.SaturationVapourPa(air[i]), 0.12, 1);
            from[i] = WindFromDeg(post);
            double calm = 2.3 + (2.2 * near * _nextStrength) + (5.2 * _frontStrength * Math.Exp(-Math.Abs(_sinceFrontH - 4) / 14)) - (0.5 * season);
            wind[i] = Math.Clamp(calm * (1 + (0.32 * Math.Cos(2 * Math.PI * (solarH - 14.5) / 24))) * Math.Exp(0.33 * _gustiness), 0.2, 17);
            gust[i] = wind[i] * (1.35 + (0.15 * Math.Abs(_gustiness)));
            rain[i] = cloud[i] > 0.85 && _random.NextDouble() < 0.45 * (near + Math.Exp(-_sinceFrontH / 5)) ? _random.NextGamma(0.8) * 1.9 : 0;
            SolarPosition position = SolarPosition.At(middle, _place);
            double clear = position.CosZenith > 0
                ? Sunlight.ClearSkyWPerM2(position.CosZenith, _pressurePa, vapourPa, Sunlight.SolarConstantWPerM2 * Sunlight.DistanceFactor(middle.DayOfYear), 0.95) : 0;
            sun[i] = Math.Max(0, clear * Sunlight.CloudTransmissionShare(cloud[i]));
            sky[i] = Longwave.AllSkyWPerM2(Longwave.ClearSkyWPerM2(air[i], humidity[i] * MoistAir.SaturationVapourPa(air[i])), air[i], cloud[i]);
        }

        return new WeatherSeries(startUtc, 3600, air, humidity, wind, from, sun, sky, cloud, rain, gust);
    }

    // Cold air behind a front is colder outside summer.
    private static double FallC(double season) => 9.5 - (4.5 * season);

    private void Step(DateTimeOffset at)
    {
        _monthC = Walk(_monthC, 700, 1.5);
        _spellC = Walk(_spellC, 80, 2.4);
        _dampC = Walk(_dampC, 60, 2);
        _gustiness = Walk(_gustiness, 5, 1);
        _cloudiness = Walk(_cloudiness, 14, 1);
        _sinceFrontH++;
        if (--_frontInH > 0) return;
        _frontStrength = _nextStrength;
        _sinceFrontH = 0;
        bool warm = at.Month is >= 6 and <= 8;
        _nextStrength = _random.NextDouble(0.25, warm ? 0.7 : 1.15);
        _frontInH = 24 + (_random.NextGamma(2.2) * (warm ? 58 : 42));
    }

    // South before a front, north-west behind it, falling light and turning as the high passes.
    private double WindFromDeg(double post)
    {
        double southerly = 185 + (25 * _gustiness), northerly = 315 + (20 * _gustiness), share = Math.Clamp(post * 1.9, 0, 1);
        double turn = _sinceFrontH < 3 ? _sinceFrontH / 3 : share;
        double degrees = southerly + (turn * (northerly - southerly)) + (8 * _cloudiness);
        return ((degrees % 360) + 360) % 360;
    }

    private double Walk(double value, double hours, double sd)
    {
        double keep = Math.Exp(-1 / hours);
        return (keep * value) + (sd * Math.Sqrt(1 - (keep * keep)) * _random.NextNormal());
    }
}
