using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Engine.Tests.Day;

/// <summary>Random planning problems, and the slow obvious way to solve them.</summary>
internal static class RandomDays
{
    /// <summary>Stops scattered over a lake of some kilometres; rates change by hour, runs slow down with the wind after noon.</summary>
    public static PlanProblem Make(SeededRandom random, int stops, int lastStep, double stepS, int breaks = 0)
    {
        double hours = lastStep * stepS / 3600.0, sizeKm = random.NextDouble(3, 14);
        double[] x = new double[stops + 2], y = new double[stops + 2];
        for (int i = 0; i < stops + 1; i++) { x[i] = random.NextDouble() * sizeKm; y[i] = random.NextDouble() * sizeKm * 0.3; }
        (x[stops + 1], y[stops + 1]) = (x[stops], y[stops]);
        int stepsPerSlot = Math.Max(1, (int)Math.Round(3600.0 / stepS)), slots = (lastStep / stepsPerSlot) + 1, nodes = stops + 2;
        int[] run = new int[slots * nodes * nodes];
        for (int slot = 0; slot < slots; slot++)
        {
            double kmPerH = 40.0 / (1.0 + (0.25 * Math.Max(0, slot - 3)));
            for (int i = 0; i < nodes; i++)
            {
                for (int j = 0; j < nodes; j++)
                {
                    double km = Math.Sqrt(((x[i] - x[j]) * (x[i] - x[j])) + ((y[i] - y[j]) * (y[i] - y[j]))) * 1.2;
                    run[(((slot * nodes) + i) * nodes) + j] = (int)Math.Ceiling(((km / kmPerH * 3600.0) + 120.0) / stepS);
                }
            }
        }

        List<StopOnSteps> places = [];
        for (int s = 0; s < stops; s++)
        {
            double baseRate = random.NextGamma(2.0) * 0.5, peakH = random.NextDouble() * hours, width = random.NextDouble(1.0, 4.0);
            double[] ratePerStep = new double[lastStep];
            for (int t = 0; t < lastStep; t++)
            {
                double atH = Math.Floor(t * stepS / 1800.0) * 0.5, z = (atH - peakH) / width;
                ratePerStep[t] = baseRate * (0.3 + Math.Exp(-0.5 * z * z)) * stepS / 3600.0;
            }

            places.Add(StopOnSteps.Of(ratePerStep, random.NextDouble(0.1, 1.5) * stepS / 3600.0, 0, Math.Max(1, (int)Math.Round(1200 / stepS))));
        }

        List<BreakOnSteps> pauses = [];
        for (int k = 0; k < breaks; k++)
            pauses.Add(new BreakOnSteps(lastStep / 3, lastStep / 2, Math.Max(1, (int)Math.Round(1800 / stepS))));
        return new PlanProblem(stepS, lastStep, places, pauses, run, stepsPerSlot, 0.02);
    }

    /// <summary>Every order of every set of stops, each stay of each length tried one by one.</summary>
    public static double BruteForce(PlanProblem problem)
    {
        double best = 0;
        double[] leave = new double[problem.LastStep + 1];
        Visit(problem.StartNode, 0, leave, 0);
        return best;

        void Visit(int at, int visited, double[] leaveHere, int depth)
        {
            if (at != problem.StartNode)
            {
                for (int t = 0; t <= problem.LastStep; t++)
                {
                    if (double.IsNegativeInfinity(leaveHere[t])) continue;
                    int run = problem.RunSteps(at, problem.HomeNode, t);
                    if (t + run <= problem.LastStep) best = Math.Max(best, leaveHere[t] - (problem.RunCostPerStep * run));
                }
            }

            for (int next = 0; next < problem.StopCount; next++)
            {
                if ((visited >> next & 1) != 0) continue;
                double[] leaveNext = new double[problem.LastStep + 1];
                Array.Fill(leaveNext, double.NegativeInfinity);
                bool any = false;
                StopOnSteps stop = problem.Stops[next];
                for (int t = 0; t <= problem.LastStep; t++)
                {
                    if (double.IsNegativeInfinity(leaveHere[t])) continue;
                    int run = problem.RunSteps(at, next, t), arrive = t + run;
                    for (int b = arrive + stop.LeastStay; b <= problem.LastStep; b++)
                    {
                        any = true;
                        double value = leaveHere[t] - (problem.RunCostPerStep * run) + stop.Gain(arrive, b);
                        if (value > leaveNext[b]) leaveNext[b] = value;
                    }
                }

                if (any) Visit(next, visited | 1 << next, leaveNext, depth + 1);
            }
        }
    }
}
