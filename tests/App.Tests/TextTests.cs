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

    // Anglers say du to each other; a formal line among them reads like another author's. A sentence may open with a plain "Sie" (they).
    [Fact]
    public void German_says_du_to_its_reader_everywhere()
    {
        string words = Path.Combine(SharedData.RepositoryRoot, "src", "Words", "Text");
        string[] said = [.. TextBook.For("de").Keys.Select(k => TextBook.For("de")[k]), .. Directory.EnumerateFiles(words, "*.de.json").SelectMany(File.ReadLines)];
        Assert.Contains(said, line => line.Contains(" du ", StringComparison.Ordinal));
        Assert.DoesNotContain(said, line => Formal().IsMatch(line));
        Assert.Matches(Formal(), "Bitte prüfen Sie die Einheit.");
        Assert.Matches(Formal(), "Der See mit Ihren Messungen.");
        Assert.DoesNotMatch(Formal(), "Messungen bleiben hier. Sie gehen, wenn der Empfang zurück ist: Ihre Daten stimmen.");
    }

    [GeneratedRegex(@"\w+en Sie\b|(?<![.:!?»""“]) (?:Sie|Ihr(?:e|en|em|er|es)?|Ihnen)\b")]
    private static partial Regex Formal();

    [GeneratedRegex(@"\{\d\}")]
    private static partial Regex Blank();

    [GeneratedRegex(@"\b[Ww](?:ords)?\[""([a-z][a-z.]*[a-z])""[\],]")]
    private static partial Regex Use();
}
