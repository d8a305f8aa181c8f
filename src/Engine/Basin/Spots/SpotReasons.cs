using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>Gathers the reasons for a spot with their numbers.</summary>
internal static class SpotReasons
{
    public static List<Reason> Of(SpotRequest request, FormField field, int cell, SpotKind kind, Surroundings ground, ArmState? arm)
    {
        List<Reason> reasons = [];
        BottomForm? first = field.FirstForm[cell] >= 0 ? request.Forms.Forms[field.FirstForm[cell]] : null;
        BottomForm? second = field.SecondForm[cell] >= 0 ? request.Forms.Forms[field.SecondForm[cell]] : null;
        PlanePoint place = request.Grid.Frame.Centre(cell);
        switch (kind)
        {
            case SpotKind.Steep:
                reasons.Add(new Reason(ReasonKind.SteepAnyDepth, first?.Class, ShallowM: ground.ShallowM, DeepM: ground.DeepM));
                break;
            case SpotKind.ChannelEdge:
                reasons.Add(new Reason(ReasonKind.EdgeAnyDepth, first?.Class, ShallowM: ground.NearShallowM, DeepM: ground.NearDeepM));
                break;
            case SpotKind.Shallow:
                reasons.Add(new Reason(first?.Class == FormClass.Flat ? ReasonKind.WindBlownFlat : ReasonKind.BackOfArm, first?.Class, DeepM: request.Grid.DepthM[cell]));
                break;
        }

        if (first is { Class: FormClass.ChannelBend, ToFlatM: < 60 })
            reasons.Add(new Reason(ReasonKind.SwingsByFlat, FormClass.ChannelBend, first.ToFlatM, ground.NearShallowM, ground.NearDeepM));
        else if (first is not null && kind != SpotKind.Shallow)
            reasons.Add(new Reason(ReasonKind.OnForm, first.Class, ShallowM: ground.NearShallowM, DeepM: ground.NearDeepM));
        if (second is not null && second.Class is not (FormClass.Flat or FormClass.Slope))
            reasons.Add(new Reason(ReasonKind.NearForm, second.Class, DistanceM(second, place)));
        if (field.CoverMark[cell] >= 0 && field.Cover[cell] > 0)
        {
            CoverMark mark = request.Cover[field.CoverMark[cell]];
            double d = Math.Max(0, request.Grid.Projection.ToPlane(mark.Place).DistanceToM(place) - mark.RadiusM);
            reasons.Add(new Reason(ReasonKind.CoverNear, DistanceM: d, Cover: mark.Kind, Word: mark.Note));
        }

        if (ground.SlopeDeg >= 8) reasons.Add(new Reason(ReasonKind.SharpEdge, SlopeDeg: ground.SlopeDeg));
        if (!double.IsNaN(ground.ToDeepWaterM)) reasons.Add(new Reason(ReasonKind.DeepWater, DistanceM: ground.ToDeepWaterM, DeepM: ground.DeepWaterM));
        if (kind == SpotKind.Belt) reasons.Add(new Reason(ReasonKind.InReach, ChanceShare: request.ChanceInReach![cell]));
        if (arm is { Water: ArmWater.Settled }) reasons.Add(new Reason(ReasonKind.ArmSettled, Word: arm.Name));
        if (arm is { Water: ArmWater.Layered } && request.ChanceStratified < 0.9) reasons.Add(new Reason(ReasonKind.ArmLayered, Word: arm.Name));
        return reasons;
    }

    private static double DistanceM(BottomForm form, PlanePoint place)
    {
        double least = form.Place.SquaredDistanceToM2(place);
        foreach (IReadOnlyList<PlanePoint> line in (IReadOnlyList<PlanePoint>[])[form.Geometry.Points, form.LeftEdge, form.RightEdge])
            foreach (PlanePoint p in line) least = Math.Min(least, p.SquaredDistanceToM2(place));
        return Math.Sqrt(least);
    }
}
