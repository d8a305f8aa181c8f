using CsCheck;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Rig;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Rig;

public class TowPropertyTests
{
    private static readonly Gen<TowCase> UsualTow =
        from depth in Gen.Double[2, 25]
        from scope in Gen.Double[1.3, 4]
        from speed in Gen.Double[0.1, 0.6]
        from weight in Gen.Double[0.03, 0.5]
        from area in Gen.Double[1e-4, 8e-4]
        from diameter in Gen.Double[0.00018, 0.00045]
        from density in Gen.OneOf(Gen.Const(975.0), Gen.Const(1140.0), Gen.Const(1780.0))
        from friction in Gen.Double[0.2, 0.9]
        from tip in Gen.Double[0, 1.5]
        from motion in Gen.OneOf(Gen.Const(TowMotion.BehindBoat), Gen.Const(TowMotion.WorkedIn))
        select new TowCase
        {
            DepthM = depth,
            LineOutM = scope * (depth + tip),
            SpeedMps = speed,
            TipHeightM = tip,
            Motion = motion,
            JigWeightN = weight,
            JigDragAreaM2 = area,
            FrictionCoefficient = friction,
            LineDiameterM = diameter,
            LineDensityKgPerM3 = density,
            LineModulusPa = 2e9,
            LineDragFactor = 1,
            WaterDensityKgPerM3 = 999,
            ViscosityM2PerS = 1.15e-6,
        };

    [Fact]
    public void Heavier_never_lifts_sooner() => UsualTow.Hold(tow =>
    {
        TowResult light = TowSolver.Solve(tow), heavy = TowSolver.Solve(tow with { JigWeightN = tow.JigWeightN * 1.1 });
        Assert.True(heavy.BottomPushN >= light.BottomPushN - 1e-6, $"{tow}: push {light.BottomPushN} then {heavy.BottomPushN}");
        Assert.True(heavy.HeightOverBottomM <= light.HeightOverBottomM + (2e-5 * tow.DepthM), $"{tow}: height {light.HeightOverBottomM} then {heavy.HeightOverBottomM}");
        double slow = HoldLimits.FastestMps(tow, 0), fast = HoldLimits.FastestMps(tow with { JigWeightN = tow.JigWeightN * 1.1 }, 0);
        Assert.True(fast >= slow - 1e-4, $"{tow}: lifts at {slow} then {fast}");
    }, 400);

    [Fact]
    public void Deeper_never_needs_less() => UsualTow.Hold(tow =>
    {
        double scope = tow.LineOutM / (tow.DepthM + tow.TipHeightM);
        double shallow = Least(tow), sameLine = Least(tow with { DepthM = tow.DepthM * 1.05 });
        double sameScope = Least(tow with { DepthM = tow.DepthM * 1.05, LineOutM = scope * ((tow.DepthM * 1.05) + tow.TipHeightM) });
        Assert.True(sameLine >= shallow * (1 - 1e-4), $"{tow}: same line {shallow} then {sameLine}");
        Assert.True(sameScope >= shallow * (1 - 1e-4), $"{tow}: same scope {shallow} then {sameScope}");
    }, 400);

    [Fact]
    public void Thicker_line_that_does_not_sink_by_itself_never_needs_less() => UsualTow.Hold(tow =>
    {
        // Of sinking line at a crawl the opposite is true and is not a fault: its weight holds it down (docs/science/rig.md).
        TowCase neutral = tow with { LineDensityKgPerM3 = Math.Min(tow.LineDensityKgPerM3, tow.WaterDensityKgPerM3) };
        double thin = Least(neutral), thick = Least(neutral with { LineDiameterM = tow.LineDiameterM * 1.1 });
        Assert.True(thick >= thin * (1 - 1e-4), $"{neutral}: {thin} then {thick}");
    }, 400);

    [Fact]
    public void Thicker_fluorocarbon_never_needs_less_at_dragging_speeds() => UsualTow.Hold(tow =>
    {
        TowCase sinking = tow with
        {
            LineDensityKgPerM3 = 1780,
            SpeedMps = 0.2 + tow.SpeedMps,
            Motion = TowMotion.BehindBoat,
            LineOutM = Math.Min(tow.LineOutM, 2.5 * (tow.DepthM + tow.TipHeightM))
        };
        double thin = Least(sinking), thick = Least(sinking with { LineDiameterM = tow.LineDiameterM * 1.1 });
        Assert.True(thick >= thin * (1 - 1e-4), $"{sinking}: {thin} then {thick}");
    }, 400);

    [Fact]
    public void Results_are_continuous_in_every_input() => UsualTow.Hold(tow =>
    {
        TowResult at = TowSolver.Solve(tow);
        const double Bit = 1e-5;
        TowCase[] near =
        [
            tow with { DepthM = tow.DepthM * (1 + Bit) }, tow with { LineOutM = tow.LineOutM * (1 + Bit) },
            tow with { SpeedMps = tow.SpeedMps * (1 + Bit) }, tow with { JigWeightN = tow.JigWeightN * (1 + Bit) },
            tow with { JigDragAreaM2 = tow.JigDragAreaM2 * (1 + Bit) }, tow with { LineDiameterM = tow.LineDiameterM * (1 + Bit) },
            tow with { FrictionCoefficient = tow.FrictionCoefficient * (1 + Bit) }, tow with { TipHeightM = tow.TipHeightM + Bit },
            tow with { LineDensityKgPerM3 = tow.LineDensityKgPerM3 * (1 + Bit) }, tow with { SlopeRad = Bit },
            tow with { ViscosityM2PerS = tow.ViscosityM2PerS * (1 + Bit) }, tow with { Current = CurrentProfile.Uniform(Bit * tow.SpeedMps, Bit * tow.SpeedMps) },
        ];
        foreach (TowCase other in near)
        {
            TowResult moved = TowSolver.Solve(other);
            Assert.True(Math.Abs(moved.WeightOnBottomShare - at.WeightOnBottomShare) < 3e-3, $"{tow} and {other}: {at} then {moved}");
            Assert.True(Math.Abs(moved.HeightOverBottomM - at.HeightOverBottomM) < 3e-3 * tow.DepthM, $"{tow} and {other}: {at} then {moved}");
            Assert.True(Math.Abs(moved.TensionN - at.TensionN) < 1e-3 * (at.TensionN + tow.JigWeightN), $"{tow} and {other}: {at} then {moved}");
        }
    }, 400);

    [Fact, LongerCheck]
    public void No_random_rig_within_bounds_fails()
    {
        SeededRandom random = new(20241);
        for (int i = 0; i < LongCheck.Number(RandomRigs.Count / 10, RandomRigs.Count); i++)
        {
            TowCase tow = RandomRigs.Next(random);
            Assert.True(TowSolver.TrySolve(tow, out TowResult result, out Finding? problem), problem?.ToString());
            Assert.True(RandomRigs.IsSound(tow, result), $"{tow} gives {result}");
        }
    }

    [Fact]
    public void Outside_bounds_the_sentence_says_what_was_seen_and_what_is_allowed()
    {
        Assert.False(TowSolver.TrySolve(RigCases.Usual with { DepthM = -4 }, out _, out Finding? problem));
        Assert.Equal("The depth is −4.0 m; rigs are worked out from 0.3 m to 100.0 m: check the number and its unit.", problem!.Say(UnitSystem.Metric));
        Assert.False(TowSolver.TrySolve(RigCases.Usual with { LineDiameterM = 0.33 }, out _, out problem));
        Assert.Contains("diameter of the line is 0.33 m", problem!.Say(UnitSystem.Metric), StringComparison.Ordinal);
        Assert.False(TowSolver.TrySolve(RigCases.Usual with { SpeedMps = double.NaN }, out _, out problem));
        Assert.Contains("drag speed is NaN", problem!.Say(UnitSystem.Metric), StringComparison.Ordinal);
        Assert.False(TowSolver.TrySolve(default, out _, out problem));
        Assert.Throws<RefusedException>(() => TowSolver.Solve(default));
    }

    private static double Least(in TowCase tow)
    {
        double kg = LeastMass.MassKg(Jig.Usual(0.014), tow, 1, 0.1);
        return double.IsNaN(kg) ? double.PositiveInfinity : kg;
    }
}
