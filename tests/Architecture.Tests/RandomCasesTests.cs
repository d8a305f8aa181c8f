using CsCheck;
using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

/// <summary>Random tests say the same of the same code every time.</summary>
public class RandomCasesTests
{
    [Fact]
    public void As_many_cases_as_asked_for_are_drawn_and_always_the_same()
    {
        List<int> first = [], second = [];
        Gen.Int[0, 1_000_000].Hold(first.Add, 50);
        Gen.Int[0, 1_000_000].Hold(second.Add, 50);
        Assert.Equal(RandomCases.Seeds(50).Count(), first.Count);
        Assert.Equal(first, second);
        Assert.True(first.Distinct().Count() > 45, "the cases are hardly different");
    }

    [Fact]
    public void A_case_that_fails_says_the_seed_that_draws_it_again()
    {
        string[] seeds = [.. RandomCases.Seeds(40)];
        CsCheckException told = Assert.Throws<CsCheckException>(() => Gen.Int[0, 9].Hold(n => Assert.NotEqual(7, n), 40));
        string seed = Assert.Single(seeds, s => told.Message.Contains(s, StringComparison.Ordinal));
        int drawn = -1;
        Gen.Int[0, 9].At(seed, n => drawn = n);
        Assert.Equal(7, drawn);
    }

    [Fact]
    public void No_test_draws_cases_of_which_the_next_run_knows_nothing()
    {
        string tests = Path.Combine(SharedData.RepositoryRoot, "tests"), own = $"{nameof(RandomCasesTests)}.cs";
        foreach (string file in Directory.EnumerateFiles(tests, "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains("TestKit", StringComparison.Ordinal)))
        {
            string text = File.ReadAllText(file);
            if (Path.GetFileName(file) == own) continue;
            foreach (string fresh in (string[])["new Random()", "Random.Shared", "iter:"])
                Assert.False(text.Contains(fresh, StringComparison.Ordinal), $"{Path.GetFileName(file)} has '{fresh}': draw cases by RandomCases.Hold.");
        }
    }
}
