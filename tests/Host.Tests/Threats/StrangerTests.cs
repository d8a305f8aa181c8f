using System.Net;
using System.Net.Http.Json;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Tests.Threats;

/// <summary>Who may do what. Each test is named in docs/security.md.</summary>
public class StrangerTests
{
    [Theory]
    [InlineData("GET", "/api/lakes")]
    [InlineData("PUT", "/api/lakes/ketterfold-0001")]
    [InlineData("GET", "/api/lakes/ketterfold-0001/records")]
    [InlineData("POST", "/api/lakes/ketterfold-0001/records")]
    [InlineData("GET", "/api/lakes/ketterfold-0001/trip")]
    [InlineData("POST", "/api/lakes/ketterfold-0001/trip")]
    [InlineData("POST", "/api/lakes/ketterfold-0001/weather")]
    [InlineData("GET", "/api/weather?latitude=1&longitude=1")]
    [InlineData("GET", "/api/devices")]
    [InlineData("GET", "/api/devices/audit")]
    public async Task Without_a_token_a_pairing_host_does_nothing(string method, string path)
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        foreach (string? token in (string?[])[null, "ss1_wrong", "ss1_" + new string('A', 43)])
        {
            using HttpClient stranger = host.Client(token);
            using HttpResponseMessage answer = await stranger.SendAsync(new HttpRequestMessage(new HttpMethod(method), path) { Content = method == "GET" ? null : JsonContent.Create(new { }) });
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            Assert.Contains("not paired", await HostUnderTest.ErrorAsync(answer), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task On_this_machine_alone_no_account_is_needed()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient local = host.Client();
        using HttpResponseMessage made = await HostUnderTest.AddLakeAsync(local, HostUnderTest.Lake);
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        using HttpResponseMessage pushed = await HostUnderTest.PushAsync(local, HostUnderTest.Lake, HostUnderTest.Note("a"));
        Assert.Equal(HttpStatusCode.OK, pushed.StatusCode);
        Assert.Equal([HostUnderTest.Note("a")], await HostUnderTest.PullAllAsync(local, HostUnderTest.Lake));
        HostStanding standing = (await local.GetFromJsonAsync("/api/host", RecordsJson.Default.HostStanding))!;
        Assert.True(standing is { Pairing: false, Known: true });
    }

    [Fact]
    public async Task A_guest_sees_its_own_lakes_and_no_other()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        using HttpClient owner = await host.OwnerAsync();
        (await HostUnderTest.AddLakeAsync(owner, HostUnderTest.Lake)).Dispose();
        (await HostUnderTest.AddLakeAsync(owner, "shared-lake")).Dispose();
        (await HostUnderTest.PushAsync(owner, HostUnderTest.Lake, HostUnderTest.Note("secret spot"))).Dispose();
        using HttpClient guest = await host.PairedAsync(new PairingGrant(false, "shared-lake", MayWrite: false));
        HostLake seen = Assert.Single((await guest.GetFromJsonAsync("/api/lakes", RecordsJson.Default.IReadOnlyListHostLake))!);
        Assert.Equal(("shared-lake", false), (seen.Id, seen.MayWrite));
        string sha = new('a', 64);
        foreach (string path in (string[])["records", "trip", $"files/{sha}", $"files/{sha}/status"])
            Assert.Equal(HttpStatusCode.NotFound, (await guest.GetAsync($"/api/lakes/{HostUnderTest.Lake}/{path}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await HostUnderTest.PushAsync(guest, HostUnderTest.Lake, HostUnderTest.Note("x"))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await HostUnderTest.PushAsync(guest, "shared-lake", HostUnderTest.Note("x"))).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await guest.GetAsync("/api/lakes/shared-lake/records")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await guest.GetAsync("/api/devices")).StatusCode);
        using HttpClient maker = await host.PairedAsync(new PairingGrant(false, null, true));
        string own = await HostUnderTest.OwnLakeAsync(maker, "lake-of-guest");
        Assert.Equal(own, await HostUnderTest.OwnLakeAsync(maker, "lake-of-guest"));
        Assert.Equal(HttpStatusCode.OK, (await HostUnderTest.PushAsync(maker, own, HostUnderTest.Note("x"))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await maker.GetAsync($"/api/lakes/{HostUnderTest.Lake}/records")).StatusCode);
    }

    [Fact]
    public async Task A_revoked_token_is_refused_at_once_and_the_audit_tells_of_it()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        using HttpClient owner = await host.OwnerAsync();
        using HttpClient lost = await host.PairedAsync(new PairingGrant(false, null, true));
        string device = (await host.Devices.AllAsync(default)).Single(d => d.Owner == 0).Id;
        Assert.Equal(HttpStatusCode.OK, (await lost.GetAsync("/api/lakes")).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await owner.DeleteAsync($"/api/devices/{device}")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await lost.GetAsync("/api/lakes")).StatusCode);
        IReadOnlyList<AuditRow> audit = await host.Devices.AuditLogAsync(10, default);
        Assert.Equal(["revoked", "paired", "paired"], audit.Select(a => a.Action));
        Assert.Equal("127.0.0.1", audit[1].Remote);
    }

    [Fact]
    public async Task A_code_pairs_one_device_once()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        string code = await host.Devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        using HttpClient stranger = host.Client();
        Assert.Equal(HttpStatusCode.OK, (await PairAsync(stranger, code.ToLowerInvariant().Replace('-', ' '))).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await PairAsync(stranger, code)).StatusCode);
    }

    [Fact]
    public async Task A_code_is_void_after_five_wrong_tries()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--proxy", "127.0.0.1");
        string code = await host.Devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        // From as many addresses, so that no wait stands in the way; the first letters name the code.
        for (int i = 0; i < 5; i++)
            Assert.Equal(HttpStatusCode.Forbidden, (await PairAsync(From(host, $"203.0.113.{i}"), code[..5] + $"AAAA-AAA{i + 2}")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await PairAsync(From(host, "203.0.113.99"), code)).StatusCode);
        Assert.Empty(await host.Devices.AllAsync(default));
    }

    [Fact]
    public async Task A_strangers_wrong_codes_void_nobody_elses_code_and_do_not_flood_the_list()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--proxy", "127.0.0.1", "--pairings-per-minute", "1000");
        string code = await host.Devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        HttpClient stranger = From(host, "203.0.113.9");
        List<HttpStatusCode> answers = [];
        string other = code[0] == 'Z' ? "YYYY" : "ZZZZ";
        for (int i = 0; i < 40; i++) answers.Add((await PairAsync(stranger, $"{other}-AAAA-AA{i:00}")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, answers[0]);
        Assert.Equal(HttpStatusCode.TooManyRequests, answers[^1]);
        Assert.InRange((await host.Devices.AuditLogAsync(100, default)).Count, 1, 6);
        Assert.Equal(HttpStatusCode.OK, (await PairAsync(From(host, "203.0.113.10"), code)).StatusCode);
    }

    [Fact]
    public async Task An_address_may_try_to_pair_a_few_times_a_minute()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        using HttpClient stranger = host.Client();
        HttpStatusCode last = HttpStatusCode.OK;
        // Right ones, for which there is no wait.
        for (int i = 0; i < 6; i++) last = (await PairAsync(stranger, await host.Devices.NewCodeAsync(new PairingGrant(false, null, true), default))).StatusCode;
        Assert.Equal(HttpStatusCode.TooManyRequests, last);
    }

    [Fact]
    public async Task Neither_codes_nor_tokens_are_in_the_database()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        string open = await host.Devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        string code = await host.Devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        (string Device, string Token) paired = (await host.Devices.PairAsync(code, "phone", "", default))!.Value;
        Assert.NotNull(await host.Devices.FindAsync(paired.Token, default));
        string everything = string.Concat(Directory.GetFiles(host.Folder, "second-shore.db*").Select(f => System.Text.Encoding.Latin1.GetString(ReadShared(f))));
        Assert.Contains(paired.Device, everything, StringComparison.Ordinal);
        foreach (string secret in (string[])[paired.Token, paired.Token[4..], open, open.Replace("-", ""), code.Replace("-", "")])
            Assert.DoesNotContain(secret, everything, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Neither_tokens_nor_codes_nor_bodies_are_logged()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always", "--Logging:LogLevel:Default=Trace", "--Logging:LogLevel:SecondShore=Trace");
        string code = await host.Devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        using HttpClient stranger = host.Client();
        using HttpResponseMessage answer = await PairAsync(stranger, code);
        string token = (await answer.Content.ReadFromJsonAsync(RecordsJson.Default.PairAnswer))!.Token;
        using HttpClient device = host.Client(token);
        (await HostUnderTest.AddLakeAsync(device, HostUnderTest.Lake)).Dispose();
        (await HostUnderTest.PushAsync(device, HostUnderTest.Lake, HostUnderTest.Note("the secret spot"))).Dispose();
        (await device.GetAsync($"/api/lakes/{HostUnderTest.Lake}/records?epoch=secret-query")).Dispose();
        string log = string.Join('\n', host.Log);
        Assert.Contains("/api/lakes/{lake}/records", log, StringComparison.Ordinal);
        foreach (string secret in (string[])[token, code, code.Replace("-", ""), "secret spot", "secret-query"]) Assert.DoesNotContain(secret, log, StringComparison.Ordinal);
    }

    private static HttpClient From(HostUnderTest host, string address)
    {
        HttpClient client = host.Client();
        client.DefaultRequestHeaders.Add("X-Forwarded-For", address);
        return client;
    }

    private static Task<HttpResponseMessage> PairAsync(HttpClient client, string code) =>
        client.PostAsJsonAsync("/api/pair", new PairRequest(code, "phone"), RecordsJson.Default.PairRequest);

    private static byte[] ReadShared(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
