using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Demo.Tests.Terrain;

public class GeneratedRoutesTests
{
    [Fact]
    public void No_route_on_a_generated_lake_leaves_water_that_floats_the_boat()
    {
        var boat = new Boat { DraftM = 0.5, KeelMarginM = 0.5 };
        DepthGrid grid = LakeGenerator.Generate(3002, LakeRecipe.Pond).ToGrid(new GeoPoint(44, -90));
        var random = new SeededRandom(17);
        List<RoutePlace> places = [];
        while (places.Count < 24)
        {
            PlanePoint p = new(random.NextDouble(grid.Frame.WestM, grid.Frame.EastM), random.NextDouble(grid.Frame.SouthM, grid.Frame.NorthM));
            if (grid.Frame.TryCellAt(p, out int ix, out int iy) && grid.IsWater(ix, iy)) places.Add(RoutePlace.At(p));
        }

        RouteMatrix matrix = new WaterRoutes(new NavigableWater(grid, boat, [], [])).Matrix(places, DateTimeOffset.UnixEpoch, 1, cancel: TestContext.Current.CancellationToken);
        int found = 0;
        for (int a = 0; a < places.Count; a++)
        {
            for (int b = 0; b < places.Count; b++)
            {
                if (a == b || matrix.Route(a, b, DateTimeOffset.UnixEpoch) is not { } route) continue;
                found++;
                AssertAfloat(grid, boat, route);
            }
        }

        Assert.True(found > 400, $"{found} routes");
    }

    private static void AssertAfloat(DepthGrid grid, Boat boat, WaterRoute route)
    {
        for (int i = 1; i < route.Line.Count; i++)
        {
            PlanePoint a = route.Line[i - 1], b = route.Line[i];
            int parts = (int)Math.Ceiling(a.DistanceToM(b) / (grid.Frame.CellM * 0.1)) + 1;
            for (int k = 0; k <= parts; k++)
            {
                double t = (double)k / parts;
                PlanePoint p = new(a.XM + (t * (b.XM - a.XM)), a.YM + (t * (b.YM - a.YM)));
                Assert.True(grid.Frame.TryCellAt(p, out int ix, out int iy) && grid.DepthM[grid.Frame.Index(ix, iy)] >= boat.LeastDepthM, $"{p}");
            }
        }
    }
}
