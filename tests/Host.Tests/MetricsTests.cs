using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace SecondShore.Host.Tests;

/// <summary>What the host counts reaches the collector that it is told of, and carries nothing of what was written.</summary>
public class MetricsTests
{
    [Fact]
    public async Task The_named_collector_is_told_what_was_kept_and_nothing_of_what_it_says()
    {
        using Collector collector = new();
        await using (HostUnderTest host = await HostUnderTest.StartAsync("--OTEL_EXPORTER_OTLP_ENDPOINT", collector.Address, "--OTEL_EXPORTER_OTLP_PROTOCOL", "http/protobuf"))
        {
            using HttpClient client = host.Client();
            (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
            (await HostUnderTest.PushAsync(client, HostUnderTest.Lake, HostUnderTest.Note("the secret spot"))).Dispose();
            Assert.Single(await HostUnderTest.PullAllAsync(client, HostUnderTest.Lake));
        }

        // The host told the rest when it ended.
        string told = string.Concat(collector.Bodies);
        foreach (string metric in (string[])["secondshore.records.added", "secondshore.records.pulled", "http.server.request.duration", "second-shore-host"])
            Assert.Contains(metric, told, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", told, StringComparison.Ordinal);
        Assert.DoesNotContain(HostUnderTest.Lake, string.Concat(collector.Metrics), StringComparison.Ordinal);
    }

    /// <summary>Takes whatever is sent to it.</summary>
    private sealed class Collector : IDisposable
    {
        private readonly HttpListener _listener = new();
        private readonly Task _taking;
        private readonly ConcurrentQueue<(string Path, string Body)> _told = new();

        public Collector()
        {
            using TcpListener free = new(IPAddress.Loopback, 0);
            free.Start();
            Address = $"http://127.0.0.1:{((IPEndPoint)free.LocalEndpoint).Port}";
            free.Stop();
            _listener.Prefixes.Add(Address + "/");
            _listener.Start();
            _taking = Task.Run(TakeAsync);
        }

        public string Address { get; }

        public IEnumerable<string> Bodies => _told.Select(t => t.Body);

        public IEnumerable<string> Metrics => _told.Where(t => t.Path.EndsWith("metrics", StringComparison.Ordinal)).Select(t => t.Body);

        public void Dispose()
        {
            _listener.Close();
            _taking.Wait(TimeSpan.FromSeconds(5));
        }

        private async Task TakeAsync()
        {
            try
            {
                while (true)
                {
                    HttpListenerContext context = await _listener.GetContextAsync();
                    using MemoryStream body = new();
                    await context.Request.InputStream.CopyToAsync(body);
                    _told.Enqueue((context.Request.Url!.AbsolutePath, Encoding.Latin1.GetString(body.ToArray())));
                    context.Response.Close();
                }
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                // The test is over.
            }
        }
    }
}
