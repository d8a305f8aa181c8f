using System.Text.RegularExpressions;
using SecondShore.TestKit.Figures;

namespace SecondShore.Architecture.Tests;

public partial class FigureTests
{
    [Fact]
    public void The_page_of_figures_says_what_the_figure_files_say()
    {
        string page = File.ReadAllText(FigurePage.FilePath).ReplaceLineEndings("\n");
        Assert.True(page == FigurePage.Of(FigureFile.ReadAll()),
            "docs/figures.md and docs/figures/*.json have drifted apart. Make the page anew: dotnet run -c Release --project bench -- page");
    }

    [Fact]
    public void Every_figure_says_its_commit_or_that_it_was_not_written_down()
    {
        Assert.All(FigureFile.ReadAll(), f => Assert.True(f.Commit is null || Hash().IsMatch(f.Commit), $"{f.Name}: {f.Commit}"));
        Assert.All(FigureFile.ReadAll(), f => Assert.NotEmpty(f.Values));
    }

    [Fact]
    public void No_two_figures_share_a_name()
    {
        string[] twice = [.. FigureFile.ReadAll().SelectMany(f => f.Values).GroupBy(v => v.Name).Where(g => g.Count() > 1).Select(g => g.Key)];
        Assert.Empty(twice);
    }

    [Theory]
    [InlineData(0, 0, 38, 38, false)]
    [InlineData(0, 0, 38, 37, true)]
    [InlineData(0.25, 0, 100, 125, false)]
    [InlineData(0.25, 0, 100, 126, true)]
    [InlineData(0, 0.01, 0.40, 0.409, false)]
    [InlineData(0, 0.01, 0.40, 0.411, true)]
    [InlineData(0.25, 0, 100, double.NaN, true)]
    public void A_figure_has_moved_beyond_its_margin_and_not_before(double share, double amount, double kept, double now, bool moved) =>
        Assert.Equal(moved, new FigureMargin(share, amount).Moved(kept, now));

    [GeneratedRegex(@"^[0-9a-f]{7,12}\+?$")]
    private static partial Regex Hash();
}
