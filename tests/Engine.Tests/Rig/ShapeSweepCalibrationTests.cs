using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

public class ShapeSweepCalibrationTests
{
    private static readonly FishingLine Line = FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 15);

    private static RigConditions Deep => new() { DepthM = 9.144, SpeedMps = 0.7 * Speed.MpsPerMph, LineOutM = 18.288, TipHeightM = 0 };

    [Fact]
    public void Shape_runs_from_the_jig_to_the_rod_tip_and_is_as_long_as_the_line()
    {
        foreach (TowCase tow in new[] { RigCases.Usual, RigCases.Usual with { TipHeightM = 1 }, RigCases.Usual with { SpeedMps = 0.1, LineOutM = 30 }, RigCases.Check })
        {
            TowShape shape = TowShape.Of(tow);
            LinePoint jig = shape.Points[0], tip = shape.Points[^1];
            Assert.Equal(shape.Tow.HeightOverBottomM, jig.HeightM, 1e-9);
            Assert.Equal(shape.Tow.TrailM, jig.BehindM, 1e-9);
            Assert.Equal(tow.DepthM + tow.TipHeightM, tip.HeightM, 1e-9);
            double length = 0;
            for (int i = 1; i < shape.Points.Count; i++)
            {
                LinePoint a = shape.Points[i - 1], b = shape.Points[i];
                length += Math.Sqrt(Math.Pow(b.BehindM - a.BehindM, 2) + Math.Pow(b.LeftM - a.LeftM, 2) + Math.Pow(b.HeightM - a.HeightM, 2));
            }

            Assert.InRange(length, tow.LineOutM * 0.995, (tow.LineOutM * 1.005) + shape.Tow.StretchM);
            Assert.InRange(shape.BowM, 0, tow.LineOutM * 0.5);
        }
    }

    [Fact]
    public void Sweep_reaches_the_jig_later_with_more_line_and_stretch()
    {
        TowCase tow = RigCases.Usual;
        SweepResult usual = SweepSolver.Solve(tow, TowShape.Of(tow), 3, 10);
        TowCase braid = tow with { LineDensityKgPerM3 = 975, LineModulusPa = 4e10 };
        SweepResult stiff = SweepSolver.Solve(braid, TowShape.Of(braid), 3, 10);
        TowCase far = tow with { LineOutM = 30 };
        SweepResult long_ = SweepSolver.Solve(far, TowShape.Of(far), 3, 10);
        Assert.True(usual.TimeS > 0 && usual.TimeS < 2);
        Assert.True(stiff.StretchM < usual.StretchM);
        Assert.True(long_.TimeS > usual.TimeS);
        // Stretch alone, by Hooke, for a pull raised by 10 N.
        double hooke = 10 * tow.LineOutM / (2e9 * Math.PI * 0.25 * 0.00033 * 0.00033);
        Assert.Equal(hooke, usual.StretchM, (0.02 * hooke) + 0.005);
        Assert.Equal(usual.RodTravelM, usual.StretchM + usual.BowM, 1e-9);
    }

    [Fact]
    public void Jig_that_leaves_earlier_than_predicted_gets_more_drag_and_the_answer_follows()
    {
        Jig jig = Jig.Usual(0.75 * Mass.KilogramsPerOunce);
        double before = LeastMass.MassKg(jig, Deep.Tow(jig, Line), jig.Belief.JigFactor(0, 0), RigObservation.LeavingShare);
        Assert.True(before < jig.MassKg);
        Jig after = JigCalibration.Calibrate(jig, [new RigObservation(ObservationKind.LeavesBottom, Line, Deep)]);
        double corrected = LeastMass.MassKg(after, Deep.Tow(after, Line), after.Belief.JigFactor(0, 0), RigObservation.LeavingShare);
        Assert.InRange(corrected, before * 1.15, jig.MassKg);
        Assert.True(after.Belief.LineLnFactor > 0 && after.Belief.JigLnFactor > 0);
        Assert.True(after.Belief.LineLnSd < jig.Belief.LineLnSd, $"{after.Belief}");
        Assert.True(after.Belief.CorrelationCoefficient < 0);
    }

    [Fact]
    public void Timed_falls_find_the_drag_area_that_made_them()
    {
        Jig truth = Jig.Usual(0.014) with { SkirtDragAreaM2 = 3.2e-4 }, guess = Jig.Usual(0.014);
        double trueS = FallSolver.Solve(FallCase.Of(truth, Line, Deep)).TimeS;
        RigObservation seen = new(ObservationKind.Fall, Line, Deep, trueS);
        Jig corrected = JigCalibration.Calibrate(guess, [seen, seen, seen]);
        double area = corrected.DragAreaM2() * Math.Exp(corrected.Belief.JigLnFactor);
        Assert.Equal(truth.DragAreaM2(), area, 0.08 * truth.DragAreaM2());
        Assert.True(corrected.Belief.JigLnSd < 0.12);
        Assert.Equal(0, corrected.Belief.LineLnFactor, 0.01);
    }

    [Fact]
    public void Holding_and_lifting_push_opposite_ways_and_order_does_not_matter()
    {
        Jig jig = Jig.Usual(0.5 * Mass.KilogramsPerOunce);
        RigObservation held = new(ObservationKind.HoldsBottom, Line, Deep), lifted = new(ObservationKind.OffBottom, Line, Deep);
        RigBelief down = JigCalibration.Calibrate(jig, [held]).Belief, up = JigCalibration.Calibrate(jig, [lifted]).Belief;
        Assert.True(down.LineLnFactor < 0 && up.LineLnFactor > 0);
        RigBelief ab = JigCalibration.Calibrate(jig, [held, lifted]).Belief, ba = JigCalibration.Calibrate(jig, [lifted, held]).Belief;
        Assert.Equal(ab.LineLnFactor, ba.LineLnFactor, 1e-9);
        Assert.Equal(ab.JigLnSd, ba.JigLnSd, 1e-9);
        Assert.Same(jig, JigCalibration.Calibrate(jig, []));
    }

    [Fact]
    public void Absurd_observation_is_refused_with_a_sentence()
    {
        Jig jig = Jig.Usual(0.014);
        RefusedException e = Assert.Throws<RefusedException>(() =>
            JigCalibration.Calibrate(jig, [new RigObservation(ObservationKind.LeavesBottom, Line, Deep with { DepthM = 9144 })]));
        Assert.Contains("The depth is 9144.0 m", e.Finding.Say(UnitSystem.Metric), StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => JigCalibration.Calibrate(jig, [new RigObservation(ObservationKind.Fall, Line, Deep)]));
    }
}
