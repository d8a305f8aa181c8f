using SecondShore.Engine.Basin;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;

namespace SecondShore.Formats.Lake;

/// <summary>
/// A lake as its files tell it, in SI and in the engine's types. Immutable; the files themselves stay beside it, byte
/// for byte, so that writing the folder again changes nothing that nobody touched.
/// </summary>
public sealed record LakeFolder
{
    /// <summary>The files.</summary>
    public required ILakeFiles Files { get; init; }

    /// <summary>What lake.json says; every value null where there is no such file.</summary>
    public LakeDocument Document { get; init; } = new();

    /// <summary>Whether a lake could be made out at all: it has a position.</summary>
    public bool HasSite => SiteOrNull is not null;

    /// <summary>The site, or null when no file gives a position.</summary>
    public LakeSite? SiteOrNull { get; init; }

    /// <summary>The site.</summary>
    /// <exception cref="InvalidOperationException">No file gives a position: look at <see cref="HasSite"/> or <see cref="IsUsable"/> first.</exception>
    public LakeSite Site => SiteOrNull ?? throw new InvalidOperationException($"{Files.Name} gives no position for the lake.");

    /// <summary>The lake's time zone.</summary>
    public TimeZoneInfo TimeZone { get; init; } = TimeZoneInfo.Utc;

    /// <summary>The bottom as surveyed, or null.</summary>
    public Survey? Survey { get; init; }

    /// <summary>What was understood of each survey file.</summary>
    public IReadOnlyList<SurveyUnderstanding> SurveyFiles { get; init; } = [];

    /// <summary>What must be asked about survey files before they can be used.</summary>
    public IReadOnlyList<SurveyQuestion> SurveyQuestions { get; init; } = [];

    /// <summary>Whether a file is one of a lake folder's own, by its name, and so no survey.</summary>
    public static bool IsOwnFile(string name) => LakeSurveys.IsOwn(name);

    /// <summary>The shoreline: shoreline.geojson, else the survey's own, else null.</summary>
    public Shoreline? Shoreline { get; init; }

    /// <summary>Area by depth from hypsography.csv, or null.</summary>
    public Hypsography? Hypsography { get; init; }

    /// <summary>Weather of the past season up to now, then the forecast; or null.</summary>
    public WeatherTable? Weather { get; init; }

    /// <summary>Winds at places of their own, from wind/NAME.csv with its place in lake.json.</summary>
    public IReadOnlyList<PlacedWeather> Winds { get; init; } = [];

    /// <summary>End of the measured part of <see cref="Weather"/>, where the folder says it; else null.</summary>
    public DateTimeOffset? MeasuredUntil => Document.MeasuredUntil;

    /// <summary>Weather of past years.</summary>
    public IReadOnlyDictionary<int, WeatherTable> Climate { get; init; } = new Dictionary<int, WeatherTable>();

    /// <summary>Pool levels in order of time.</summary>
    public IReadOnlyList<PoolLevel> Levels { get; init; } = [];

    /// <summary>Readings in order of file.</summary>
    public IReadOnlyList<Reading> Readings { get; init; } = [];

    /// <summary>Secchi depths from secchi.csv, in order of time; those of readings.csv stand in <see cref="Readings"/>.</summary>
    public IReadOnlyList<Reading> Secchi { get; init; } = [];

    /// <summary>Casts in order of time.</summary>
    public IReadOnlyList<WaterProfile> Profiles { get; init; } = [];

    /// <summary>Daily flows in order of time.</summary>
    public IReadOnlyList<DailyFlow> Flows { get; init; } = [];

    /// <summary>Cover.</summary>
    public IReadOnlyList<CoverMark> Cover { get; init; } = [];

    /// <summary>The user's tackle; null without tackle.json.</summary>
    public TackleDocument? Tackle { get; init; }

    /// <summary>Every row of the log, in order of file: corrected ones and withdrawals too.</summary>
    public IReadOnlyList<LogRow> LogRows
    {
        get => _logRows;
        init => (_logRows, Log) = (value, LogRow.Standing(value));
    }

    private readonly IReadOnlyList<LogRow> _logRows = [];

    /// <summary>The log as it stands: of <see cref="LogRows"/> those that hold.</summary>
    public IReadOnlyList<LogRow> Log { get; private init; } = [];

    /// <summary>Measured overturns (overturn.csv of measured lakes), to score against.</summary>
    public IReadOnlyList<OverturnRow> Overturns { get; init; } = [];

    /// <summary>Launch ramps.</summary>
    public IReadOnlyList<RampMark> Ramps => Document.Ramps;

    /// <summary>No-wake areas.</summary>
    public IReadOnlyList<NoWakeArea> NoWakeAreas => Document.NoWakeAreas;

    /// <summary>Marks of the user.</summary>
    public IReadOnlyList<PlaceMark> Marks => Document.Marks;

    /// <summary>What was fitted to this lake.</summary>
    public FittedLake Fitted => Document.Fitted;

    /// <summary>Units to show: as lake.json says, else metric.</summary>
    public DisplayUnits DisplayUnits => Document.Units ?? DisplayUnits.Metric;

    /// <summary>Everything found wrong or worth saying.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>What had to be assumed, in sentences.</summary>
    public IReadOnlyList<Finding> Assumed { get; init; } = [];

    /// <summary>Whether nothing stands in the way of an answer: no problem is an error.</summary>
    public bool IsUsable => HasSite && !Problems.Any(p => p.Severity == ProblemSeverity.Error);
}
