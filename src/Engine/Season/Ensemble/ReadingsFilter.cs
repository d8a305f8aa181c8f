using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Season;

/// <summary>
/// Particle filter over a lake's numbers and state: the likelihood is taken in stages, each stage resampled, jittered and run
/// again from the season's start, so state and parameters never part. Student-t errors let a wild reading speak softly.
/// </summary>
internal static class ReadingsFilter
{
    private const int MostStages = 6;
    private const double Freedom = 4;

    public static Particles Run(SeasonModel model, int count, ulong seed, IProgress<double>? progress, double share, CancellationToken cancel)
    {
        SeededRandom random = new(seed, 5);
        Particles particles = new(count, random);
        if (model.Observations.All.Count == 0) return particles;
        int toStep = model.Observations.All[^1].Step + 1;
        double power = 0;
        for (int stage = 0; stage < MostStages; stage++)
        {
            double from = share * stage / MostStages, to = share * (stage + 1) / MostStages;
            MemberLoop.Run(count, i => particles.LogLikelihood[i] = LogLikelihood(model,
                model.Run(particles.Z[i], particles.StartK[i], model.ScenarioOf(i), toStep, keep: false)), progress, from, to, cancel);
            double step = stage == MostStages - 1 ? 1 - power : particles.SafePower(1 - power);
            particles.Reweight(step);
            power += step;
            if (power >= 1 - 1e-9) break;
            particles.ResampleAndJitter(random, 0.95);
        }

        return particles;
    }

    /// <summary>Readings that even the fitted members do not meet.</summary>
    public static List<Finding> Doubted(SeasonModel model, MemberTrace[] traces, double[] weight)
    {
        List<Finding> doubted = [];
        HashSet<int> casts = [];
        for (int o = 0; o < model.Observations.All.Count; o++)
        {
            Observation seen = model.Observations.All[o];
            double mean = 0, square = 0, sum = 0, slope = 0;
            for (int i = 0; i < traces.Length; i++)
            {
                double p = traces[i].Predicted[o];
                if (!double.IsFinite(p)) continue;
                mean += weight[i] * p;
                square += weight[i] * p * p;
                slope += weight[i] * traces[i].Slope[o];
                sum += weight[i];
            }

            if (sum < 0.2)
            {
                if (seen.Kind == ReadingKind.HazeDepth)
                    doubted.Add(SeasonFindings.NoStepThen.Of(Told.Source(seen.Source), seen.Seen));
                continue;
            }

            mean /= sum;
            double spread = Math.Sqrt(Math.Max(0, (square / sum) - (mean * mean)));
            double sd = Math.Sqrt((seen.Sd * seen.Sd) + (spread * spread) + (0.25 * slope * slope / (sum * sum)));
            double off = seen.Kind == ReadingKind.Secchi ? Math.Log(seen.Value / mean) : seen.Value - mean;
            if (Math.Abs(off) < 3.0 * sd) continue;
            // One sentence a cast is enough.
            if (seen.Weight < 1 && !casts.Add(seen.Step)) continue;
            doubted.Add(FarOff(seen, mean));
        }

        return doubted;
    }

    private static Finding FarOff(Observation seen, double mean) => seen.Kind switch
    {
        ReadingKind.HazeDepth or ReadingKind.Secchi => SeasonFindings.FarOffDepth.Of(Told.Source(seen.Source), seen.Seen, Told.Difference(mean)),
        ReadingKind.SurfaceTemperature or ReadingKind.Temperature => SeasonFindings.FarOffTemperature.Of(Told.Source(seen.Source), seen.Seen, Told.Temperature(mean)),
        _ => SeasonFindings.FarOff.Of(Told.Source(seen.Source), seen.Seen, mean),
    };

    private static double LogLikelihood(SeasonModel model, MemberTrace trace)
    {
        double sum = 0;
        for (int o = 0; o < trace.Predicted.Length; o++)
        {
            Observation seen = model.Observations.All[o];
            double predicted = trace.Predicted[o], off = seen.Kind == ReadingKind.Secchi ? Math.Log(seen.Value / predicted) : seen.Value - predicted;
            // A member without a step answers a haze reading as one that stands three errors off.
            if (!double.IsFinite(off)) off = 3 * seen.Sd;
            // Where temperature changes fast with depth, half a metre of depth error is temperature error too.
            double slope = 0.5 * trace.Slope[o], variance = (seen.Sd * seen.Sd) + (slope * slope);
            sum -= seen.Weight * 0.5 * (((Freedom + 1) * Math.Log(1 + (off * off / variance / Freedom))) + Math.Log(variance));
        }

        return double.IsFinite(sum) ? sum : -1e9;
    }
}
