using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

/// <summary>Against figures of the literature on cylinders and towed cables (docs/science/rig.md, "How sure").</summary>
public class TowLiteratureTests
{
    [Theory]
    [InlineData(30, -0.10)]
    [InlineData(80, 0.0)]
    [InlineData(300, 0.09)]
    public void Normal_drag_stands_to_the_fit_of_White_1991_as_told(double reynolds, double off)
    {
        double white = 1 + (10 * Math.Pow(reynolds, -2.0 / 3.0));
        Assert.Equal(off, (LineDrag.NormalCoefficient(reynolds) / white) - 1, 0.012);
    }

    [Fact]
    public void Normal_drag_lies_an_eighth_over_smooth_cylinder_data_at_Reynolds_100() =>
        Assert.Equal(0.12, (LineDrag.NormalCoefficient(100) / 1.33) - 1, 0.015);

    [Theory]
    [InlineData(20)]
    [InlineData(50)]
    [InlineData(100)]
    public void Axial_drag_lies_a_tenth_to_a_quarter_over_the_heat_analogue(double reynolds)
    {
        // Churchill and Bernstein 1977 at a Prandtl number of 1.
        double nusselt = 0.3 + (0.62 * Math.Sqrt(reynolds) / Math.Pow(1 + Math.Pow(0.4, 2.0 / 3.0), 0.25) * Math.Pow(1 + Math.Pow(reynolds / 282000, 0.625), 0.8));
        Assert.InRange(LineDrag.TangentialCoefficient(reynolds, 1e-3) / (Math.PI * 1e-3 * nusselt), 1.09, 1.26);
    }

    [Theory]
    [InlineData(0.25, 0.03, 18, 1140)]
    [InlineData(0.15, 0.01, 25, 1780)]
    [InlineData(0.40, 0.02, 12, 975)]
    public void Whole_line_agrees_with_integrals_by_angle_as_Pode_took_them(double weightN, double jigDragN, double lineM, double lineDensity)
    {
        const double U = 0.4, D = 0.0003, Rho = 1000, Nu = 1.1e-6;
        TowCase tow = RigCases.Check with { JigWeightN = weightN, JigDragAreaM2 = jigDragN / (0.5 * Rho * U * U), LineOutM = lineM, LineDensityKgPerM3 = lineDensity, LineModulusPa = 0 };
        double gamma = (lineDensity - Rho) * 9.81 * Math.PI * 0.25 * D * D, mu = Nu * Rho;
        // d/dphi of ln T, s, x, z; angle falls from the jig up.
        double phi = Math.Atan2(weightN, jigDragN), tension = Math.Sqrt((weightN * weightN) + (jigDragN * jigDragN)), s = 0, x = 0, z = 0;
        const double Step = -2e-6;
        while (true)
        {
            double middle = phi + (0.5 * Step), sin = Math.Sin(middle), cos = Math.Cos(middle), re = D * U * sin / Nu;
            double turn = (gamma * cos) - (0.5 * Rho * D * LineDrag.NormalCoefficient(re) * U * U * sin * sin);
            double pull = (gamma * sin) + (LineDrag.TangentialCoefficient(re, mu) * U * cos);
            double half = tension * Math.Exp(0.5 * Step * pull / turn), ds = Step * half / turn;
            if (ds <= 0 || s + ds > lineM)
            {
                x += (lineM - s) * cos;
                z += (lineM - s) * sin;
                break;
            }

            tension *= Math.Exp(Step * pull / turn);
            (s, x, z, phi) = (s + ds, x + (ds * cos), z + (ds * sin), phi + Step);
        }

        TowResult result = TowSolver.Solve(tow);
        Assert.Equal(z, 60 - result.HeightOverBottomM, 1e-3 * z);
        Assert.Equal(x, result.TrailM, 1e-3 * x);
        Assert.Equal(tension, result.TensionN, 1e-3 * tension);
    }

    [Theory]
    [InlineData(1.01, 0.3)]
    [InlineData(1.02, 0.3)]
    [InlineData(1.02, 0.15)]
    public void Least_weight_of_a_steep_line_is_that_of_the_closed_form(double scope, double speedMps)
    {
        // Steep, so that the flow square to the line is nearly the whole flow; neutral line, dragless jig.
        TowCase tow = RigCases.Check with
        {
            DepthM = 12,
            LineOutM = 12 * scope,
            SpeedMps = speedMps,
            LineDensityKgPerM3 = 1000,
            LineModulusPa = 0,
            JigDragAreaM2 = 0,
            FrictionCoefficient = 0,
        };
        double low = 0.003, high = 19;
        for (int i = 0; i < 50; i++)
        {
            double weight = Math.Sqrt(low * high);
            if (TowSolver.Solve(tow with { JigWeightN = weight }).HeightOverBottomM > 1e-9) low = weight; else high = weight;
        }

        double closed = ClosedForms.LeastWeightN(ClosedForms.LineDragNPerM(tow.LineDiameterM, speedMps, 1000, tow.ViscosityM2PerS), 12, 12 * scope);
        Assert.Equal(closed, low, 0.005 * closed);
    }
}
