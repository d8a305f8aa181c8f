using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using SecondShore.Host.Watch;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Tests.Threats;

/// <summary>What counts the process's own memory and files runs when nothing else does.</summary>
[CollectionDefinition("alone", DisableParallelization = true)]
public class Alone;

/// <summary>Calls that hold memory or the disk for long.</summary>
[Collection("alone")]
public class HeavyCallTests
{
    [Fact]
    public async Task A_trip_of_a_lake_full_of_notes_reads_none_of_them()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        await FillAsync(client, 1 << 10);
        // 60 MB of notes beside one small file.
        for (int i = 0; i < 20; i++)
            await host.Services.GetRequiredService<RecordStore>().PushAsync(HostUnderTest.Lake, "d", [.. Enumerable.Range(0, 200).Select(k => HostUnderTest.Note($"{i}/{k}" + new string('x', 15_000)))], default);
        long before = GC.GetTotalAllocatedBytes(precise: true);
        using HttpResponseMessage trip = await client.GetAsync($"/api/lakes/{HostUnderTest.Lake}/trip");
        Assert.Equal(HttpStatusCode.OK, trip.StatusCode);
        Assert.InRange(GC.GetTotalAllocatedBytes(precise: true) - before, 0, 20 << 20);
    }

    [Fact]
    public async Task Two_trips_go_at_once_and_the_rest_are_told_when_to_come_back()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        await FillAsync(client, 24 << 20);
        // Two that are not read on hold their places.
        List<HttpResponseMessage> held = [];
        for (int i = 0; i < 2; i++) held.Add(await client.GetAsync($"/api/lakes/{HostUnderTest.Lake}/trip", HttpCompletionOption.ResponseHeadersRead));
        Assert.All(held, h => Assert.Equal(HttpStatusCode.OK, h.StatusCode));
        using HttpResponseMessage third = await client.GetAsync($"/api/lakes/{HostUnderTest.Lake}/trip");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, third.StatusCode);
        Assert.NotNull(third.Headers.RetryAfter);
        Assert.Equal(HttpStatusCode.OK, (await HostUnderTest.PushAsync(client, HostUnderTest.Lake, HostUnderTest.Note("beside"))).StatusCode);
        foreach (HttpResponseMessage h in held)
        {
            await h.Content.CopyToAsync(Stream.Null);
            h.Dispose();
        }

        HttpStatusCode later = HttpStatusCode.ServiceUnavailable;
        for (int i = 0; i < 100 && later != HttpStatusCode.OK; i++)
        {
            later = (await client.GetAsync($"/api/lakes/{HostUnderTest.Lake}/trip")).StatusCode;
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        Assert.Equal(HttpStatusCode.OK, later);
    }

    [Fact]
    public async Task A_download_ends_when_its_token_is_revoked()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        using HttpClient owner = await host.OwnerAsync();
        string sha = await FillAsync(owner, 48 << 20);
        using HttpClient guest = await host.PairedAsync(new PairingGrant(false, HostUnderTest.Lake, false));
        string device = (await host.Devices.AllAsync(default)).Single(d => d.Owner == 0).Id;
        using HttpResponseMessage download = await guest.GetAsync($"/api/lakes/{HostUnderTest.Lake}/files/{sha}", HttpCompletionOption.ResponseHeadersRead);
        Stream body = await download.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken);
        byte[] buffer = new byte[1 << 20];
        await body.ReadExactlyAsync(buffer, TestContext.Current.CancellationToken);
        Assert.True(await host.Devices.RevokeAsync(device, "test", "", default));
        await Assert.ThrowsAnyAsync<Exception>(() => body.CopyToAsync(Stream.Null, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task An_upload_that_is_killed_leaves_no_file_behind()
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("The files that a process has open are looked at on Linux.");
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        Waiting body = new();
        Task<HttpResponseMessage> upload = client.PostAsync($"/api/lakes/{HostUnderTest.Lake}/trip", new StreamContent(body));
        await body.Asked.Task.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
        // What a host that is killed now would leave.
        string[] open = [];
        for (int i = 0; i < 500 && open.Length == 0; i++)
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
            open = [.. Directory.GetFiles("/proc/self/fd").Select(f => new FileInfo(f).LinkTarget ?? "").Where(f => f.StartsWith(Path.GetTempPath(), StringComparison.Ordinal) && f.Contains(".tmp", StringComparison.Ordinal))];
        }

        Assert.Contains(open, f => f.EndsWith(" (deleted)", StringComparison.Ordinal));
        Assert.DoesNotContain(open, f => !f.EndsWith(" (deleted)", StringComparison.Ordinal));
        body.End.SetResult();
        (await upload).Dispose();
    }

    [Fact]
    public void Refused_calls_do_not_fill_the_log()
    {
        Quiet quiet = new(TimeProvider.System);
        int written = 0;
        for (int i = 0; i < 10_000; i++) quiet.Write(NullLogger.Instance, () => written++);
        Assert.InRange(written, 1, 60);
    }

    [Fact]
    public async Task A_database_that_was_moved_or_damaged_is_not_called_ready()
    {
        string folder = HostUnderTest.NewFolder(), database = Path.Combine(folder, "second-shore.db");
        await using HostUnderTest host = await HostUnderTest.StartInAsync(folder, ownFolder: true);
        using HttpClient client = host.Client();
        Assert.Equal("Healthy", await client.GetStringAsync("/health/ready"));
        File.Move(database, database + ".away");
        using HttpResponseMessage moved = await client.GetAsync("/health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, moved.StatusCode);
        File.Move(database + ".away", database, overwrite: true);
        Assert.Equal("Healthy", await client.GetStringAsync("/health/ready"));
        host.Services.GetRequiredService<StoreWatch>().Damaged("A page is damaged.");
        using HttpResponseMessage damaged = await client.GetAsync("/health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, damaged.StatusCode);
    }

    private static async Task<string> FillAsync(HttpClient client, int bytes)
    {
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        byte[] survey = new byte[bytes];
        new Random(3).NextBytes(survey);
        string sha = Convert.ToHexStringLower(SHA256.HashData(survey));
        (await client.PutAsync($"/api/lakes/{HostUnderTest.Lake}/files/{sha}?size={bytes}", new ByteArrayContent(survey))).EnsureSuccessStatusCode();
        LakeRecord record = new FileVersion("survey.bin", sha, bytes).ToRecord(new DateTimeOffset(2026, 10, 4, 17, 0, 0, TimeSpan.Zero), null);
        (await HostUnderTest.PushAsync(client, HostUnderTest.Lake, record)).EnsureSuccessStatusCode();
        return sha;
    }

    // Gives a little and then waits, as a line that is slow.
    private sealed class Waiting : Stream
    {
        private bool _given;

        public TaskCompletionSource Asked { get; } = new();

        public TaskCompletionSource End { get; } = new();

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            if (!_given)
            {
                _given = true;
                buffer.Span.Fill(7);
                return buffer.Length;
            }

            Asked.TrySetResult();
            await End.Task;
            return 0;
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
