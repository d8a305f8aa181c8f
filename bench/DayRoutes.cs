using System.Diagnostics;
using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;
using SecondShore.Engine.Tests.Day;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Whether routes stay in the water, and what it costs to know all ways of a day.</summary>
internal sealed class DayRoutes : IFigure
{
    public string Name => "day-routes";

    public string Claim => "no route crosses land or a hazard in 10,000 random pairs on eight lakes; all ways of 61 places are known fast";

    public FigureMargin Margin => FigureMargin.Exact;

    public IEnumerable<Measured> Measure()
    {
        var boat = new Boat { DraftM = 0.5, KeelMarginM = 0.5 };
        int pairs = 0, crossed = 0, missing = 0, lakes = 0;
        double seconds = 0;
        foreach (DepthGrid grid in Lakes())
        {
            lakes++;
            var random = new SeededRandom(99);
            List<HazardArea> hazards = [];
            for (int i = 0; i < 20; i++) hazards.Add(new HazardArea(RouteLakes.RandomWater(grid, random), random.NextDouble(5, 40), "stumps"));
            var water = new NavigableWater(grid, boat, hazards, []);
            List<RoutePlace> places = [];
            for (int k = 0; k < 65; k++) places.Add(RoutePlace.At(RouteLakes.RandomWater(grid, random)));
            TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
            RouteMatrix matrix = new WaterRoutes(water).Matrix(places, DateTimeOffset.UnixEpoch, 1);
            seconds += (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds;
            for (int a = 0; a < places.Count; a++)
            {
                for (int b = a + 1; b < places.Count; b++)
                {
                    WaterRoute? route = matrix.Route(a, b, DateTimeOffset.UnixEpoch);
                    pairs++;
                    if (route is null) missing++;
                    else if (!IsClear(grid, boat, hazards, route)) crossed++;
                }
            }
        }

        yield return new Measured("day-routes-pairs", pairs, "pairs", "random pairs on five made lakes and three of the demo's generator, 20 hazards each");
        yield return new Measured("day-routes-crossing", crossed, "routes", "sampled every twentieth of a cell");
        yield return new Measured("day-routes-apart", missing, "pairs", "places in waters that do not meet");
        yield return new Measured("day-routes-65-places", 1000 * seconds / lakes, "ms", "2,080 ways, mean of the lakes, processor time", FigureMargin.OfValue(0.3));
    }

    private static IEnumerable<DepthGrid> Lakes()
    {
        foreach ((_, DepthGrid grid) in RouteLakes.Five) yield return grid;
        foreach (LakeRecipe recipe in (LakeRecipe[])[LakeRecipe.Pond, LakeRecipe.SmallReservoir, LakeRecipe.IceLake]) yield return LakeGenerator.Generate(3001, recipe).ToGrid(new GeoPoint(44, -90));
    }

    private static bool IsClear(DepthGrid grid, Boat boat, List<HazardArea> hazards, WaterRoute route)
    {
        for (int i = 1; i < route.Line.Count; i++)
        {
            PlanePoint a = route.Line[i - 1], b = route.Line[i];
            int parts = (int)Math.Ceiling(a.DistanceToM(b) / (grid.Frame.CellM * 0.05)) + 1;
            for (int k = 0; k <= parts; k++)
            {
                double t = (double)k / parts;
                var p = new PlanePoint(a.XM + (t * (b.XM - a.XM)), a.YM + (t * (b.YM - a.YM)));
                if (!grid.Frame.TryCellAt(p, out int ix, out int iy) || !(grid.DepthM[grid.Frame.Index(ix, iy)] >= boat.LeastDepthM)) return false;
                foreach (HazardArea hazard in hazards)
                    if (p.DistanceToM(hazard.Centre) < hazard.RadiusM) return false;
            }
        }

        return true;
    }
}
