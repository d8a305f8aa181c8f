using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using SecondShore.Answers;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Learn;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Wind;
using SecondShore.App.Compute.Views;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Season;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Weather;

namespace SecondShore.App.Compute;

/// <summary>Holds the open lake and what was worked out of it, and answers one question at a time.</summary>
internal sealed partial class LakeDesk(ITray tray)
{
    private PreparedLake? _bottom;
    private PreparedLake? _lake;
    private LakeFolder? _filed;
    private DepthGrid? _grid;
    private Outlook? _outlook;
    private DateTimeOffset _at;
    private string _records = "";

    /// <summary>Answers a question.</summary>
    /// <param name="verb">The question.</param>
    /// <param name="json">An <see cref="AskAbout"/>.</param>
    /// <param name="files">Files handed over since the last beginning.</param>
    /// <returns>The answer as JSON.</returns>
    /// <exception cref="SaidException">There is no answer; it says why and what would help, in the language that was asked in.</exception>
    public string Answer(string verb, string json, IReadOnlyDictionary<string, byte[]> files)
    {
        AskAbout about = JsonSerializer.Deserialize(json, ViewsJson.Default.AskAbout) ?? new AskAbout();
        try
        {
            return Of(verb, about, files);
        }
        catch (RefusedException refused)
        {
            throw new SaidException(refused.Finding.Say(about.Units), refused);
        }
    }

    private string Of(string verb, AskAbout about, IReadOnlyDictionary<string, byte[]> files) => verb switch
    {
        "open" => JsonSerializer.Serialize(Open(files, about), ViewsJson.Default.LakeView),
        "reopen" => JsonSerializer.Serialize(Reopen(about), ViewsJson.Default.LakeView),
        "outlook" => JsonSerializer.Serialize(FindOutlook(about), ViewsJson.Default.OutlookView),
        "shore" or "slice" => JsonSerializer.Serialize(Shore(about, verb == "slice"), ViewsJson.Default.ShoreView),
        "wind" => JsonSerializer.Serialize(Wind(about), ViewsJson.Default.WindView),
        "point" => JsonSerializer.Serialize(Point(about), AnswersJson.Default.PointSeries),
        "windfiles" => WindPapers(about),
        "pointfiles" => PointPapers(about),
        "day" => JsonSerializer.Serialize(Day(about), ViewsJson.Default.DayView),
        "hold" => JsonSerializer.Serialize(Hold(about), ViewsJson.Default.HoldView),
        "tackle" => JsonSerializer.Serialize(ChangeTackle(about), ViewsJson.Default.TackleView),
        "learn" => Learn(about),
        "papers" => Papers(about),
        "shorefiles" => ShorePapers(about),
        "forget" => ForgetDay(),
        "inspect" => JsonSerializer.Serialize(Inspect(files, about), ViewsJson.Default.InspectView),
        "adopt" => JsonSerializer.Serialize(Adopt(files, about), ViewsJson.Default.InspectView),
        "unpack" => Unpack(files),
        "rig" => JsonSerializer.Serialize(RigDesk.Answer(about.Rig ?? new RigAsk(8, 0.27, 5.4), _lake?.Folder.Tackle, about.Units, PlannedRig(about.Rig?.Stop)), ViewsJson.Default.RigView),
        "export" => Export(about),
        "weather" => TakeWeather(files),
        _ => throw new NotSupportedException($"The engine does not know the question '{verb}'."),
    };

    private LakeView Open(IReadOnlyDictionary<string, byte[]> files, AskAbout about)
    {
        tray.Progress(0.02, Steps.Files);
        (_bottom, _lake, _outlook, _grid) = (null, null, null, null);
        ForgetShore();
        _filed = LakeFolderReader.Read(new MemoryFiles("lake", files), Share(Steps.Files, 0.02, 0.3));
        _bottom = PreparedLake.From(_filed, Share(Steps.Bottom, 0.3, 0.95));
        return Reopen(about);
    }

    // The same files with this device's records of now: nothing is read or gridded anew.
    private LakeView Reopen(AskAbout about)
    {
        PreparedLake bottom = _bottom ?? throw new CouldNotComputeException(DeskFindings.NoLakeOpen.Of());
        string records = string.Join(' ', (about.Records ?? []).Select(r => r.Id));
        if (_lake is null || records != _records)
        {
            _lake = bottom.With(OwnRecords.Into(bottom.Folder, about.Records ?? []));
            (_outlook, _records) = (null, records);
            ForgetRanking();
        }

        LakeFolder folder = _lake.Folder;
        _at = about.At ?? AnswerTime.Default(folder, TimeProvider.System);
        double? dropM = folder.Levels.Count > 0 ? PoolDrop.AtM(folder.Levels, _at) : null;
        _grid = _lake.FullPool?.Lowered(dropM ?? 0);
        if (_grid is not null) tray.Grid(_grid);
        return new LakeView
        {
            Name = _lake.Site.Name,
            ZoneId = folder.TimeZone.Id,
            At = _at,
            WeatherUntil = folder.MeasuredUntil,
            ForecastUntil = folder.Weather is { Count: > 0 } weather ? weather.TimesUtc[^1] : null,
            IsInvented = folder.Document.IsInvented,
            WeatherSource = WeatherSource(folder),
            PastYears = WeatherFiles.YearsOf(folder.Files).Count,
            WindPlaces = ForecastPlaces.Text(WindPoints.Of(_lake)),
            OriginLatDeg = _grid?.Projection.Origin.LatDeg ?? _lake.Site.Position.LatDeg,
            OriginLonDeg = _grid?.Projection.Origin.LonDeg ?? _lake.Site.Position.LonDeg,
            BelowFullPoolM = dropM,
            Ramps = [.. folder.Ramps.Select(r => r.Name)],
            Tackle = TackleView.Of(folder.Tackle),
            Log = FiledLog.Of(bottom.Folder),
            Problems = [.. folder.Problems.Where(p => p.Severity != ProblemSeverity.Note).Select(p => p.Say(about.Units))],
            Chart = _grid is null ? null : Marks.Of(folder, _grid),
        };
    }

    private RigRequest? PlannedRig(string? stop) => stop is not null && _day is { } day && day.Rigs.TryGetValue(stop, out RigPick? pick) ? pick.Request : null;

    private HoldView Hold(AskAbout about)
    {
        HoldAsk ask = about.Hold ?? throw new CouldNotComputeException(DeskFindings.NoPlan.Of());
        Outlook outlook = _outlook ?? throw new CouldNotComputeException(DeskFindings.NoOutlook.Of());
        return _grid is null ? new HoldView(ask.WasM, ask.WasM, [], []) : HoldDesk.Answer(ask, _grid, DayOutlook.OnDay(outlook, ask.Date));
    }

    // The very document that the command line prints of the same files; the log may be longer than when the lake was opened.
    private string Learn(AskAbout about) => JsonSerializer.Serialize(LearnDocument.Of(
        LearnAnswer.Of(OwnRecords.Into((_bottom ?? throw new CouldNotComputeException(DeskFindings.NoLakeOpen.Of())).Folder, about.Records ?? []), _outlook, Wish(about.Learn), about.Units), []), AnswersJson.Default.LearnDocument);

    private static LearnWish Wish(LearnAsk? ask)
    {
        LearnWish usual = new();
        return usual with
        {
            Eats = ask?.Eats is { Length: > 0 } food ? [food] : usual.Eats,
            LowLight = ask?.LowLight,
            HoursAheadH = ask?.HoursAheadH ?? usual.HoursAheadH,
            TravelH = ask?.TravelMin / 60,
        };
    }

    private OutlookView FindOutlook(AskAbout about)
    {
        PreparedLake lake = Opened();
        ForgetRanking();
        _outlook = OutlookAnswer.Compute(lake, _at, new EnsembleOptions(), Share(Steps.Season, 0, 1));
        return OutlookViews.Of(lake, _outlook, EnsembleOptions.UsualMembers, about.Records ?? [], about.Units);
    }

    private PreparedLake Opened() => _lake ?? throw new CouldNotComputeException(DeskFindings.NoLakeOpen.Of());

    [SuppressMessage("Performance", "CA1859:Use concrete types when possible for improved performance", Justification = "The engine takes the interface.")]
    private IProgress<double> Share(string step, double from, double to) => new Part(tray, step, from, to);

    /// <summary>A piece of work's share of the whole.</summary>
    private sealed class Part(ITray tray, string step, double from, double to) : IProgress<double>
    {
        private double _told = -1;

        public void Report(double value)
        {
            if (value - _told < 0.01 && value < 1) return;
            _told = value;
            tray.Progress(from + ((to - from) * value), step);
        }
    }
}
