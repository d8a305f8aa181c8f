using CsCheck;
using SecondShore.Records;
using SecondShore.TestKit;

namespace SecondShore.Store.Tests;

/// <summary>
/// Three devices and a host under partitions, lost and doubled and late messages, wrong clocks, stops of devices in the
/// middle of a sync, power cuts of the host, backups and restores. Afterwards the signal holds and all must agree.
/// </summary>
public class SyncModelTests
{
    [Fact]
    [LongerCheck]
    public Task Three_devices_agree_after_many_steps_of_trouble() => RunAsync(Gen.Int.Array[LongCheck.Number(1_000, 10_000)], 1);

    [Fact]
    [LongerCheck]
    public Task Three_devices_agree_after_many_short_troubles() => RunAsync(Gen.Int.Array[1, 120], LongCheck.Number(30, 120));

    private static Task RunAsync(Gen<int[]> steps, int iterations) => steps.HoldAsync(async draws =>
    {
        await using SqliteHost host = await SqliteHost.StartAsync();
        SimulatedDevice[] devices = [new("phone", TimeSpan.Zero), new("laptop", TimeSpan.FromDays(-400)), new("friend", TimeSpan.FromHours(31))];
        HashSet<string> made = new(StringComparer.Ordinal);
        DateTimeOffset now = new(2026, 10, 4, 5, 0, 0, TimeSpan.Zero);
        for (int i = 0; i < draws.Length; i++)
        {
            await StepAsync(host, devices, made, now.AddSeconds(i), new Random(draws[i]));
            if (i % 250 == 249) await RequireKeptAsync(host, i);
        }

        await RequireKeptAsync(host, draws.Length);
        await RequireAgreementAsync(host, devices, made);
    }, iterations);

    private static async Task StepAsync(SqliteHost host, SimulatedDevice[] devices, HashSet<string> made, DateTimeOffset now, Random chance)
    {
        SimulatedDevice device = devices[chance.Next(devices.Length)];
        int what = chance.Next(1000);
        if (what < 280) made.Add(device.Make(now, chance).Id);
        else if (what < 940)
        {
            double faultShare = chance.Next(3) switch { 0 => 0, 1 => 0.1, _ => 0.4 };
            device.Stops = () => chance.NextDouble() < faultShare / 8;
            try
            {
                await SyncRun.RunAsync(device, new FaultyWire(host, device, chance, faultShare));
            }
            catch (CutOffException)
            {
                // As on the water.
            }

            device.Stops = () => false;
        }
        else if (what < 970 && host.Late.Count > 0)
        {
            int late = chance.Next(host.Late.Count);
            await host.Store.PushAsync("lake", "late", host.Late[late], default);
            if (chance.Next(2) == 0) host.Late.RemoveAt(late);
        }
        else if (what < 985) device.ForgetStates(1 + chance.Next(3));
        else if (what < 992) await host.CutPowerAsync();
        else if (what < 996) host.BackUp();
        else if (what < 998) await host.RestoreAsync();
    }

    private static async Task RequireKeptAsync(SimulatedHost host, int step)
    {
        HashSet<string> kept = [.. (await host.Store.AllAsync("lake", default)).Select(r => r.Id)];
        Assert.True(host.Acknowledged.IsSubsetOf(kept), $"After step {step}, {host.Acknowledged.Count(id => !kept.Contains(id))} acknowledged records are gone.");
    }

    private static async Task RequireAgreementAsync(SimulatedHost host, SimulatedDevice[] devices, HashSet<string> made)
    {
        for (int round = 0; round < 4; round++)
            foreach (SimulatedDevice device in devices)
                await SyncRun.RunAsync(device, new FaultyWire(host, device, new Random(1), 0));
        IReadOnlyList<LakeRecord> atHost = await host.Store.AllAsync("lake", default);
        Assert.Equal(atHost.Count, atHost.Select(r => r.Id).Distinct().Count());
        Assert.True(made.SetEquals(atHost.Select(r => r.Id)), $"{made.Count} were made and the host has {atHost.Count}.");
        string[] view = [.. RecordUnion.Standing(atHost).Select(r => r.Id)];
        foreach (SimulatedDevice device in devices)
        {
            Assert.True(made.SetEquals(device.Disk.Keys), $"{device.Name} has {device.Disk.Count} of {made.Count}.");
            Assert.Equal(view, RecordUnion.Standing(device.Disk.Values).Select(r => r.Id));
        }
    }
}
