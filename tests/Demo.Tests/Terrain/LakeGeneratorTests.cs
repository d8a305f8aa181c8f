using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Demo.Tests.Terrain;

public class LakeGeneratorTests
{
    [Fact]
    public void The_same_seed_gives_the_same_lake_and_another_seed_another()
    {
        GeneratedLake a = LakeGenerator.Generate(5, LakeRecipe.Pond), b = LakeGenerator.Generate(5, LakeRecipe.Pond), c = LakeGenerator.Generate(6, LakeRecipe.Pond);
        Assert.Equal(a.DepthM, b.DepthM);
        Assert.Equal(a.Forms.Select(f => f.Place), b.Forms.Select(f => f.Place));
        Assert.NotEqual(a.Forms.Select(f => f.Place), c.Forms.Select(f => f.Place));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Humps_stand_above_and_holes_lie_below_a_ring_round_them(ulong seed)
    {
        GeneratedLake lake = LakeGenerator.Generate(seed, LakeRecipe.SmallReservoir);
        int seen = 0;
        foreach (TruthForm form in lake.Forms)
        {
            if (form.Class is not (FormClass.Hump or FormClass.Hole)) continue;
            double ringM = 0;
            for (int k = 0; k < 16; k++)
            {
                double angle = k * Math.PI / 8, reach = form.SizeM * 1.1;
                ringM += lake.DepthAtM(new PlanePoint(form.Place.XM + (reach * Math.Cos(angle)), form.Place.YM + (reach * Math.Sin(angle)))) / 16;
            }

            double hereM = lake.DepthAtM(form.Place);
            Assert.True(form.Class == FormClass.Hump ? hereM < ringM - 0.5 : hereM > ringM + 0.5, $"{form.Class} at {form.Place}: {hereM} against {ringM}");
            seen++;
        }

        Assert.True(seen >= 4, $"only {seen} humps and holes");
    }

    [Fact]
    public void The_main_channel_falls_from_head_to_dam_and_lies_below_its_banks()
    {
        GeneratedLake lake = LakeGenerator.Generate(4, LakeRecipe.SmallReservoir);
        TruthForm channel = lake.Forms.Single(f => f.Class == FormClass.MainChannel);
        IReadOnlyList<PlanePoint> line = channel.Geometry.Points;
        double head = lake.DepthAtM(line[line.Count / 10]), middle = lake.DepthAtM(line[line.Count / 2]), dam = lake.DepthAtM(line[line.Count * 9 / 10]);
        Assert.True(head < middle && middle < dam, $"{head}, {middle}, {dam}");
    }

    [Fact]
    public void Every_named_class_comes_up_over_a_few_lakes()
    {
        HashSet<FormClass> seen = [];
        for (ulong seed = 1; seed <= 4; seed++)
            foreach (TruthForm form in LakeGenerator.Generate(seed, LakeRecipe.SmallReservoir).Forms) seen.Add(form.Class);
        Assert.Equal(Enum.GetValues<FormClass>().Order(), seen.Order());
    }

    [Fact]
    public void A_lake_made_by_ice_has_no_channel_and_its_sills_are_saddles()
    {
        GeneratedLake lake = LakeGenerator.Generate(2, LakeRecipe.IceLake);
        Assert.DoesNotContain(lake.Forms, f => f.Class is FormClass.MainChannel or FormClass.SideChannel);
        Assert.Contains(lake.Forms, f => f.Class == FormClass.Saddle);
        Assert.True(CellOutline.AreaM2(lake.Shore[0]) != 0 && lake.Shore[0].Count > 100);
    }
}
