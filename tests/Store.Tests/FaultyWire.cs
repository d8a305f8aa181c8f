using SecondShore.Records;

namespace SecondShore.Store.Tests;

/// <summary>
/// The way between one device and the host: it loses requests, loses answers, doubles requests, and keeps copies that come
/// again much later and out of order. What the device is told is written down as acknowledged.
/// </summary>
internal sealed class FaultyWire(SimulatedHost host, SimulatedDevice device, Random chance, double faultShare) : IHostRecords
{
    public async Task<PushAnswer> PushAsync(PushRequest request, CancellationToken cancel)
    {
        if (chance.NextDouble() < faultShare) throw new CutOffException();
        if (chance.NextDouble() < faultShare) host.Late.Add(request.Records);
        PushAnswer answer = await host.Store.PushAsync("lake", device.Name, request.Records, cancel);
        if (chance.NextDouble() < faultShare) answer = await host.Store.PushAsync("lake", device.Name, [.. request.Records.Reverse()], cancel);
        if (chance.NextDouble() < faultShare) throw new CutOffException();
        host.Acknowledged.UnionWith(request.Records.Select(r => r.Id));
        return answer;
    }

    public async Task<PullAnswer> PullAsync(string epoch, long cursor, CancellationToken cancel)
    {
        if (chance.NextDouble() < faultShare) throw new CutOffException();
        PullAnswer answer = await host.Store.PullAsync("lake", epoch, cursor, cancel);
        if (chance.NextDouble() < faultShare) throw new CutOffException();
        return answer;
    }
}
