namespace SecondShore.Host.Tests;

public class HostAppTests
{
    [Fact]
    public async Task It_is_well_and_every_answer_carries_the_strict_policy()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
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
    public async Task It_is_ready_when_its_store_answers()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        Assert.Equal("Healthy", await client.GetStringAsync("/health/ready"));
    }

    [Fact]
    public async Task The_doctor_says_what_is_wrong_in_words()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        StringWriter said = new();
        if (OperatingSystem.IsWindows()) return;
        File.SetUnixFileMode(host.Folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.OtherRead);
        HostSettings settings = Verbs.HostVerbs.Settings(["--data", host.Folder, "--certificate", "/none.pem"]);
        Assert.Equal(3, await Verbs.DoctorVerb.RunAsync(settings, said));
        Assert.Contains("a host is using it", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("The database is sound.", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("WRONG  Other accounts of this machine may look into", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("WRONG  The certificate /none.pem cannot be read", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void It_listens_to_this_machine_only_unless_told_otherwise() => Assert.StartsWith("http://127.0.0.1:", HostApp.DefaultAddress);
}
