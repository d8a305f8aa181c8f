using SecondShore.Host.Verbs;

namespace SecondShore.Host.Tests.Threats;

/// <summary>A setting that is misspelled must not grant more than was meant.</summary>
public class SettingsTests
{
    [Theory]
    [InlineData("--pairing", "Always")]
    [InlineData("--pairing", "yes")]
    [InlineData("--paring", "always")]
    [InlineData("--log", "jsn")]
    [InlineData("--lakes", "-1")]
    [InlineData("--lake-megabytes", "4GB")]
    [InlineData("--store-megabytes", "")]
    [InlineData("--pairing")]
    [InlineData("--pairing", "always", "--pairing", "by-address")]
    [InlineData("stray")]
    [InlineData("-pairing", "always")]
    [InlineData("/pairing", "always")]
    public async Task A_setting_that_is_not_understood_is_an_error_and_nothing_starts(params string[] args)
    {
        string folder = HostUnderTest.NewFolder();
        SettingsException refused = Assert.Throws<SettingsException>(() => HostApp.Build(["--data", folder, .. args]));
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        Assert.Equal(2, await HostVerbs.RunAsync(["serve", "--data", folder, .. args]));
        Assert.Equal(2, await HostVerbs.RunAsync(["pair", "--data", folder, .. args]));
        Assert.Empty(Directory.GetFileSystemEntries(folder));
        Directory.Delete(folder);
    }

    [Theory]
    [InlineData("--readonly")]
    [InlineData("--all", "--read-only")]
    [InlineData("--read-only")]
    [InlineData("--lake", "no lake")]
    [InlineData("--lake", "../../x")]
    [InlineData("--lake")]
    [InlineData("--lake=")]
    [InlineData("--lake", "not-there-0001")]
    public async Task A_code_is_made_only_for_what_is_understood_and_there(params string[] args)
    {
        string folder = HostUnderTest.NewFolder();
        Assert.NotEqual(0, await HostVerbs.RunAsync(["pair", "--data", folder, .. args]));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void A_variable_that_is_no_setting_is_an_error()
    {
        Dictionary<string, string?> known = HostOptions.Variables(new Dictionary<string, string> { ["SECONDSHORE_DATA"] = "x", ["SECONDSHORE_LAKE_MEGABYTES"] = "7", ["OTHER"] = "y", ["SECONDSHORE_KILLS"] = "3" });
        Assert.Equal([("data", "x"), ("lake-megabytes", "7")], known.Select(k => (k.Key.ToLowerInvariant(), k.Value!)).Order());
        SettingsException refused = Assert.Throws<SettingsException>(() => HostOptions.Variables(new Dictionary<string, string> { ["SECONDSHORE_PARING"] = "always" }));
        Assert.Contains("SECONDSHORE_PARING", refused.Message, StringComparison.Ordinal);
        Assert.Contains("--pairing", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_setting_of_the_page_is_known_and_the_other_way_round()
    {
        string page = File.ReadAllText(Path.Combine(TestKit.SharedData.RepositoryRoot, "docs", "how-to", "host.md"));
        foreach (string name in HostOptions.Names) Assert.Contains($"`--{name}", page, StringComparison.Ordinal);
    }
}
