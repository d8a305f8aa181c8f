using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

/// <summary>Waits of the browser tests that can fail.</summary>
public partial class BrowserWaitTests
{
    [Fact]
    public void No_wait_takes_a_promise_for_a_yes()
    {
        string[] files = [.. new[] { "tests/Browser.Tests", "bench" }.SelectMany(folder => Directory.GetFiles(Path.Combine(SharedData.RepositoryRoot, folder), "*.cs", SearchOption.AllDirectories))];
        int waits = files.Sum(file => Wait().Count(File.ReadAllText(file)));
        Assert.True(waits > 20, $"Only {waits} waits were found: does this test still look in the right place?");
        Assert.Empty(files.SelectMany(file => Wait().Matches(File.ReadAllText(file)).Where(w => Promise().IsMatch(w.Value)).Select(w => $"{Path.GetFileName(file)}: {w.Value}")));
    }

    [GeneratedRegex(@"WaitForFunctionAsync\((?s:.*?)\);")]
    private static partial Regex Wait();

    [GeneratedRegex(@"\basync\b|\.then\(")]
    private static partial Regex Promise();
}
