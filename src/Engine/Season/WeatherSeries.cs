using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>
/// Weather at even steps, gap-free: what the lake column runs on. Arrays are parallel, kept, not copied.
/// A value holds for the step that starts at its stamp.
/// </summary>
public sealed class WeatherSeries
{
    /// <summary>Makes a series.</summary>
    /// <exception cref="ArgumentException">Arrays differ in length, or the step is not above 0.</exception>
    public WeatherSeries(DateTimeOffset startUtc, double stepS, double[] airTempC, double[] relativeHumidity,
        double[] windMps, double[] windFromDeg, double[] shortwaveWPerM2, double[] longwaveWPerM2,
        double[] cloudFraction, double[] precipitationMmPerH, double[] gustMps)
    {
        int n = Require.NotNull(airTempC).Length;
        StartUtc = startUtc.ToUniversalTime();
        StepS = Require.Positive(stepS);
        AirTempC = airTempC;
        RelativeHumidity = Same(relativeHumidity, n);
        WindMps = Same(windMps, n);
        WindFromDeg = Same(windFromDeg, n);
        ShortwaveWPerM2 = Same(shortwaveWPerM2, n);
        LongwaveWPerM2 = Same(longwaveWPerM2, n);
        CloudFraction = Same(cloudFraction, n);
        PrecipitationMmPerH = Same(precipitationMmPerH, n);
        GustMps = Same(gustMps, n);

        static double[] Same(double[] values, int count)
        {
            Require.SameLength(Require.NotNull(values).Length, count, "A weather column");
            return values;
        }
    }

    /// <summary>Start of the first step, UTC.</summary>
    public DateTimeOffset StartUtc { get; }

    /// <summary>Length of a step, s (3600 for hourly weather).</summary>
    public double StepS { get; }

    /// <summary>Number of steps.</summary>
    public int Count => AirTempC.Length;

    /// <summary>End of the last step, UTC.</summary>
    public DateTimeOffset EndUtc => StartUtc.AddSeconds(StepS * Count);

    /// <summary>Air temperature, degC.</summary>
    public double[] AirTempC { get; }

    /// <summary>Relative humidity, 0 to 1.</summary>
    public double[] RelativeHumidity { get; }

    /// <summary>Mean wind at 10 m, m s-1.</summary>
    public double[] WindMps { get; }

    /// <summary>Where the wind comes from, degrees clockwise from north; NaN when not known.</summary>
    public double[] WindFromDeg { get; }

    /// <summary>Downward shortwave, W m-2.</summary>
    public double[] ShortwaveWPerM2 { get; }

    /// <summary>Downward longwave, W m-2; NaN when not measured, to be found from cloud.</summary>
    public double[] LongwaveWPerM2 { get; }

    /// <summary>Cloud fraction, 0 to 1; NaN when not measured, to be found from shortwave.</summary>
    public double[] CloudFraction { get; }

    /// <summary>Rain, mm per hour.</summary>
    public double[] PrecipitationMmPerH { get; }

    /// <summary>Gusts, m s-1; NaN when not known.</summary>
    public double[] GustMps { get; }

    /// <summary>Start of a step, UTC.</summary>
    public DateTimeOffset TimeAt(int step) => StartUtc.AddSeconds(StepS * step);

    /// <summary>The step that holds an instant, clamped to the series.</summary>
    public int StepAt(DateTimeOffset instant) =>
        (int)Math.Clamp(Math.Floor((instant - StartUtc).TotalSeconds / StepS), 0, Math.Max(0, Count - 1));
}
