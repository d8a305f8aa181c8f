using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Host.Tests;

/// <summary>The threat table and the tests cannot drift apart.</summary>
public partial class SecurityPageTests
{
    [Fact]
    public void Every_threat_names_a_test_that_is_there()
    {
        string[] rows = [.. File.ReadAllLines(Path.Combine(SharedData.RepositoryRoot, "docs", "security.md")).Where(l => l.StartsWith("| ", StringComparison.Ordinal))];
        string[] named = [.. rows.Skip(1).Where(r => !r.StartsWith("| ---", StringComparison.Ordinal)).Select(r => r.Trim('|').Split('|')[^1].Trim())];
        HashSet<string> tests = [.. new[] { "Host.Tests", "Store.Tests", "Formats.Tests" }
            .SelectMany(f => Directory.GetFiles(Path.Combine(SharedData.RepositoryRoot, "tests", f), "*.cs", SearchOption.AllDirectories))
            .SelectMany(f => TestMethod().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))];
        Assert.True(named.Length >= 25, $"{named.Length} threats");
        Assert.DoesNotContain(named, n => !tests.Contains(n));
    }

    [GeneratedRegex(@"\[(?:Fact|InlineData\(.*\)|MemberData\(.*\))\]\s+public (?:async )?(?:Task|void) (\w+)\(")]
    private static partial Regex TestMethod();
}
