using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>Where a fit put a lake's numbers, counted in standard deviations of the prior from its centre. Immutable.</summary>
/// <param name="Z">The centre, [<see cref="LakePriors.Dimensions"/>].</param>
/// <param name="Sd">The spread left, 1 for as wide as before, [<see cref="LakePriors.Dimensions"/>].</param>
public sealed record FitEstimate(double[] Z, double[] Sd)
{
    /// <summary>Nothing learned: the prior itself.</summary>
    public static FitEstimate Prior => new(new double[LakePriors.Dimensions], [.. Enumerable.Repeat(1.0, LakePriors.Dimensions)]);

    /// <summary>
    /// One estimate for several, each believed as its left-out seasons make likely: mean and spread of the mixture, so that where
    /// estimates part the doubt is wider.
    /// </summary>
    /// <param name="estimates">One or more.</param>
    /// <param name="costScores">Sum of squared residuals of the seasons each did not see, in standard errors.</param>
    public static FitEstimate Mix(IReadOnlyList<FitEstimate> estimates, IReadOnlyList<double> costScores)
    {
        Require.NotNull(estimates);
        Require.NotNull(costScores);
        Require.SameLength(costScores.Count, estimates.Count, nameof(costScores));
        double least = costScores.Min();
        double[] share = [.. costScores.Select(c => Math.Exp(-0.5 * (c - least)))];
        double sum = share.Sum();
        double[] z = new double[LakePriors.Dimensions], sd = new double[LakePriors.Dimensions];
        for (int d = 0; d < z.Length; d++)
        {
            for (int i = 0; i < share.Length; i++) z[d] += share[i] / sum * estimates[i].Z[d];
            double variance = 0;
            for (int i = 0; i < share.Length; i++)
            {
                double off = estimates[i].Z[d] - z[d];
                variance += share[i] / sum * ((estimates[i].Sd[d] * estimates[i].Sd[d]) + (off * off));
            }

            sd[d] = Math.Min(1, Math.Sqrt(variance));
        }

        return new FitEstimate(z, sd);
    }

    /// <summary>Beliefs moved to the estimate.</summary>
    public LakePriors Of(LakePriors priors)
    {
        Require.NotNull(priors);
        return priors with { Centre = priors.At(Z), SpreadValues = [.. priors.SpreadValues.Select((s, d) => s * Sd[d])], Assumed = [] };
    }
}
