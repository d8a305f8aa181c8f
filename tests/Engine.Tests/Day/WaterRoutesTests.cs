using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Engine.Tests.Day;

public class WaterRoutesTests
{
    private static readonly Boat TestBoat = new() { DraftM = 0.5, KeelMarginM = 0.5 };

    [Fact]
    public void No_route_crosses_land_shallows_or_a_hazard_on_five_lakes()
    {
        foreach ((string name, DepthGrid grid) in RouteLakes.Five)
        {
            var random = new SeededRandom(7);
            List<HazardArea> hazards = [];
            for (int i = 0; i < 12; i++) hazards.Add(new HazardArea(RouteLakes.RandomWater(grid, random), random.NextDouble(5, 40), "stumps"));
            var routes = new WaterRoutes(new NavigableWater(grid, TestBoat, hazards, []));
            int found = 0;
            for (int i = 0; i < 8; i++)
            {
                List<RoutePlace> places = [];
                for (int k = 0; k < 12; k++) places.Add(RoutePlace.At(RouteLakes.RandomWater(grid, random)));
                RouteMatrix matrix = routes.Matrix(places, DateTimeOffset.UnixEpoch, 1, cancel: TestContext.Current.CancellationToken);
                for (int a = 0; a < places.Count; a++)
                {
                    for (int b = 0; b < places.Count; b++)
                    {
                        if (a == b || matrix.Route(a, b, DateTimeOffset.UnixEpoch) is not WaterRoute route) continue;
                        found++;
                        AssertClear(grid, hazards, route, name);
                    }
                }
            }

            Assert.True(found > 300, $"Only {found} routes on {name}.");
        }
    }

    [Fact]
    public void On_open_water_the_route_is_the_straight_line()
    {
        DepthGrid grid = RouteLakes.Make(100, 100, 10, (_, _) => 10);
        var routes = new WaterRoutes(new NavigableWater(grid, TestBoat, [], []), 400);
        WaterRoute route = routes.Find(new PlanePoint(33, 41), new PlanePoint(921, 702))!;
        Assert.Equal(2, route.Line.Count);
        Assert.Equal(Math.Sqrt((888.0 * 888) + (661 * 661)), route.LengthM, 6);
        Assert.Equal(route.LengthM / TestBoat.CruiseMps, route.CalmS, 6);
    }

    [Fact]
    public void Around_a_round_island_the_route_is_near_the_taut_string()
    {
        const double radiusM = 800, reachM = 1500, cellM = 10;
        DepthGrid grid = RouteLakes.Make(400, 400, cellM, (x, y) =>
            Math.Sqrt(Math.Pow((x + 0.5) * cellM - 2000, 2) + Math.Pow((y + 0.5) * cellM - 2000, 2)) < radiusM ? -1 : 10);
        var routes = new WaterRoutes(new NavigableWater(grid, TestBoat, [], []));
        WaterRoute route = routes.Find(new PlanePoint(2000 - reachM, 2000), new PlanePoint(2000 + reachM, 2000))!;
        double tangentM = Math.Sqrt((reachM * reachM) - (radiusM * radiusM));
        double tautM = (2 * tangentM) + (radiusM * (Math.PI - (2 * Math.Acos(radiusM / reachM))));
        Assert.InRange(route.LengthM, tautM * 0.995, tautM * 1.015);
    }

    [Fact]
    public void A_strait_one_cell_wide_is_found_and_an_island_lake_stays_apart()
    {
        DepthGrid strait = RouteLakes.Five[4].Grid;
        foreach (int waypoints in (int[])[60, 500, 9000])
        {
            var routes = new WaterRoutes(new NavigableWater(strait, TestBoat, [], []), waypoints);
            WaterRoute? route = routes.Find(strait.Frame.Centre(35, 55), strait.Frame.Centre(105, 25));
            Assert.NotNull(route);
            AssertClear(strait, [], route, "strait");
        }

        DepthGrid apart = RouteLakes.Make(60, 20, 10, (x, _) => x is > 25 and < 35 ? -1 : 5);
        Assert.Null(new WaterRoutes(new NavigableWater(apart, TestBoat, [], [])).Find(apart.Frame.Centre(5, 5), apart.Frame.Centre(55, 5)));
    }

    [Fact]
    public void A_no_wake_area_is_skirted_when_the_way_round_is_quicker_and_idled_through_when_not()
    {
        DepthGrid grid = RouteLakes.Make(200, 60, 10, (_, _) => 10);
        NoWakeArea block = new([new(900, 0), new(1100, 0), new(1100, 400), new(900, 400)], "");
        NoWakeArea wall = new([new(900, -10), new(1100, -10), new(1100, 610), new(900, 610)], "");
        var a = new PlanePoint(205, 205);
        var b = new PlanePoint(1805, 205);
        WaterRoute round = new WaterRoutes(new NavigableWater(grid, TestBoat, [], [block])).Find(a, b)!;
        Assert.True(round.LengthM > 1610 && round.CalmS < 1.15 * round.LengthM / TestBoat.CruiseMps, $"{round.LengthM} m in {round.CalmS} s");
        WaterRoute through = new WaterRoutes(new NavigableWater(grid, TestBoat, [], [wall])).Find(a, b)!;
        Assert.Equal((1400 / TestBoat.CruiseMps) + (200 / TestBoat.NoWakeMps), through.CalmS, 0.5);
    }

    [Fact]
    public void Waves_slow_the_run_send_it_into_the_lee_and_close_the_water_above_the_limit()
    {
        // Two channels past an island; the northern is rough from the third hour on, everything is closed from the sixth.
        DepthGrid grid = RouteLakes.Make(200, 80, 20, (x, y) => x is > 30 and < 170 && y is > 30 and < 60 ? -1 : 10);
        var routes = new WaterRoutes(new NavigableWater(grid, TestBoat, [], []));
        DateTimeOffset start = DateTimeOffset.UnixEpoch;
        RoutePlace[] places = [RoutePlace.At(grid.Frame.Centre(5, 46)), RoutePlace.At(grid.Frame.Centre(195, 46))];
        RouteMatrix matrix = routes.Matrix(places, start, 8, new NorthIsRough(start), cancel: TestContext.Current.CancellationToken);
        WaterRoute early = matrix.Route(0, 1, start)!, late = matrix.Route(0, 1, start.AddHours(4))!;
        Assert.Contains(early.Line, p => p.YM > 1200);
        Assert.Contains(late.Line, p => p.YM < 640);
        Assert.True(matrix.TravelS(0, 1, start.AddHours(4)) > matrix.TravelS(0, 1, start));
        Assert.Equal(0.1, matrix.GreatestWaveM(0, 1, start.AddHours(4)), 3);
        Assert.Equal(double.PositiveInfinity, matrix.TravelS(0, 1, start.AddHours(7)));
    }

    [Fact]
    public void Timber_of_unknown_height_blocks_where_it_may_reach_the_hull_and_not_where_it_cannot()
    {
        DepthGrid grid = RouteLakes.Make(100, 100, 10, (x, _) => x < 50 ? 8 : 30);
        GeoPoint shallow = grid.Projection.ToGeo(new PlanePoint(200, 500)), deep = grid.Projection.ToGeo(new PlanePoint(800, 500));
        CoverMark[] marks =
        [
            new(shallow, CoverKind.StandingTimber, 30, null, ""), new(deep, CoverKind.StandingTimber, 30, null, ""),
            new(shallow, CoverKind.Brush, 30, null, ""), new(deep, CoverKind.Works, 10, 29.5, "bridge"),
        ];
        IReadOnlyList<HazardArea> hazards = RouteHazards.From(marks, grid, TestBoat);
        Assert.Equal(["standing timber", "drowned works (bridge)"], hazards.Select(h => h.Name));
    }

    private sealed class NorthIsRough(DateTimeOffset start) : ISeaState
    {
        public double WaveM(PlanePoint place, DateTimeOffset at)
        {
            double hours = (at - start).TotalHours;
            return hours > 6 ? 0.9 : hours > 3 && place.YM > 900 ? 0.65 : 0.1;
        }
    }

    internal static void AssertClear(DepthGrid grid, IReadOnlyList<HazardArea> hazards, WaterRoute route, string name)
    {
        for (int i = 1; i < route.Line.Count; i++)
        {
            PlanePoint a = route.Line[i - 1], b = route.Line[i];
            int parts = (int)Math.Ceiling(a.DistanceToM(b) / (grid.Frame.CellM * 0.1)) + 1;
            for (int k = 0; k <= parts; k++)
            {
                double t = (double)k / parts;
                var p = new PlanePoint(a.XM + (t * (b.XM - a.XM)), a.YM + (t * (b.YM - a.YM)));
                Assert.True(grid.Frame.TryCellAt(p, out int ix, out int iy), name);
                double depthM = grid.DepthM[grid.Frame.Index(ix, iy)];
                if (!(depthM >= TestBoat.LeastDepthM)) Assert.Fail($"{name}: depth {depthM} at {p}");
                foreach (HazardArea hazard in hazards)
                    if (p.DistanceToM(hazard.Centre) < hazard.RadiusM) Assert.Fail($"{name}: {p} lies in {hazard}");
            }
        }
    }
}
