using SecondShore.Answers.Sheet;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Tests.Sheet;

/// <summary>A made day as the sheets see it.</summary>
internal static class SheetModels
{
    public static readonly DateTimeOffset Morning = new(2026, 10, 10, 6, 30, 0, TimeSpan.FromHours(-5));

    public static readonly DepthGrid Grid = MakeGrid();

    private static DepthGrid MakeGrid()
    {
        const int nx = 220, ny = 200;
        float[] depths = new float[nx * ny];
        for (int iy = 0; iy < ny; iy++)
        {
            for (int ix = 0; ix < nx; ix++)
            {
                double axis = 100 + (45 * Math.Sin(ix / 32.0)), off = Math.Abs(iy - axis);
                double depth = 30 - (0.75 * off) - (6 * Math.Cos(ix / 9.0) * Math.Exp(-off / 25)) + (18 * Math.Exp(-(((ix - 60) * (ix - 60)) + ((iy - 150) * (iy - 150))) / 300.0));
                depths[(iy * nx) + ix] = ix is < 4 or > 215 || depth <= 0 ? float.NaN : (float)depth;
            }
        }

        return new DepthGrid(new LocalProjection(new GeoPoint(41, -88)), new GridFrame(-2200, -2000, 20, nx, ny), depths);
    }

    private static List<StopCandidate> Candidates()
    {
        string[] names = ["Kiln Bluff", "Sexton Hump", "Pender Corner", "Fold Point", "Heron Bench"];
        List<StopCandidate> candidates = [];
        var random = new SeededRandom(3);
        while (candidates.Count < names.Length)
        {
            var place = new PlanePoint(random.NextDouble(-1800, 1800), random.NextDouble(-1200, 1400));
            if (!(Grid.DepthAtM(place) > 6)) continue;
            int i = candidates.Count;
            candidates.Add(new StopCandidate
            {
                Id = names[i],
                Letter = ((char)('A' + i)).ToString(),
                Name = names[i],
                Place = place,
                Pass = [place, new PlanePoint(place.XM + 90, place.YM + 50), new PlanePoint(place.XM + 170, place.YM + 60)],
                DepthM = 8.2,
                Bites = RateTable.Constant(Morning, 1.5 - (0.1 * i)),
                How = "27 ft, pass east, 0.6 mph",
                RigSlot = "3/4 oz brown",
                Why = "the belt crosses the end of the bluff there",
            });
        }

        return candidates;
    }

    public static DaySheetModel Model(string lake)
    {
        List<StopCandidate> candidates = Candidates();
        var ramp = new PlanePoint(-1700, 60);
        var request = new PlanRequest { Candidates = candidates, Start = ramp, Home = ramp, StartName = "Chapel Ramp", HomeName = "Chapel Ramp", StartAt = Morning, CheckIn = Morning.AddHours(8) };
        var water = new NavigableWater(Grid, request.Boat, [], []);
        RouteMatrix matrix = new WaterRoutes(water).Matrix(request.RoutePlaces, Morning, 9, cancel: TestContext.Current.CancellationToken);
        DayPlan plan = DayPlanner.Plan(request, matrix, false, TestContext.Current.CancellationToken);
        Assert.True(plan.Stops.Count >= 3);
        return new DaySheetModel
        {
            LakeName = lake,
            Invented = true,
            Units = UnitSystem.Feet,
            Plan = plan,
            RampName = "Chapel Ramp",
            ThermoclineM = new Spread(7.3, 8.2, 9.4),
            OxygenOutM = new Spread(9.1, 10.1, 11.6),
            Because = "you marked the haze at 28 ft on Tuesday and three calm nights cooled only the top",
            Map = SheetMap.Around(Grid, plan, ramp, 8.2, false, [new HazardArea(new PlanePoint(300, 500), 30, "standing timber")]),
            Wind = [.. Enumerable.Range(-1, 13).Select(h => new SheetWind(Morning.AddHours(h), 2 + (0.4 * h), 3.5 + (0.7 * h), 300 + (3 * h)))],
            LightAt = Morning,
            DarkAt = Morning.AddHours(11),
            Stops = [.. plan.Stops.Select(s => new SheetStop(s.Candidate.Letter, s.Candidate.Name, s.Arrive, s.Leave, s.Candidate.RigSlot!, s.Candidate.How, s.Why))],
            IfHazeElsewhere = [new("24 ft", "same passes, nearer the bank, 5/8 oz"), new("31 ft", "work the outer side of D, 1 oz"), new("none", "it may have mixed: try 15 to 40 ft at A")],
            Tie = [new("2", "3/4 oz brown, plain craw"), new("1", "3/4 oz olive, twin tail")],
            Cautions = ["Standing timber 3 ft under in Pender Brook.", "Gusts of 24 mph from 2 pm.", DayCautions.Deferring],
        };
    }
}
