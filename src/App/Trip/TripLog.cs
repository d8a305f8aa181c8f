using SecondShore.App.Shell;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.App.Trip;

/// <summary>Keeps the log of a trip: entries with place, rig and stretch, and the stretches themselves.</summary>
public sealed class TripLog : IDisposable
{
    private static readonly TimeSpan FixHolds = TimeSpan.FromMinutes(2), RunningFor = TimeSpan.FromSeconds(30);
    private static readonly double RunningMps = 3, StoppedMps = 2.2, UsualBehindM = 20;
    private readonly Session _session;
    private readonly Browser _browser;
    private readonly BoatTrack _track = new();
    private TripState _state = new();
    private DateTimeOffset? _runningSince;
    private string? _lake;
    private bool _seeing;
    private Task _turn = Task.CompletedTask;

    /// <summary>Makes the log of a session's trips.</summary>
    public TripLog(Session session, Browser browser)
    {
        (_session, _browser) = (session, browser);
        _session.Changed += OnSession;
        _session.FixCame += OnFix;
        _session.TripWentOn += ReloadAsync;
    }

    /// <summary>The stretch under way; null on the run.</summary>
    public Stretch? Open => _state.Open;

    /// <summary>What is tied on.</summary>
    public RigOn Rig => _state.Rig;

    /// <summary>The boat's way of the last minutes.</summary>
    public IReadOnlyList<PlanePoint> Way => _track.Points;

    /// <summary>Where the jig is: behind the boat on the way it came; null while that is not known.</summary>
    public PlanePoint? Jig => Fresh is null ? null : _track.Behind(BehindM);

    private BoatFix? Fresh => _session.Fix is { } fix && _session.Clock.GetUtcNow() - fix.At < FixHolds ? fix : null;

    private double BehindM => _session.Stop?.BehindM is { } planned and > 0 ? planned : UsualBehindM;

    /// <summary>Logs what came. A bite, a fish or a snag opens a stretch where none is under way; nothing here closes the one under way.</summary>
    /// <returns>The record kept; null where it was not.</returns>
    public Task<RecordRow?> LogAsync(string kind, Entry entry) => InTurnAsync(now => LogAsync(kind, entry, now));

    private async Task<RecordRow?> LogAsync(string kind, Entry entry, DateTimeOffset now)
    {
        if (_session.Lake is not { } lake) return null;
        await LoadAsync(lake.Id);
        if (kind == RecordKinds.Nothing) return await NothingAsync(lake.Id, entry, now);
        if (kind == RecordKinds.Bite || kind == RecordKinds.Fish || kind == RecordKinds.Snag) await EnsureOpenAsync(now);
        RecordRow row = (await FilledAsync(kind, entry)).ToRow(lake.Id, kind, now);
        if (!await _session.KeepAsync(row)) return null;
        if (Open is { } open) await SaveAsync(_state with { Open = open.Signed(now) });
        return row;
    }

    /// <summary>Takes an entry back; one that closed a stretch opens it again.</summary>
    public Task<bool> TakeBackAsync(RecordRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return InTurnAsync(_ => TakeBackNowAsync(row));
    }

    private async Task<bool> TakeBackNowAsync(RecordRow row)
    {
        if (!await _session.KeepAsync(Entry.TakingBack(row, _session.Clock.GetUtcNow()))) return false;
        if (_state.ClosedBy == row.Id && Open is null) await SaveAsync(_state with { Open = _state.Closed, Closed = null, ClosedBy = null, Left = null });
        return true;
    }

    /// <summary>On to the next stop: the stretch ends here.</summary>
    public Task GoOnAsync() => InTurnAsync(async now =>
    {
        await CloseAsync(now, nothing: false);
        await _session.GoOnAsync();
        await SaveAsync(_state with { Expected = _session.Stop is { } next ? now.AddMinutes(next.RunMin) : null });
    });

    /// <summary>To another stop of the plan, on or back: the stretch ends where it was.</summary>
    public Task GoToAsync(int index) => InTurnAsync(async now =>
    {
        if (index == _session.StopIndex) return;
        await CloseAsync(now, nothing: false);
        await _session.GoToAsync(index);
        await SaveAsync(_state with { Expected = null, Left = null });
    });

    /// <summary>Homeward: the stretch ends, and none follows.</summary>
    public Task GoHomeAsync() => InTurnAsync(async now =>
    {
        await CloseAsync(now, nothing: false);
        await SaveAsync(_state with { Expected = null });
    });

    /// <summary>Something else is tied on: with another rig another stretch begins.</summary>
    public Task TieOnAsync(RigOn rig) => InTurnAsync(async now =>
    {
        if (_session.Lake is not { } lake) return;
        await LoadAsync(lake.Id);
        if (rig == Rig) return;
        bool goesOn = Open is { } open && !open.IsForgotten(now);
        await CloseAsync(now, nothing: false);
        await SaveAsync(_state with { Rig = rig });
        if (goesOn) await OpenAsync(now);
    });

    // Fingers are quicker than what they set going: one after the other, each at the moment of its tap.
    private Task<T> InTurnAsync<T>(Func<DateTimeOffset, Task<T>> work)
    {
        Task<T> mine = AfterAsync(_turn, _session.LakeNow, work);
        _turn = mine;
        return mine;
    }

    private async Task InTurnAsync(Func<DateTimeOffset, Task> work) => await InTurnAsync(async now =>
    {
        await work(now);
        return true;
    });

    private static async Task<T> AfterAsync<T>(Task before, DateTimeOffset now, Func<DateTimeOffset, Task<T>> work)
    {
        // What failed before has been said there.
        await before.ConfigureAwait(ConfigureAwaitOptions.ContinueOnCapturedContext | ConfigureAwaitOptions.SuppressThrowing);
        return await work(now);
    }

    private async Task<RecordRow?> NothingAsync(string lake, Entry entry, DateTimeOffset now)
    {
        if (Open is null && StartedAt(now) is { } began && now - began > TimeSpan.FromMinutes(1)) await OpenAsync(began);
        if (Open is not null && await CloseAsync(now, nothing: true) is { } closed) return closed;
        RecordRow row = (await FilledAsync(RecordKinds.Nothing, entry)).ToRow(lake, RecordKinds.Nothing, now);
        return await _session.KeepAsync(row) ? row : null;
    }

    private async Task EnsureOpenAsync(DateTimeOffset now)
    {
        if (Open is { } open && open.IsForgotten(now)) await CloseAsync(now, nothing: false);
        if (Open is null) await OpenAsync(StartedAt(now) ?? now);
    }

    // Without a position the boat is taken to have been as quick as planned.
    private DateTimeOffset? StartedAt(DateTimeOffset now)
    {
        if (_state.Expected is { } expected && expected <= now && now - expected < Stretch.Forgotten) return expected;
        return _session.IsPlanForToday && _session.StopIndex == 0 && _state.Left is null && _session.Stop is { } first && first.Arrive <= now
            && now - first.Arrive < Stretch.Forgotten && Fresh is null ? first.Arrive : null;
    }

    private async Task OpenAsync(DateTimeOffset from)
    {
        Entry where = await FilledAsync(RecordKinds.Effort, new Entry());
        await SaveAsync(_state with { Open = new Stretch(from, _session.LakeNow, where), Expected = null, Left = null });
    }

    private async Task<RecordRow?> CloseAsync(DateTimeOffset at, bool nothing)
    {
        if (Open is not { } open || _session.Lake is not { } lake) return null;
        RecordRow? row = open.Close(lake.Id, at, nothing, _session.Records);
        if (row is not null && !await _session.KeepAsync(row)) return null;
        await SaveAsync(_state with { Open = null, Expected = null, Left = open.Where.Spot, Closed = row is null ? null : open, ClosedBy = row?.Id });
        return row;
    }

    // What the phone, the chart and the plan know goes into every entry: the jig's own place and depth, not the boat's.
    private async Task<Entry> FilledAsync(string kind, Entry entry)
    {
        bool isReading = RecordKinds.Readings.Contains(kind);
        BoatFix? fix = Fresh;
        // What the sounder shows stands under the boat.
        PlanePoint? jig = isReading ? null : Jig;
        GeoPoint? place = jig is { } at && _session.Plane is { } plane ? plane.ToGeo(at) : fix?.Place;
        double? doubtM = fix is null ? null : Math.Round(fix.AccuracyM + (isReading || jig is not null ? 0 : BehindM), 1);
        entry = entry with
        {
            LatDeg = place is { } p ? Math.Round(p.LatDeg, 6) : null,
            LonDeg = place is { } q ? Math.Round(q.LonDeg, 6) : null,
            AccuracyM = doubtM,
        };
        if (isReading) return entry;
        StopView? stop = At(fix);
        double? chartM = (jig ?? fix?.Point) is { } over ? await _session.DepthAtAsync(over) : null;
        return entry with
        {
            SpeedMps = _session.Speeds.MeanMps is { } speed ? Math.Round(speed, 3) : null,
            Spot = stop?.Name,
            Form = stop?.Form,
            DepthM = chartM ?? (fix is null ? stop?.DepthM : null),
            LayerM = _session.Outlook?.ThermoclineM is { } layer ? Math.Round(layer.P50, 2) : null,
            Jig = Rig.Jig,
            JigWeightG = Rig.WeightG ?? (Rig.IsKnown ? null : stop?.JigWeightG),
            Trailer = Rig.Trailer,
            Colour = Rig.Colour,
            FishingLine = Rig.FishingLine,
        };
    }

    // With a position, the stop that the boat is at and no other; without one, the stop that the user went to.
    private StopView? At(BoatFix? fix)
    {
        if (_session.Day is not { } day || !_session.IsPlanForToday) return null;
        if (fix?.Point is not { } point) return _session.Stop;
        return StopAt.Find(day, point, fix.AccuracyM) is { } index ? day.Stops[index] : null;
    }

    private void OnFix(BoatFix fix)
    {
        _track.Add(fix);
        _ = DrawAsync().AsTask();
        // Of the fixes that come while one waits or is looked at, none is looked at: the next is near enough.
        if (_seeing) return;
        _seeing = true;
        _ = InTurnAsync(now => SeeAsync(fix, now));
    }

    private ValueTask DrawAsync() => _browser.Do("setTrack", Flat(Way), Flat(Jig is { } jig ? [jig] : []));

    private static string Flat(IReadOnlyList<PlanePoint> points) =>
        string.Join(' ', points.Select(p => FormattableString.Invariant($"{p.XM:0.0} {p.YM:0.0}")));

    // Arriving opens a stretch, running away from it closes it: nobody has a hand free for that.
    private async Task SeeAsync(BoatFix fix, DateTimeOffset now)
    {
        try
        {
            if (_session.Lake is not { } lake || _session.Day is not { } day || !_session.IsPlanForToday || fix.Point is not { } point) return;
            await LoadAsync(lake.Id);
            double speedMps = fix.SpeedMps ?? _session.Speeds.MeanMps ?? 0;
            StopView? stop = StopAt.Find(day, point, fix.AccuracyM) is { } index ? day.Stops[index] : null;
            if (_state.Left is { } left && stop?.Name != left) await SaveAsync(_state with { Left = null });
            if (stop is not null && speedMps < StoppedMps) await ArriveAsync(day, stop, now);
            else if (Open is not null && stop is null && speedMps > RunningMps)
            {
                _runningSince ??= now;
                if (now - _runningSince >= RunningFor) await CloseAsync(_runningSince.Value, nothing: false);
                return;
            }

            _runningSince = null;
        }
        finally
        {
            _seeing = false;
        }
    }

    private async Task ArriveAsync(DayView day, StopView stop, DateTimeOffset now)
    {
        if (_state.Left == stop.Name) return;
        if (Open is { } open)
        {
            if (open.Where.Spot == stop.Name && !open.IsForgotten(now)) return;
            await CloseAsync(now, nothing: false);
        }

        await _session.GoToAsync(day.Stops.ToList().IndexOf(stop));
        await OpenAsync(now);
    }

    private void OnSession()
    {
        if (_session.Lake is { } lake && lake.Id != _lake) _ = LoadAsync(lake.Id);
    }

    // Another tab of the device went on with this trip.
    private async Task ReloadAsync()
    {
        if (_lake is { } lake && TripState.Of(await _browser.Text("setting", "trip:" + lake)) is var kept && lake == _lake) _state = kept;
    }

    private async Task LoadAsync(string lake)
    {
        if (lake == _lake) return;
        TripState kept = TripState.Of(await _browser.Text("setting", "trip:" + lake));
        if (lake == _lake || _session.Lake?.Id != lake) return;
        (_lake, _state, _runningSince) = (lake, kept, null);
        _session.Redraw();
    }

    private async Task SaveAsync(TripState state)
    {
        if (state == _state || _lake is not { } lake) return;
        _state = state;
        await _browser.Do("saveSetting", "trip:" + lake, state.ToJson());
        _session.Redraw();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _session.Changed -= OnSession;
        _session.FixCame -= OnFix;
        _session.TripWentOn -= ReloadAsync;
    }
}
