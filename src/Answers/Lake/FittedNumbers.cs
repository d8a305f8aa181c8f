using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Lake;

/// <summary>The numbers of a lake's column as lake.json keeps them, and back. Percentiles hold the spread that the fit left.</summary>
public static class FittedNumbers
{
    // The 90th percentile of a normal law in standard deviations.
    private const double Tenth = 1.2816;

    // Name, whether its spread is of the logarithm, and the centre; in the order of LakePriors.SpreadValues.
    private static readonly (string Name, bool Logarithmic, Func<ColumnParameters, double> Of)[] Numbers =
    [
        ("light_extinction_per_m", true, p => p.LightExtinctionPerM),
        ("wind_factor", true, p => p.WindFactor),
        ("stirring_factor", true, p => p.StirringFactor),
        ("deep_mixing_factor", true, p => p.DeepMixingFactor),
        ("shortwave_factor", false, p => p.ShortwaveFactor),
        ("air_temp_bias_k", false, p => p.AirTempBiasK),
        ("longwave_bias_w_m2", false, p => p.LongwaveBiasWPerM2),
    ];

    /// <summary>Numbers of a lake with their 10th, 50th and 90th percentile, and what its column keeps missing.</summary>
    public static FittedLake From(LakePriors priors)
    {
        ArgumentNullException.ThrowIfNull(priors);
        return new FittedLake(Percentiles(priors), priors.Bias is { } b ? new SeasonBias([.. b.DepthM.Select(Round)], [.. b.Days], [.. b.OffK.Select(k => Math.Round(k, 3))]) : null);
    }

    private static IReadOnlyList<FittedParameter> Percentiles(LakePriors priors) =>
        [.. Numbers.Select((n, i) =>
        {
            double centre = n.Of(priors.Centre), sd = priors.SpreadValues[i];
            return n.Logarithmic
                ? new FittedParameter(n.Name, Round(centre * Math.Exp(-Tenth * sd)), Round(centre), Round(centre * Math.Exp(Tenth * sd)))
                : new FittedParameter(n.Name, Round(centre - (Tenth * sd)), Round(centre), Round(centre + (Tenth * sd)));
        })];

    /// <summary>General beliefs with what was fitted put in their place; names not known are left alone.</summary>
    public static LakePriors Apply(LakePriors general, FittedLake fitted)
    {
        ArgumentNullException.ThrowIfNull(general);
        ArgumentNullException.ThrowIfNull(fitted);
        double[] spread = (double[])general.SpreadValues.Clone();
        ColumnParameters centre = general.Centre;
        foreach (FittedParameter f in fitted.Parameters)
        {
            int i = Array.FindIndex(Numbers, n => n.Name == f.Name);
            if (i < 0 || (Numbers[i].Logarithmic && !(f.P10 > 0 && f.P50 > 0))) continue;
            double sd = (Numbers[i].Logarithmic ? Math.Log(f.P90 / f.P10) : f.P90 - f.P10) / (2 * Tenth);
            if (!(sd > 0)) continue;
            spread[i] = Math.Min(sd, 2 * general.SpreadValues[i]);
            centre = i switch
            {
                0 => centre with { LightExtinctionPerM = Math.Clamp(f.P50, 0.08, 6) },
                1 => centre with { WindFactor = Math.Clamp(f.P50, 0.3, 2) },
                2 => centre with { StirringFactor = Math.Clamp(f.P50, 0.005, 3) },
                3 => centre with { DeepMixingFactor = Math.Clamp(f.P50, 0.01, 20) },
                4 => centre with { ShortwaveFactor = Math.Clamp(f.P50, 0.6, 1.3) },
                5 => centre with { AirTempBiasK = Math.Clamp(f.P50, -5, 5) },
                _ => centre with { LongwaveBiasWPerM2 = Math.Clamp(f.P50, -60, 60) },
            };
        }

        // Clarity that was fitted needs no word about clarity that was assumed.
        bool light = fitted.Parameters.Any(f => f.Name == Numbers[0].Name);
        return general with { Centre = centre, SpreadValues = spread, Bias = fitted.Bias, Assumed = light ? [] : general.Assumed };
    }

    private static double Round(double value) => value == 0 ? 0 : Math.Round(value, Math.Max(0, 4 - (int)Math.Floor(Math.Log10(Math.Abs(value)))));
}
