using SecondShore.Engine.Core;
using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

/// <summary>The solver against every limit that has an exact answer, within 0.5 %.</summary>
public class TowLimitTests
{
    // A line whose normal drag coefficient is exactly that of the flow square to it would need a constant law; these cases take
    // the limit where the law's change along the line is small, or compare with the law's own integral.
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(1.5)]
    public void Without_drag_the_line_hangs_plumb_and_tension_is_weight_plus_line(double lineOutM)
    {
        TowCase tow = RigCases.Check with { SpeedMps = 0, LineOutM = lineOutM * 10, LineDensityKgPerM3 = 1780 };
        TowResult result = TowSolver.Solve(tow);
        double gamma = 780 * 9.81 * Math.PI * 0.25 * 9e-8;
        Assert.Equal(60 - (lineOutM * 10), result.HeightOverBottomM, 1e-6);
        Assert.Equal(0.25 + (gamma * lineOutM * 10), result.TensionN, 1e-9);
        Assert.Equal(0, result.TrailM, 1e-9);
    }

    [Fact]
    public void Short_taut_line_hangs_as_the_weightless_closed_form_says()
    {
        // Steep throughout, so the normal flow is nearly the whole flow and its coefficient nearly constant.
        foreach (double speed in new[] { 0.1, 0.2, 0.3 })
        {
            TowCase tow = RigCases.Check with { SpeedMps = speed, LineOutM = 6, LineDensityKgPerM3 = 1000, JigWeightN = 1.5 };
            double k = ClosedForms.LineDragNPerM(tow.LineDiameterM, speed, 1000, tow.ViscosityM2PerS);
            double drag = 500 * tow.JigDragAreaM2 * speed * speed;
            TowResult result = TowSolver.Solve(tow);
            double depth = ClosedForms.FreeDepthM(1.5, drag, k, 6), trail = ClosedForms.FreeTrailM(1.5, drag, k, 6);
            Assert.Equal(depth, 60 - result.HeightOverBottomM, 0.005 * depth);
            Assert.Equal(trail, result.TrailM, 0.005 * trail);
        }
    }

    [Fact]
    public void Long_heavy_line_settles_at_the_critical_angle()
    {
        // Steel wire of 0.5 mm: Pode's angle with the drag of the flow at that angle.
        TowCase tow = RigCases.Check with
        {
            LineDiameterM = 0.0005,
            LineDensityKgPerM3 = 7850,
            LineOutM = 120,
            DepthM = 100,
            SpeedMps = 0.5,
            JigWeightN = 0.05,
            JigDragAreaM2 = 0,
        };
        TowResult result = TowSolver.Solve(tow);
        double gamma = (7850 - 1000) * 9.81 * Math.PI * 0.25 * 2.5e-7, angle = 0.8;
        for (int i = 0; i < 200; i++)
        {
            // Normal flow is U sin(angle): its coefficient enters Pode's balance.
            double normal = 0.5 * Math.Sin(angle);
            double r = 0.5 * 1000 * 0.0005 * 0.25 * LineDrag.NormalCoefficient(0.0005 * normal / 1.1e-6);
            angle = (0.5 * angle) + (0.5 * ClosedForms.CriticalAngleRad(r, gamma));
        }

        Assert.Equal(angle, result.LineAngleRad, 0.005 * angle);
    }

    [Fact]
    public void Heavy_line_dragged_without_water_drag_is_a_catenary()
    {
        // At a crawl with heavy wire, water drag is a ten-thousandth of weight; friction gives the level pull.
        TowCase tow = RigCases.Check with
        {
            LineDiameterM = 0.001,
            LineDensityKgPerM3 = 7850,
            LineOutM = 14,
            DepthM = 12,
            SpeedMps = 0.03,
            JigWeightN = 2,
            JigDragAreaM2 = 0,
            FrictionCoefficient = 1.0,
        };
        TowResult result = TowSolver.Solve(tow);
        Assert.Equal(JigContact.OnBottom, result.Contact);
        double gamma = (7850 - 1000) * 9.81 * Math.PI * 0.25 * 1e-6;
        double level = result.BottomPushN * Math.Tanh(0.03 / 0.01), up = 2 - result.BottomPushN;
        Assert.Equal(12, ClosedForms.CatenaryDepthM(gamma, level, up, 14), 12 * 0.005);
    }

    [Fact]
    public void Slack_heavy_line_in_still_water_lies_on_the_bottom()
    {
        TowCase tow = RigCases.Usual with { SpeedMps = 0, LineOutM = 20 };
        TowResult result = TowSolver.Solve(tow);
        Assert.Equal(JigContact.LineOnBottom, result.Contact);
        Assert.Equal(11, result.LineOnBottomM, 0.01);
        Assert.Equal(1, result.WeightOnBottomShare, 1e-9);
    }

    [Fact]
    public void Bottom_push_meets_check_I15_as_drag_tends_to_the_closed_law()
    {
        // I15 (weightless line, constant drag per metre, no axial drag): N from the closed form by bisection.
        double low = 0, high = 0.35;
        for (int i = 0; i < 60; i++)
        {
            double n = 0.5 * (low + high);
            if (ClosedForms.FreeDepthM(0.35 - n, 0.02 + (0.5 * n), 0.0335, 18) > 12) low = n; else high = n;
        }

        Assert.Equal(0.0603042, low, 1e-4);

        // The solver's own law has axial drag and a coefficient that grows as the line leans; both act within a few percent of
        // this push's part of the weight. Forces at the ends must balance all the same.
        TowCase tow = RigCases.Check with { DepthM = 12, JigWeightN = 0.35, JigDragAreaM2 = 0.02 / (500 * 0.16), LineDensityKgPerM3 = 1000 };
        TowResult result = TowSolver.Solve(tow);
        Assert.Equal(Math.Sqrt(Math.Pow(0.35 - result.BottomPushN, 2) + Math.Pow(0.02 + (0.5 * result.BottomPushN), 2)), result.JigTensionN, 1e-6);
        Assert.InRange(result.BottomPushN, 0.01, 0.12);
    }

    [Fact]
    public void Halving_the_step_cuts_the_error_sixteenfold()
    {
        TowCase tow = RigCases.Check;
        double exact = TowSolver.Solve(tow, 2000).HeightOverBottomM;
        double coarse = Math.Abs(TowSolver.Solve(tow, 8).HeightOverBottomM - exact);
        double fine = Math.Abs(TowSolver.Solve(tow, 16).HeightOverBottomM - exact);
        Assert.InRange(Math.Log2(coarse / fine), 3.5, 5.5);
        Assert.True(Math.Abs(TowSolver.Solve(tow).HeightOverBottomM - exact) < 2e-4);
    }

    [Fact]
    public void Every_kind_of_tow_is_converged_at_the_default_steps()
    {
        CurrentProfile sheared = CurrentProfile.Of([0, 3, 6, 12], [0.02, -0.05, 0.1, 0.15], [0, 0.05, -0.05, 0.1]);
        TowCase[] tows =
        [
            RigCases.Usual,
            RigCases.Usual with { Current = sheared },
            RigCases.Usual with { LineDensityKgPerM3 = 975 },
            RigCases.Usual with { SpeedMps = 0.1, LineOutM = 30 },
            RigCases.Usual with { Motion = TowMotion.WorkedIn },
            RigCases.Usual with { TipHeightM = 1.5, SlopeRad = 0.1 },
            RigCases.Usual with { JigWeightN = 0.02 },
        ];
        foreach (TowCase tow in tows)
        {
            TowResult usual = TowSolver.Solve(tow), fine = TowSolver.Solve(tow, 400);
            Assert.Equal(fine.Contact, usual.Contact);
            Assert.Equal(fine.WeightOnBottomShare, usual.WeightOnBottomShare, 0.002);
            Assert.Equal(fine.HeightOverBottomM, usual.HeightOverBottomM, 0.01);
            Assert.Equal(fine.TensionN, usual.TensionN, 0.001);
            Assert.Equal(fine.LineAngleRad, usual.LineAngleRad, 0.003);
        }
    }

    [Fact]
    public void Forces_on_the_whole_line_balance_in_three_dimensions()
    {
        // A uniform current across the track is the same flow turned: the plane answer must come back, turned.
        double v = 0.3, turn = 0.6;
        TowCase plane = RigCases.Usual with { SpeedMps = v, FrictionCoefficient = 0, JigWeightN = 0.1 };
        TowCase turned = plane with { SpeedMps = 0, Current = CurrentProfile.Uniform(-v * Math.Cos(turn), v * Math.Sin(turn)) };
        TowResult a = TowSolver.Solve(plane), b = TowSolver.Solve(turned);
        Assert.Equal(a.HeightOverBottomM, b.HeightOverBottomM, 1e-6);
        Assert.Equal(a.TrailM * Math.Cos(turn), b.TrailM, 1e-6);
        Assert.Equal(a.TrailM * Math.Sin(turn), b.SideM, 1e-6);
        Assert.Equal(PhysicalConstants.GravityMps2 > 0, a.TensionN > 0);
    }
}
