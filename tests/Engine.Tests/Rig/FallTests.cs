using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

public class FallTests
{
    private static readonly FallCase Drop = new()
    {
        DepthM = 10,
        JigWeightN = 0.125229,
        MovingMassKg = 0.014 + (0.5 * 1000 * 0.014 / 11340),
        DragAreaM2 = 3e-4,
        LineDiameterM = 5e-5,
        LineDensityKgPerM3 = 1000,
        WaterDensityKgPerM3 = 1000,
        ViscosityM2PerS = 1.3e-6,
    };

    [Fact]
    public void Terminal_speed_and_weight_meet_their_check_values()
    {
        Assert.Equal(0.125229, new Jig("j", 0.014, JigMaterial.Lead, HeadShape.Ball, 0, Trailer.None).WeightInWaterN(1000), 1e-6);
        Assert.Equal(0.913706, FallSolver.TerminalMps(0.125229, 3e-4, 1000), 1e-5);
        Assert.Equal(0.018404, FallSolver.LineDragN(0.9, 10, 0.00028, 1000, 1.3e-6), 1e-6);
        Assert.Equal(1.41471, new FishingLine("l", LineMaterial.Fluorocarbon, 0.0003, 50, true).StretchM(10, 20), 1e-4);
        Assert.Equal(0.295242e-3, FishingLine.UsualDiameterM(44.5, 6.5e8), 1e-8);
        double ratio = Math.Cbrt((11340.0 - 1000) / (JigMaterial.Tungsten.DensityKgPerM3 - 1000));
        Assert.Equal(0.855747, ratio, 1e-5);
    }

    [Fact]
    public void Free_fall_without_line_follows_its_closed_form()
    {
        // The line here has all but no drag: water a million times thinner would be outside bounds, so compare with what it takes.
        double tau = Drop.MovingMassKg * FallSolver.TerminalMps(Drop.JigWeightN, Drop.DragAreaM2, 1000) / Drop.JigWeightN;
        double speed = 0.913706, exact = tau * Math.Acosh(Math.Exp(10 / (speed * tau)));
        FallCase bare = Drop with { ViscosityM2PerS = 2e-7 };
        Assert.Equal(11.0184, exact, 0.001);
        double timeS = FallSolver.Solve(bare).TimeS;
        Assert.InRange(timeS, exact, exact * 1.012);
    }

    [Fact]
    public void Line_drag_slows_the_fall_as_the_check_says()
    {
        double timeS = FallSolver.Solve(Drop with { LineDiameterM = 0.00028 }).TimeS;
        // I24 is quasi-steady; from rest takes about 0.07 s more.
        Assert.Equal(11.3912 + 0.075, timeS, 0.05);
    }

    [Fact]
    public void Tight_line_swing_meets_its_check_value()
    {
        double timeS = SwingSolver.TimeS(Drop with { LineDiameterM = 0.00028 }, 12, 0.5 * Math.PI, 1.3);
        Assert.Equal(74.1782, timeS, 0.1);
    }

    [Fact]
    public void Heavier_jigs_and_thinner_lines_fall_faster_and_tight_line_takes_several_times_as_long()
    {
        RigConditions deep = new() { DepthM = 9, SpeedMps = 0.25 };
        double last = double.PositiveInfinity;
        foreach (double ounces in new[] { 0.25, 0.375, 0.5, 0.75, 1.0 })
        {
            Jig jig = Jig.Usual(ounces * 0.028349523);
            double thin = FallSolver.Solve(FallCase.Of(jig, FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 12), deep)).TimeS;
            double thick = FallSolver.Solve(FallCase.Of(jig, FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 20), deep)).TimeS;
            Assert.True(thin < last, $"{ounces} oz falls no faster than the lighter");
            Assert.True(thin < thick, $"{ounces} oz falls no faster on thinner line");
            last = thin;
        }

        FallCase usual = FallCase.Of(Jig.Usual(0.0142), FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 15), deep);
        double free = FallSolver.Solve(usual).TimeS, tight = SwingSolver.TimeToBottomS(usual, 18, 9.6);
        Assert.InRange(9 / free, 0.6, 1.1);
        Assert.InRange(tight / free, 1.5, 8);
    }

    [Fact]
    public void Current_sets_a_falling_jig_by_its_speed_times_the_fall()
    {
        FallResult fall = FallSolver.Solve(Drop, CurrentProfile.Uniform(0.1, -0.2));
        Assert.Equal(0.1 * fall.TimeS, fall.AlongM, 1e-9);
        Assert.Equal(-0.2 * fall.TimeS, fall.AcrossM, 1e-9);
    }
}
