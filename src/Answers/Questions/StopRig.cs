using SecondShore.Answers.Rig;
using SecondShore.Answers.Words;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Passes;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Rig;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Questions;

/// <summary>What to tie on at a spot.</summary>
public static class StopRig
{
    private const double TimberReachM = 80;

    /// <summary>Draws that a stop's weight is chosen by: whoever asks of the same stop again takes as many.</summary>
    public static readonly int Samples = 100;

    /// <summary>The question of a planned stop: its depths, its bottom, and the water as it moves there while the boat does.</summary>
    internal static RigRequest Request(Spot spot, PlannedStop stop, Outlook outlook, IWaterMotion motion, DayWish wish, Tackle tackle, UnitSystem units,
        IReadOnlyList<CoverMark> cover)
    {
        Pass? pass = spot.Passes.Count > 0 ? spot.Passes[0] : null;
        (double shallowM, double deepM) = pass is null ? (spot.DepthM, spot.DepthM) : (pass.ShallowM, pass.DeepM);
        double depthM = Math.Max(1.0, 0.5 * (shallowM + deepM));
        DateTimeOffset middle = stop.Arrive + (0.5 * (stop.Leave - stop.Arrive));
        CurrentProfile? current = StopWater.Current(motion, pass?.Line[pass.Line.Count / 2] ?? spot.Place, depthM, pass?.HeadingDeg ?? 0, middle);
        bool hard = NearHard(spot, cover);
        return new RigRequest
        {
            DepthM = depthM,
            DepthSdM = Math.Max(0.3, (deepM - shallowM) / 4),
            SpeedMps = wish.DragSpeed.MetresPerSecond,
            Bottom = hard ? BottomKind.Wood : default,
            NearTimber = hard,
            Current = current,
            CurrentSdMps = current is null ? null : StopWater.CurrentSdMps(current, depthM),
            Water = StopWater.Water(outlook, depthM),
            Tackle = tackle,
            Units = units,
            Seed = wish.Ensemble.Seed,
        };
    }

    /// <summary>What to tie on there, without tables.</summary>
    public static RigPick Of(RigRequest request) => RigAnswer.PickOf(request with { Samples = Samples });

    /// <summary>Whether the chosen weight is of lead.</summary>
    public static bool IsLead(RigPick pick) => pick.Choice.Chosen.Jig.Material == JigMaterial.Lead;

    private static bool NearHard(Spot spot, IReadOnlyList<CoverMark> cover)
    {
        LocalProjection around = new(spot.At);
        return cover.Any(c => c.Kind is CoverKind.Brush or CoverKind.Stumps or CoverKind.StandingTimber
            && around.ToPlane(c.Place).DistanceToM(around.ToPlane(spot.At)) <= TimberReachM + c.RadiusM);
    }
}
