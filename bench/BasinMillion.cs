using System.Diagnostics;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>A million soundings to a grid of 2000 by 2000 cells.</summary>
internal sealed class BasinMillion : IFigure
{
    public string Name => "basin-million";

    public string Claim => "a million soundings to 2000 x 2000 cells: seconds, memory and error";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure()
    {
        const int count = 1_000_000;
        LocalProjection plane = new(new GeoPoint(45, 7));
        SeededRandom random = new(5);
        double[] lat = new double[count], lon = new double[count], depth = new double[count];
        for (int i = 0; i < count; i++)
        {
            double x = random.NextDouble(-5000, 5000), y = random.NextDouble(-5000, 5000);
            GeoPoint place = plane.ToGeo(new PlanePoint(x, y));
            (lat[i], lon[i], depth[i]) = (place.LatDeg, place.LonDeg, DepthM(x, y) + (0.05 * random.NextNormal()));
        }

        GeoPoint[] ring = [.. new PlanePoint[] { new(-4990, -4990), new(4990, -4990), new(4990, 4990), new(-4990, 4990) }.Select(plane.ToGeo)];
        Survey survey = new() { Soundings = [new SoundingSet("million", lat, lon, depth, null, [])], Shoreline = new Shoreline([new WaterPolygon(ring, [])]) };
        GridOptions options = new() { Projection = plane, Frame = new GridFrame(-5000, -5000, 5, 2000, 2000) };
        GC.Collect();
        long before = GC.GetTotalMemory(true);
        long peak = before;
        Stopwatch watch = Stopwatch.StartNew();
        using Timer timer = new(_ => peak = Math.Max(peak, GC.GetTotalMemory(false)), null, 20, 20);
        GriddedLake lake = null!;
        double processor = BasinGdal.Own(() => lake = SurveyGridder.Grid(survey, options));
        double seconds = watch.Elapsed.TotalSeconds;
        double sum = 0;
        int cells = 0;
        for (int i = 0; i < lake.Grid!.DepthM.Length; i++)
        {
            PlanePoint p = lake.Grid.Frame.Centre(i);
            if (Math.Max(Math.Abs(p.XM), Math.Abs(p.YM)) > 4900) continue;
            double off = lake.Grid.DepthM[i] - DepthM(p.XM, p.YM);
            sum += off * off;
            cells++;
        }

        yield return new Measured("basin-million-time", seconds, "s", $"wall clock on {Environment.ProcessorCount} cores; target 30 s on two; {lake.Method}");
        yield return new Measured("basin-million-processor-time", processor, "s", "all threads");
        yield return new Measured("basin-million-memory", (peak - before) / 1e6, "MB", "managed heap over the survey's own arrays, sampled every 20 ms");
        yield return new Measured("basin-million-rmse", Math.Sqrt(sum / cells), "m", "against the surface the soundings were drawn from, noise of 0.05 m", FigureMargin.OfValue(0.01));
    }

    private static double DepthM(double x, double y) =>
        30 + (12 * Math.Sin(x / 700) * Math.Cos(y / 900)) + (3 * Math.Sin((x + y) / 110)) - (8 * Math.Exp(-((x * x) + (y * y)) / 40000));
}
