using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

/// <summary>A formula says where it comes from by a key such as <c>Horn1981</c>; docs/science/references.md says what that is.</summary>
public partial class SourceKeyTests
{
    private static readonly string References = Path.Combine(SharedData.RepositoryRoot, "docs", "science", "references.md");

    private static readonly string[] Known = [.. Entry().Matches(File.ReadAllText(References)).Select(m => m.Groups[1].Value)];

    [Fact]
    public void Every_source_named_in_code_or_on_a_page_stands_in_the_references()
    {
        string[] missing = [.. Texts().SelectMany(t => Key().Matches(t.Text).Select(m => m.Value).Except(Known).Select(k => $"{t.File}: {k}"))];
        Assert.True(missing.Length == 0, "docs/science/references.md lacks:\n" + string.Join("\n", missing));
    }

    [Fact]
    public void Every_reference_is_named_somewhere()
    {
        HashSet<string> named = [.. Texts().SelectMany(t => Key().Matches(t.Text).Select(m => m.Value))];
        Assert.Empty(Known.Except(named));
    }

    [Fact]
    public void No_source_is_a_paragraph_of_a_document_that_is_not_here()
    {
        string[] letters = [.. Texts().SelectMany(t => Paragraph().Matches(t.Text).Select(m => $"{t.File}: {m.Value}"))];
        Assert.True(letters.Length == 0, "Name the author and the year instead of:\n" + string.Join("\n", letters));
    }

    [Fact]
    public void References_are_in_alphabetical_order_and_once_each()
    {
        Assert.Equal(Known.Distinct().OrderBy(k => k, StringComparer.OrdinalIgnoreCase), Known);
    }

    private static IEnumerable<(string File, string Text)> Texts() =>
        new[] { "src", "docs", "bench", "tests" }
            .SelectMany(f => Directory.EnumerateFiles(Path.Combine(SharedData.RepositoryRoot, f), "*", SearchOption.AllDirectories))
            .Where(f => Path.GetExtension(f) is ".cs" or ".md" && f != References
                && !f.Contains("node_modules", StringComparison.Ordinal)
                && !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(f => (Path.GetRelativePath(SharedData.RepositoryRoot, f), File.ReadAllText(f)));

    [GeneratedRegex(@"^- `(\w+)` ", RegexOptions.Multiline)]
    private static partial Regex Entry();

    // WMO2008 and the like: only an agency's capitals may stand right before the year.
    [GeneratedRegex(@"\b(?:[A-Z][A-Za-z]*[a-z]|WMO)(?:18|19|20)\d\d\b")]
    private static partial Regex Key();

    [GeneratedRegex(@"\b[A-L]\.\d{1,2}\b")]
    private static partial Regex Paragraph();
}
