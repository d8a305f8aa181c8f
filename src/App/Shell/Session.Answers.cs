using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.JSInterop;
using SecondShore.App.Pace;
using SecondShore.App.Store;
using SecondShore.Desk;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.App.Shell;

/// <summary>Opening lakes and asking the engine about them.</summary>
public sealed partial class Session
{
    // What was said in another language is not kept for this one.
    private string Stamp => EngineVersion.Text + Words.Text.Language;

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
        if (!IsFirst && await RecallAsync(lake.Id, Keep.Open, Stamp, DeskJson.Default.LakeView) is { } opened)
        {
            if (Lake?.Id != lake.Id) return;
            TakeView(opened);
            OutlookView? kept = await RecallAsync(lake.Id, Keep.Outlook, Stamp, DeskJson.Default.OutlookView);
            if (Lake?.Id != lake.Id) return;
            Outlook = kept;
            ShoreView? shore = await RecallAsync(lake.Id, Keep.Shore, Stamp, DeskJson.Default.ShoreView);
            if (Lake?.Id != lake.Id) return;
            if (shore is not null) TakeShore(shore);
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
        WorkKey key = new(_engineIsCold ? "open.cold" : "open", lake.Id,
            [WorkPart.Of<OpenLake>(2.8), WorkPart.Of<FindOutlook>(8.9), WorkPart.Of<RankPlaces>(2.0)]);
        Task work = DoAsync("work.open", key, async () =>
        {
            (begun, _workOut) = (true, null);
            // The lake may be removed, or another opened, while the engine works: its answers then belong to nothing shown.
            if (Lake?.Id != lake.Id) return;
            LakeView opened = await AskAsync(Opener(), lake.Id, KeptAs(Keep.Open));
            if (Lake?.Id != lake.Id) return;
            TakeView(opened);
            await browser.Do("setUnits", Words.Units.IsMetric);
            Tell();
            OutlookView found = await AskAsync(new FindOutlook(), lake.Id, KeptAs(Keep.Outlook));
            if (Lake?.Id != lake.Id) return;
            Outlook = found;
            (IsFromEarlier, IsFirst, _engineIsCold, Wind) = (false, false, false, null);
            Tell();
            Work?.Turn(Words["work.shore"]);
            Trying = WhatIf.Nothing;
            ShoreView shore = await AskAsync(new RankPlaces(), lake.Id, KeptAs(Keep.Shore));
            if (Lake?.Id != lake.Id) return;
            TakeShore(shore);
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
            Unpacked demo = await browser.AskThrough("unpackOwn", [], new UnpackTrip(), "demo/ketterfold.zip");
            await browser.Do("saveMade", id, demo.Name, Now());
            if (first) await browser.Do("keepFirst", id, Stamp);
            await ReadLakesAsync();
        });
        if (Lakes.FirstOrDefault(l => l.Id == "demo") is { } lake) await OpenAsync(lake);
    }

    // What the engine said of the demo lake when the app was built: the first screen has an answer before the engine is awake.
    private async Task<bool> ShowFirstAsync()
    {
        if (!await browser.Flag("fetchFirst", "demo/first.json")) return false;
        if (await FirstAsync(Keep.Open, DeskJson.Default.LakeView) is not { } opened) return false;
        TakeView(opened);
        Outlook = await FirstAsync(Keep.Outlook, DeskJson.Default.OutlookView);
        if (await FirstAsync(Keep.Shore, DeskJson.Default.ShoreView) is { } shore) TakeShore(shore);
        (IsFromEarlier, IsFirst) = (true, true);
        Tell();
        return true;
    }

    private async Task<T?> FirstAsync<T>(string name, JsonTypeInfo<T> type)
        where T : class => await browser.Text("first", name) is { } json ? await ReadAsync(json, type) : null;

    /// <summary>Keeps a record; returns once the database says it is on disk.</summary>
    public async Task<bool> KeepAsync(RecordRow row)
    {
        try
        {
            await browser.Do("addRecordsJson", JsonSerializer.Serialize([row], DeskJson.Default.IReadOnlyListRecordRow));
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
        _kept = JsonSerializer.Deserialize(json, DeskJson.Default.IReadOnlyListRecordRow) ?? [];
        Records = RecordSet.Standing(_kept);
        Entries = RecordSet.Joined(_kept, View?.Log ?? []);
    }

    // All records: what stands is worked out where the rows of the files are known too.
    private OpenLake Opener() => new(_kept, ChosenAt);

    private void TakeShore(ShoreView shore)
    {
        Shore = shore;
        if (shore.Spots is { } ranked) Spots = ranked;
    }

    private void TakeView(LakeView view)
    {
        View = view;
        Plane = new LocalProjection(new GeoPoint(view.OriginLatDeg, view.OriginLonDeg));
        // Words that did not change keep what was worded with them.
        TimeZoneInfo zone = ZoneOrUtc(view.ZoneId);
        if (!zone.Equals(Words.Zone)) Words = Words with { Zone = zone };
        Entries = RecordSet.Joined(_kept, view.Log);
    }

    // A question that is a part of the work under way.
    private Task<TAnswer> AskAsync<TAnswer>(Question<TAnswer> question, string? lake, Keep? keep = null)
        where TAnswer : class
    {
        // A stop between two questions: the next one must not wake the engine again.
        if (_stopped) throw new OperationCanceledException();
        Work?.Ask(question, TimeProvider.System.GetUtcNow());
        return AskBesideAsync(question, lake, keep);
    }

    // A question of its own, whatever work is under way.
    private async Task<TAnswer> AskBesideAsync<TAnswer>(Question<TAnswer> question, string? lake, Keep? keep = null)
        where TAnswer : class =>
        await browser.Ask(question, lake, ColdOpener(question), _self ??= DotNetObjectReference.Create(this), keep);

    // A worker that starts anew has no lake open.
    private OpenLake? ColdOpener(Question question) => _engineIsCold && question is not OpenLake ? Opener() : null;

    // Through a function that does something with the files of the answer.
    private async Task<TAnswer> ChangeFilesAsync<TAnswer>(Question<TAnswer> question, string lake)
        where TAnswer : class =>
        await browser.AskThrough("changeFiles", [], question, lake, ColdOpener(question)?.ToJson(), _self ??= DotNetObjectReference.Create(this));

    // What the engine makes goes straight to the user; an empty name leaves the files their own.
    private async Task HandOutAsync(Question<HandedOut> question, string lake, string name = "") =>
        await browser.AskThrough("download", [], question, name, lake, ColdOpener(question)?.ToJson());

    /// <summary>Asks beside the work that is shown, of a lake that is worked out already; null where there is no answer.</summary>
    internal async Task<TAnswer?> AskQuietlyAsync<TAnswer>(Question<TAnswer> question)
        where TAnswer : class
    {
        if (Lake is not { } lake || _engineIsCold) return null;
        try
        {
            return await AskBesideAsync(question, lake.Id);
        }
        catch (JSException)
        {
            // What was shown before stays; the work under way tells its own troubles.
            return null;
        }
    }

    /// <summary>This device's records of the open lake, corrected and removed ones too.</summary>
    internal IReadOnlyList<RecordRow> AllRecords => _kept;

    // The last answer kept of this version of the app; the chart takes its part of it in first.
    private async Task<T?> RecallAsync<T>(string lake, string name, string stamp, JsonTypeInfo<T> type)
        where T : class
    {
        string? json = await browser.Text("recall", lake, name, stamp);
        await Browser.BreatheAsync();
        return json is null ? null : await ReadAsync(json, type);
    }

    private static async Task<T?> ReadAsync<T>(string json, JsonTypeInfo<T> type)
    {
        T? value = JsonSerializer.Deserialize(json, type);
        await Browser.BreatheAsync();
        return value;
    }

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
