using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Engine.Tests.Learn;

/// <summary>
/// Days of stop after stop with unknown rates, left by the rule that sees the day's end, by the one that does not, or after
/// half an hour each. The usual doubt, 0.9, is that of the simulated seasons: schooling of 0.71 and days that differ by 0.45.
/// </summary>
internal static class LeaveDays
{
    private const double StepH = 1.0 / 12.0, DayH = 8;

    public static (double DayPerH, double RulePerH, double FixedPerH) Run(int days, ulong seed, double doubtShare = 0.9, double meanPerH = 0.8, double tiringPerH = 0.6, double travelH = 0.2)
    {
        StopBelief belief = StopBelief.Of(meanPerH, doubtShare, tiringPerH);
        double elsewhere = LeaveRule.LongRunPerH(belief, travelH);
        LeaveDay day = new(belief, travelH, DayH);
        // The stay by bites so far, as the rule gives it on arrival: deadlines only move when a bite comes.
        Dictionary<(int Bites, int Step), bool> leaves = [];
        return (Play((bites, step, leftH) => day.Leaves(step * StepH, bites, leftH)), Play((bites, step, _) => ByRule(bites, step)), Play((_, step, _) => step >= 6));

        double Play(Func<int, int, double, bool> leave)
        {
            double total = 0;
            for (int d = 0; d < days; d++) total += OneDay(new SeededRandom(seed, (ulong)d), belief, travelH, leave);
            return total / (days * DayH);
        }

        bool ByRule(int bites, int step)
        {
            if (leaves.TryGetValue((bites, step), out bool known)) return known;
            return leaves[(bites, step)] = LeaveRule.StayIfNoBiteH(belief, step * StepH, bites, elsewhere) <= 0;
        }
    }

    private static int OneDay(SeededRandom random, StopBelief belief, double travelH, Func<int, int, double, bool> leave)
    {
        double atH = 0;
        int total = 0;
        for (int stop = 0; atH < DayH; stop++)
        {
            SeededRandom luck = random.Split((ulong)stop);
            double rate = luck.NextGamma(belief.Shape) / belief.EffortH;
            int bites = 0;
            for (int step = 0; atH < DayH && !(step > 0 && leave(bites, step, DayH - atH)); step++)
            {
                double exposure = (Math.Exp(-belief.TiringPerH * step * StepH) - Math.Exp(-belief.TiringPerH * (step + 1) * StepH)) / belief.TiringPerH;
                int here = luck.NextPoisson(rate * exposure);
                bites += here;
                total += here;
                atH += StepH;
            }

            atH += travelH;
        }

        return total;
    }
}
