using System.Globalization;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;

namespace SecondShore.Engine.Tests.Day;

public class DayCautionsTests
{
    private static readonly CautionUnits Metric = new(
        m => string.Create(CultureInfo.InvariantCulture, $"{m:0.#} m"), m => string.Create(CultureInfo.InvariantCulture, $"{m:0.#} m"),
        mps => string.Create(CultureInfo.InvariantCulture, $"{mps:0} m/s"), c => string.Create(CultureInfo.InvariantCulture, $"{c:0} °C"));

    [Fact]
    public void A_mild_day_has_only_the_caution_that_defers()
    {
        Caution only = Assert.Single(DayCautions.For(Facts(3) with { SurfaceTempC = 23 }, Metric));
        Assert.Equal(CautionKind.Always, only.Kind);
        Assert.Contains("does not navigate", only.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(4.9, 23, null)]
    [InlineData(5.1, 23, CautionLevel.Note)]
    [InlineData(8.1, 23, CautionLevel.Care)]
    [InlineData(12.1, 23, CautionLevel.Care)]
    [InlineData(6.0, 26, CautionLevel.Care)]
    public void Fish_from_depth_are_cautioned_by_depth_and_warmth(double depthM, double surfaceC, CautionLevel? expected)
    {
        Caution? caution = DayCautions.For(Facts(depthM) with { SurfaceTempC = surfaceC }, Metric).FirstOrDefault(c => c.Kind == CautionKind.FishFromDepth);
        Assert.Equal(expected, caution?.Level);
        if (depthM > 12 || surfaceC > 25) Assert.Contains("do not target", caution!.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_danger_speaks_and_the_strongest_comes_first()
    {
        PlanFacts facts = Facts(9) with
        {
            SurfaceTempC = 12,
            Wind = [new(Morning.AddHours(1), 5, 8), new(Morning.AddHours(4), 12, 18)],
            Showers = [Morning.AddHours(3)],
            LightAt = Morning.AddMinutes(30),
            DarkAt = Morning.AddHours(6),
            BelowFullPoolM = 1.9,
            Hazards = [new(new(500, 20), 30, "standing timber"), new(new(500, 5000), 30, "far stumps")],
            UsesLead = true,
        };
        IReadOnlyList<Caution> cautions = DayCautions.For(facts, Metric);
        foreach (CautionKind kind in (CautionKind[])[CautionKind.Wind, CautionKind.Lightning, CautionKind.ColdWater, CautionKind.Dark, CautionKind.Hazards, CautionKind.FishFromDepth, CautionKind.Lead])
            Assert.Contains(cautions, c => c.Kind == kind);
        Assert.Equal(CautionLevel.Stop, cautions[0].Level);
        Assert.Contains(cautions, c => c.Words.Contains("standing timber", StringComparison.Ordinal) && !c.Words.Contains("far stumps", StringComparison.Ordinal));
        Assert.Equal(CautionKind.Always, cautions[^1].Kind);
        Assert.Equal(cautions.SkipLast(1).OrderByDescending(c => c.Level), cautions.SkipLast(1));
    }

    private static readonly DateTimeOffset Morning = new(2026, 10, 10, 6, 30, 0, TimeSpan.FromHours(-5));

    private static PlanFacts Facts(double depthM)
    {
        var candidate = new StopCandidate { Id = "a", Letter = "A", Name = "A", Place = new(1000, 0), DepthM = depthM, Bites = RateTable.Constant(Morning, 1) };
        var request = new PlanRequest { Candidates = [candidate], Start = new PlanePoint(0, 0), Home = new PlanePoint(0, 0), StartAt = Morning, CheckIn = Morning.AddHours(7) };
        DayPlan plan = DayPlanner.Plan(request, new DayPlannerTests.Straight(request), false, TestContext.Current.CancellationToken);
        return new PlanFacts { Plan = plan, Boat = request.Boat };
    }
}
