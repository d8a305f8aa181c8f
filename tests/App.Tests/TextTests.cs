using System.Text.RegularExpressions;
using SecondShore.App.Words;
using SecondShore.TestKit;

namespace SecondShore.App.Tests;

public partial class TextTests
{
    public static TheoryData<string> OtherLanguages => [.. TextBook.Languages.Where(l => l != "en")];

    [Theory]
    [MemberData(nameof(OtherLanguages))]
    public void Every_language_has_every_sentence_with_the_same_blanks(string language)
    {
        TextBook english = TextBook.For("en"), other = TextBook.For(language);
        Assert.Equal(english.Keys.Order(StringComparer.Ordinal), other.Keys.Order(StringComparer.Ordinal));
        foreach (string key in english.Keys)
            Assert.Equal(Blank().Matches(english[key]).Select(m => m.Value).Distinct().Order(), Blank().Matches(other[key]).Select(m => m.Value).Distinct().Order());
    }

    [Fact]
    public void Every_key_used_by_the_pages_has_a_sentence()
    {
        HashSet<string> keys = [.. TextBook.For("en").Keys];
        foreach (string file in Directory.EnumerateFiles(Path.Combine(SharedData.RepositoryRoot, "src", "App"), "*.*", SearchOption.AllDirectories)
            .Where(f => (f.EndsWith(".razor", StringComparison.Ordinal) || f.EndsWith(".cs", StringComparison.Ordinal)) && !f.Contains("node_modules", StringComparison.Ordinal)))
        {
            foreach (Match use in Use().Matches(File.ReadAllText(file)))
                Assert.True(keys.Contains(use.Groups[1].Value), $"{Path.GetFileName(file)} uses the text '{use.Groups[1].Value}', which en.json lacks.");
        }
    }

    [Fact]
    public void An_unknown_language_reads_english() => Assert.Equal(TextBook.For("en")["place.lake"], TextBook.For("xx-YY")["place.lake"]);

    [GeneratedRegex(@"\{\d\}")]
    private static partial Regex Blank();

    [GeneratedRegex(@"\b[Ww](?:ords)?\[""([a-z][a-z.]*[a-z])""[\],]")]
    private static partial Regex Use();
}
