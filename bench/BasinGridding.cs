using System.Diagnostics;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Error of the gridder on left-out real soundings, beside GDAL's linear triangulation and inverse distance on the same splits.</summary>
internal sealed class BasinGridding : IFigure
{
    /// <summary>Splits whose errors are taken together: one of a small survey is mostly chance.</summary>
    private const int Splits = 5;

    private const int Times = 9;

    private static readonly TimeSpan s_warm = TimeSpan.FromSeconds(2);

    public string Name => "basin-gridding";

    public string Claim => "leave-out error and time on real soundings, against GDAL's linear and inverse-distance grids of the same cells";

    public FigureMargin Margin => FigureMargin.OfValue(0.01);

    public string LeftOut => "a tenth of the soundings, one by one (pings) or in runs of 24 along the track (runs)";

    public IEnumerable<Measured> Measure()
    {
        foreach (BasinSurveyFiles.Points survey in BasinSurveyFiles.All())
        {
            foreach (int run in (int[])[1, 24])
            {
                foreach (Measured measured in Figures(survey, run)) yield return measured;
            }
        }
    }

    private static IEnumerable<Measured> Figures(BasinSurveyFiles.Points survey, int run)
    {
        string what = $"basin-gridding-{survey.Name}-{(run == 1 ? "pings" : "runs")}";
        GridFrame frame = FrameOf(survey);
        List<double> truth = [], ours = [], linear = [], distance = [];
        SortedDictionary<string, int> methods = [];
        int within = 0, water = 0;
        for (ulong seed = 77; seed < 77 + Splits; seed++)
        {
            (List<int> kept, List<int> left) = Leave(survey, run, seed);
            GriddedLake lake = Own(survey, kept, frame)();
            DepthGrid grid = lake.Grid ?? throw new InvalidOperationException(lake.Refusal?.ToString());
            methods[$"{lake.Method}"] = methods.GetValueOrDefault($"{lake.Method}") + 1;
            foreach (int i in left)
            {
                PlanePoint at = new(survey.XM[i] - MiddleX(frame), survey.YM[i] - MiddleY(frame));
                double depthM = grid.DepthAtM(at);
                truth.Add(survey.DepthM[i]);
                ours.Add(depthM);
                if (double.IsNaN(depthM) || !grid.Frame.TryCellAt(at, out int ix, out int iy)) continue;
                water++;
                if (Math.Abs(depthM - survey.DepthM[i]) <= 2 * grid.DepthSdM[grid.Frame.Index(ix, iy)]) within++;
            }

            if (!BasinGdal.Present) continue;
            using BasinGdalGrid gdal = new(survey, kept, frame);
            linear.AddRange(gdal.Draw(BasinGdalGrid.Linear, left));
            distance.AddRange(gdal.Draw(BasinGdalGrid.Distance(frame), left));
        }

        // Errors are compared where every method gives a depth.
        bool[] all = [.. truth.Select((_, k) => !double.IsNaN(ours[k]) && (linear.Count == 0 || !double.IsNaN(linear[k] + distance[k])))];
        string against = $"{Splits} splits, {all.Count(a => a)} of {truth.Count} left-out soundings, {frame.Nx} x {frame.Ny} cells of {frame.CellM} m";
        yield return new Measured($"{what}-rmse", Rmse(ours, truth, all), "m", $"{string.Join(", ", methods.Select(m => $"{m.Key} {m.Value}"))}; {against}");
        yield return new Measured($"{what}-outside", (double)ours.Count(double.IsNaN) / ours.Count, "share", "left-out soundings that came out as land", OnPage: false);
        yield return new Measured($"{what}-within-2sd", (double)within / water, "share", "want 0.95");
        if (!BasinGdal.Present) yield break;
        yield return new Measured($"{what}-linear-rmse", Rmse(linear, truth, all), "m", "gdal_grid linear");
        yield return new Measured($"{what}-distance-rmse", Rmse(distance, truth, all), "m", "gdal_grid invdistnn, power 2, 12 points");
        foreach (Measured measured in Time(what, survey, run, frame)) yield return measured;
    }

    private static IEnumerable<Measured> Time(string what, BasinSurveyFiles.Points survey, int run, GridFrame frame)
    {
        (List<int> kept, _) = Leave(survey, run, 77);
        Func<GriddedLake> own = Own(survey, kept, frame);
        using BasinGdalGrid gdal = new(survey, kept, frame);
        // Warm, as in an app that is open: what is measured beside it has its code ready too.
        for (long start = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(start) < s_warm;) own();
        double seconds = Median(() => Wall(() => own())), processor = Median(() => BasinGdal.Own(() => own()));
        double linear = Median(() => Wall(() => gdal.Seconds(BasinGdalGrid.Linear))), linearProcessor = Median(() => gdal.Seconds(BasinGdalGrid.Linear));
        double distance = Wall(() => gdal.Seconds(BasinGdalGrid.Distance(frame)));
        yield return new Measured($"{what}-time-ratio", seconds / linear, "of linear", $"wall clock {seconds:0.000} s against {linear:0.000} s with its start; inverse distance {distance:0.00} s", FigureMargin.OfValue(0.25));
        yield return new Measured($"{what}-processor-ratio", processor / linearProcessor, "of linear", $"processor time, all threads, {processor:0.00} s against {linearProcessor:0.00} s", FigureMargin.OfValue(0.25), OnPage: false);
    }

    private static double Wall(Action action)
    {
        long start = Stopwatch.GetTimestamp();
        action();
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static Func<GriddedLake> Own(BasinSurveyFiles.Points survey, List<int> kept, GridFrame frame)
    {
        LocalProjection plane = new(new GeoPoint(40, -80));
        double[] lat = new double[kept.Count], lon = new double[kept.Count], depth = new double[kept.Count];
        for (int k = 0; k < kept.Count; k++)
        {
            GeoPoint place = plane.ToGeo(new PlanePoint(survey.XM[kept[k]] - MiddleX(frame), survey.YM[kept[k]] - MiddleY(frame)));
            (lat[k], lon[k], depth[k]) = (place.LatDeg, place.LonDeg, survey.DepthM[kept[k]]);
        }

        Survey ours = new() { Soundings = [new SoundingSet(survey.Name, lat, lon, depth, null, [])] };
        GridFrame shifted = new(frame.WestM - MiddleX(frame), frame.SouthM - MiddleY(frame), frame.CellM, frame.Nx, frame.Ny);
        return () => SurveyGridder.Grid(ours, new GridOptions { Projection = plane, Frame = shifted });
    }

    private static double MiddleX(GridFrame frame) => 0.5 * (frame.WestM + frame.EastM);

    private static double MiddleY(GridFrame frame) => 0.5 * (frame.SouthM + frame.NorthM);

    private static (List<int> Kept, List<int> Left) Leave(BasinSurveyFiles.Points survey, int run, ulong seed)
    {
        SeededRandom random = new(seed);
        bool[] sound = Sound(survey);
        List<int> kept = [], left = [];
        for (int i = 0; i < survey.XM.Count; i += run)
        {
            bool leave = random.NextDouble() < 0.1;
            for (int k = i; k < Math.Min(survey.XM.Count, i + run); k++)
            {
                if (!leave || !(survey.DepthM[k] > 0)) kept.Add(k);
                else if (sound[k]) left.Add(k);
            }
        }

        return (kept, left);
    }

    // Nobody is to foretell a false echo; what is kept for drawing still holds them.
    private static bool[] Sound(BasinSurveyFiles.Points survey)
    {
        PointCloud cloud = new();
        for (int i = 0; i < survey.XM.Count; i++) cloud.Add(survey.XM[i], survey.YM[i], (float)survey.DepthM[i], PointKind.Sounding, 0);
        return FalseEchoes.Keep(cloud);
    }

    private static GridFrame FrameOf(BasinSurveyFiles.Points survey)
    {
        double west = survey.XM.Min(), east = survey.XM.Max(), south = survey.YM.Min(), north = survey.YM.Max();
        double cell = Math.Max(1, Math.Ceiling(Math.Sqrt((east - west) * (north - south) / 120_000)));
        return new GridFrame(west - cell, south - cell, cell, (int)((east - west) / cell) + 3, (int)((north - south) / cell) + 3);
    }

    private static double Median(Func<double> measure) => Enumerable.Range(0, Times).Select(_ => measure()).Order().ElementAt(Times / 2);

    private static double Rmse(List<double> at, List<double> truth, bool[] use)
    {
        double sum = 0;
        int count = 0;
        for (int k = 0; k < at.Count; k++)
        {
            if (!use[k]) continue;
            sum += (at[k] - truth[k]) * (at[k] - truth[k]);
            count++;
        }

        return Math.Sqrt(sum / count);
    }
}
