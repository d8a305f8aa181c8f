using SecondShore.Records;
using SecondShore.TestKit;

namespace SecondShore.Store.Tests;

/// <summary>
/// A longer run of faults one upon another, against what was promised: the host or its database server is killed, the disk fills, connections break,
/// clocks jump, devices stop, and one device is of a newer program. Nothing acknowledged is lost, nothing is there twice, every device holds everything.
/// </summary>
public class ManyFaultsTests(ITestOutputHelper output)
{
    private const int Faults = 300;
    private static readonly DateTimeOffset Start = new(2026, 10, 4, 5, 0, 0, TimeSpan.Zero);

    [Theory]
    [LongerCheck]
    [InlineData(1)]
    [InlineData(2)]
    public async Task Hundreds_of_faults_lose_nothing_and_double_nothing(int seed) => await RunAsync(await SqliteHost.StartAsync(), Faults, seed);

    [Fact]
    [LongerCheck]
    public async Task The_same_faults_on_a_database_server_lose_nothing_and_double_nothing() => await RunAsync(await PostgresHost.StartAsync(), 120, 3);

    private async Task RunAsync(SimulatedHost begun, int faults, int seed)
    {
        await using SimulatedHost host = begun;
        Random chance = new(seed);
        SimulatedDevice[] devices = [new("phone", TimeSpan.Zero), new("laptop", TimeSpan.FromDays(-400)) { IsNewer = true }, new("friend", TimeSpan.FromHours(31))];
        HashSet<string> made = new(StringComparer.Ordinal);
        Dictionary<string, int> met = [];
        for (int fault = 0, step = 0; fault < faults; step++)
        {
            SimulatedDevice device = devices[chance.Next(devices.Length)];
            for (int k = chance.Next(4); k > 0; k--) made.Add(device.Make(Start.AddSeconds(step), chance).Id);
            string kind = await FaultAsync(host, device, chance);
            if (kind.Length == 0) continue;
            fault++;
            met[kind] = met.GetValueOrDefault(kind) + 1;
            if (fault % 25 == 0) await RequireKeptAsync(host, fault);
        }

        output.WriteLine(string.Join(", ", met.Select(m => $"{m.Key} {m.Value}")));
        Assert.True(met.Count >= 6 && met.Values.All(n => n >= faults / 30), "every kind of fault is met");
        await host.FillDiskAsync(null);
        host.Clock.Off = TimeSpan.Zero;
        await RequireAgreementAsync(host, devices, made);
    }

    // One fault, in the middle of a sync where it is one of the way; its name, or nothing where none came of it.
    private static async Task<string> FaultAsync(SimulatedHost host, SimulatedDevice device, Random chance)
    {
        switch (chance.Next(7))
        {
            case 0:
                await SyncAsync(host, device, chance, 0.1);
                await host.CutPowerAsync();
                return "host killed";
            case 1:
                await host.FillDiskAsync(chance.Next(3));
                bool full = false;
                for (int k = 0; k < 40 && !full; k++)
                {
                    device.Make(Start.AddDays(1).AddSeconds(k), chance);
                    full = !await SyncAsync(host, device, chance, 0);
                }

                await host.FillDiskAsync(null);
                return full ? "disk full" : "";
            case 2:
                return await SyncAsync(host, device, chance, 0.5) ? "" : "connection cut";
            case 3:
                host.Clock.Off = TimeSpan.FromDays(chance.Next(-4000, 4000));
                await SyncAsync(host, device, chance, 0.1);
                return "host's clock jumped";
            case 4:
                device.ClockError = TimeSpan.FromHours(chance.Next(-20_000, 20_000));
                await SyncAsync(host, device, chance, 0.1);
                return "device's clock jumped";
            case 5:
                device.Stops = () => chance.NextDouble() < 0.3;
                bool through = await SyncAsync(host, device, chance, 0);
                device.Stops = () => false;
                device.ForgetStates(chance.Next(3));
                return through ? "" : "device stopped";
            default:
                if (host.Late.Count == 0) return await SyncAsync(host, device, chance, 0.4) ? "" : "connection cut";
                await host.Store.PushAsync("lake", "late", host.Late[chance.Next(host.Late.Count)], default);
                return "late message";
        }
    }

    // True where it went through.
    private static async Task<bool> SyncAsync(SimulatedHost host, SimulatedDevice device, Random chance, double faultShare)
    {
        try
        {
            await SyncRun.RunAsync(device, new FaultyWire(host, device, chance, faultShare));
            return true;
        }
        catch (Exception e) when (e is CutOffException or StorageException)
        {
            return false;
        }
    }

    private static async Task RequireKeptAsync(SimulatedHost host, int fault)
    {
        HashSet<string> kept = [.. (await host.Store.AllAsync("lake", default)).Select(r => r.Id)];
        Assert.True(host.Acknowledged.IsSubsetOf(kept), $"After fault {fault}, {host.Acknowledged.Count(id => !kept.Contains(id))} acknowledged records are gone.");
    }

    private static async Task RequireAgreementAsync(SimulatedHost host, SimulatedDevice[] devices, HashSet<string> made)
    {
        for (int round = 0; round < 4; round++)
            foreach (SimulatedDevice device in devices) Assert.True(await SyncAsync(host, device, new Random(1), 0));
        IReadOnlyList<LakeRecord> atHost = await host.Store.AllAsync("lake", default);
        Assert.Equal(atHost.Count, atHost.Select(r => r.Id).Distinct().Count());
        Assert.True(made.IsSubsetOf(atHost.Select(r => r.Id)), $"{made.Count} were made and the host has {atHost.Count}.");
        foreach (SimulatedDevice device in devices)
        {
            Assert.True(device.Disk.Keys.ToHashSet().SetEquals(atHost.Select(r => r.Id)), $"{device.Name} has {device.Disk.Count} of {atHost.Count}.");
            Assert.Equal(RecordUnion.Standing(atHost).Select(r => r.Id), RecordUnion.Standing(device.Disk.Values).Select(r => r.Id));
            // What the newer program wrote and this one does not know is kept as it came.
            Assert.Contains(device.Disk.Values, r => r.Kind == "tomorrow");
            Assert.Contains(device.Disk.Values, r => r.Body.Contains("tide", StringComparison.Ordinal));
        }
    }
}
