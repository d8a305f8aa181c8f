using SecondShore.Answers.Sheet.Drawing;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Sheet;

/// <summary>What the sheet's map shows, in the lake's plane.</summary>
public sealed record SheetMap
{
    /// <summary>Depths of the washes, m: closest together where the belt lies.</summary>
    public static readonly IReadOnlyList<double> WashDepthsM = [0, 3.048, 6.096, 9.144, 12.192, 16.764, 22.86, 30.48, 39.624, 48.768];

    /// <summary>West edge, m.</summary>
    public required double WestM { get; init; }

    /// <summary>South edge, m.</summary>
    public required double SouthM { get; init; }

    /// <summary>Width, m.</summary>
    public required double WidthM { get; init; }

    /// <summary>Height, m.</summary>
    public required double HeightM { get; init; }

    /// <summary>Outlines of each wash depth, closed, in the order of <see cref="WashDepthsM"/>.</summary>
    public required IReadOnlyList<IReadOnlyList<PlanePoint[]>> Washes { get; init; }

    /// <summary>Contour lines between them; every fifth is heavier.</summary>
    public required IReadOnlyList<SheetContour> Contours { get; init; }

    /// <summary>The second shore; empty without a thermocline.</summary>
    public required IReadOnlyList<SheetContour> SecondShore { get; init; }

    /// <summary>Hazards.</summary>
    public IReadOnlyList<HazardArea> Hazards { get; init; } = [];

    /// <summary>Where the ramp is.</summary>
    public required PlanePoint Ramp { get; init; }

    /// <summary>Draws the water around a plan.</summary>
    /// <param name="grid">The lake at the day's level.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="ramp">The ramp.</param>
    /// <param name="thermoclineM">Median thermocline depth, m; null without one.</param>
    /// <param name="metric">Contours each 2 m, else each 10 ft.</param>
    /// <param name="hazards">Hazards to mark.</param>
    public static SheetMap Around(DepthGrid grid, DayPlan plan, PlanePoint ramp, double? thermoclineM, bool metric, IReadOnlyList<HazardArea>? hazards = null)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(plan);
        double west = ramp.XM, east = ramp.XM, south = ramp.YM, north = ramp.YM;
        void Take(PlanePoint p)
        {
            west = Math.Min(west, p.XM);
            east = Math.Max(east, p.XM);
            south = Math.Min(south, p.YM);
            north = Math.Max(north, p.YM);
        }

        foreach (PlannedLeg leg in plan.Legs)
            foreach (PlanePoint p in leg.Line) Take(p);
        foreach (PlannedStop stop in plan.Stops)
        {
            Take(stop.Candidate.Place);
            foreach (PlanePoint p in stop.Candidate.Pass) Take(p);
        }

        // The frame keeps the sheet's shape and leaves a tenth of water and land around the plan.
        double aspect = MapDrawing.WidthPx / MapDrawing.HeightPx, marginM = Math.Max(150, 0.12 * Math.Max(east - west, north - south));
        double height = north - south + (2 * marginM), width = Math.Max(east - west + (2 * marginM), height * aspect);
        height = Math.Max(height, width / aspect);
        double cx = 0.5 * (west + east), cy = 0.5 * (south + north), toleranceM = 0.6 * width / MapDrawing.WidthPx;
        var box = new Box(cx - (0.5 * width), cy - (0.5 * height), width, height);

        double stepM = metric ? 2.0 : 3.048;
        // All levels at once: the field that lines are traced in is made once.
        IReadOnlyList<double> levels = Engine.Basin.Shore.Contours.LevelsM(grid, stepM);
        IReadOnlyList<DepthContour> lines = Engine.Basin.Shore.Contours.Trace(grid, [.. WashDepthsM.Concat(levels).Distinct()]);
        ILookup<double, DepthContour> byLevel = lines.ToLookup(l => l.LevelM);
        return new SheetMap
        {
            WestM = box.WestM,
            SouthM = box.SouthM,
            WidthM = width,
            HeightM = height,
            Washes = [.. WashDepthsM.Select(depthM => Rings(byLevel[depthM], box, toleranceM))],
            Contours = Lines(levels.SelectMany(l => byLevel[l]), box, toleranceM, d => (int)Math.Round(d / stepM) % 5 == 0),
            SecondShore = thermoclineM is double depth ? Lines(SecondShoreLine.Trace(grid, depth).Lines, box, toleranceM, _ => true) : [],
            Hazards = [.. (hazards ?? []).Where(h => box.Holds(h.Centre))],
            Ramp = ramp,
        };
    }

    private static List<PlanePoint[]> Rings(IEnumerable<DepthContour> lines, Box box, double toleranceM)
    {
        List<PlanePoint[]> rings = [];
        foreach (DepthContour line in lines)
            if (line.Points.Length > 2 && box.Meets(line.Points)) rings.Add(LineThinning.Thin(line.Points, toleranceM));
        return rings;
    }

    private static List<SheetContour> Lines(IEnumerable<DepthContour> lines, Box box, double toleranceM, Func<double, bool> isHeavy)
    {
        List<SheetContour> kept = [];
        foreach (DepthContour line in lines)
            if (box.Meets(line.Points)) kept.Add(new SheetContour(LineThinning.Thin(line.Points, toleranceM), line.Closed, isHeavy(line.LevelM)));
        return kept;
    }

    private readonly record struct Box(double WestM, double SouthM, double WidthM, double HeightM)
    {
        public bool Holds(PlanePoint p) => p.XM >= WestM && p.XM <= WestM + WidthM && p.YM >= SouthM && p.YM <= SouthM + HeightM;

        public bool Meets(PlanePoint[] points)
        {
            double west = double.MaxValue, east = double.MinValue, south = double.MaxValue, north = double.MinValue;
            foreach (PlanePoint p in points)
            {
                west = Math.Min(west, p.XM);
                east = Math.Max(east, p.XM);
                south = Math.Min(south, p.YM);
                north = Math.Max(north, p.YM);
            }

            return east >= WestM && west <= WestM + WidthM && north >= SouthM && south <= SouthM + HeightM;
        }
    }
}

/// <summary>A line of one depth on the sheet.</summary>
public sealed record SheetContour(PlanePoint[] Points, bool Closed, bool Heavy);
