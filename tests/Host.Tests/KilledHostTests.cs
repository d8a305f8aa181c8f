using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using SecondShore.Records;
using SecondShore.TestKit;

namespace SecondShore.Host.Tests;

/// <summary>The host's process is killed while devices write: a few times, often in the long check, as often as SECONDSHORE_KILLS says.</summary>
public class KilledHostTests
{
    [Fact]
    [LongerCheck]
    public async Task A_host_killed_while_it_writes_opens_again_with_everything_acknowledged()
    {
        string? given = Environment.GetEnvironmentVariable("SECONDSHORE_KILLS");
        int kills = given is null ? LongCheck.Number(1, 200) : int.Parse(given, CultureInfo.InvariantCulture);
        string folder = Path.Combine(Path.GetTempPath(), "second-shore-kill-" + Guid.NewGuid().ToString("N"));
        Random chance = new(7);
        HashSet<string> acknowledged = [];
        int made = 0;
        for (int kill = 0; kill <= kills; kill++)
        {
            using Process host = Start(folder);
            Uri address = await AddressAsync(host);
            using HttpClient client = Client(address, folder);
            (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).EnsureSuccessStatusCode();
            IReadOnlyList<LakeRecord> kept = await HostUnderTest.PullAllAsync(client, HostUnderTest.Lake);
            Assert.Equal(kept.Count, kept.Select(r => r.Id).Distinct().Count());
            Assert.Subset(kept.Select(r => r.Id).ToHashSet(), acknowledged);
            if (kill < kills)
            {
                int enough = acknowledged.Count + chance.Next(5, 60);
                Task[] writers = [.. Enumerable.Range(0, 4).Select(_ => WriteAsync(Client(address, folder), acknowledged, () => Interlocked.Increment(ref made)))];
                while (true)
                {
                    lock (acknowledged) if (acknowledged.Count >= enough) break;
                    await Task.Yield();
                }

                host.Kill();
                await Task.WhenAll(writers);
            }
            else
            {
                host.Kill();
            }

            await host.WaitForExitAsync();
        }

        Assert.True(acknowledged.Count >= 5 * kills);
        Directory.Delete(folder, recursive: true);
    }

    private static async Task WriteAsync(HttpClient client, HashSet<string> acknowledged, Func<int> next)
    {
        using HttpClient own = client;
        try
        {
            while (true)
            {
                LakeRecord[] batch = [HostUnderTest.Note($"n{next()}"), HostUnderTest.Note($"n{next()}")];
                using HttpResponseMessage answer = await HostUnderTest.PushAsync(client, HostUnderTest.Lake, batch);
                if (!answer.IsSuccessStatusCode || await answer.Content.ReadFromJsonAsync(RecordsJson.Default.PushAnswer) is not { Refused.Count: 0 }) continue;
                lock (acknowledged) acknowledged.UnionWith(batch.Select(r => r.Id));
            }
        }
        catch (Exception e) when (e is HttpRequestException or IOException)
        {
            // The host is gone.
        }
    }

    private static HttpClient Client(Uri address, string folder)
    {
        HttpClient client = new() { BaseAddress = address };
        client.DefaultRequestHeaders.Authorization = new("Bearer", File.ReadAllText(Path.Combine(folder, "host.key")));
        return client;
    }

    private static Process Start(string folder) => Process.Start(new ProcessStartInfo(Programs.Dotnet,
        [Path.Combine(AppContext.BaseDirectory, "SecondShore.Host.dll"), "--urls", "http://127.0.0.1:0", "--data", folder, "--requests-per-second", "100000"])
    { RedirectStandardOutput = true })!;

    private static async Task<Uri> AddressAsync(Process host)
    {
        string mark = "Second Shore is at ";
        while (await host.StandardOutput.ReadLineAsync() is { } line)
            if (line.StartsWith(mark, StringComparison.Ordinal)) return new Uri(line[mark.Length..]);
        throw new InvalidOperationException("The host ended before it listened.");
    }
}
