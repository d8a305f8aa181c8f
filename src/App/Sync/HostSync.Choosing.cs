using System.Text.Json;
using SecondShore.App.Store;
using SecondShore.Records;

namespace SecondShore.App.Sync;

/// <summary>Choosing a host, and which lakes are kept in step with it.</summary>
public sealed partial class HostSync
{
    /// <summary>How the place the app came from stands to this device; null until it was asked, or where no host is there.</summary>
    public HostStanding? Own { get; private set; }

    /// <summary>Looks whether the app came from a host, and at the chosen host's lakes.</summary>
    public async Task LookAsync()
    {
        if (_way is null)
        {
            Own = session.HasSignal ? await _calls.StandingAsync("") : null;
            // On this machine itself there is no account to be made: the lakes of both sides are shown at once.
            if (Own is { Pairing: false, Known: true }) await ChooseAsync(new HostWay("", ""));
            Changed?.Invoke();
            return;
        }

        await ReadLakesAsync();
    }

    /// <summary>Pairs this device with a host.</summary>
    /// <param name="address">Its address; empty for the place the app came from.</param>
    /// <param name="code">The code it shows.</param>
    /// <param name="name">What its owner should call this device.</param>
    /// <returns>Null when paired, else the key of the sentence to say, or the host's own sentence.</returns>
    public async Task<string?> PairAsync(string address, string code, string name)
    {
        if (AddressOf(address) is not { } plain) return session.Words["host.address.odd"];
        if (await _calls.StandingAsync(plain) is not { } standing) return session.Words["host.nobody"];
        if (!standing.Pairing) return session.Words["host.elsewhere"];
        try
        {
            PairAnswer answer = await _calls.PairAsync(plain, code.Trim(), name.Trim());
            await ChooseAsync(new HostWay(plain, answer.Token));
            return null;
        }
        catch (HostException e)
        {
            return e.Status == 0 ? session.Words["host.nobody"] : SyncWords.Of(e, session.Words);
        }
    }

    /// <summary>Forgets the host: its token and what is known of it. Lakes and entries stay on this device and at the host.</summary>
    public async Task ForgetAsync()
    {
        (_turn, _due) = (_turn + 1, null);
        await browser.Do("removeSetting", "host");
        await browser.Do("forgetLinks");
        (_way, AtHost, Own) = (null, null, null);
        await CountAsync();
        Tell(new SyncState(SyncMood.Off));
    }

    /// <summary>Gives a lake of this device to the host and keeps it in step from then on.</summary>
    public Task GiveAsync(LakeRow lake) => ShareAsync(async () =>
    {
        ArgumentNullException.ThrowIfNull(lake);
        // The demo lake is called alike on every device; at the host each one given is a lake of its own.
        string id = lake.Id.Length >= 8 ? lake.Id : LakeId.New(TimeProvider.System.GetUtcNow());
        HostLake made = await _calls.AddLakeAsync(id, lake.Name);
        return new LakeLink(lake.Id, made.Id, lake.Name, true);
    });

    /// <summary>Says that a lake of this device and one of the host are the same, and keeps them in step from then on.</summary>
    public Task JoinAsync(LakeRow lake, HostLake there) => ShareAsync(() => Task.FromResult(new LakeLink(lake.Id, there.Id, there.Name, there.MayWrite)));

    /// <summary>Takes a lake of the host onto this device and keeps it in step from then on.</summary>
    public Task TakeAsync(HostLake there) => ShareAsync(() => Task.FromResult(new LakeLink(there.Id, there.Id, there.Name, there.MayWrite)));

    private async Task ShareAsync(Func<Task<LakeLink>> link)
    {
        try
        {
            await browser.Do("saveLinkJson", JsonSerializer.Serialize(await link(), SyncJson.Default.LakeLink));
            await RunAsync();
            await ReadLakesAsync();
        }
        catch (HostException e)
        {
            Tell(State with { Mood = e.IsAway ? SyncMood.Away : SyncMood.Refused, Said = SyncWords.Of(e, session.Words) });
        }
    }

    private async Task ChooseAsync(HostWay way)
    {
        await browser.Do("saveSetting", "host", JsonSerializer.Serialize(way, SyncJson.Default.HostWay));
        _way = way;
        await ReadLakesAsync();
    }

    private async Task ReadLakesAsync()
    {
        await CountAsync();
        if (!session.HasSignal)
        {
            Tell(State with { Mood = SyncMood.Away });
            return;
        }

        try
        {
            AtHost = await _calls.LakesAsync();
            if (State.Mood is not SyncMood.Talking) Tell(State with { Mood = SyncMood.InStep });
        }
        catch (HostException e)
        {
            Tell(State with { Mood = e.IsAway ? SyncMood.Away : e.Status == 401 ? SyncMood.NotPaired : SyncMood.Refused, Said = SyncWords.Of(e, session.Words) });
        }
    }

    // As typed by hand: without https in front, or with a slash behind. Plain http would carry the token in the clear.
    private static string? AddressOf(string text)
    {
        string plain = text.Trim().TrimEnd('/');
        if (plain.Length == 0) return "";
        if (!plain.Contains("://", StringComparison.Ordinal)) plain = "https://" + plain;
        return Uri.TryCreate(plain, UriKind.Absolute, out Uri? address) && (address.Scheme == Uri.UriSchemeHttps || (address.Scheme == Uri.UriSchemeHttp && address.IsLoopback)) ? plain : null;
    }
}
