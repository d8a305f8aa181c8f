using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

public class TowCheckValueTests
{
    [Fact]
    public void Full_line_of_check_I13_hangs_at_its_depth_and_pulls_as_I14_says()
    {
        TowResult tow = TowSolver.Solve(RigCases.Check);
        Assert.Equal(JigContact.Lifted, tow.Contact);
        Assert.Equal(11.4836, 60 - tow.HeightOverBottomM, 0.005);
        Assert.Equal(0.353641, tow.TensionN, 0.0005);
    }

    [Theory]
    [InlineData(100, 1.5, 0.002)]
    [InlineData(10, 2.52638, 0.001)]
    public void Normal_drag_coefficient_meets_its_check_value(double reynolds, double expected, double tolerance) =>
        Assert.Equal(expected, LineDrag.NormalCoefficient(reynolds), tolerance);

    [Fact]
    public void Closed_forms_meet_their_check_values()
    {
        Assert.Equal(0.0335196, ClosedForms.LineDragNPerM(0.00028, 0.4, 1000, 1.1e-6), 1e-6);
        Assert.Equal(1.62213, ClosedForms.ScopeRootRatio(1.5), 1e-5);
        Assert.Equal(0.247822, ClosedForms.LeastWeightN(0.0335, 12, 18), 1e-6);
        Assert.Equal(22.3418, ClosedForms.LiftingAngleRad(1.5) * 180 / Math.PI, 1e-3);
        Assert.Equal(11.5224, ClosedForms.FreeDepthM(0.25, 0.03, 0.0335, 18), 1e-4);
        Assert.Equal(12.7714, ClosedForms.FreeTrailM(0.25, 0.03, 0.0335, 18), 1e-4);
        Assert.Equal(17.8885, ClosedForms.CatenaryDepthM(0.05, 0.2, 0.1, 20), 1e-4);
        Assert.Equal(65.5302, ClosedForms.CriticalAngleRad(0.025, 0.05) * 180 / Math.PI, 1e-4);
    }
}
