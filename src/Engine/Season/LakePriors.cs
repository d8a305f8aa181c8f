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

    /// <summary>What had to be assumed, in sentences.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>The priors of a lake.</summary>
    /// <param name="site">What is known of it.</param>
    /// <param name="basin">Its shape.</param>
    /// <param name="source">What kind of weather drives it.</param>
    public static LakePriors For(LakeSite site, Hypsography basin, WeatherSource source)
    {
        Require.NotNull(site);
        Require.NotNull(basin);
        List<string> assumed = [];
        (double extinction, double extinctionSd) = Extinction(site, basin, assumed);
        double exposure = WindOverWater.AreaExposureShare(basin.SurfaceAreaM2);
        bool grid = source is WeatherSource.Grid or WeatherSource.Daily or WeatherSource.Climate;
        return new LakePriors
        {
            Centre = new ColumnParameters
            {
                LightExtinctionPerM = extinction,
                WindFactor = 0.95,
                StirringFactor = Math.Max(0.04, 0.7 * exposure),
                DeepMixingFactor = 0.2,
                ShortwaveFactor = grid ? 0.95 : 0.98,
                LongwaveBiasWPerM2 = 0,
            },
            SpreadValues = [extinctionSd, grid ? 0.20 : 0.15, 0.8, 0.8, 0.05, 0.8, 10, OxygenDemand.LogSd],
            Demand = OxygenDemand.FromSecchi(2.0 / extinction),
            Assumed = assumed,
        };
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

    private static (double Median, double LogSd) Extinction(LakeSite site, Hypsography basin, List<string> assumed)
    {
        if (site.LightExtinctionPerM is { } known) return (known, 0.10);
        if (site.SecchiM is { } secchi) return (UnderwaterLight.ExtinctionPerM(secchi, 2.0), 0.25);
        // Bigger, deeper lakes are clearer as a rule; a green middle is taken.
        double extinction = 0.7;
        assumed.Add(FormattableString.Invariant($"Clarity is not known: light is taken to fade at {extinction:0.0} per metre (Secchi about {2.0 / extinction:0.0} m). A Secchi reading would sharpen this."));
        _ = basin;
        return (extinction, 0.45);
    }
}
