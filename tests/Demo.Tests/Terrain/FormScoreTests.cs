using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Demo.Tests.Terrain;

public class FormScoreTests
{
    [Fact]
    public void Forms_of_small_generated_lakes_are_found_above_a_floor()
    {
        FormScore score = new();
        (ulong Seed, LakeRecipe Recipe)[] lakes = [(2001, LakeRecipe.Pond), (2002, LakeRecipe.Pond), (2003, LakeRecipe.SmallReservoir with { CellM = 11 })];
        foreach ((ulong seed, LakeRecipe recipe) in lakes)
        {
            GeneratedLake lake = LakeGenerator.Generate(seed, recipe);
            score.Add(lake, recipe, BottomForms.Find(lake.ToGrid(new GeoPoint(45, 10)), null, null, TestContext.Current.CancellationToken));
        }

        Assert.True(score.MedianF1() >= 0.75, Told(score));
        foreach (FormClass form in (FormClass[])[FormClass.MainChannel, FormClass.SideChannel, FormClass.Flat, FormClass.Slope, FormClass.Hump, FormClass.MainPoint])
            Assert.True(score.F1(form) >= 0.65, Told(score));
    }

    [Fact]
    public void Nothing_found_scores_no_recall_and_the_truth_scores_one()
    {
        GeneratedLake lake = LakeGenerator.Generate(7, LakeRecipe.Pond);
        FormScore score = new();
        FormMap none = BottomForms.Find(lake.ToGrid(new GeoPoint(45, 10)), new FormOptions { HumpShare = 10, HoleShare = 10, BankShare = 10, BluffTan = 50 }, null, TestContext.Current.CancellationToken);
        score.Add(lake, LakeRecipe.Pond, none);
        Assert.Equal(0, score.Recall(FormClass.MainChannel));
        Assert.Equal(0, score.F1(FormClass.Hump));
    }

    private static string Told(FormScore score) => string.Join("; ", score.Classes.Select(c => FormattableString.Invariant($"{c} {score.F1(c):0.00}")));
}
