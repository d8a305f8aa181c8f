using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Wind;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.Desk.Graph;

/// <summary>Weather, outlook, forms, ranked places and what the wind does.</summary>
internal sealed partial class LakeGraph
{
    /// <summary>Most places ranked: what a day is planned on.</summary>
    public static readonly int MostSpots = new DayWish { Date = default }.MaxSpots;

    private static readonly EnsembleOptions Ensemble = new();
    private Memo<LakeWeather>? _weather;
    private Memo<Outlook>? _outlook;
    private Memo<FormMap>? _forms;
    private Memo<ShoreResult>? _ranked;
    private Memo<WindResult>? _wind;

    /// <summary>The outlook as the lake stands.</summary>
    public Outlook Outlook(IProgress<double>? progress = null) => OutlookAt(At(), progress);

    /// <summary>The outlook run up to an instant.</summary>
    public Outlook OutlookAt(DateTimeOffset at, IProgress<double>? progress = null)
    {
        PreparedLake lake = Lake();
        // The lake as it stands, and the day that is planned, which may lie too far ahead for its course.
        return (_outlook ??= new("outlook", _worked, 2)).Of(OutlookId(at),
            () => OutlookAnswer.Compute(lake, Weather(lake), at, Ensemble, progress));
    }

    /// <summary>The bottom's forms.</summary>
    public FormMap Forms(IProgress<double>? progress = null)
    {
        PreparedLake lake = Lake();
        return (_forms ??= new("forms", _worked)).Of(Files.Bottom, () => ShoreAnswer.Forms(lake, progress));
    }

    /// <summary>The places ranked for an outlook as the lake stands, or for a depth, level or day that is tried.</summary>
    public ShoreResult Ranked(Tried tried, IProgress<double>? forms = null, Action? ranking = null)
    {
        (PreparedLake lake, Outlook outlook) = (Lake(), Outlook());
        FormMap found = Forms(forms);
        // As the lake stands, and what is tried.
        ShoreResult ranked = (_ranked ??= new("ranked", _worked, 2)).Of(ContentId.Of(StandingId.Hex, tried.Word), () =>
        {
            ranking?.Invoke();
            return ShoreAnswer.Compute(tried.Lake(lake, outlook), found, tried.Outlook(outlook), maxSpots: MostSpots);
        });
        return ranked with { Lake = lake };
    }

    /// <summary>What the wind does over some hours from now.</summary>
    public WindResult Wind(int hours)
    {
        (PreparedLake lake, Outlook outlook) = (Lake(), Outlook());
        lake.RequireGrid();
        // A day and five days are what is switched between.
        return (_wind ??= new("wind", _worked, 2)).Of(ContentId.Of(StandingId.Hex, ContentId.Word(hours)), () => Move(lake, outlook, hours));
    }

    private LakeWeather Weather(PreparedLake lake) => (_weather ??= new("weather", _worked)).Of(Files.Weather, () => LakeWeather.Of(lake));

    private ContentId StandingId => OutlookId(At());

    // Files, this device's readings among its records, and the instant. A log entry or a jig says nothing of the water.
    private ContentId OutlookId(DateTimeOffset at) => ContentId.Of(Files.Season.Hex, ContentId.Word(at), Standing.OwnReadings.Hex);

    private WindResult Move(PreparedLake lake, Outlook outlook, int hours)
    {
        DateTimeOffset at = outlook.At.AddMinutes(-outlook.At.Minute).AddSeconds(-outlook.At.Second);
        WindRun run = WindAnswer.Prepare(lake, outlook, new WindQuestion { At = at, Hours = hours },
            out WindQuestion asked, out List<Finding> assumed);
        double told = 0;
        while (run.Step())
        {
            if (run.ShareDone - told < 0.01) continue;
            told = run.ShareDone;
            tray.Progress(0.05 + (0.8 * told), Steps.Water);
        }

        return new WindResult(run.Finish(), outlook, asked, assumed);
    }
}
