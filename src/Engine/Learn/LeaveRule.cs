using System.Globalization;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Learn;

/// <summary>What is believed of the stop being fished: its undisturbed rate has a gamma law.</summary>
/// <param name="Shape">Shape of the law, above 0 (before this visit).</param>
/// <param name="EffortH">Its prior effort, H: shape over it is the mean rate, bites per hour.</param>
/// <param name="TiringPerH">How fast the place tires while fished, per hour.</param>
public sealed record StopBelief(double Shape, double EffortH, double TiringPerH)
{
    /// <summary>From a mean and a doubt, by moments: shape = (mean / deviation) squared.</summary>
    /// <param name="meanPerH">Mean rate, bites per hour.</param>
    /// <param name="doubtShare">Standard deviation over mean.</param>
    /// <param name="tiringPerH">Tiring per hour.</param>
    public static StopBelief Of(double meanPerH, double doubtShare, double tiringPerH)
    {
        Require.Positive(meanPerH);
        Require.Positive(doubtShare);
        double shape = 1.0 / (doubtShare * doubtShare);
        return new StopBelief(shape, shape / meanPerH, Require.NotNegative(tiringPerH));
    }
}

/// <summary>Whether to leave a stop.</summary>
/// <param name="Leave">Leave now.</param>
/// <param name="StayIfNoBiteH">How long to stay on if nothing bites, H; 0 when leaving.</param>
/// <param name="HerePerH">What this place is expected to give now, bites per hour.</param>
/// <param name="ElsewherePerH">What the rest of the plan gives, running included, bites per hour.</param>
/// <param name="BiteBuysH">How much longer one bite now would make the stay, H.</param>
/// <param name="Why">Reason in words, without 'because'.</param>
public sealed record LeaveAdvice(bool Leave, double StayIfNoBiteH, double HerePerH, double ElsewherePerH, double BiteBuysH, string Why);

/// <summary>
/// When to leave: stay while the best way of staying on beats what the rest of the plan gives in the same time, running
/// included (marginal value, Charnov1976; with a gamma belief that good news may change, Olsson1998).
/// </summary>
/// <remarks>
/// The rate now, believed to be (shape + bites) / (effort + exposure) * exp(-k t), only tells when to leave if no news can
/// come; since a bite raises the belief, staying a little longer is worth it. Solved backwards on steps of five minutes.
/// Without tiring and news it is t = (shape + n) / R - effort (IwasaEtAl1981, Green1980).
/// </remarks>
public static class LeaveRule
{
    private static readonly double StepH = 1.0 / 12.0;
    private static readonly int HorizonSteps = 60;
    private static readonly int MostBites = 24;

    /// <summary>Advises on a stop.</summary>
    /// <param name="belief">What was believed of the stop on arrival.</param>
    /// <param name="fishedH">Time fished at it, H.</param>
    /// <param name="bites">Bites there.</param>
    /// <param name="elsewherePerH">What the rest of the plan gives, running included, bites per hour; 0 when there is nowhere else.</param>
    public static LeaveAdvice Advise(StopBelief belief, double fishedH, int bites, double elsewherePerH)
    {
        Check(belief, fishedH, bites);
        Require.NotNegative(elsewherePerH);
        double here = RatePerH(belief, fishedH, bites);
        double stayH = StayIfNoBiteH(belief, fishedH, bites, elsewherePerH);
        double afterBiteH = StayIfNoBiteH(belief, fishedH, bites + 1, elsewherePerH);
        bool leave = stayH <= 0;
        return new LeaveAdvice(leave, stayH, here, elsewherePerH, Math.Max(0, afterBiteH - stayH), Words(leave, stayH, here, elsewherePerH, fishedH, bites));
    }

    /// <summary>Expected rate at a stop now, bites per hour.</summary>
    public static double RatePerH(StopBelief belief, double fishedH, int bites)
    {
        Check(belief, fishedH, bites);
        return (belief.Shape + bites) / (belief.EffortH + ExposureH(belief, fishedH)) * Math.Exp(-belief.TiringPerH * fishedH);
    }

    /// <summary>How much longer to stay if nothing bites, H (to five minutes); 0 to leave now, 5 at most.</summary>
    public static double StayIfNoBiteH(StopBelief belief, double fishedH, int bites, double elsewherePerH)
    {
        Check(belief, fishedH, bites);
        double[,] worth = Worth(belief, fishedH, bites, elsewherePerH);
        int steps = 0;
        while (steps < HorizonSteps && worth[steps, 0] > 1e-12) steps++;
        return steps * StepH;
    }

    /// <summary>The long-run rate of fishing like stops one after the other and leaving each at the best time, bites per hour.</summary>
    /// <param name="belief">What is believed of each stop on arrival.</param>
    /// <param name="travelH">Time from one to the next, H, above 0.</param>
    public static double LongRunPerH(StopBelief belief, double travelH)
    {
        Check(belief, 0, 0);
        Require.Positive(travelH);
        double low = 0, high = belief.Shape / belief.EffortH;
        for (int i = 0; i < 40; i++)
        {
            double rate = 0.5 * (low + high);
            if (Worth(belief, 0, 0, rate)[0, 0] > rate * travelH) low = rate; else high = rate;
        }

        return 0.5 * (low + high);
    }

    // [steps on, bites more]: expected bites over those elsewhere from staying on in the best way; 0 means leave.
    private static double[,] Worth(StopBelief belief, double fishedH, int bites, double elsewherePerH)
    {
        double[,] worth = new double[HorizonSteps + 1, MostBites + 2];
        for (int t = HorizonSteps - 1; t >= 0; t--)
        {
            double from = fishedH + (t * StepH), before = belief.EffortH + ExposureH(belief, from);
            double gained = ExposureH(belief, from + StepH) - ExposureH(belief, from), none = Math.Log(before / (before + gained));
            for (int more = 0; more <= MostBites; more++)
            {
                double shape = belief.Shape + bites + more, mean = shape / before * gained;
                double no = Math.Exp(shape * none), one = no * shape * gained / (before + gained), many = Math.Max(0, 1 - no - one);
                double stay = mean - (elsewherePerH * StepH) + (no * worth[t + 1, more])
                    + (one * worth[t + 1, Math.Min(more + 1, MostBites)]) + (many * worth[t + 1, Math.Min(more + 2, MostBites)]);
                worth[t, more] = Math.Max(0, stay);
            }
        }

        return worth;
    }

    internal static double ExposureH(StopBelief belief, double fishedH) =>
        belief.TiringPerH > 1e-9 ? (1.0 - Math.Exp(-belief.TiringPerH * fishedH)) / belief.TiringPerH : fishedH;

    private static void Check(StopBelief belief, double fishedH, int bites)
    {
        Require.NotNull(belief);
        Require.Positive(belief.Shape);
        Require.Positive(belief.EffortH);
        Require.InRange(belief.TiringPerH, 0, 20);
        Require.NotNegative(fishedH);
        Require.InRange(bites, 0, 100_000);
    }

    private static string Words(bool leave, double stayH, double here, double elsewhere, double fishedH, int bites)
    {
        string seen = string.Create(CultureInfo.InvariantCulture, $"{(bites == 0 ? "no bite" : bites == 1 ? "one bite" : $"{bites} bites")} in {60 * fishedH:0} minutes makes about {here:0.0} an hour here");
        string rest = string.Create(CultureInfo.InvariantCulture, $"the rest of the plan gives about {elsewhere:0.0}, running included");
        return leave
            ? $"{seen}, and {rest}"
            : string.Create(CultureInfo.InvariantCulture, $"{seen}, and {rest}: stay {60 * stayH:0} minutes more if nothing bites, longer if something does");
    }
}
