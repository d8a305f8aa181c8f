using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Host.Tests;

/// <summary>The threat table and the tests cannot drift apart.</summary>
public partial class SecurityPageTests
{
    [Fact]
    public void Every_threat_names_a_test_that_is_there()
    {
        string page = File.ReadAllText(Path.Combine(SharedData.RepositoryRoot, "docs", "security.md"));
        string threats = page[page.IndexOf("\n## Threats", StringComparison.Ordinal)..page.IndexOf("\n## Not guarded against", StringComparison.Ordinal)];
        string[] rows = [.. threats.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal))];
        string[] named = [.. rows.Skip(1).Where(r => !r.StartsWith("| ---", StringComparison.Ordinal)).Select(r => r.Trim('|').Split('|')[^1].Trim())];
        HashSet<string> tests = [.. new[] { "Host.Tests", "Store.Tests", "Formats.Tests", "Records.Tests", "Open.Tests", "App.Tests" }
            .SelectMany(f => Directory.GetFiles(Path.Combine(SharedData.RepositoryRoot, "tests", f), "*.cs", SearchOption.AllDirectories))
            .SelectMany(f => TestMethod().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))];
        Assert.True(named.Length >= 50, $"{named.Length} threats");
        Assert.DoesNotContain(named, n => !tests.Contains(n));
    }

    [GeneratedRegex(@"\[(?:Fact|InlineData\(.*\)|MemberData\(.*\))\]\s+public (?:async )?(?:Task|void) (\w+)\(")]
    private static partial Regex TestMethod();
}
