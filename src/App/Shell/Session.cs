using System.Text.Json;
using Microsoft.JSInterop;
using SecondShore.App.Store;
using SecondShore.App.Sync;
using SecondShore.App.Words;
using SecondShore.Desk;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.App.Shell;

/// <summary>What the page knows: the open lake, its answers, this device's records, and how the user reads numbers.</summary>
public sealed partial class Session(Browser browser)
{
    /// <summary>Raised when anything shown may have changed.</summary>
    public event Action? Changed;

    /// <summary>Raised when a record or a file of a lake was kept.</summary>
    public event Action? Kept;

    /// <summary>Language, units, clock.</summary>
    public Wording Words { get; private set; } = new(TextBook.For("en"), new LocaleInfo(), UnitSystem.Feet, TimeZoneInfo.Utc);

    /// <summary>Whether the first look at the database is done.</summary>
    public bool IsReady { get; private set; }

    /// <summary>Whether there is a signal, as far as the browser knows.</summary>
    public bool HasSignal { get; private set; } = true;

    /// <summary>Whether a newer version waits.</summary>
    public bool UpdateReady { get; private set; }

    /// <summary>Whether it is known by now which lake opens first, or that there is none.</summary>
    public bool HasLooked { get; private set; }

    /// <summary>Lakes on this device.</summary>
    public IReadOnlyList<LakeRow> Lakes { get; private set; } = [];

    /// <summary>The open lake's row.</summary>
    public LakeRow? Lake { get; private set; }

    /// <summary>Records of the open lake that stand, newest first.</summary>
    public IReadOnlyList<RecordRow> Records { get; private set; } = [];

    /// <summary>All entries that stand, this device's and those that came with the lake's files, newest first.</summary>
    public IReadOnlyList<RecordRow> Entries { get; private set; } = [];

    /// <summary>Work under way; null when there is none.</summary>
    public WorkState? Work { get; private set; }

    /// <summary>What went wrong last, in one sentence; null when nothing did.</summary>
    public string? Trouble { get; private set; }

    /// <summary>The lake's plane.</summary>
    public LocalProjection? Plane { get; private set; }

    /// <summary>Whether the browser refuses to keep anything, so that all is gone with the page.</summary>
    public bool KeepsNothing { get; private set; }

    /// <summary>Starts; a browser that lets nothing be read is told of in words, and never leaves a blank page.</summary>
    public async Task StartAsync()
    {
        try
        {
            await BeginAsync();
        }
        catch (JSException error)
        {
            (IsReady, Trouble) = (true, ExplainedTrouble(error));
            Tell();
        }
    }

    // Language, units, lakes, and the last lake's answers.
    private async Task BeginAsync()
    {
        LocaleInfo locale = JsonSerializer.Deserialize(await browser.Text("locale") ?? "{}", PageJson.Default.LocaleInfo) ?? new LocaleInfo();
        bool metric = await browser.Text("setting", "units") == "metric";
        Words = new Wording(TextBook.For(locale.Language), locale, metric ? UnitSystem.Metric : UnitSystem.Feet, TimeZoneInfo.Utc);
        await SetReaderAsync();
        await browser.Do("setUnits", metric);
        await browser.Do("keepOffline", DotNetObjectReference.Create(this));
        More = Trip.DayMoreDraft.OfJson(await browser.Text("setting", "day.more"));
        await browser.Do("listenToTabs", _self ??= DotNetObjectReference.Create(this));
        await ReadLakesAsync();
        KeepsNothing = await browser.Flag("keepsNothing");
        IsReady = true;
        Tell();
        string? last = await browser.Text("setting", "lake");
        LakeRow? lake = Lakes.FirstOrDefault(l => l.Id == last) ?? (Lakes.Count > 0 ? Lakes[0] : null);
        if (lake is null) await CreateDemoAsync(); else await OpenAsync(lake);
        HasLooked = true;
        Tell();
    }

    /// <summary>Switches between feet and metric, everywhere at once.</summary>
    public async Task SetMetricAsync(bool metric)
    {
        await browser.Do("saveSetting", "units", metric ? "metric" : "feet");
        await ShowMetricAsync(metric);
    }

    private async Task ShowMetricAsync(bool metric)
    {
        Words = Words with { Units = metric ? UnitSystem.Metric : UnitSystem.Feet };
        Tell();
        await SetReaderAsync();
        await browser.Do("setUnits", metric);
        await SayAgainAsync();
    }

    // Said once: all answers are in these words until others are said.
    private ValueTask SetReaderAsync() => browser.Do("setReader", new Reader(Words.Units.IsMetric, Words.Text.Language).ToJson());

    /// <summary>The browser says whether there is a signal.</summary>
    [JSInvokable]
    public void OnSignal(bool online)
    {
        HasSignal = online;
        Tell();
    }

    /// <summary>A newer version is on the device and waits to be taken.</summary>
    [JSInvokable]
    public void OnUpdateReady()
    {
        UpdateReady = true;
        Tell();
    }

    /// <summary>The engine's worker tells how far it is.</summary>
    [JSInvokable]
    public void OnProgress(double share, string what)
    {
        if (Work is not { } work) return;
        work.Told(share, what, TimeProvider.System.GetUtcNow());
        Tell();
    }

    /// <summary>Takes the newer version: the page loads anew.</summary>
    public ValueTask TakeUpdateAsync() => browser.Do("takeUpdate");

    /// <summary>Stops the work under way; the old answers stay.</summary>
    public async Task StopAsync()
    {
        _stopped = true;
        await browser.Do("stopEngine");
        _engineIsCold = true;
        Work = null;
        Tell();
    }

    /// <summary>Says that something went wrong.</summary>
    public void Say(string? trouble)
    {
        Trouble = trouble;
        Tell();
    }

    /// <summary>Reads the list of lakes again.</summary>
    public async Task ReadLakesAsync() =>
        Lakes = JsonSerializer.Deserialize(await browser.Text("lakesJson") ?? "[]", PageJson.Default.IReadOnlyListLakeRow) ?? [];

    private IReadOnlyList<RecordRow> _kept = [];

    /// <summary>Has what is shown drawn anew.</summary>
    internal void Redraw() => Tell();

    private void Tell() => Changed?.Invoke();

    /// <summary>What went wrong, in one sentence.</summary>
    internal string Explained(JSException error) => ExplainedTrouble(error);

    // Who stops work knows why no answer came.
    private void SayUnlessStopped(JSException error)
    {
        if (!IsStop(error)) Say(ExplainedTrouble(error));
    }

    private static bool IsStop(JSException error) => Browser.Told(error) == "stopped";

    private string ExplainedTrouble(JSException error)
    {
        string told = Browser.Told(error);
        return told switch
        {
            "quota" => Words["trouble.quota"],
            "newer" => Words["trouble.newer"],
            "database" => Words["trouble.database"],
            "away" => Words["weather.away"],
            _ when told.StartsWith(SaidException.Mark, StringComparison.Ordinal) => told[SaidException.Mark.Length..],
            _ when HostException.From(told) is { } refused => SyncWords.Of(refused, Words),
            // A message of the browser or of the runtime is for developers, and stands in the console.
            _ => Words["trouble.unknown"],
        };
    }
}
