using System.Globalization;
using System.Text;
using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Demo.Ketterfold;

/// <summary>Ramps, named places, no-wake water and cover of the demo lake.</summary>
internal sealed class KetterfoldPlaces(GeneratedLake lake, LocalProjection plane)
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    private const string Notes = "Invented: no such lake exists. Made by a program with a seed, with everything in this folder. "
        + "Not for finding a way on any water.";

    /// <summary>Where the dam draws, m below full pool.</summary>
    public static readonly double OutletDepthM = 44;

    private static readonly (string Name, double XM, double YM, double ToeM)[] Ramps =
        [("Chapel Ramp", 6420, -4050, 5.5), ("Dam Ramp", 10500, -6600, 7), ("Fern Ramp", 1500, -4400, 1.2)];

    // Names go to the form of a class nearest to where the name belongs.
    private static readonly (string Name, FormClass Class, double XM, double YM)[] Named =
    [
        ("The Fold", FormClass.ChannelBend, 7340, -5700),
        ("Fold Point", FormClass.MainPoint, 7000, -5200),
        ("Sexton Hump", FormClass.Hump, 7820, -5470),
        ("Kiln Bluff", FormClass.BluffWall, 6100, -4300),
        ("Heron Bench", FormClass.Ledge, 5700, -3900),
        ("Saltbox Saddle", FormClass.Saddle, 9000, -5500),
        ("Chandler Hole", FormClass.Hole, 8500, -5300),
        ("Mill Corner", FormClass.Junction, 9550, -5700),
    ];

    public byte[] LakeJson(GeneratedLake bottom, double secchiM)
    {
        StringBuilder text = new();
        Facts(text, bottom, secchiM);
        WriteRamps(text);
        WriteNoWake(text);
        WriteMarks(text);
        text.Append("\n}\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void Facts(StringBuilder text, GeneratedLake bottom, double secchiM)
    {
        double deepestM = 0;
        int wet = 0;
        foreach (float d in bottom.DepthM)
        {
            if (!(d > 0)) continue;
            deepestM = Math.Max(deepestM, d);
            wet++;
        }

        text.Append(Plain, $$"""
            {
              "name": "Ketterfold Reservoir",
              "invented": true,
              "notes": "{{Notes}}",
              "latitude_deg": {{KetterfoldRecipe.Origin.LatDeg - 0.045}},
              "longitude_deg": {{KetterfoldRecipe.Origin.LonDeg + 0.068}},
              "elevation_m": {{KetterfoldRecipe.ElevationM}},
              "time_zone": "America/Chicago",
              "surface_area_m2": {{wet * bottom.Frame.CellAreaM2:0}},
              "max_depth_m": {{deepestM:0.0}},
              "secchi_m": {{secchiM:0.0}},
              "reservoir": true,
              "outlet_depth_m": {{OutletDepthM}},
              "wind_measurement_height_m": 10,
              "measured_until": "{{KetterfoldDemo.MeasuredUntil.UtcDateTime:yyyy-MM-ddTHH:mm:ss}}Z",
              "units": "us",
              "survey": { "unit": "m", "sense": "depth", "crs": "EPSG:4326" },
            """);
    }

    private void WriteRamps(StringBuilder text)
    {
        text.Append("\n  \"ramps\": [");
        for (int i = 0; i < Ramps.Length; i++)
        {
            GeoPoint place = plane.ToGeo(RampPlace(Ramps[i].XM, Ramps[i].YM));
            text.Append(i > 0 ? ",\n    " : "\n    ").Append(Plain, $"{{ \"name\": \"{Ramps[i].Name}\", {Position(place)}, \"toe_below_full_pool_m\": {Ramps[i].ToeM} }}");
        }

        text.Append("\n  ],");
    }

    private void WriteNoWake(StringBuilder text)
    {
        text.Append("\n  \"no_wake_areas\": [");
        for (int i = 0; i < Ramps.Length; i++)
        {
            PlanePoint p = RampPlace(Ramps[i].XM, Ramps[i].YM);
            text.Append(i > 0 ? ",\n    " : "\n    ").Append(Plain, $"{{ \"name\": \"{Ramps[i].Name} harbour\", \"outline\": [");
            for (int k = 0; k < 8; k++)
            {
                GeoPoint corner = plane.ToGeo(new PlanePoint(p.XM + (120 * Math.Cos(k * Math.PI / 4)), p.YM + (120 * Math.Sin(k * Math.PI / 4))));
                text.Append(k > 0 ? ", {" : "{").Append(Position(corner)).Append('}');
            }

            text.Append("] }");
        }

        text.Append("\n  ],");
    }

    private void WriteMarks(StringBuilder text)
    {
        text.Append("\n  \"marks\": [");
        bool first = true;
        foreach ((string name, FormClass form, double x, double y) in Named)
        {
            if (NearestOf(form, new PlanePoint(x, y)) is not { } found) continue;
            text.Append(first ? "\n    " : ",\n    ").Append(Plain, $"{{ \"kind\": \"spot\", \"name\": \"{name}\", {Position(plane.ToGeo(found.Place))}, ")
                .Append(Plain, $"\"radius_m\": {Math.Clamp(found.SizeM, 80, 250):0}, \"note\": \"invented\" }}");
            first = false;
        }

        foreach (NamedLine arm in KetterfoldRecipe.Recipe.ArmLines ?? []) Arm(arm.Name, arm);
        Arm("Upper End", new NamedLine("", [.. KetterfoldRecipe.Recipe.MainLine!.Take(4)]));
        text.Append("\n  ]");

        void Arm(string name, NamedLine line) =>
            text.Append(Plain, $",\n    {{ \"kind\": \"arm\", \"name\": \"{name}\", {Position(plane.ToGeo(ArmPlace(line)))}, \"note\": \"invented\" }}");
    }

    private static string Position(GeoPoint place) =>
        string.Create(Plain, $"\"latitude_deg\": {place.LatDeg:0.00000}, \"longitude_deg\": {place.LonDeg:0.00000}");

    /// <summary>Brush on edges, timber along arms' channels, stumps on flats, rock at bluffs: each near a form, in fishable depths.</summary>
    public byte[] Cover(ulong seed)
    {
        SeededRandom random = new(seed, 501);
        StringBuilder text = new("latitude_deg,longitude_deg,kind,radius_m,height_m,note\n");
        foreach (TruthForm form in lake.Forms)
        {
            (string kind, double share, double radiusM, double heightM) = form.Class switch
            {
                FormClass.Hump => ("brush", 0.6, 6, 1.8),
                FormClass.ChannelBend => ("brush", 0.5, 5, 1.5),
                FormClass.MainPoint or FormClass.SecondaryPoint => ("brush", 0.45, 5, 1.5),
                FormClass.Ledge => ("stumps", 0.6, 25, 0.6),
                FormClass.BluffEnd => ("rock", 0.4, 10, 1),
                FormClass.Junction => ("stumps", 0.5, 20, 0.7),
                _ => ("", 0, 0, 0),
            };
            if (random.NextDouble() >= share) continue;
            PlanePoint at = form.Geometry.Points[random.NextInt(form.Geometry.Points.Count)];
            Row(new PlanePoint(at.XM + random.NextDouble(-30, 30), at.YM + random.NextDouble(-30, 30)), kind, radiusM, heightM, 2, 20);
        }

        foreach (TruthForm arm in lake.Forms)
        {
            if (arm.Class != FormClass.SideChannel) continue;
            for (double share = 0.45; share < 0.95; share += 0.12)
            {
                PlanePoint at = arm.Geometry.Points[(int)(share * arm.Geometry.Points.Count)];
                Row(new PlanePoint(at.XM + random.NextDouble(-25, 25), at.YM + random.NextDouble(-25, 25)), "timber", random.NextDouble(25, 60), random.NextDouble(3, 6), 4, 30);
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());

        void Row(PlanePoint place, string kind, double radiusM, double heightM, double shallowM, double deepM)
        {
            double depthM = lake.DepthAtM(place);
            if (!(depthM >= shallowM && depthM <= deepM)) return;
            GeoPoint g = plane.ToGeo(place);
            text.Append(Plain, $"{g.LatDeg:0.00000},{g.LonDeg:0.00000},{kind},{radiusM:0},{Math.Min(heightM, depthM - 1):0.0},invented\n");
        }
    }

    // A ramp's water end lies just off the nearest shore of the main lake that falls off well.
    private PlanePoint RampPlace(double xM, double yM)
    {
        PlanePoint wanted = new(xM, yM), best = lake.Shore[0][0];
        foreach (PlanePoint p in lake.Shore[0])
            if (p.SquaredDistanceToM2(wanted) < best.SquaredDistanceToM2(wanted)) best = p;
        double bestM = double.MaxValue;
        PlanePoint wet = best;
        for (double r = 20; r < 200; r += 15)
        {
            for (int k = 0; k < 24; k++)
            {
                PlanePoint p = new(best.XM + (r * Math.Cos(k * Math.PI / 12)), best.YM + (r * Math.Sin(k * Math.PI / 12)));
                double depthM = lake.DepthAtM(p);
                if (depthM > 4 && depthM < 9 && r < bestM) { bestM = r; wet = p; }
            }
        }

        return wet;
    }

    // An arm's name goes to its middle, over the channel.
    private PlanePoint ArmPlace(NamedLine arm)
    {
        PathLine line = new(arm.Corners, 20);
        int middle = line.IndexAt(0.55 * line.LengthM);
        PlanePoint best = line[middle];
        double bestM = 0;
        for (int i = Math.Max(0, middle - 15); i <= Math.Min(line.Count - 1, middle + 15); i++)
        {
            double depthM = lake.DepthAtM(line[i]);
            if (depthM > bestM) (best, bestM) = (line[i], depthM);
        }

        return best;
    }

    private TruthForm? NearestOf(FormClass form, PlanePoint place) =>
        lake.Forms.Where(f => f.Class == form).MinBy(f => f.Place.SquaredDistanceToM2(place));
}
