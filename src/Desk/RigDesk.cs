using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core;
using SecondShore.Engine.Rig;
using SecondShore.Formats.Lake;

namespace SecondShore.Desk;

/// <summary>What to tie on, from the user's tackle where the lake has any.</summary>
internal static class RigDesk
{
    /// <exception cref="RefusedException">A number lies outside what can be worked out.</exception>
    public static RigView Answer(RigAsk ask, TackleDocument? filed, UnitSystem units, RigRequest? planned = null)
    {
        List<Finding> assumed = [];
        Tackle tackle = TackleMapper.Map(filed, assumed);
        // A planned stop is asked as the plan asked: one water, one rig.
        RigReply reply = RigAnswer.Of(planned is not null ? planned with { Units = units, Samples = StopRig.Samples } : RigAsks.Request(ask, tackle, units));
        WeightOutlook chosen = reply.Choice.Chosen;
        return new RigView
        {
            Asked = planned is null ? ask with { Stop = null } : ask with { DepthM = reply.Conditions.DepthM, SpeedMps = planned.SpeedMps, LineKg = reply.Line.StrengthN / PhysicalConstants.StandardGravityMps2 },
            Short = RigWords.Short(reply),
            OnBottomShare = chosen.OnBottomShare,
            MassKg = chosen.Jig.MassKg,
            LeastKg = reply.Choice.LeastKg,
            Holds = reply.Choice.Holds,
            FastestMps = chosen.FastestMps,
            LineOutM = reply.Conditions.LineOutAtM(reply.Conditions.DepthM),
            FallS = chosen.FallS,
            LineAngleRad = chosen.LineAngleRad,
            Shape = Points(reply.Shape),
            Steep = Points(reply.SteepShape),
            Flat = Points(reply.FlatShape),
            DepthsM = reply.TableDepthsM,
            SpeedsMps = reply.TableSpeedsMps,
            Sizes = [.. reply.Table.Select(c => c.Size?.Label)],
            Why = RigWords.Why(reply),
            Words = RigWords.Of(reply),
            Cautions = RigCautions.Of(reply),
            Assumed = [.. assumed.Say(units), .. reply.Assumed],
        };
    }

    private static List<Views.LinePoint> Points(TowShape shape)
    {
        int every = Math.Max(1, shape.Points.Count / 60);
        List<Views.LinePoint> points = [];
        for (int i = 0; i < shape.Points.Count; i++)
            if (i % every == 0 || i == shape.Points.Count - 1) points.Add(new Views.LinePoint(shape.Points[i].BehindM, Math.Max(0, shape.Points[i].HeightM)));
        return points.Count > 1 && points[0].Z > points[^1].Z ? [.. points.AsEnumerable().Reverse()] : points;
    }
}
