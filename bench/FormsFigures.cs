using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>How well bottom forms are found on lakes whose forms are known.</summary>
internal sealed class FormsF1 : IFigure
{
    public string Name => "forms-f1";

    public string Claim => "precision, recall and F1 of bottom forms on 30 generated lakes not used in tuning (seeds 1001 to 1030)";

    public FigureMargin Margin => FigureMargin.Within(0.01);

    public string LeftOut => "lakes of these seeds were never looked at in tuning";

    public IEnumerable<Measured> Measure()
    {
        FormScore score = FormBench.Score(1001, 30);
        foreach (FormClass form in score.Classes)
            yield return new Measured($"forms-f1-{form}", score.F1(form), "1", FormattableString.Invariant($"precision {score.Precision(form):0.00}, recall {score.Recall(form):0.00}"));
        yield return new Measured("forms-f1-median", score.MedianF1(), "1", "target 0.80");
        yield return new Measured("forms-f1-worst", score.WorstF1(), "1", "target 0.65");
    }
}

internal static class FormBench
{
    private static readonly LakeRecipe[] Recipes = [LakeRecipe.Pond, LakeRecipe.SmallReservoir, LakeRecipe.LargeReservoir, LakeRecipe.IceLake, LakeRecipe.SmallReservoir];

    /// <summary>Lakes of every recipe in turn, with a sounder's noise on the grid.</summary>
    public static FormScore Score(ulong first, int count)
    {
        FormScore score = new();
        for (int k = 0; k < count; k++)
        {
            LakeRecipe recipe = Recipes[k % Recipes.Length];
            GeneratedLake lake = LakeGenerator.Generate(first + (ulong)k, recipe);
            score.Add(lake, recipe, BottomForms.Find(Surveyed(lake, first + (ulong)k)));
        }

        return score;
    }

    /// <summary>The lake as a survey sees it: 5 cm and half a percent of depth of random error a cell.</summary>
    public static DepthGrid Surveyed(GeneratedLake lake, ulong seed)
    {
        SeededRandom random = new(seed, 9);
        float[] depthM = new float[lake.DepthM.Length];
        for (int i = 0; i < depthM.Length; i++)
            depthM[i] = float.IsNaN(lake.DepthM[i]) ? float.NaN : (float)Math.Max(0.05, lake.DepthM[i] + ((0.05 + (0.005 * lake.DepthM[i])) * random.NextNormal()));
        return new DepthGrid(new LocalProjection(new GeoPoint(45, 10)), lake.Frame, depthM);
    }
}
