using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Arms;

namespace SecondShore.Engine.Tests.Basin.Arms;

public class ArmSplitterTests
{
    [Fact]
    public void A_pond_and_a_plain_oval_lake_are_one_arm()
    {
        Assert.Equal("Whole lake", Assert.Single(ArmSplitter.Split(LakeShapes.Cone(60, 5, 2)).Arms).Name);
        DepthGrid oval = LakeShapes.FromFormula(200, 80, 10, (x, y) => 20 * (1 - (x * x / 900000) - (y * y / 130000)));
        Assert.Single(ArmSplitter.Split(oval).Arms);
    }

    [Fact]
    public void Two_basins_behind_a_sill_are_two_arms_with_the_sills_depth_between()
    {
        static double Bowl(double x, double y, double cx, double deep, double r) => deep * (1 - ((((x - cx) * (x - cx)) + (y * y)) / (r * r)));
        DepthGrid grid = LakeShapes.FromFormula(160, 80, 10, (x, y) =>
            Math.Max(6 * (1 - (y * y / 90000)) - Math.Max(0, (Math.Abs(x) - 700) / 10), Math.Max(Bowl(x, y, -350, 25, 340), Bowl(x, y, 380, 16, 300))));
        ArmSet set = ArmSplitter.Split(grid);
        Assert.Equal(2, set.Arms.Count);
        Assert.Equal(25, set.Arms[0].MaxDepthM, 0.1);
        Assert.Equal("Main lake", set.Arms[0].Name);
        Assert.Equal("East arm", set.Arms[1].Name);
        ArmLink link = Assert.Single(set.Arms[1].Links);
        Assert.Equal(0, link.Neighbour);
        Assert.Equal(6, link.SillM, 0.7);
        Assert.True(set.Arms[0].Deepest.DistanceToM(new(-350, 0)) < 20);
    }

    [Fact]
    public void A_side_valley_without_a_sill_is_an_arm_of_its_own()
    {
        ArmSet set = ArmSplitter.Split(ValleyWithCreek());
        Assert.Equal(2, set.Arms.Count);
        Arm creek = set.ArmAt(new Engine.Core.Geo.PlanePoint(0, 900))!;
        Assert.Equal("North arm", creek.Name);
        Assert.True(creek.Links[0].SillM > 8, "its mouth is deep: no sill");
        Assert.InRange(creek.Links[0].WidthM, 100, 450);
        Assert.True(creek.ExposureShare < 0.8);
        Assert.True(creek.FetchM < set.ArmAt(new Engine.Core.Geo.PlanePoint(-800, 0))!.FetchM);
    }

    [Fact]
    public void A_named_place_names_the_arm_it_lies_in()
    {
        DepthGrid grid = ValleyWithCreek();
        NamedPlace named = new("Otter Creek", grid.Projection.ToGeo(new(0, 900)));
        ArmSet set = ArmSplitter.Split(grid, new ArmOptions { Names = [named] });
        Assert.Equal("Otter Creek", set.ArmAt(named.Place)!.Name);
    }

    [Fact]
    public void A_creek_too_small_for_an_arm_does_not_lend_its_name_to_the_main_lake_but_a_name_over_deep_water_does()
    {
        DepthGrid grid = ValleyWithCreek();
        ArmSet plain = ArmSplitter.Split(grid);
        Arm main = plain.Arms.MaxBy(a => a.Hypsography.VolumeM3)!;
        int cell = Array.FindIndex(grid.DepthM, d => d > 0 && d < 0.2 * main.MaxDepthM);
        while (plain.ArmAt(grid.Frame.Centre(cell)) != main) cell = Array.FindIndex(grid.DepthM, cell + 1, d => d > 0 && d < 0.2 * main.MaxDepthM);
        Engine.Core.Geo.PlanePoint shallow = grid.Frame.Centre(cell);
        string NameWith(Engine.Core.Geo.PlanePoint place) => ArmSplitter.Split(grid, new ArmOptions { Names = [new("Cotter Brook", grid.Projection.ToGeo(place))] })
            .Arms.MaxBy(a => a.Hypsography.VolumeM3)!.Name;
        Assert.Equal("Main lake", NameWith(shallow));
        Assert.Equal("Cotter Brook", NameWith(main.Deepest));
    }

    [Fact]
    public void A_reservoir_of_many_kilometres_is_cut_into_reaches_from_deep_to_shallow()
    {
        DepthGrid grid = LakeShapes.FromFormula(620, 14, 100, (x, y) => 4 + ((x + 31000) / 1200) - (Math.Abs(y) / 40));
        ArmSet set = ArmSplitter.Split(grid);
        Assert.InRange(set.Arms.Count, 4, 7);
        for (int a = 1; a < set.Arms.Count; a++) Assert.True(set.Arms[a].MaxDepthM < set.Arms[a - 1].MaxDepthM);
    }

    [Fact]
    public void Arms_share_all_water_and_nothing_else()
    {
        DepthGrid grid = ValleyWithCreek();
        ArmSet set = ArmSplitter.Split(grid);
        for (int i = 0; i < set.Label.Length; i++) Assert.Equal(grid.DepthM[i] > 0, set.Label[i] >= 0);
        Assert.Equal(Hypsography.FromGrid(grid)!.SurfaceAreaM2, set.Arms.Sum(a => a.AreaM2), 1e-6 * set.Arms.Sum(a => a.AreaM2));
        Assert.Equal(set.Arms.Sum(a => a.MeanDepthM * a.AreaM2), set.Arms.Sum(a => a.Hypsography.VolumeM3), 0.02 * set.Arms.Sum(a => a.MeanDepthM * a.AreaM2));
    }

    // A valley from west (shallow) to east (dam), 700 m wide, with a creek valley of 220 m coming in from the north.
    private static DepthGrid ValleyWithCreek() => LakeShapes.FromFormula(300, 220, 10, (x, y) =>
    {
        double main = 20 + (x / 150) - Math.Abs(y) / 17;
        double creek = y > 0 && y < 1050 ? 19 - (y / 70) - Math.Abs(x) / 8 : -1;
        return Math.Abs(x) > 1480 ? -1 : Math.Max(main, creek);
    });
}
