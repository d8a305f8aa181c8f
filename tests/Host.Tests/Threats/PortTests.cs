using System.Net;
using System.Net.Sockets;
using System.Text;
using SecondShore.Host.Security;

namespace SecondShore.Host.Tests.Threats;

/// <summary>Reaching the port.</summary>
public class PortTests
{
    [Fact]
    public async Task Reaching_the_port_is_not_enough_without_the_secret_of_the_printed_address()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        // As a web server's default proxy passes on a caller from anywhere: no mark, the host's own name.
        using HttpClient stranger = host.Stranger();
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync("/api/lakes")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await HostUnderTest.AddLakeAsync(stranger, HostUnderTest.Lake)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await stranger.GetAsync("/api/open?key=guessed")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await stranger.GetAsync("/api/open")).StatusCode);

        string key = await File.ReadAllTextAsync(Path.Combine(host.Folder, "host.key"), TestContext.Current.CancellationToken);
        using HttpResponseMessage opened = await stranger.GetAsync($"/api/open?key={key}");
        Assert.Equal((HttpStatusCode.Redirect, "/"), (opened.StatusCode, opened.Headers.Location?.OriginalString));
        string cookie = Assert.Single(opened.Headers.GetValues("Set-Cookie"));
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        using HttpRequestMessage ask = new(HttpMethod.Get, "/api/lakes");
        ask.Headers.Add("Cookie", cookie.Split(';')[0]);
        Assert.Equal(HttpStatusCode.OK, (await stranger.SendAsync(ask)).StatusCode);
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(host.Folder, "host.key")));
    }

    [Fact]
    public async Task The_secret_is_of_one_start_and_gone_with_it()
    {
        string folder = HostUnderTest.NewFolder(), first;
        await using (HostUnderTest host = await HostUnderTest.StartInAsync(folder, ownFolder: false)) first = await File.ReadAllTextAsync(Path.Combine(folder, "host.key"), TestContext.Current.CancellationToken);
        Assert.False(File.Exists(Path.Combine(folder, "host.key")));
        await using (HostUnderTest again = await HostUnderTest.StartInAsync(folder, ownFolder: true))
        {
            using HttpClient late = again.Client(first);
            Assert.Equal(HttpStatusCode.Unauthorized, (await late.GetAsync("/api/lakes")).StatusCode);
        }
    }

    [Fact]
    public async Task Idle_connections_of_one_address_leave_room_for_others()
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("A second address of this machine is at hand on Linux only.");
        await using HostUnderTest host = await HostUnderTest.StartAsync("--connections-per-address", "20");
        List<TcpClient> idle = [];
        int closed = 0;
        for (int i = 0; i < 60; i++)
        {
            TcpClient tcp = new();
            idle.Add(tcp);
            try
            {
                await tcp.ConnectAsync(host.Address.Host, host.Address.Port, TestContext.Current.CancellationToken);
            }
            catch (SocketException)
            {
                // Ended before it was through.
            }
        }

        foreach (TcpClient tcp in idle)
        {
            // The server ends what is too much; the others wait for headers.
            if (!tcp.Connected || tcp.Client.Poll(TimeSpan.FromMilliseconds(200), SelectMode.SelectRead)) closed++;
        }

        Assert.InRange(closed, 40, 60);
        // Another address of this machine.
        using TcpClient other = new(new IPEndPoint(IPAddress.Parse("127.0.0.2"), 0));
        await other.ConnectAsync(host.Address.Host, host.Address.Port, TestContext.Current.CancellationToken);
        await other.GetStream().WriteAsync(Encoding.ASCII.GetBytes($"GET /health HTTP/1.1\r\nHost: {host.Address.Authority}\r\nConnection: close\r\n\r\n"), TestContext.Current.CancellationToken);
        using StreamReader answer = new(other.GetStream());
        Assert.StartsWith("HTTP/1.1 200", await answer.ReadLineAsync(TestContext.Current.CancellationToken));
        idle.ForEach(t => t.Dispose());
    }

    [Theory]
    [InlineData("2001:db8:1:2:3::4", "2001:db8:1:2::/64")]
    [InlineData("2001:db8:1:2:ffff::1", "2001:db8:1:2::/64")]
    [InlineData("::ffff:192.0.2.7", "192.0.2.7")]
    [InlineData("192.0.2.7", "192.0.2.7")]
    public void Addresses_of_one_line_are_counted_as_one(string address, string key) => Assert.Equal(key, CallerAddress.KeyOf(IPAddress.Parse(address)));

    [Theory]
    [InlineData("files/0000000000000000000000000000000000000000000000000000000000000000?size=10&from=-1", "PUT", 400)]
    [InlineData("files/0000000000000000000000000000000000000000000000000000000000000000?size=10&from=11", "PUT", 400)]
    [InlineData("files/0000000000000000000000000000000000000000000000000000000000000000?size=-1", "PUT", 413)]
    [InlineData("files/0000000000000000000000000000000000000000000000000000000000000000?size=99999999999999999", "PUT", 413)]
    [InlineData("files/0000000000000000000000000000000000000000000000000000000000000000?size=many", "PUT", 400)]
    [InlineData("files/0000000000000000000000000000000000000000000000000000000000000000?from=-1", "GET", 400)]
    [InlineData("records?after=many", "GET", 400)]
    [InlineData("records?limit=99999999999999999999", "GET", 400)]
    [InlineData("weather?years=x", "POST", 400)]
    public async Task Numbers_that_are_none_are_refused_in_a_sentence(string path, string method, int status)
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        using HttpResponseMessage answer = await client.SendAsync(new HttpRequestMessage(new HttpMethod(method), $"/api/lakes/{HostUnderTest.Lake}/{path}") { Content = method == "PUT" ? new ByteArrayContent(new byte[4]) : null });
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        string why = await HostUnderTest.ErrorAsync(answer);
        Assert.EndsWith(".", why, StringComparison.Ordinal);
        Assert.DoesNotContain("Failed to bind", why, StringComparison.Ordinal);
    }
}
