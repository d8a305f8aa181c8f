using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Basin.Spots;

public class SpotFinderTests
{
    private static readonly DepthGrid Grid = Lake();
    private static readonly FormMap Forms = BottomForms.Find(Grid, new FormOptions { YardstickM = 30 });
    private static readonly SampleDistribution Thermocline = SampleDistribution.Normal(9, 0.8);

    [Fact]
    public void A_hump_whose_top_the_thermocline_meets_ranks_first_and_says_why()
    {
        IReadOnlyList<Spot> spots = SpotFinder.Find(Request(), TestContext.Current.CancellationToken);
        Assert.Equal(FormClass.Hump, spots[0].Form);
        Assert.InRange(spots[0].Place.DistanceToM(new PlanePoint(800, 500)), 0, 110);
        Assert.Equal("Sexton Hump", spots[0].Name);
        Assert.Contains(spots[0].Reasons, r => r.Kind == ReasonKind.InReach && r.ChanceShare > 0.3);
        Assert.Contains("hump at", string.Join("; ", spots[0].Reasons.Select(r => ReasonText.Of(r, true))), StringComparison.Ordinal);
        Assert.True(spots[0].Value.IsOrdered);
        Assert.All(spots, s => Assert.InRange(s.ChanceInReach, 0, 1));
    }

    [Fact]
    public void Spots_lie_in_water_apart_from_each_other_and_ranked_by_value()
    {
        IReadOnlyList<Spot> spots = SpotFinder.Find(Request(), TestContext.Current.CancellationToken);
        Assert.True(spots.Count >= 2);
        for (int a = 0; a < spots.Count; a++)
        {
            Assert.Equal(a + 1, spots[a].Rank);
            Assert.True(spots[a].DepthM > 0);
            if (a > 0) Assert.True(spots[a - 1].Value.P50 >= spots[a].Value.P50);
            for (int b = 0; b < a; b++) Assert.True(spots[a].Place.DistanceToM(spots[b].Place) >= 119.9);
        }
    }

    [Fact]
    public void Cover_by_a_place_raises_its_value_and_is_named()
    {
        Spot bare = SpotFinder.Find(Request(), TestContext.Current.CancellationToken)[0];
        CoverMark brush = new(bare.At, CoverKind.Brush, 5, 1.5, "");
        Spot covered = SpotFinder.Find(Request() with { Cover = [brush] }, TestContext.Current.CancellationToken)[0];
        Assert.True(covered.Value.P50 > bare.Value.P50 + 3, $"{covered.Value.P50} against {bare.Value.P50}");
        Assert.Contains(covered.Reasons, r => r.Cover == CoverKind.Brush && r.DistanceM < 30);
    }

    [Fact]
    public void Without_a_thermocline_the_answer_changes_and_turning_arms_count_less()
    {
        int[] west = new int[Grid.Frame.Count];
        for (int i = 0; i < west.Length; i++) west[i] = Grid.Frame.Centre(i).XM < 800 ? 0 : 1;
        SpotRequest none = Request() with
        {
            ThermoclineM = null,
            ChanceInReach = null,
            ChanceStratified = 0,
            ArmOfCell = west,
            Arms = [new ArmState("West Arm", ArmWater.Settled), new ArmState("East Arm", ArmWater.Turning)],
        };
        IReadOnlyList<Spot> spots = SpotFinder.Find(none, TestContext.Current.CancellationToken);
        Assert.NotEmpty(spots);
        Assert.All(spots, s => Assert.NotEqual(SpotKind.Belt, s.Kind));
        Assert.True(spots[0].Place.XM < 800, "the best place lies in the settled arm");
        Assert.Contains(spots[0].Reasons, r => r.Kind == ReasonKind.ArmSettled && r.Word == "West Arm");
    }

    [Fact]
    public void Passes_stay_in_the_water_near_their_depth_and_turn_no_tighter_than_the_boat()
    {
        foreach (Spot spot in SpotFinder.Find(Request(), TestContext.Current.CancellationToken))
        {
            foreach (SecondShore.Engine.Basin.Passes.Pass pass in spot.Passes)
            {
                Assert.True(pass.LengthM >= 40 && pass.ShallowM >= 1.5);
                Assert.All(pass.Line, p => Assert.False(double.IsNaN(Grid.DepthAtM(p))));
                Assert.InRange(pass.DeepM - pass.ShallowM, 0, 8);
            }
        }

        Assert.NotEmpty(SpotFinder.Find(Request(), TestContext.Current.CancellationToken)[0].Passes);
    }

    [Fact]
    public void Lengths_of_the_second_shore_by_form_add_up_to_its_length()
    {
        SecondShoreLine line = SecondShoreLine.Trace(Grid, 9);
        var parts = ShoreByForm.Of(line, Forms);
        Assert.Equal(line.LengthM, parts.Sum(p => p.LengthM), 3);
        Assert.Contains(parts, p => p.Form == FormClass.Hump);
    }

    [Fact]
    public void Weights_survive_writing_and_reading_and_bad_ones_are_told()
    {
        SpotWeights mine = SpotWeights.Default with { Hump = 50 };
        Assert.True(SpotWeights.TryRead(mine.ToJson(), out SpotWeights back, out _));
        Assert.Equal(mine, back);
        Assert.True(SpotWeights.TryRead("{ \"ledge\": 12 /* mine */ }", out SpotWeights part, out _));
        Assert.Equal((12, SpotWeights.Default.Hump), (part.Ledge, part.Hump));
        foreach (string bad in (string[])["{ \"ledge\": -1 }", "{ \"legde\": 3 }", "[1]", "", "{"])
        {
            Assert.False(SpotWeights.TryRead(bad, out SpotWeights unchanged, out string problem), bad);
            Assert.Equal(SpotWeights.Default, unchanged);
            Assert.True(problem.Length > 20);
        }
    }

    [Fact]
    public void Letters_go_on_after_Z() => Assert.Equal(["A", "Z", "AA", "AZ", "BA"], new[] { 1, 26, 27, 52, 53 }.Select(SpotFinder.LetterOf));

    private static SpotRequest Request() => new()
    {
        Grid = Grid,
        Forms = Forms,
        ThermoclineM = Thermocline,
        ChanceInReach = Belt.Compute(Grid, Thermocline, null, 1).Chance,
        Names = [new NamedPlace("Sexton Hump", new PlanePoint(800, 500), 120)],
    };

    // 1.6 km by 1 km of plain at 14 m with a hump, two bluffs and sloping banks.
    private static DepthGrid Lake()
    {
        GridFrame frame = new(0, 0, 10, 160, 100);
        float[] depthM = new float[frame.Count];
        for (int i = 0; i < depthM.Length; i++)
        {
            PlanePoint p = frame.Centre(i);
            double dx = p.XM - 800, dy = p.YM - 500, rest = Math.Max(0, 1 - (((dx * dx) + (dy * dy)) / (90 * 90)));
            bool wall = p.XM is (> 200 and < 500) or (> 1100 and < 1400);
            double bank = Math.Min(p.YM - 20, 980 - p.YM) * (wall && p.YM > 500 ? 1.3 : 0.12), side = Math.Min(p.XM - 20, 1580 - p.XM) * 0.12;
            double depth = Math.Min(14, Math.Min(bank, side)) - (7 * rest * rest);
            depthM[i] = depth > 0.1 ? (float)depth : float.NaN;
        }

        return new DepthGrid(new LocalProjection(new GeoPoint(45, 10)), frame, depthM);
    }
}
