using System.Net;

namespace SecondShore.Host.Tests.Threats;

/// <summary>An app served from elsewhere, as a browser lets it call the host.</summary>
public class NamedAppTests
{
    private static readonly string App = "https://app.example";

    [Fact]
    public async Task An_app_from_elsewhere_calls_only_where_it_is_named_and_only_with_a_token()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--app", App);
        using HttpClient owner = await host.OwnerAsync(), stranger = host.Client();
        Assert.Equal((HttpStatusCode.OK, App), await AskAsync(owner, App));
        Assert.Equal((HttpStatusCode.Unauthorized, App), await AskAsync(stranger, App));
        Assert.Equal((HttpStatusCode.Forbidden, null), await AskAsync(owner, "https://app.example.other.example"));
        Assert.Equal((HttpStatusCode.Forbidden, null), await AskAsync(owner, "null"));

        await using HostUnderTest closed = await HostUnderTest.StartAsync("--pairing", "always");
        using HttpClient paired = await closed.OwnerAsync();
        Assert.Equal((HttpStatusCode.Forbidden, null), await AskAsync(paired, App));
    }

    [Fact]
    public async Task A_browser_is_told_beforehand_what_a_named_app_may_send()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--app", App);
        using HttpClient browser = host.Client();
        using HttpRequestMessage ask = new(HttpMethod.Options, "/api/lakes/some-lake-1/files/" + new string('0', 64));
        ask.Headers.Add("Origin", App);
        ask.Headers.Add("Access-Control-Request-Method", "PUT");
        ask.Headers.Add("Access-Control-Request-Headers", "authorization,content-type");
        using HttpResponseMessage answer = await browser.SendAsync(ask);
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
        Assert.Equal(App, Header(answer, "Access-Control-Allow-Origin"));
        Assert.Contains("PUT", Header(answer, "Access-Control-Allow-Methods"), StringComparison.Ordinal);
        Assert.Contains("authorization", Header(answer, "Access-Control-Allow-Headers"), StringComparison.Ordinal);
        Assert.Null(Header(answer, "Access-Control-Allow-Credentials"));
    }

    [Fact]
    public async Task An_app_that_is_no_origin_is_refused_at_the_start()
    {
        foreach (string odd in (string[])["https://app.example/path", "http://app.example", "*", "app.example"])
        {
            SettingsException refused = await Assert.ThrowsAsync<SettingsException>(() => HostUnderTest.StartAsync("--app", odd));
            Assert.Contains("--app", refused.Message, StringComparison.Ordinal);
        }
    }

    private static async Task<(HttpStatusCode Status, string? Allowed)> AskAsync(HttpClient client, string origin)
    {
        using HttpRequestMessage ask = new(HttpMethod.Get, "/api/lakes");
        ask.Headers.Add("Origin", origin);
        ask.Headers.Add("Sec-Fetch-Site", "cross-site");
        using HttpResponseMessage answer = await client.SendAsync(ask);
        return (answer.StatusCode, Header(answer, "Access-Control-Allow-Origin"));
    }

    private static string? Header(HttpResponseMessage answer, string name) => answer.Headers.TryGetValues(name, out IEnumerable<string>? values) ? string.Join(',', values) : null;
}
