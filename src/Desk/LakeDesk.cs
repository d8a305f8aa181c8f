using SecondShore.Answers.Wind;
using SecondShore.Desk.Graph;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Weather;

namespace SecondShore.Desk;

/// <summary>
/// Holds one open lake and answers one question at a time. An answer depends on the lake's files, this device's records, the reader and
/// the question alone, never on what was asked before: what was asked before only makes it quicker.
/// </summary>
public sealed partial class LakeDesk
{
    private static readonly Dictionary<string, byte[]> Nothing = [];
    private readonly ITray _tray;
    private readonly TimeProvider _clock;
    private LakeGraph _graph;
    private string? _of;
    private IReadOnlyDictionary<string, byte[]> _beside = Nothing;
    private DepthGrid? _drawn;
    private Reader _reader = new();
    private UnitSystem _units = new Reader().Units;

    /// <summary>A desk with nothing on it.</summary>
    /// <param name="tray">Takes what does not cross as JSON.</param>
    /// <param name="clock">The present; null for this device's.</param>
    public LakeDesk(ITray tray, TimeProvider? clock = null)
    {
        (_tray, _clock) = (tray, clock ?? TimeProvider.System);
        _graph = new LakeGraph(_tray, _clock);
    }

    /// <summary>Whose words the answers are in, until another is said.</summary>
    public Reader Reader
    {
        get => _reader;
        set => (_reader, _units) = (value, value.Units);
    }

    /// <summary>What was worked out for the lake that is open.</summary>
    internal WorkedOut Worked => _graph.Worked;

    /// <summary>Lays the files of a lake on the desk.</summary>
    /// <param name="lake">The lake's id: another lake leaves nothing of the one before.</param>
    /// <param name="files">Its files.</param>
    public void Lay(string lake, IReadOnlyDictionary<string, byte[]> files)
    {
        if (_of != lake) (_graph, _of, _drawn) = (new LakeGraph(_tray, _clock), lake, null);
        _graph.Lay(new MemoryFiles("lake", files));
    }

    /// <summary>Answers a question.</summary>
    /// <param name="question">The question.</param>
    /// <param name="beside">Files that came with it.</param>
    /// <exception cref="SaidException">There is no answer; it says why and what would help, in the reader's language.</exception>
    public TAnswer Ask<TAnswer>(Question<TAnswer> question, IReadOnlyDictionary<string, byte[]>? beside = null)
        where TAnswer : class
    {
        ArgumentNullException.ThrowIfNull(question);
        return Said(beside, () => question.AnsweredBy(this));
    }

    /// <summary>Answers a question that crossed, with an answer to cross back.</summary>
    /// <param name="question">The question.</param>
    /// <param name="beside">Files that came with it.</param>
    /// <exception cref="SaidException">There is no answer; it says why and what would help, in the reader's language.</exception>
    public string AskJson(Question question, IReadOnlyDictionary<string, byte[]>? beside = null)
    {
        ArgumentNullException.ThrowIfNull(question);
        return Said(beside, () => question.AnswerJson(this));
    }

    private T Said<T>(IReadOnlyDictionary<string, byte[]>? beside, Func<T> answer)
    {
        _beside = beside ?? Nothing;
        _graph.Units = _units;
        try
        {
            return answer();
        }
        catch (RefusedException refused)
        {
            throw new SaidException(refused.Finding.Say(_units), refused);
        }
        finally
        {
            _beside = Nothing;
        }
    }

    internal LakeView Open(OpenLake question)
    {
        _graph.Stand(question.Records, question.At);
        LakeFolder filed = _graph.Bottom(Share(Steps.Files, 0.02, 0.3), Share(Steps.Bottom, 0.3, 0.95)).Folder;
        LakeFolder folder = _graph.Lake().Folder;
        double? dropM = _graph.DropM();
        DepthGrid? grid = _graph.Grid(dropM ?? 0);
        // Who opens a lake has nothing of it yet.
        _drawn = null;
        Show(grid);
        WaterDrawing water = grid is null ? new WaterDrawing(null, 0, []) : Marks.Of(folder, grid);
        _tray.Draw(water);
        return new LakeView
        {
            Name = _graph.Lake().Site.Name,
            ZoneId = folder.TimeZone.Id,
            At = _graph.At(),
            WeatherUntil = folder.MeasuredUntil,
            ForecastUntil = folder.Weather is { Count: > 0 } weather ? weather.TimesUtc[^1] : null,
            IsInvented = folder.Document.IsInvented,
            WeatherSource = WeatherSource(folder),
            PastYears = WeatherFiles.YearsOf(folder.Files).Count,
            WindPlaces = ForecastPlaces.Text(WindPoints.Of(_graph.Lake())),
            OriginLatDeg = grid?.Projection.Origin.LatDeg ?? _graph.Lake().Site.Position.LatDeg,
            OriginLonDeg = grid?.Projection.Origin.LonDeg ?? _graph.Lake().Site.Position.LonDeg,
            BelowFullPoolM = dropM,
            Ramps = [.. folder.Ramps.Select(r => r.Name)],
            Tackle = TackleView.Of(folder.Tackle),
            Log = Entries.FiledLog.Of(filed),
            Problems = [.. folder.Problems.Where(p => p.Severity != ProblemSeverity.Note).Select(p => p.Say(_units))],
            MaxDepthM = grid is null ? null : water.MaxDepthM,
        };
    }

    // A grid goes to the chart once, not with every depth tried on it.
    private void Show(DepthGrid? grid)
    {
        if (grid is null || ReferenceEquals(grid, _drawn)) return;
        _drawn = grid;
        _tray.Grid(grid);
    }

    private void Hand(ILakeFiles files, IEnumerable<string> names)
    {
        foreach (string name in names) _tray.Put(ITray.FilePrefix + name, files.Read(name));
    }

    private HandedOut Hand(ILakeFiles files)
    {
        string[] names = [.. files.Entries.Select(file => file.Name)];
        Hand(files, names);
        return new HandedOut(names);
    }

    private Part Share(string step, double from, double to) => new(_tray, step, from, to);
}
