namespace SecondShore.Engine.Learn;

/// <summary>
/// What to try with so many hours ahead: each choice is worth what it gives while it is tried and, from then on, what the
/// better of it and the rest is then believed to give (knowledge gradient, Frazier2008, with a trial of any length).
/// </summary>
/// <remarks>
/// Each choice's belief is taken as a gamma law with the mean and the variance of its draws, so the bites of a trial are
/// negative binomial and the mean after it is exact. Decision 0073.
/// </remarks>
internal static class LookAhead
{
    private static readonly int[] TrialTurns = [1, 2, 4, 8];
    private static readonly double TurnH = 0.5;

    // Schooling makes an hour's bites hang together: it tells about as much as half an hour of even biting would.
    private static readonly double TellingShare = 0.5;

    /// <summary>The choice worth most.</summary>
    /// <param name="draws">[choice][draw] rates, bites per hour.</param>
    /// <param name="remainingH">Hours of fishing ahead, H.</param>
    /// <param name="tellingShare">Share of an hour's effort that tells of the rate; null takes the usual.</param>
    public static int Best(double[][] draws, double remainingH, double? tellingShare = null)
    {
        int choices = draws.Length, best = 0;
        double[] mean = new double[choices], variance = new double[choices];
        for (int c = 0; c < choices; c++) (mean[c], variance[c]) = Moments(draws[c]);
        double bestWorth = double.NegativeInfinity;
        for (int c = 0; c < choices; c++)
        {
            double others = 0;
            for (int o = 0; o < choices; o++)
                if (o != c) others = Math.Max(others, mean[o]);
            double worth = Worth(mean[c], variance[c], others, remainingH, tellingShare ?? TellingShare);
            if (worth > bestWorth) (bestWorth, best) = (worth, c);
        }

        return best;
    }

    private static double Worth(double mean, double variance, double others, double remainingH, double tellingShare)
    {
        // With less than a turn ahead nothing is learned in time.
        double best = Math.Min(remainingH, TurnH) * mean;
        foreach (int turns in TrialTurns)
        {
            double trialH = turns * TurnH;
            if (trialH > remainingH) break;
            best = Math.Max(best, (trialH * mean) + ((remainingH - trialH) * MeanOfBetter(mean, variance, others, trialH * tellingShare)));
        }

        return best;
    }

    // Expected value of the greater of the others' mean and this one's after effort H.
    private static double MeanOfBetter(double mean, double variance, double others, double effortH)
    {
        double law = Math.Max(1e-9, variance), shape = mean * mean / law, rateH = mean / law;
        double chance = Math.Exp(shape * Math.Log(rateH / (rateH + effortH))), seen = 0, expected = 0, share = effortH / (rateH + effortH);
        for (int n = 0; n < 400 && seen < 1 - 1e-7; n++)
        {
            expected += chance * Math.Max((shape + n) / (rateH + effortH), others);
            seen += chance;
            chance *= (shape + n) / (n + 1) * share;
        }

        return expected + (Math.Max(0, 1 - seen) * Math.Max(mean, others));
    }

    private static (double Mean, double Variance) Moments(double[] draws)
    {
        double sum = 0, squares = 0;
        foreach (double draw in draws) sum += draw;
        double mean = sum / draws.Length;
        foreach (double draw in draws) squares += (draw - mean) * (draw - mean);
        return (mean, squares / draws.Length);
    }
}
