using Microsoft.AspNetCore.Builder;

namespace SecondShore.Host.Tests;

public class HostAppTests
{
    [Fact]
    public async Task It_is_well_and_every_answer_carries_the_strict_policy()
    {
        await using WebApplication app = HostApp.Build(["--urls", "http://127.0.0.1:0"]);
        await app.StartAsync(TestContext.Current.CancellationToken);
        using HttpClient client = new() { BaseAddress = new Uri(app.Urls.First()) };
        using HttpResponseMessage health = await client.GetAsync("/health", TestContext.Current.CancellationToken);
        Assert.Equal("Healthy", await health.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        string policy = health.Headers.GetValues("Content-Security-Policy").Single();
        string scripts = policy.Split(';').Single(p => p.Trim().StartsWith("script-src", StringComparison.Ordinal));
        Assert.DoesNotContain("'unsafe-inline'", scripts);
        Assert.DoesNotContain("'unsafe-eval'", scripts);
        Assert.Contains("'wasm-unsafe-eval'", scripts);
        Assert.Equal("nosniff", health.Headers.GetValues("X-Content-Type-Options").Single());
    }

    [Fact]
    public void It_listens_to_this_machine_only_unless_told_otherwise() => Assert.StartsWith("http://127.0.0.1:", HostApp.DefaultAddress);
}
