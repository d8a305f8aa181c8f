using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Demo.Terrain;

/// <summary>
/// Scores found forms against the truth of generated lakes, class by class, summed over lakes. Counts are of forms for
/// points, humps, saddles, holes, bends, junctions and bluff ends; of metres for channels, walls and ledges; of cells for flats and slopes.
/// </summary>
public sealed class FormScore
{
    private readonly Dictionary<FormClass, Tally> _tallies = [];

    /// <summary>Classes seen in truth or found, in order.</summary>
    public IReadOnlyList<FormClass> Classes => [.. _tallies.Keys.Order()];

    /// <summary>Share of what was found that is true; 1 when nothing was found.</summary>
    public double Precision(FormClass form) => _tallies.TryGetValue(form, out Tally? t) && t.Found > 0 ? t.FoundRight / t.Found : 1;

    /// <summary>Share of the truth that was found; 1 when there is none.</summary>
    public double Recall(FormClass form) => _tallies.TryGetValue(form, out Tally? t) && t.True > 0 ? t.TrueFound / t.True : 1;

    /// <summary>Harmonic mean of precision and recall.</summary>
    public double F1(FormClass form)
    {
        double p = Precision(form), r = Recall(form);
        return p + r > 0 ? 2 * p * r / (p + r) : 0;
    }

    /// <summary>Median of <see cref="F1"/> over the classes.</summary>
    public double MedianF1()
    {
        double[] all = [.. Classes.Select(F1).Order()];
        return all.Length == 0 ? 0 : 0.5 * (all[(all.Length - 1) / 2] + all[all.Length / 2]);
    }

    /// <summary>Least <see cref="F1"/> over the classes.</summary>
    public double WorstF1() => Classes.Select(F1).DefaultIfEmpty(0).Min();

    /// <summary>Adds a lake.</summary>
    /// <param name="lake">The lake as made.</param>
    /// <param name="recipe">Its recipe: tolerances are in its form size.</param>
    /// <param name="map">What was found on its grid.</param>
    public void Add(GeneratedLake lake, LakeRecipe recipe, FormMap map)
    {
        Require.NotNull(lake);
        Require.NotNull(recipe);
        Require.NotNull(map);
        foreach (FormClass form in Enum.GetValues<FormClass>())
        {
            List<TruthForm> truth = [.. lake.Forms.Where(f => f.Class == form)];
            List<BottomForm> found = [.. map.Forms.Where(f => f.Class == form)];
            if (truth.Count == 0 && found.Count == 0) continue;
            switch (form)
            {
                case FormClass.Flat or FormClass.Slope:
                    Cells(form, lake, map);
                    break;
                case FormClass.MainChannel or FormClass.SideChannel:
                    Lines(form, truth, found, Math.Max(recipe.FormM, 1.5 * recipe.HalfChannelM));
                    break;
                case FormClass.BluffWall or FormClass.Ledge:
                    Lines(form, truth, found, 1.2 * recipe.FormM);
                    break;
                case FormClass.MainPoint or FormClass.SecondaryPoint:
                    Objects(form, truth, found, (t, f) => CrestsMeet(t, f, 1.5 * recipe.FormM));
                    break;
                default:
                    double tolerance = form is FormClass.ChannelBend or FormClass.Junction ? 2.5 * recipe.FormM : 1.5 * recipe.FormM;
                    Objects(form, truth, found, (t, f) => t.Place.DistanceToM(f.Place) <= Math.Max(tolerance, 0.75 * (form == FormClass.ChannelBend ? 0 : t.SizeM)));
                    break;
            }
        }
    }

    private Tally Of(FormClass form) => _tallies.TryGetValue(form, out Tally? tally) ? tally : _tallies[form] = new Tally();

    private void Objects(FormClass form, List<TruthForm> truth, List<BottomForm> found, Func<TruthForm, BottomForm, bool> match)
    {
        Tally tally = Of(form);
        tally.True += truth.Count;
        tally.Found += found.Count;
        bool[] used = new bool[found.Count];
        foreach (TruthForm t in truth)
        {
            int best = -1;
            for (int k = 0; k < found.Count; k++)
            {
                if (!used[k] && match(t, found[k]) && (best < 0 || t.Place.SquaredDistanceToM2(found[k].Place) < t.Place.SquaredDistanceToM2(found[best].Place))) best = k;
            }

            if (best < 0) continue;
            used[best] = true;
            tally.TrueFound++;
            tally.FoundRight++;
        }
    }

    private void Lines(FormClass form, List<TruthForm> truth, List<BottomForm> found, double toleranceM)
    {
        Tally tally = Of(form);
        List<IReadOnlyList<PlanePoint>> a = [.. truth.Select(t => t.Geometry.Points)], b = [.. found.Select(f => f.Geometry.Points)];
        (double trueM, double trueFoundM) = Covered(a, b, toleranceM);
        (double foundM, double foundRightM) = Covered(b, a, toleranceM);
        tally.True += trueM;
        tally.TrueFound += trueFoundM;
        tally.Found += foundM;
        tally.FoundRight += foundRightM;
    }

    private void Cells(FormClass form, GeneratedLake lake, FormMap map)
    {
        Tally tally = Of(form);
        GroundKind want = form == FormClass.Flat ? GroundKind.Flat : GroundKind.Slope;
        for (int i = 0; i < lake.Ground.Length; i++)
        {
            if (lake.Ground[i] == GroundKind.Either || float.IsNaN(lake.DepthM[i])) continue;
            bool isTrue = lake.Ground[i] == want, isFound = map.GroundOfCell[i] == form;
            if (isTrue) tally.True++;
            if (isFound) tally.Found++;
            if (!isTrue || !isFound) continue;
            tally.TrueFound++;
            tally.FoundRight++;
        }
    }

    // A crest is the same when the middle of each lies near the other.
    private static bool CrestsMeet(TruthForm truth, BottomForm found, double toleranceM) =>
        DistanceM(truth.Geometry.Points[truth.Geometry.Points.Count / 2], found.Geometry.Points) <= toleranceM
        || DistanceM(found.Geometry.Points[found.Geometry.Points.Count / 2], truth.Geometry.Points) <= toleranceM * 0.75;

    private static (double AllM, double CoveredM) Covered(List<IReadOnlyList<PlanePoint>> lines, List<IReadOnlyList<PlanePoint>> by, double toleranceM)
    {
        double all = 0, covered = 0;
        foreach (IReadOnlyList<PlanePoint> line in lines)
        {
            for (int k = 1; k < line.Count; k++)
            {
                double stepM = line[k - 1].DistanceToM(line[k]);
                all += stepM;
                foreach (IReadOnlyList<PlanePoint> other in by)
                {
                    if (DistanceM(line[k], other) > toleranceM) continue;
                    covered += stepM;
                    break;
                }
            }
        }

        return (all, covered);
    }

    private static double DistanceM(PlanePoint p, IReadOnlyList<PlanePoint> line)
    {
        double best = double.MaxValue;
        foreach (PlanePoint q in line) best = Math.Min(best, p.SquaredDistanceToM2(q));
        return Math.Sqrt(best);
    }

    private sealed class Tally
    {
        public double True, TrueFound, Found, FoundRight;
    }
}
