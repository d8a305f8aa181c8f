using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Rig;

/// <summary>Corrects the drag of a jig and its line by what the angler saw: Bayes' rule on a grid of the two factors.</summary>
public static class JigCalibration
{
    private const int Side = 25;
    private const double ReachSd = 3.5;

    /// <summary>The jig with its belief moved by observations, all at once: their order does not matter.</summary>
    /// <param name="jig">Jig; its belief is the prior.</param>
    /// <param name="observations">What was seen.</param>
    /// <exception cref="ArgumentOutOfRangeException">An observation lies outside what can be solved; the message says which.</exception>
    public static Jig Calibrate(Jig jig, IReadOnlyList<RigObservation> observations)
    {
        Require.NotNull(jig);
        Require.NotNull(observations);
        if (observations.Count == 0) return jig;
        RigBelief prior = jig.Belief;
        double[] logs = new double[Side * Side];
        for (int i = 0; i < Side; i++)
        {
            for (int j = 0; j < Side; j++)
            {
                (double a, double b) = (Grid(i), Grid(j));
                double r = prior.CorrelationCoefficient;
                logs[(i * Side) + j] = -0.5 * ((a * a) - (2.0 * r * a * b) + (b * b)) / Math.Max(1.0 - (r * r), 1e-6);
            }
        }

        foreach (RigObservation observation in observations) AddLikelihood(logs, jig, observation);
        return jig with { Belief = Moments(logs, prior) };
    }

    private static double Grid(int index) => ReachSd * ((2.0 * index / (Side - 1)) - 1.0);

    private static void AddLikelihood(double[] logs, Jig jig, RigObservation seen)
    {
        TowCase middle = default;
        if (seen.Kind == ObservationKind.Fall) Require.Positive(seen.FallS, "a fall's seconds");
        else middle = WeightNeed.Checked(jig, seen.Line, seen.Conditions);
        for (int j = 0; j < Side; j++)
        {
            double jigFactor = Math.Exp(jig.Belief.JigLnFactor + (jig.Belief.JigLnSd * Grid(j)));
            double fall = seen.Kind == ObservationKind.Fall ? FallLog(jig, seen, jigFactor) : 0;
            double guess = double.NaN;
            for (int i = 0; i < Side; i++)
            {
                if (seen.Kind == ObservationKind.Fall)
                {
                    logs[(i * Side) + j] += fall;
                    continue;
                }

                double lineFactor = Math.Clamp(Math.Exp(jig.Belief.LineLnFactor + (jig.Belief.LineLnSd * Grid(i))), 0.1, 5);
                double least = LeastMass.MassKgTrusted(jig, middle with { LineDragFactor = lineFactor }, jigFactor, RigObservation.LeavingShare, guess, WeightNeed.QuickSteps);
                guess = least;
                if (double.IsNaN(least)) least = 2.0 * LeastMass.LargestKg;
                double z = Math.Log(jig.MassKg / least) / RigObservation.TowLnSd;
                logs[(i * Side) + j] += seen.Kind switch
                {
                    ObservationKind.HoldsBottom => Math.Log(Math.Max(NormalLaw.ShareBelow(z), 1e-12)),
                    ObservationKind.OffBottom => Math.Log(Math.Max(NormalLaw.ShareBelow(-z), 1e-12)),
                    _ => -0.5 * z * z,
                };
            }
        }
    }

    private static double FallLog(Jig jig, RigObservation seen, double jigFactor)
    {
        FallCase drop = FallCase.Of(jig, seen.Line, seen.Conditions) with { DragAreaM2 = Math.Clamp(jig.DragAreaM2() * jigFactor, 1e-6, 0.02) };
        double predicted = Math.Min(FallSolver.Solve(drop).TimeS, 3600);
        return Tailed(Math.Log(seen.FallS / predicted) / RigObservation.FallLnSd);
    }

    // Student's t with four degrees of freedom: one slip of the stopwatch must not carry the jig away.
    private static double Tailed(double z) => -2.5 * Math.Log(1.0 + (z * z / 4.0));

    private static RigBelief Moments(double[] logs, RigBelief prior)
    {
        double top = double.NegativeInfinity, sum = 0, ma = 0, mb = 0, saa = 0, sbb = 0, sab = 0;
        foreach (double log in logs) top = Math.Max(top, log);
        for (int i = 0; i < Side; i++)
        {
            for (int j = 0; j < Side; j++)
            {
                double weight = Math.Exp(logs[(i * Side) + j] - top), a = Grid(i), b = Grid(j);
                sum += weight;
                ma += weight * a;
                mb += weight * b;
                saa += weight * a * a;
                sbb += weight * b * b;
                sab += weight * a * b;
            }
        }

        ma /= sum;
        mb /= sum;
        // A grid cannot show less than a part of its own cell.
        double least = Math.Pow(0.25 * ReachSd * 2.0 / (Side - 1), 2);
        double va = Math.Max((saa / sum) - (ma * ma), least), vb = Math.Max((sbb / sum) - (mb * mb), least);
        double correlation = Math.Clamp(((sab / sum) - (ma * mb)) / Math.Sqrt(va * vb), -0.98, 0.98);
        return new RigBelief(
            prior.LineLnFactor + (prior.LineLnSd * ma), prior.LineLnSd * Math.Sqrt(va),
            prior.JigLnFactor + (prior.JigLnSd * mb), prior.JigLnSd * Math.Sqrt(vb), correlation);
    }
}
