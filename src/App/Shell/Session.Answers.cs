using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.JSInterop;
using SecondShore.App.Compute.Views;
using SecondShore.App.Pace;
using SecondShore.App.Store;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.App.Shell;

/// <summary>Opening lakes and asking the engine about them.</summary>
public sealed partial class Session
{
    private static readonly string Build = typeof(Session).Assembly.ManifestModule.ModuleVersionId.ToString("N");
    // What was said in another language is not kept for this one.
    private string Stamp => Build + Words.Text.Language;

    private Task _before = Task.CompletedTask;
    private DotNetObjectReference<Session>? _self;
    // An engine that was stopped has to find the outlook again before it can slice it.
    private bool _engineIsCold = true;
    private bool _failed;
    // Of the work under way: there is one piece of it at a time.
    private bool _stopped;
    // Asked for and not yet begun.
    private (string Lake, Task Work)? _workOut;

    /// <summary>The open lake as read.</summary>
    public LakeView? View { get; private set; }

    /// <summary>The outlook.</summary>
    public OutlookView? Outlook { get; private set; }

    /// <summary>The second shore; while a depth is tried, that depth's.</summary>
    public ShoreView? Shore { get; private set; }

    /// <summary>The spots ranked last, best first.</summary>
    public IReadOnlyList<SpotView> Spots { get; private set; } = [];

    /// <summary>Whether what is shown was kept from an earlier visit, or came with the app, and is being worked out anew.</summary>
    public bool IsFromEarlier { get; private set; }

    /// <summary>Whether the open lake's files give no lake; <see cref="Trouble"/> says why.</summary>
    public bool CouldNotOpen => _failed && Work is null;

    /// <summary>Whether what is shown came with the app.</summary>
    public bool IsFirst { get; private set; }

    /// <summary>Opens a lake: shows what was kept of it, then works everything out.</summary>
    public async Task OpenAsync(LakeRow lake)
    {
        Lake = lake;
        // What came with the app is on the screen already, and stays until this device has its own.
        IsFirst = IsFirst && lake.Id == "demo";
        if (!IsFirst)
        {
            (View, Outlook, Shore, Spots) = (null, null, null, []);
            await browser.Do("forgetLake");
        }

        (Day, Hold, Trouble, _failed) = (null, null, null, false);
        (_stopAt, Trying, Wind, RigAside, ChosenAt) = (0, WhatIf.Nothing, null, null, null);
        (AtPoint, Point) = (null, null);
        await browser.Do("saveSetting", "lake", lake.Id);
        await ReadRecordsAsync();
        if (!IsFirst && await RecallAsync(lake.Id, "open", Stamp) is { } opened)
        {
            await TakeViewAsync(opened);
            OutlookView? kept = await RecallAsync(lake.Id, "outlook", Stamp) is { } outlook ? await ReadAsync(outlook, ViewsJson.Default.OutlookView) : null;
            if (Lake?.Id != lake.Id) return;
            Outlook = kept;
            if (await RecallAsync(lake.Id, "shore", Stamp) is { } shore) await TakeShoreAsync(shore);
            IsFromEarlier = Outlook is not null;
            await RecallDayAsync(lake.Id);
            Tell();
        }

        await WorkOutAsync();
    }

    /// <summary>
    /// Works everything out from the lake's files and this device's records. Asked for again before it has begun, as by one reading
    /// typed after another, it is done once: it takes the records as they stand when it begins.
    /// </summary>
    public Task WorkOutAsync()
    {
        if (Lake is not { } lake) return Task.CompletedTask;
        if (_workOut is { } waiting && waiting.Lake == lake.Id && !waiting.Work.IsCompleted) return waiting.Work;
        bool begun = false;
        WorkKey key = new(_engineIsCold ? "open.cold" : "open", lake.Id, [new("open", 2.8), new("outlook", 8.9), new("shore", 2.0)]);
        Task work = DoAsync("work.open", key, async () =>
        {
            (begun, _workOut) = (true, null);
            // The lake may be removed, or another opened, while the engine works: its answers then belong to nothing shown.
            if (Lake?.Id != lake.Id) return;
            string opened = await AskAsync("open", About(), lake.Id, KeptAs);
            if (Lake?.Id != lake.Id) return;
            await TakeViewAsync(opened);
            if (Lake?.Id != lake.Id) return;
            await browser.Do("setUnits", Words.Units.IsMetric);
            Tell();
            string outlook = await AskAsync("outlook", About(), lake.Id, KeptAs);
            if (Lake?.Id != lake.Id) return;
            OutlookView? found = await ReadAsync(outlook, ViewsJson.Default.OutlookView);
            if (Lake?.Id != lake.Id) return;
            Outlook = found;
            (IsFromEarlier, IsFirst, _engineIsCold, Wind) = (false, false, false, null);
            Tell();
            Work?.Turn(Words["work.shore"]);
            Trying = WhatIf.Nothing;
            string shore = await AskAsync("shore", About(), lake.Id, KeptAs);
            if (Lake?.Id != lake.Id) return;
            await TakeShoreAsync(shore);
            await AskHoldAsync(lake.Id);
        });
        if (!begun) _workOut = (lake.Id, work);
        return work;
    }

    /// <summary>Whether the demo lake was stopped before it was in, and only what came with the app is shown: nothing can be kept.</summary>
    public bool IsLeftOff => IsFirst && Work is null && HasLooked && Lake is null;

    /// <summary>Makes the demo lake on this device and opens it.</summary>
    public async Task CreateDemoAsync()
    {
        bool first = View is null && !Words.Units.IsMetric && Words.Text.Language == "en" && await ShowFirstAsync();
        await DoAsync("work.demo", async () =>
        {
            string id = "demo";
            await browser.Text("unpackOwn", "demo/ketterfold.zip", id, Now());
            if (first) await browser.Do("keepFirst", id, Stamp);
            await ReadLakesAsync();
        });
        if (Lakes.FirstOrDefault(l => l.Id == "demo") is { } lake) await OpenAsync(lake);
    }

    // What the engine said of the demo lake when the app was built: the first screen has an answer before the engine is awake.
    private async Task<bool> ShowFirstAsync()
    {
        if (await browser.Text("firstAnswers", "demo/first.json") is not { } json) return false;
        using JsonDocument first = JsonDocument.Parse(json);
        await TakeViewAsync(first.RootElement.GetProperty("open").GetRawText());
        Outlook = await ReadAsync(first.RootElement.GetProperty("outlook").GetRawText(), ViewsJson.Default.OutlookView);
        await TakeShoreAsync(first.RootElement.GetProperty("shore").GetRawText());
        (IsFromEarlier, IsFirst) = (true, true);
        Tell();
        return true;
    }

    /// <summary>Keeps a record; returns once the database says it is on disk.</summary>
    public async Task<bool> KeepAsync(RecordRow row)
    {
        try
        {
            await browser.Do("addRecordsJson", JsonSerializer.Serialize([row], ViewsJson.Default.IReadOnlyListRecordRow));
            await ReadRecordsAsync();
            Tell();
            Kept?.Invoke();
            return true;
        }
        catch (JSException error)
        {
            Say(ExplainedTrouble(error));
            return false;
        }
    }

    private async Task ReadRecordsAsync()
    {
        string json = await browser.Text("recordsJson", Lake?.Id ?? "") ?? "[]";
        _kept = JsonSerializer.Deserialize(json, ViewsJson.Default.IReadOnlyListRecordRow) ?? [];
        Records = RecordSet.Standing(_kept);
        Entries = RecordSet.Joined(_kept, View?.Log ?? []);
    }

    // All of them: what stands is worked out where the rows of the files are known too.
    private AskAbout About() => new(At: ChosenAt, Metric: Words.Units.IsMetric, Records: _kept, Language: Words.Text.Language);

    private async Task TakeShoreAsync(string json)
    {
        string? of = Lake?.Id;
        ShoreView? read = await ReadAsync(json, ViewsJson.Default.ShoreView);
        if (Lake?.Id != of) return;
        Shore = read;
        if (Shore?.Spots is { } ranked) Spots = ranked;
    }

    private async Task TakeViewAsync(string json)
    {
        string? of = Lake?.Id;
        LakeView? read = await ReadAsync(json, ViewsJson.Default.LakeView);
        if (Lake?.Id != of) return;
        View = read;
        if (View is null) return;
        Plane = new LocalProjection(new GeoPoint(View.OriginLatDeg, View.OriginLonDeg));
        // Words that did not change keep what was worded with them.
        TimeZoneInfo zone = ZoneOrUtc(View.ZoneId);
        if (!zone.Equals(Words.Zone)) Words = Words with { Zone = zone };
        Entries = RecordSet.Joined(_kept, View.Log);
    }

    // A question that is a part of the work under way.
    private Task<string> AskAsync(string verb, AskAbout about, string? lake, string? keep = null)
    {
        // A stop between two questions: the next one must not wake the engine again.
        if (_stopped) throw new OperationCanceledException();
        Work?.Ask(verb, TimeProvider.System.GetUtcNow());
        return AskBesideAsync(verb, about, lake, keep);
    }

    // A question of its own, whatever work is under way.
    private async Task<string> AskBesideAsync(string verb, AskAbout about, string? lake, string? keep = null)
    {
        string json = await browser.Ask(verb, JsonSerializer.Serialize(about, ViewsJson.Default.AskAbout), lake, _self ??= DotNetObjectReference.Create(this), keep) ?? "{}";
        await BreatheAsync();
        return json;
    }

    /// <summary>Asks beside the work that is shown, of a lake that is worked out already; null where there is no answer.</summary>
    internal async Task<string?> AskQuietlyAsync(string verb, Func<AskAbout, AskAbout>? more = null)
    {
        if (Lake is not { } lake || _engineIsCold) return null;
        try
        {
            return await AskBesideAsync(verb, more?.Invoke(About()) ?? About(), lake.Id);
        }
        catch (JSException)
        {
            // What was shown before stays; the work under way tells its own troubles.
            return null;
        }
    }

    // The last answer kept of this version of the app; the chart takes its part of it in first.
    private async Task<string?> RecallAsync(string lake, string verb, string stamp)
    {
        string? json = await browser.Text("recall", lake, verb, stamp);
        await BreatheAsync();
        return json;
    }

    private static async Task<T?> ReadAsync<T>(string json, JsonTypeInfo<T> type)
    {
        T? value = Read(json, type);
        await BreatheAsync();
        return value;
    }

    // Taking an answer in, reading it and showing it are three tasks of the page's thread: between them it may answer a finger.
    private static Task BreatheAsync() => Task.Delay(1);

    private static T? Read<T>(string json, JsonTypeInfo<T> type) => JsonSerializer.Deserialize(json, type);

    internal static string Now() => TimeProvider.System.GetUtcNow().UtcDateTime.ToString("O", CultureInfo.InvariantCulture);

    private static TimeZoneInfo ZoneOrUtc(string id) => TimeZoneInfo.TryFindSystemTimeZoneById(id, out TimeZoneInfo? zone) ? zone : TimeZoneInfo.Utc;

    /// <summary>Runs work one piece at a time, with its progress shown and its failure said in one sentence.</summary>
    private Task DoAsync(string what, Func<Task> work) => DoAsync(what, null, work);

    /// <summary>The same for work that comes again: how long it took here before tells how long it takes now.</summary>
    private Task DoAsync(string what, WorkKey? key, Func<Task> work) => _before = DoAfterAsync(_before, what, key, work);

    private async Task DoAfterAsync(Task before, string what, WorkKey? key, Func<Task> work)
    {
        // What failed before has been told, and holds up nothing that follows.
        await before.ConfigureAwait(ConfigureAwaitOptions.ContinueOnCapturedContext | ConfigureAwaitOptions.SuppressThrowing);
        string? kept = key is null ? null : await browser.Text("setting", key.Setting);
        WorkState now = Work = new WorkState(Words[what], FormerRuns.Parse(kept), key?.Parts ?? [], TimeProvider.System.GetUtcNow());
        (Trouble, _stopped) = (null, false);
        Tell();
        try
        {
            await work();
            if (key is not null && Work == now && now.IsWhole) await browser.Do("saveSetting", key.Setting, now.Kept(TimeProvider.System.GetUtcNow()));
        }
        catch (Exception error) when (error is OperationCanceledException || (error is JSException js && IsStop(js)))
        {
            // The user stopped it, between two questions or in the middle of one: what was shown before stays.
        }
        catch (JSException error)
        {
            (Trouble, _failed) = (ExplainedTrouble(error), View is null && Lake is not null);
        }
        finally
        {
            Work = null;
            Tell();
        }
    }

    /// <summary>Work that comes again, and the questions it puts to the engine.</summary>
    private sealed record WorkKey(string Work, string Lake, IReadOnlyList<WorkPart> Parts)
    {
        public string Setting => FormerRuns.Key(Work, Lake);
    }
}
