using SecondShore.Answers.Rig;
using SecondShore.Answers.Words;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Questions;

/// <summary>What to tie on at a spot.</summary>
internal static class StopRig
{
    private const double TimberReachM = 80;

    public static RigReply Of(Spot spot, DayWish wish, Tackle tackle, UnitSystem units, IReadOnlyList<CoverMark> cover)
    {
        (double shallowM, double deepM) = spot.Passes.Count > 0 ? (spot.Passes[0].ShallowM, spot.Passes[0].DeepM) : (spot.DepthM, spot.DepthM);
        return RigAnswer.Of(new RigRequest
        {
            DepthM = Math.Max(1.0, 0.5 * (shallowM + deepM)),
            DepthSdM = Math.Max(0.3, (deepM - shallowM) / 4),
            SpeedMps = wish.DragSpeed.MetresPerSecond,
            Bottom = NearHard(spot, cover) ? BottomKind.Wood : default,
            NearTimber = NearHard(spot, cover),
            Tackle = tackle,
            Units = units,
            TableDepthsM = [],
            TableSpeedsMps = [],
            Samples = 100,
            Seed = wish.Ensemble.Seed,
        });
    }

    /// <summary>Whether the chosen weight is of lead.</summary>
    public static bool IsLead(RigReply reply) => reply.Choice.Chosen.Jig.Material == JigMaterial.Lead;

    private static bool NearHard(Spot spot, IReadOnlyList<CoverMark> cover)
    {
        LocalProjection around = new(spot.At);
        return cover.Any(c => c.Kind is CoverKind.Brush or CoverKind.Stumps or CoverKind.StandingTimber
            && around.ToPlane(c.Place).DistanceToM(around.ToPlane(spot.At)) <= TimberReachM + c.RadiusM);
    }
}
