using System.Text.Json;
using Microsoft.JSInterop;
using SecondShore.App.Shell;
using SecondShore.Records;

namespace SecondShore.App.Sync;

/// <summary>Keeps this device in step with the host that the user chose: in the background, a lake at a time, again after every cut.</summary>
public sealed partial class HostSync(Browser browser, Session session)
{
    private static readonly TimeSpan AfterAnEntry = TimeSpan.FromSeconds(1.5);
    private static readonly TimeSpan Between = TimeSpan.FromMinutes(3);
    private static readonly TimeSpan FirstRetry = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LongestRetry = TimeSpan.FromMinutes(10);

    private readonly HostCalls _calls = new(browser);
    private HostWay? _way;
    private DateTimeOffset? _due;
    private int _turn, _failures;
    private bool _running, _again, _hadSignal = true;

    /// <summary>Raised when anything shown may have changed.</summary>
    public event Action? Changed;

    /// <summary>How this device stands with the host.</summary>
    public SyncState State { get; private set; } = new(SyncMood.Off);

    /// <summary>Whether a host is chosen.</summary>
    public bool IsOn => _way is not null;

    /// <summary>The chosen host's address; empty for the place the app came from.</summary>
    public string Address => _way?.Address ?? "";

    /// <summary>Lakes at the host; null until they were asked for.</summary>
    public IReadOnlyList<HostLake>? AtHost { get; private set; }

    /// <summary>The lakes kept in step, by their id on this device.</summary>
    internal IReadOnlyDictionary<string, LakeLink> Links { get; private set; } = new Dictionary<string, LakeLink>();

    /// <summary>Entries of a lake that wait for the host.</summary>
    public IReadOnlyDictionary<string, int> WaitingOf { get; private set; } = new Dictionary<string, int>();

    /// <summary>Reads what was chosen before, and begins where it was.</summary>
    public async Task StartAsync()
    {
        session.Kept += OnKept;
        session.Changed += OnSession;
        if (await browser.Text("setting", "host") is not { } kept) return;
        _way = JsonSerializer.Deserialize(kept, SyncJson.Default.HostWay);
        await CountAsync();
        if (Links.Count > 0) Soon(TimeSpan.FromSeconds(1));
    }

    /// <summary>Syncs after a while, unless that is to be done sooner already.</summary>
    public void Soon(TimeSpan wait)
    {
        DateTimeOffset due = TimeProvider.System.GetUtcNow() + wait;
        if (_way is null || (_due is { } pending && pending <= due)) return;
        _due = due;
        _ = RunLaterAsync(wait, ++_turn);
    }

    /// <summary>Syncs now.</summary>
    public async Task RunAsync()
    {
        if (_way is null) return;
        if (_running)
        {
            _again = true;
            return;
        }

        (_running, _again) = (true, false);
        try
        {
            await ReadLinksAsync();
            Tell(State with { Mood = SyncMood.Talking });
            foreach (LakeLink link in Links.Values) await SyncAsync(link);
            _failures = 0;
            await CountAsync();
            Tell(new SyncState(SyncMood.InStep, Total, TimeProvider.System.GetUtcNow()));
            Soon(Between);
        }
        catch (Exception e) when (_way is null || (e is JSException && e.Message.StartsWith("forgotten", StringComparison.Ordinal)))
        {
            // The host was forgotten, or the lake removed, in the middle of it.
            await CountAsync();
            Tell(new SyncState(_way is null ? SyncMood.Off : SyncMood.InStep, Total));
            Soon(Between);
        }
        catch (HostException e)
        {
            await CountAsync();
            SyncMood mood = e.IsAway ? SyncMood.Away : e.Status == 401 ? SyncMood.NotPaired : SyncMood.Refused;
            Tell(State with { Mood = mood, Waiting = Total, Said = e.Message, Share = null });
            Soon(e.IsAway ? Retry() : LongestRetry);
        }
        catch (Exception e) when (e is JSException or InvalidDataException)
        {
            // No room on this device, or records that came damaged: said, and tried again.
            Tell(State with { Mood = SyncMood.Refused, Waiting = Total, Said = session.Explained(e), Share = null });
            Soon(Retry());
        }
        finally
        {
            _running = false;
        }

        if (_again) Soon(TimeSpan.FromMilliseconds(200));
    }

    private int Total => WaitingOf.Values.Sum();

    private async Task SyncAsync(LakeLink link)
    {
        DeviceRecords records = new(browser, link);
        HostRecords host = new(_calls, link);
        SyncResult first = await SyncRun.RunAsync(records, host, Breathe);
        // Told once: the next sync begins after them.
        if (first.PassedOver > 0) session.Say(session.Words["sync.passedover", first.PassedOver, link.Name]);
        LakeFilesInStep.Done files = await new LakeFilesInStep(browser, link, records).RunAsync(share => Tell(State with { Share = share }));
        if (files.Named > 0)
        {
            await ReadLinksAsync();
            if (Links.TryGetValue(link.Lake, out LakeLink? now)) await SyncRun.RunAsync(new DeviceRecords(browser, now), host, Breathe);
        }

        Tell(State with { Share = null });
        if (session.Lakes.All(l => l.Id != link.Lake))
        {
            // A lake taken from the host is one once its files are here.
            if (files.Missing > 0) return;
            await browser.Do("nameLake", link.Lake, link.Name, Session.Now());
            await session.ReadLakesAsync();
        }

        await session.CameAsync(link.Lake, first.Received, files.Fetched);
    }

    // Lets the page draw and hear in between.
    private static Task Breathe() => Task.Delay(1);

    private TimeSpan Retry() => TimeSpan.FromSeconds(Math.Min(LongestRetry.TotalSeconds, FirstRetry.TotalSeconds * Math.Pow(2, Math.Min(10, _failures++))));

    private async Task RunLaterAsync(TimeSpan wait, int turn)
    {
        await Task.Delay(wait);
        if (turn != _turn) return;
        _due = null;
        // Without a signal there is nothing to try; the signal's return asks anew.
        if (session.HasSignal) await RunAsync();
    }

    private void OnKept()
    {
        if (_way is null) return;
        _ = CountAsync();
        Soon(AfterAnEntry);
    }

    private void OnSession()
    {
        bool came = session.HasSignal && !_hadSignal;
        _hadSignal = session.HasSignal;
        if (came) Soon(TimeSpan.FromSeconds(1));
    }

    private async Task ReadLinksAsync() =>
        Links = (JsonSerializer.Deserialize(await browser.Text("linksJson") ?? "[]", SyncJson.Default.IReadOnlyListLakeLink) ?? []).ToDictionary(l => l.Lake, StringComparer.Ordinal);

    private async Task CountAsync()
    {
        await ReadLinksAsync();
        WaitingOf = JsonSerializer.Deserialize(await browser.Text("waitingCountsJson") ?? "{}", SyncJson.Default.DictionaryStringInt32) ?? [];
        State = State with { Waiting = Total };
        Changed?.Invoke();
    }

    private void Tell(SyncState state)
    {
        State = state;
        Changed?.Invoke();
    }
}
