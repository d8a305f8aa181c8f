using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>
/// What is believed of a lake's numbers before it is measured: a centre and a spread, from size, depth, colour and the kind
/// of weather. Immutable. Learned over lakes as a group, never for one (season.md, "Priors").
/// </summary>
public sealed record LakePriors
{
    /// <summary>Number of tuned parameters.</summary>
    public static readonly int Dimensions = 8;

    /// <summary>The most likely parameters.</summary>
    public required ColumnParameters Centre { get; init; }

    /// <summary>Spread of each: standard deviation of the logarithm for light, wind, stirring, deep mixing; of the value for
    /// shortwave (dimensionless), air temperature (K) and longwave (W m-2); of the logarithm for oxygen demand. In this order, [<see cref="Dimensions"/>].</summary>
    public required double[] SpreadValues { get; init; }

    /// <summary>Oxygen demand of the deep water at the centre.</summary>
    public required OxygenDemand Demand { get; init; }

    /// <summary>What a column of this lake is known to keep missing; null where nothing was fitted.</summary>
    public SeasonBias? Bias { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<Finding> Assumed { get; init; }

    /// <summary>The priors of a lake.</summary>
    /// <param name="site">What is known of it.</param>
    /// <param name="basin">Its shape.</param>
    /// <param name="source">What kind of weather drives it.</param>
    /// <param name="meanWindMps">Mean of the record's wind at 10 m, m s-1; null when not known. A station in the lee tells when it blows, not how hard.</param>
    /// <param name="numbers">Numbers to make them of; null takes the learned ones.</param>
    public static LakePriors For(LakeSite site, Hypsography basin, WeatherSource source, double? meanWindMps = null, PriorNumbers? numbers = null)
    {
        Require.NotNull(site);
        Require.NotNull(basin);
        PriorNumbers n = numbers ?? PriorNumbers.Learned;
        List<Finding> assumed = [];
        (double extinction, double extinctionSd) = Extinction(site, basin, n, assumed);
        double areaKm2 = basin.SurfaceAreaM2 / 1e6;
        bool made = source == WeatherSource.Climate;
        return new LakePriors
        {
            Centre = new ColumnParameters
            {
                LightExtinctionPerM = extinction,
                WindFactor = Wind(areaKm2, source, meanWindMps, n),
                AirAdjustmentShare = Math.Clamp(n.AirAdjustmentShare, 0, 0.8) * (1.0 - Math.Exp(-Math.Sqrt(basin.SurfaceAreaM2) / 3000.0)),
                StirringFactor = Stirring(basin.SurfaceAreaM2, source, meanWindMps, n),
                DeepMixingFactor = Math.Clamp(n.DeepMixingFactor * Math.Pow(areaKm2, n.DeepMixingAreaPower), 0.05, 10),
                ConvectionFactor = n.ConvectionFactor,
                NearStirringFactor = n.NearStirringFactor,
                NearStirringReachM = n.NearStirringReachM,
                StirringReachFactor = n.StirringReachFactor,
                TiltFactor = n.TiltFactor,
                ShortwaveFactor = (source == WeatherSource.Grid ? n.GridShortwaveFactor : n.StationShortwaveFactor) * (1.0 - ShadeShare(basin.SurfaceAreaM2)),
                AirTempBiasK = source == WeatherSource.Grid ? n.GridAirBiasK : 0,
                LongwaveBiasWPerM2 = source == WeatherSource.Grid ? 0 : n.MadeLongwaveBiasWPerM2,
            },
            SpreadValues = [extinctionSd, made ? double.Hypot(n.WindLogSd, ClimateWindLogSd) : n.WindLogSd, n.StirringLogSd, n.DeepMixingLogSd, n.ShortwaveSd,
                made ? double.Hypot(n.AirBiasSdK, ClimateAirSdK) : n.AirBiasSdK, n.LongwaveSdWPerM2, OxygenDemand.LogSd],
            Demand = OxygenDemand.FromSecchi(2.0 / extinction),
            Assumed = assumed,
        };
    }

    /// <summary>Mean wind of all hours of some series, m s-1; null without any.</summary>
    public static double? MeanWindMps(IReadOnlyList<WeatherSeries> series)
    {
        double sum = 0;
        long count = 0;
        foreach (WeatherSeries w in Require.NotNull(series))
        {
            foreach (double wind in w.WindMps) sum += wind;
            count += w.Count;
        }

        return count > 0 ? sum / count : null;
    }

    /// <summary>Parameters at a place of the prior counted in standard deviations from its centre; all 0 gives the centre.</summary>
    /// <param name="z">Standard normal coordinates, [<see cref="Dimensions"/>].</param>
    public ColumnParameters At(ReadOnlySpan<double> z)
    {
        Require.SameLength(z.Length, Dimensions, nameof(z));
        double[] s = SpreadValues;
        return Centre with
        {
            LightExtinctionPerM = Math.Clamp(Centre.LightExtinctionPerM * Math.Exp(s[0] * z[0]), 0.08, 6),
            WindFactor = Math.Clamp(Centre.WindFactor * Math.Exp(s[1] * z[1]), 0.3, 2),
            StirringFactor = Math.Clamp(Centre.StirringFactor * Math.Exp(s[2] * z[2]), 0.005, 3),
            DeepMixingFactor = Math.Clamp(Centre.DeepMixingFactor * Math.Exp(s[3] * z[3]), 0.01, 20),
            ShortwaveFactor = Math.Clamp(Centre.ShortwaveFactor + (s[4] * z[4]), 0.6, 1.3),
            AirTempBiasK = Math.Clamp(Centre.AirTempBiasK + (s[5] * z[5]), -5, 5),
            LongwaveBiasWPerM2 = Math.Clamp(Centre.LongwaveBiasWPerM2 + (s[6] * z[6]), -60, 60),
        };
    }

    /// <summary>Oxygen demand at a place of the prior.</summary>
    /// <param name="z">Standard normal coordinates, [<see cref="Dimensions"/>].</param>
    public OxygenDemand DemandAt(ReadOnlySpan<double> z) => new(Demand.ArealGPerM2DayValue * Math.Exp(SpreadValues[7] * z[7]));

    /// <summary>One draw in standard normal coordinates, [<see cref="Dimensions"/>].</summary>
    public static double[] Draw(SeededRandom random)
    {
        Require.NotNull(random);
        double[] z = new double[Dimensions];
        for (int i = 0; i < z.Length; i++) z[i] = random.NextNormal();
        return z;
    }

    /// <summary>Share of the sun that banks and trees take from a small lake, 0 to 0.2: a strip of 40 m over its width (choice).</summary>
    internal static double ShadeShare(double areaM2) => Math.Min(0.2, 40.0 / Math.Sqrt(4.0 * areaM2 / Math.PI));

    private static double Wind(double areaKm2, WeatherSource source, double? meanWindMps, PriorNumbers n)
    {
        double lee = meanWindMps is { } mean && mean > 0 && mean < OpenWindMps ? Math.Pow(OpenWindMps / mean, n.LeeWindPower) : 1.0;
        return Math.Clamp((source == WeatherSource.Station ? n.StationWindFactor : n.GridWindFactor) * Math.Pow(areaKm2, n.WindAreaPower) * lee, 0.4, 2.0);
    }

    /// <summary>Stirring efficiency by size for the wind of open country, more where the record is of a lee.</summary>
    internal static double Stirring(double areaM2, WeatherSource source, double? meanWindMps, PriorNumbers? numbers = null)
    {
        PriorNumbers n = numbers ?? PriorNumbers.Learned;
        double open = n.StirringFactor * Math.Pow(areaM2 / 1e6, n.StirringAreaPower), lee = 1.0;
        if (source == WeatherSource.Station && meanWindMps is { } mean && mean > 0 && mean < OpenWindMps)
            lee = Math.Min(15.0, Math.Pow(OpenWindMps / mean, n.LeePower));
        return Math.Clamp(open * lee, 0.01, 2.5);
    }

    // What a made-up climate does not know besides: the place's own wind, and how far it and the year stand off the normals around (season.md, "Without weather").
    private const double ClimateWindLogSd = 0.35, ClimateAirSdK = 1.5;

    /// <summary>Mean wind of open country at 10 m, m s-1 (choice).</summary>
    internal static readonly double OpenWindMps = 3.6;

    private static (double Median, double LogSd) Extinction(LakeSite site, Hypsography basin, PriorNumbers n, List<Finding> assumed)
    {
        if (site.LightExtinctionPerM is { } known) return (known, 0.10);
        if (site.SecchiM is { } secchi) return (UnderwaterLight.ExtinctionPerM(secchi, 1.85), site.SecchiLogSd ?? 0.25);
        // Deeper lakes are clearer as a rule, and far from always.
        double extinction = Math.Clamp(n.LightAtOneMetrePerM * Math.Pow(Math.Max(1, basin.MaxDepthM), -n.LightDepthPower), 0.1, 3);
        assumed.Add(SeasonFindings.ClarityUnknown.Of(extinction, Told.Difference(2.0 / extinction)));
        return (extinction, n.LightLogSd);
    }
}
