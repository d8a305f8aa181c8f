using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Engine.Tests.Learn;

/// <summary>Days of stop after stop with unknown rates, left by the rule or after half an hour each.</summary>
internal static class LeaveDays
{
    public static (double RulePerH, double FixedPerH) Run(int days, ulong seed, double doubtShare = 1.0, double meanPerH = 0.8, double tiringPerH = 0.6, double travelH = 0.2)
    {
        StopBelief belief = StopBelief.Of(meanPerH, doubtShare, tiringPerH);
        double elsewhere = LeaveRule.LongRunPerH(belief, travelH);
        // The stay by bites so far, as the rule gives it on arrival: deadlines only move when a bite comes.
        Dictionary<(int Bites, int Step), bool> leaves = [];
        double rule = 0, half = 0;
        const double stepH = 1.0 / 12.0, dayH = 8;
        for (int day = 0; day < days; day++)
        {
            foreach (bool byRule in (bool[])[true, false])
            {
                var random = new SeededRandom(seed, (ulong)day);
                double atH = 0;
                int total = 0;
                for (int stop = 0; atH < dayH; stop++)
                {
                    SeededRandom luck = random.Split((ulong)stop);
                    double rate = luck.NextGamma(belief.Shape) / belief.EffortH;
                    int bites = 0;
                    for (int step = 0; atH < dayH; step++)
                    {
                        if (byRule ? Leaves(bites, step) : step >= 6) break;
                        double exposure = (Math.Exp(-tiringPerH * step * stepH) - Math.Exp(-tiringPerH * (step + 1) * stepH)) / tiringPerH;
                        int here = luck.NextPoisson(rate * exposure);
                        bites += here;
                        total += here;
                        atH += stepH;
                    }

                    atH += travelH;
                }

                if (byRule) rule += total / dayH; else half += total / dayH;
            }
        }

        return (rule / days, half / days);

        bool Leaves(int bites, int step)
        {
            if (leaves.TryGetValue((bites, step), out bool known)) return known;
            return leaves[(bites, step)] = LeaveRule.StayIfNoBiteH(belief, step * stepH, bites, elsewhere) <= 0;
        }
    }
}
