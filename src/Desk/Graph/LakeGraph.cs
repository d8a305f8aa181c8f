using SecondShore.Answers;
using SecondShore.Answers.Lake;
using SecondShore.Desk.Entries;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Season;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Desk.Graph;

/// <summary>
/// One open lake as a graph of remembered answers: files, bottom, lake with this device's records, weather, outlook, forms, ranked
/// places, water in motion, day. Every answer is a function of the inputs below and of what is asked.
/// </summary>
internal sealed partial class LakeGraph(ITray tray, TimeProvider clock)
{
    private readonly WorkedOut _worked = new();
    private FiledLake? _files;
    private IReadOnlyList<RecordRow> _records = [];
    private DateTimeOffset? _chosenAt;

    private ContentId _recordsId = ContentId.Of(Array.Empty<string>());
    private TimeProvider? _present;

    private Memo<LakeFolder>? _read;
    private Memo<LakeFolder>? _filed;
    private Memo<PreparedLake>? _bottom;
    private Memo<StandingLake>? _lake;
    private Memo<DepthGrid>? _grid;

    /// <summary>What was worked out so far.</summary>
    public WorkedOut Worked => _worked;

    /// <summary>Whether a lake's files were laid on the desk.</summary>
    public bool HasLake => _files is not null;

    /// <summary>This device's records, corrected and removed ones too.</summary>
    public IReadOnlyList<RecordRow> Records => _records;

    /// <summary>Units and language that plans are worded in.</summary>
    public UnitSystem Units { get; set; } = new Questions.Reader().Units;

    /// <summary>Lays a lake's files on the desk.</summary>
    public void Lay(ILakeFiles files) => _files = _files is { } before ? before.With(files) : new FiledLake(files);

    /// <summary>The device's records, and the instant that answers stand for; null takes the lake's own.</summary>
    public void Stand(IReadOnlyList<RecordRow> records, DateTimeOffset? at)
    {
        (_records, _chosenAt) = (records, at);
        // Each record is named by its content already.
        _recordsId = ContentId.Of(records.Select(r => r.Id));
        // The present is an input as well: it stands still until it is looked at anew.
        _present = new StoppedClock(clock.GetUtcNow());
    }

    /// <summary>The lake as filed.</summary>
    public LakeFolder Filed(IProgress<double>? progress = null)
    {
        FiledLake files = Files;
        return (_filed ??= new("filed", _worked)).Of(ContentId.Of(files.AllButTackle.Hex, files.Tackle.Hex), () =>
        {
            progress?.Report(0);
            ProblemLog odd = new();
            TackleDocument? tackle = TackleEdits.Read(files.Files, odd);
            // A sound box is read apart from the rest. An odd one is the reader's to tell of, with everything else that is odd.
            if (odd.ToList().Count > 0) return Read(ContentId.Of(files.AllButTackle.Hex, files.Tackle.Hex), files.Files, progress);
            return Read(files.AllButTackle, files.Files, progress) with { Files = files.Files, Tackle = tackle };
        });
    }

    /// <summary>The lake with its bottom, as filed: without this device's records.</summary>
    public PreparedLake Bottom(IProgress<double>? reading = null, IProgress<double>? gridding = null)
    {
        LakeFolder filed = Filed(reading);
        return (_bottom ??= new("bottom", _worked)).Of(Files.Bottom, () => PreparedLake.From(filed, gridding)).With(filed);
    }

    /// <summary>The lake with this device's records.</summary>
    public PreparedLake Lake() => Standing.Lake;

    /// <summary>The instant that answers stand for.</summary>
    public DateTimeOffset At() => _chosenAt ?? AnswerTime.Default(Lake().Folder, _present ?? clock);

    /// <summary>How far the surface lies below full pool then, m; null where no level is known.</summary>
    public double? DropM() => Lake().Folder.Levels.Count > 0 ? PoolDrop.AtM(Lake().Folder.Levels, At()) : null;

    /// <summary>Depths at a level; null without a surveyed bottom.</summary>
    public DepthGrid? Grid(double dropM) => Lake().FullPool is { } full
        ? (_grid ??= new("level", _worked, 2)).Of(ContentId.Of(Files.Bottom.Hex, ContentId.Word(dropM)), () => full.Lowered(dropM))
        : null;

    private FiledLake Files => _files ?? throw new CouldNotComputeException(DeskFindings.NoLakeOpen.Of());

    // One object as long as its content is one: what it remembers of a level is not worked out again.
    private StandingLake Standing => (_lake ??= new("lake", _worked)).Of(
        ContentId.Of(Files.AllButTackle.Hex, Files.Tackle.Hex, _recordsId.Hex), () =>
    {
        PreparedLake bottom = Bottom();
        PreparedLake lake = bottom.With(OwnRecords.Into(bottom.Folder, _records));
        return new StandingLake(lake, ContentId.Of(lake.Folder.Readings.Skip(bottom.Folder.Readings.Count).SelectMany(Words)));
    });

    private static IEnumerable<string> Words(Reading r) =>
    [
        ContentId.Word(r.At), r.Kind.ToString(), ContentId.Word(r.Value), ContentId.Word(r.DepthM),
        ContentId.Word(r.Place?.LatDeg), ContentId.Word(r.Place?.LonDeg), r.Source,
    ];

    private LakeFolder Read(ContentId id, ILakeFiles files, IProgress<double>? progress) =>
        (_read ??= new("read", _worked)).Of(id, () => LakeFolderReader.Read(files, progress));

    private Part Share(string step, double from, double to) => new(tray, step, from, to);

    /// <summary>The lake with this device's records.</summary>
    /// <param name="Lake">The lake.</param>
    /// <param name="OwnReadings">Id of the readings that the device adds to the files': of its records they alone move the water.</param>
    private sealed record StandingLake(PreparedLake Lake, ContentId OwnReadings);

    private sealed class StoppedClock(DateTimeOffset present) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => present;
    }
}
