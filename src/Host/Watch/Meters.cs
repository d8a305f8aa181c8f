using System.Diagnostics.Metrics;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Watch;

/// <summary>Counters of what the host does; read with any OpenTelemetry collector or with the runtime's own counters tool.</summary>
internal sealed class Meters : IDisposable
{
    public static readonly string Name = "SecondShore.Host";

    private readonly Meter _meter;
    private readonly Counter<long> _added, _known, _refused, _pulled, _faults, _pairings, _weather;

    public Meters(IMeterFactory factory)
    {
        _meter = factory.Create(Name);
        _added = _meter.CreateCounter<long>("secondshore.records.added", "{record}", "Records kept that were new.");
        _known = _meter.CreateCounter<long>("secondshore.records.known", "{record}", "Records sent again.");
        _refused = _meter.CreateCounter<long>("secondshore.records.refused", "{record}", "Records not taken.");
        _pulled = _meter.CreateCounter<long>("secondshore.records.pulled", "{record}", "Records handed out.");
        _faults = _meter.CreateCounter<long>("secondshore.storage.faults", "{fault}", "Faults of the store, by kind.");
        _pairings = _meter.CreateCounter<long>("secondshore.pairings.refused", "{try}", "Pairings with a wrong or old code.");
        _weather = _meter.CreateCounter<long>("secondshore.weather.requests", "{request}", "Requests for weather, by outcome.");
    }

    public void Pushed(PushAnswer answer)
    {
        _added.Add(answer.Added);
        _known.Add(answer.Known);
        _refused.Add(answer.Refused.Count);
    }

    public void Pulled(int records) => _pulled.Add(records);

    public void StorageFault(StorageFault fault) => _faults.Add(1, new KeyValuePair<string, object?>("kind", fault.ToString()));

    public void PairingRefused() => _pairings.Add(1);

    public void Weather(bool came) => _weather.Add(1, new KeyValuePair<string, object?>("outcome", came ? "came" : "failed"));

    public void Dispose() => _meter.Dispose();
}
