using System.Net;
using System.Net.Http.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using SecondShore.Host.Api;
using SecondShore.Host.Watch;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Tests.Threats;

/// <summary>Ways in that are not the front door.</summary>
public class WayInTests
{
    [Theory]
    [InlineData("Origin", "http://evil.example")]
    [InlineData("Origin", "null")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task A_page_of_another_site_may_not_call_the_interface(string header, string value)
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient page = host.Client();
        page.DefaultRequestHeaders.Add(header, value);
        using HttpResponseMessage made = await HostUnderTest.AddLakeAsync(page, HostUnderTest.Lake);
        Assert.Equal(HttpStatusCode.Forbidden, made.StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await page.GetAsync("/api/lakes")).StatusCode);
        using HttpClient own = host.Client();
        own.DefaultRequestHeaders.Add("Origin", host.Address.GetLeftPart(UriPartial.Authority));
        own.DefaultRequestHeaders.Add("Sec-Fetch-Site", "same-origin");
        Assert.Equal(HttpStatusCode.Created, (await HostUnderTest.AddLakeAsync(own, HostUnderTest.Lake)).StatusCode);
    }

    [Fact]
    public async Task A_name_of_another_site_that_leads_here_is_not_local()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        client.DefaultRequestHeaders.Host = "evil.example";
        using HttpResponseMessage answer = await client.GetAsync("/api/lakes");
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Theory]
    [InlineData("X-Forwarded-For", "203.0.113.9")]
    [InlineData("Forwarded", "for=203.0.113.9")]
    [InlineData("Via", "1.1 somewhere")]
    public async Task What_a_proxy_passed_on_is_not_local(string header, string value)
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        client.DefaultRequestHeaders.TryAddWithoutValidation(header, value);
        Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("/api/lakes")).StatusCode);
    }

    [Fact]
    public async Task A_forwarded_address_is_taken_from_a_named_proxy_only()
    {
        foreach ((string proxy, string seen) in ((string, string)[])[("127.0.0.1", "203.0.113.9"), ("192.0.2.1", "127.0.0.1")])
        {
            await using HostUnderTest host = await HostUnderTest.StartAsync("--proxy", proxy);
            using HttpClient client = host.Client();
            client.DefaultRequestHeaders.Add("X-Forwarded-For", "198.51.100.1, 203.0.113.9");
            (await client.PostAsJsonAsync("/api/pair", new PairRequest("WRONG", "x"), RecordsJson.Default.PairRequest)).Dispose();
            Assert.Equal(seen, (await host.Devices.AuditLogAsync(1, default)).Single().Remote);
            Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("/api/lakes")).StatusCode);
        }
    }

    [Theory]
    [InlineData("http://0.0.0.0:5081")]
    [InlineData("http://*:5081")]
    [InlineData("http://192.0.2.7:5081")]
    public void The_host_does_not_carry_tokens_in_the_clear(string address)
    {
        string folder = HostUnderTest.NewFolder();
        SettingsException refused = Assert.Throws<SettingsException>(() => HostApp.Build(["--urls", address, "--data", folder]));
        Assert.Contains("in the clear", refused.Message, StringComparison.Ordinal);
        Directory.Delete(folder);
    }

    [Fact]
    public void Beyond_this_machine_devices_must_pair()
    {
        Assert.True(Verbs.HostVerbs.Settings(["--urls", "https://0.0.0.0:5443", "--certificate", "c.pem"]).Pairing);
        Assert.True(Verbs.HostVerbs.Settings(["--urls", "http://127.0.0.1:5080", "--proxy", "127.0.0.1"]).Pairing);
        Assert.False(Verbs.HostVerbs.Settings(["--urls", "http://127.0.0.1:5080;http://[::1]:5080"]).Pairing);
        Assert.False(Verbs.HostVerbs.Settings([]).Pairing);
    }

    [Theory]
    [InlineData("/..%2f..%2fetc/passwd")]
    [InlineData("/api/lakes/..%2f..%2fsecond-shore.db/records")]
    [InlineData("/api/lakes/%2e%2e/records")]
    [InlineData("/api/lakes/ketterfold-0001/files/..%2f..%2fhost.lock")]
    [InlineData("/second-shore.db")]
    [InlineData("/host.lock")]
    public async Task No_address_leads_to_a_file_outside(string path)
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        using HttpResponseMessage answer = await client.GetAsync(path);
        string text = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("root:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("SQLite format", text, StringComparison.Ordinal);
        Assert.True(answer.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.BadRequest || text.Contains("<html", StringComparison.Ordinal), $"{path}: {answer.StatusCode}");
    }

    [Theory]
    [InlineData("..%2f..%2foutside")]
    [InlineData("%2e%2e%5c%2e%2e%5coutside")]
    [InlineData("outside.json")]
    [InlineData("OUTSIDE-0001")]
    public async Task No_name_that_could_be_a_path_is_taken(string name)
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        using HttpResponseMessage lake = await HostUnderTest.AddLakeAsync(client, name);
        Assert.Equal(HttpStatusCode.BadRequest, lake.StatusCode);
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        using HttpResponseMessage file = await client.PutAsync($"/api/lakes/{HostUnderTest.Lake}/files/{name}?size=1", new ByteArrayContent([1]));
        Assert.Equal(HttpStatusCode.BadRequest, file.StatusCode);
        Assert.Equal(HostUnderTest.Lake, Assert.Single((await client.GetFromJsonAsync("/api/lakes", RecordsJson.Default.IReadOnlyListHostLake))!).Id);
    }

    [Fact]
    public async Task A_name_is_never_a_statement()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        string name = "x'); drop table records; --";
        using HttpResponseMessage made = await client.PutAsJsonAsync("/api/lakes/lake-with-name", new NewHostLake(name), RecordsJson.Default.NewHostLake);
        (await HostUnderTest.PushAsync(client, "lake-with-name", HostUnderTest.Note(name))).Dispose();
        Assert.Equal(name, Assert.Single((await client.GetFromJsonAsync("/api/lakes", RecordsJson.Default.IReadOnlyListHostLake))!).Name);
        Assert.Equal([HostUnderTest.Note(name)], await HostUnderTest.PullAllAsync(client, "lake-with-name"));
    }

    [Fact]
    public async Task A_fault_tells_a_stranger_nothing_of_the_inside()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        foreach (string body in (string[])["", "{", "[]", "{\"records\":null}", "{\"records\":[null]}", "{\"records\":[{\"id\":5}]}", new string('[', 5000)])
        {
            using HttpResponseMessage answer = await client.PostAsync($"/api/lakes/{HostUnderTest.Lake}/records", new StringContent(body, System.Text.Encoding.UTF8, "application/json"));
            string text = await answer.Content.ReadAsStringAsync();
            Assert.True((int)answer.StatusCode is 200 or 400 or 413, $"{body[..Math.Min(20, body.Length)]}: {answer.StatusCode} {text}");
            Assert.DoesNotContain(" at SecondShore.", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        }

        // The store itself is broken: what it says of files and tables is for the host's log.
        await host.Services.GetRequiredService<IDatabase>().WriteAsync(work => work.DoAsync("alter table lakes rename to gone"), default);
        using HttpResponseMessage broken = await client.GetAsync("/api/lakes");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, broken.StatusCode);
        string told = await HostUnderTest.ErrorAsync(broken);
        foreach (string inside in (string[])[host.Folder, "no such table", "SQLite"]) Assert.DoesNotContain(inside, told, StringComparison.Ordinal);
        Assert.Contains(host.Log, line => line.Contains("no such table", StringComparison.Ordinal));

        // A fault that nobody foresaw.
        DefaultHttpContext context = new() { Response = { Body = new MemoryStream() } };
        await new Faults(_ => throw new InvalidOperationException("the inside"), host.Services.GetRequiredService<Meters>(), host.Services.GetRequiredService<StoreWatch>(),
            new Quiet(TimeProvider.System), NullLogger<Faults>.Instance).InvokeAsync(context);
        context.Response.Body.Position = 0;
        string said = await new StreamReader(context.Response.Body).ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.Equal(StatusCodes.Status500InternalServerError, context.Response.StatusCode);
        Assert.Contains("Something went wrong at the host", said, StringComparison.Ordinal);
        Assert.DoesNotContain("inside", said, StringComparison.Ordinal);
    }
}
