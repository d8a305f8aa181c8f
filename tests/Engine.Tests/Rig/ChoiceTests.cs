using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

public class ChoiceTests
{
    private static readonly FishingLine Fluoro15 = FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 15);
    private static readonly IReadOnlyList<Jig> Sizes = RigChooser.Standard(Jig.Usual(0.014), StandardWeight.Ounces);

    private static RigConditions At(double feet, double mph) => new()
    {
        DepthM = feet * 0.3048,
        SpeedMps = mph * Speed.MpsPerMph,
        DepthSdM = 0.05 * feet * 0.3048,
        SpeedSdMps = 0.15 * mph * Speed.MpsPerMph,
        CurrentSdMps = 0.01,
    };

    [Fact]
    public void Rule_of_thumb_comes_out_half_an_ounce_to_15_ft_and_three_quarters_to_one_ounce_deeper()
    {
        // Nothing here knows the rule: line, skirt and water do it, at the middle of usual dragging speeds.
        foreach (double pounds in new[] { 12.0, 15, 17 })
        {
            FishingLine line = FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, pounds);
            Assert.InRange(Ounces(line, 15, 0.65), 0.25, 0.5);
            Assert.InRange(Ounces(line, 30, 0.65), 0.5, 0.75);
            Assert.InRange(Ounces(line, 45, 0.65), 0.75, 1.25);
        }

        static double Ounces(FishingLine line, double feet, double mph) =>
            Mass.FromKilograms(RigChooser.Choose(Sizes, line, At(feet, mph), HoldRule.Usual).Chosen.Jig.MassKg).Ounces;
    }

    [Fact]
    public void Chosen_is_the_lightest_size_that_meets_the_rule_and_its_neighbours_show_why()
    {
        RigChoice choice = RigChooser.Choose(Sizes, Fluoro15, At(30, 0.7), HoldRule.Usual);
        Assert.True(choice.Holds);
        Assert.NotNull(choice.Lighter);
        Assert.NotNull(choice.Heavier);
        Assert.True(choice.Chosen.Jig.MassKg >= choice.NeededKg);
        Assert.True(choice.Lighter.Jig.MassKg < choice.NeededKg);
        Assert.True(choice.Chosen.HoldsChance >= 0.85);
        Assert.True(choice.Lighter.HoldsChance <= choice.Chosen.HoldsChance && choice.Chosen.HoldsChance <= choice.Heavier.HoldsChance);
        Assert.True(choice.Lighter.FallS.P50 > choice.Chosen.FallS.P50 && choice.Chosen.FallS.P50 > choice.Heavier.FallS.P50);
        Assert.True(choice.Lighter.FastestMps.P50 < choice.Chosen.FastestMps.P50 && choice.Chosen.FastestMps.P50 < choice.Heavier.FastestMps.P50);
        Assert.True(choice.Lighter.LeastLineM.P50 > choice.Chosen.LeastLineM.P50);
        Assert.True(choice.Chosen.OnBottomShare.IsOrdered && choice.Chosen.FallS.IsOrdered && choice.Chosen.LineAngleRad.IsOrdered);
    }

    [Fact]
    public void The_same_seed_gives_the_same_choice_and_more_samples_hardly_move_it()
    {
        RigConditions at = At(27.5, 0.6);
        double once = RigChooser.Choose(Sizes, Fluoro15, at, HoldRule.Usual, 200, 5).NeededKg;
        Assert.Equal(once, RigChooser.Choose(Sizes, Fluoro15, at, HoldRule.Usual, 200, 5).NeededKg);
        Assert.Equal(once, RigChooser.Choose(Sizes, Fluoro15, at, HoldRule.Usual, 1000, 6).NeededKg, 0.06 * once);
    }

    [Fact]
    public void Quick_need_of_tables_agrees_with_samples()
    {
        foreach ((double feet, double mph) in new[] { (12.0, 0.5), (30, 0.7), (45, 0.9), (20, 1.0) })
        {
            RigConditions at = At(feet, mph);
            double sampled = RigChooser.Choose(Sizes, Fluoro15, at, HoldRule.Usual, 400).NeededKg;
            Assert.Equal(sampled, WeightNeed.QuickKg(Jig.Usual(0.014), Fluoro15, at, HoldRule.Usual), 0.06 * sampled);
        }
    }

    [Fact]
    public void More_confidence_and_more_doubt_never_ask_for_less()
    {
        RigConditions at = At(30, 0.7);
        double last = 0;
        foreach (double confidence in new[] { 0.5, 0.7, 0.8, 0.9, 0.95, 0.99 })
        {
            double needed = RigChooser.Choose(Sizes, Fluoro15, at, new HoldRule(confidence, 0.1, 0.0)).NeededKg;
            Assert.True(needed >= last);
            last = needed;
        }

        HoldRule firm = new(0.9, 0.1, 0);
        Assert.True(WeightNeed.QuickKg(Jig.Usual(0.014), Fluoro15, at with { SpeedSdMps = 0.1 }, firm)
            > WeightNeed.QuickKg(Jig.Usual(0.014), Fluoro15, at, firm));
    }

    [Fact]
    public void Too_fast_for_every_size_is_said_and_the_heaviest_shown()
    {
        RigChoice choice = RigChooser.Choose(Sizes, Fluoro15, At(60, 2.5), HoldRule.Usual);
        Assert.False(choice.Holds);
        Assert.Equal("3 oz", choice.Chosen.Jig.Name);
        Assert.Null(choice.Heavier);
        WeightCell[] cells = RigTables.Weights(Jig.Usual(0.014), Fluoro15, At(30, 0.7), HoldRule.Usual, [18.0], [1.2], StandardWeight.Ounces);
        Assert.Null(cells[0].Size);
    }

    [Fact]
    public void Owned_jigs_of_several_kinds_are_weighed_each_by_its_own_drag()
    {
        Jig bulky = Jig.Usual(0.5 * Mass.KilogramsPerOunce) with { Name = "bulky half", Trailer = Trailer.Flapping };
        Jig slim = new("slim half", 0.5 * Mass.KilogramsPerOunce, JigMaterial.Tungsten, HeadShape.Slim, 0, Trailer.None);
        Jig heavy = Jig.Usual(Mass.KilogramsPerOunce) with { Name = "one" };
        RigConditions at = At(30, 0.58);
        HoldRule rule = new(0.9, 0.1, 0.1);
        Assert.InRange(slim.MassKg, WeightNeed.QuickKg(slim, Fluoro15, at, rule), double.PositiveInfinity);
        Assert.InRange(bulky.MassKg, 0, WeightNeed.QuickKg(bulky, Fluoro15, at, rule));
        RigChoice choice = RigChooser.Choose([heavy, bulky, slim], Fluoro15, at, rule);
        Assert.Equal("slim half", choice.Chosen.Jig.Name);
        Assert.Equal("one", choice.Heavier!.Jig.Name);
    }

    [Fact]
    public void Tungsten_needs_less_metal_than_lead()
    {
        RigConditions at = At(30, 0.7);
        double lead = WeightNeed.QuickKg(Jig.Usual(0.014), Fluoro15, at, HoldRule.Usual);
        double tungsten = WeightNeed.QuickKg(Jig.Usual(0.014, JigMaterial.Tungsten), Fluoro15, at, HoldRule.Usual);
        Assert.InRange(tungsten / lead, 0.85, 0.98);
    }

    [Fact]
    public void Table_grows_with_depth_and_speed_and_gives_sizes_that_suffice()
    {
        double[] depths = [3, 6, 9, 12], speeds = [0.15, 0.25, 0.35];
        WeightCell[] cells = RigTables.Weights(Jig.Usual(0.014), Fluoro15, At(30, 0.7), HoldRule.Usual, depths, speeds, StandardWeight.Ounces);
        for (int row = 0; row < 4; row++)
        {
            for (int column = 0; column < 3; column++)
            {
                WeightCell cell = cells[(row * 3) + column];
                if (row > 0) Assert.True(cell.NeededKg >= cells[((row - 1) * 3) + column].NeededKg);
                if (column > 0) Assert.True(cell.NeededKg >= cells[(row * 3) + column - 1].NeededKg);
                if (cell.Size is { } size) Assert.True(size.MassKg >= cell.NeededKg);
            }
        }

        TowCell[] tows = RigTables.Tows(Jig.Usual(0.021), Fluoro15, At(30, 0.7), depths, speeds);
        Assert.True(tows[0].Tow.WeightOnBottomShare > tows[^1].Tow.WeightOnBottomShare);
    }

    [Fact]
    public void Fastest_speed_and_least_line_are_the_edges_of_holding()
    {
        RigConditions at = At(30, 0.6);
        TowCase tow = at.Tow(Jig.Usual(0.021), Fluoro15);
        double fastest = HoldLimits.FastestMps(tow, 0.1), least = HoldLimits.LeastLineM(tow, 0.1);
        Assert.Equal(0.1, TowSolver.Solve(tow with { SpeedMps = fastest }).WeightOnBottomShare, 0.002);
        Assert.Equal(0.1, TowSolver.Solve(tow with { LineOutM = least }).WeightOnBottomShare, 0.002);
        double mass = LeastMass.MassKg(Jig.Usual(0.021), tow, 1, 0.1);
        TowCase lightest = at.Tow(Jig.Usual(mass), Fluoro15);
        Assert.Equal(0.1, TowSolver.Solve(lightest).WeightOnBottomShare, 0.002);
    }

    [Fact]
    public void Braid_bows_as_its_diameter_and_density_say()
    {
        RigConditions at = At(30, 0.6);
        Jig jig = Jig.Usual(0.021);
        FishingLine fluoro = new("f", LineMaterial.Fluorocarbon, 0.00033, 60, true), braid = new("b", LineMaterial.Braid, 0.00033, 300, true);
        TowShape sinking = TowShape.Of(at.Tow(jig, fluoro)), floating = TowShape.Of(at.Tow(jig, braid));
        // Same diameter: the floating line bears up more weight, by no more than the two lines' weights differ.
        double lines = (1780 - 975) * 9.81 * Math.PI * 0.25 * 0.00033 * 0.00033 * at.LineOutAtM(at.DepthM);
        double difference = sinking.Tow.BottomPushN - floating.Tow.BottomPushN;
        Assert.InRange(difference, 0, lines);
        // Denser only: the same line made heavy as water bows the same whatever it is called.
        TowShape renamed = TowShape.Of(at.Tow(jig, braid with { DensityKgPerM3 = 1780, ModulusPa = 2e9 }));
        Assert.Equal(sinking.BowM, renamed.BowM, 1e-9);
        // Thinner braid of the strength of the fluorocarbon bows less.
        TowShape thin = TowShape.Of(at.Tow(jig, braid with { DiameterM = 0.00018 }));
        Assert.True(thin.Tow.BottomPushN > floating.Tow.BottomPushN);
    }
}
