using SecondShore.Engine.Rig;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Rig;

/// <summary>Corrects a jig's drag by the observations filed with it, and says by how much.</summary>
internal static class JigSightings
{
    /// <summary>The jig as its observations have it.</summary>
    /// <param name="jig">The jig at its prior.</param>
    /// <param name="item">Its row.</param>
    /// <param name="lines">Lines owned; the first stands for one that is not named.</param>
    /// <param name="assumed">Receives what was taken from them and what could not be used.</param>
    public static Jig Calibrated(Jig jig, JigItem item, IReadOnlyList<FishingLine> lines, List<Finding> assumed)
    {
        List<RigObservation> seen = [];
        foreach (JigObservationItem observation in item.Observations)
        {
            RigObservation next = Of(observation, Line(observation, item, lines, assumed));
            if (next.Kind != ObservationKind.Fall && TowBounds.Problem(next.Conditions.Tow(jig, next.Line)) is { } problem)
            {
                assumed.Add(AnswerFindings.SightingUnused.Of(item.Name, observation.Kind, problem));
                continue;
            }

            seen.Add(next);
        }

        if (seen.Count == 0) return jig;
        Jig corrected = JigCalibration.Calibrate(jig, seen);
        double own = Math.Exp(corrected.Belief.JigLnFactor), line = Math.Exp(corrected.Belief.LineLnFactor);
        assumed.Add(seen.Count > 1 ? AnswerFindings.SightingsTaken.Of(item.Name, seen.Count, own, line) : AnswerFindings.SightingTaken.Of(item.Name, own, line));
        return corrected;
    }

    private static FishingLine Line(JigObservationItem seen, JigItem jig, IReadOnlyList<FishingLine> lines, List<Finding> assumed)
    {
        FishingLine first = lines.Count > 0 ? lines[0] : FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 15);
        if (seen.LineName.Length == 0) return first;
        if (QuantityText.Line(seen.LineName, lines) is { } named) return named;
        assumed.Add(AnswerFindings.SightingLineUnknown.Of(jig.Name, seen.LineName, first.Name));
        return first;
    }

    private static RigObservation Of(JigObservationItem seen, FishingLine line)
    {
        RigConditions conditions = new()
        {
            DepthM = seen.DepthM,
            SpeedMps = seen.SpeedMps ?? 0,
            LineOutM = seen.LineOutM,
            // As filed, line out runs to the rod tip; a tip higher than the slack would allow is taken down to it.
            TipHeightM = Math.Clamp((seen.LineOutM ?? double.MaxValue) - seen.DepthM, 0, 0.6),
            Current = CurrentProfile.Uniform(seen.CurrentMps ?? 0),
        };
        ObservationKind kind = seen.Kind switch
        {
            "holds_bottom" => ObservationKind.HoldsBottom,
            "off_bottom" => ObservationKind.OffBottom,
            "fall" => ObservationKind.Fall,
            _ => ObservationKind.LeavesBottom,
        };
        return new RigObservation(kind, line, conditions, seen.Seconds ?? double.NaN);
    }
}
