using SecondShore.TestKit;

namespace SecondShore.App.Tests;

public class TypedTimeTests
{
    [Fact]
    public void A_time_that_is_typed_comes_with_its_seconds_and_is_read_so()
    {
        string folder = Path.Combine(SharedData.RepositoryRoot, "src", "App");
        string[] fields = [.. Directory.EnumerateFiles(folder, "*.razor", SearchOption.AllDirectories).SelectMany(File.ReadLines).Where(l => l.Contains("type=\"datetime-local\"", StringComparison.Ordinal))];
        // One part for every form.
        Assert.Single(fields);
        Assert.All(fields, f => Assert.Contains("@bind:format=\"yyyy-MM-ddTHH:mm:ss\"", f, StringComparison.Ordinal));
    }
}
