using SecondShore.Bench.Shapes;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Soundings without a shore: how many left out come out as land, and how much land is drawn as water where the shore
/// is known after all.</summary>
internal sealed class BasinEdge : IFigure
{
    private const int Splits = 3;

    public string Name => "basin-edge";

    public string Claim => "left-out soundings of surveys without a shore that come out as land, and land that is drawn as water";

    public FigureMargin Margin => new(0.05, 0.002);

    public string LeftOut => "a tenth of the soundings, one by one (pings) or in runs of 24 (runs)";

    public IEnumerable<Measured> Measure()
    {
        foreach ((string file, Survey survey) in Surveys())
        {
            SoundingSet set = Sound(survey);
            if (set.DepthM.Length < 60) continue;
            foreach (int run in (int[])[1, 24])
            {
                int outside = 0, all = 0;
                for (ulong seed = 77; seed < 77 + Splits; seed++)
                {
                    (SoundingSet kept, List<int> left) = Leave(set, run, seed);
                    GriddedLake lake = SurveyGridder.Grid(new Survey { Soundings = [kept] });
                    if (lake.Grid is not { } grid) continue;
                    all += left.Count;
                    outside += left.Count(i => double.IsNaN(grid.DepthAtM(grid.Projection.ToPlane(set.LatDeg[i], set.LonDeg[i]))));
                }

                string what = run == 1 ? "pings" : "runs";
                if (all > 0) yield return new Measured($"basin-edge-{file}-{what}", (double)outside / all, "share",
                    $"of {all} left-out soundings came out as land; want 0.03 or less");
            }
        }

        foreach (Measured m in Land()) yield return m;
    }

    // Lakes whose shore is known: it is taken away, and what is drawn is held against it.
    private static IEnumerable<Measured> Land()
    {
        foreach ((string name, Survey soundings, DepthGrid truth) in ShapeSurveys.WithSoundings(Console.Error.WriteLine))
        {
            SoundingSet set = Sound(soundings);
            if (SurveyGridder.Grid(new Survey { Soundings = [set] }).Grid is not { } grid) continue;
            int water = 0, land = 0;
            for (int i = 0; i < grid.DepthM.Length; i++)
            {
                if (!(grid.DepthM[i] > 0)) continue;
                water++;
                PlanePoint place = truth.Projection.ToPlane(grid.Projection.ToGeo(grid.Frame.Centre(i)));
                if (double.IsNaN(truth.DepthAtM(place))) land++;
            }

            double lakeM2 = truth.DepthM.Count(z => z > 0) * truth.Frame.CellAreaM2;
            yield return new Measured($"basin-edge-{name}-land", (double)land / water, "of the drawn water",
                FormattableString.Invariant(
                    $"is land by the lake's shore; drawn {water * grid.Frame.CellAreaM2 / lakeM2:0.00} of the lake"));
        }
    }

    private static IEnumerable<(string File, Survey Survey)> Surveys()
    {
        HashSet<string> seen = [];
        foreach (SurveyCase c in SurveyCatalogue.All)
            if (c.Kind == SurveyKind.Soundings && c.Refusal is null && seen.Add(c.File) && c.Read()?.Survey is { } survey)
                yield return (Short(c.File), survey);
        foreach (SurveyTruth t in SurveyTruths.All)
            if (t.Must != SurveyMust.Refuse && seen.Add(t.File) && t.Read(t.Set)?.Survey is { Soundings.Count: > 0 } survey)
                yield return (Short(t.File), survey);
    }

    private static string Short(string file) =>
        $"{file.Split('/')[0].Split('-')[0]}-{Path.GetFileNameWithoutExtension(file).ToLowerInvariant()}".Replace('_', '-');

    // Strays and false echoes say nothing of where water is, and marks of depth 0 are a shore.
    private static SoundingSet Sound(Survey survey)
    {
        LocalProjection plane = SurveyPlane.Choose(survey)!;
        PointCloud cloud = SurveyPlane.Soundings(survey, plane, out _, out _);
        bool[] near = StraySoundings.Keep(cloud);
        cloud = cloud.Where(i => near[i]);
        bool[] keep = FalseEchoes.Keep(cloud);
        List<double> lat = [], lon = [], depth = [];
        for (int i = 0; i < cloud.Count; i++)
        {
            if (!keep[i] || !(cloud.DepthM[i] > 0)) continue;
            GeoPoint at = plane.ToGeo(new PlanePoint(cloud.XM[i], cloud.YM[i]));
            lat.Add(at.LatDeg);
            lon.Add(at.LonDeg);
            depth.Add(cloud.DepthM[i]);
        }

        return new SoundingSet("soundings", [.. lat], [.. lon], [.. depth], null, []);
    }

    private static (SoundingSet Kept, List<int> Left) Leave(SoundingSet set, int run, ulong seed)
    {
        SeededRandom random = new(seed);
        List<int> kept = [], left = [];
        for (int i = 0; i < set.DepthM.Length; i += run)
        {
            bool leave = random.NextDouble() < 0.1;
            for (int k = i; k < Math.Min(set.DepthM.Length, i + run); k++) (leave ? left : kept).Add(k);
        }

        return (new SoundingSet(set.Name, [.. kept.Select(k => set.LatDeg[k])], [.. kept.Select(k => set.LonDeg[k])],
            [.. kept.Select(k => set.DepthM[k])], null, []), left);
    }
}
