using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Wind;
using SecondShore.Answers.Words;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Questions;

/// <summary>Is the lake layered or turning, how deep is the thermocline, and when does each arm turn?</summary>
public static class OutlookAnswer
{
    /// <summary>Computes the outlook of a lake.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="at">The instant it shall stand for; its offset decides local dates.</param>
    /// <param name="options">Members and seed; null takes the usual.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    public static Outlook Compute(PreparedLake lake, DateTimeOffset at, EnsembleOptions? options = null,
        IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        options ??= new EnsembleOptions();
        LakeFolder folder = lake.Folder;
        List<Finding> assumed = [.. UnusedReadings.Said(UnusedReadings.Of(folder, at), at), .. lake.Assumed];
        PreparedWeather? weather = folder.Weather is { Count: > 0 } table ? WeatherPreparation.Prepare(WeatherInput.ToRaw(table), lake.Site) : null;
        if (weather is not null) assumed.AddRange(weather.Notes);
        WeatherSeries? season = weather is null ? null : SegmentFor(weather.Segments, at);
        List<WeatherSeries> past = weather is null ? [] : [.. weather.Segments.Where(s => s != season)];
        if (folder.Climate.Count > 0) past.AddRange(WeatherPreparation.Prepare(WeatherInput.Join(folder.Climate.Values), lake.Site).Segments);
        double? meanWind = LakePriors.MeanWindMps([.. past, .. season is null ? Array.Empty<WeatherSeries>() : [season]]);
        LakePriors? fitted = folder.Fitted.Parameters.Count == 0 || weather is null ? null
            : FittedNumbers.Apply(LakePriors.For(lake.Site, lake.Hypsography, weather.Source, meanWind), folder.Fitted);
        OutlookRequest request = new()
        {
            Site = lake.Site,
            Arms = ArmShapes(lake),
            ArmOf = lake.Arms is { } arms ? place => arms.ArmAt(place)?.Name : null,
            At = at,
            Weather = season,
            Source = weather?.Source ?? WeatherSource.Climate,
            PastYears = past,
            Levels = folder.Levels,
            Flows = folder.Flows,
            Readings = [.. folder.Readings, .. folder.Secchi],
            Profiles = folder.Profiles,
            Fitted = fitted,
            MeanWindMps = meanWind,
            Members = options.Members,
            Seed = options.Seed,
        };
        Outlook outlook = OutlookModel.Compute(request with { Readings = HazeTilt.Of(lake, request, assumed, cancel) }, progress, cancel);
        return outlook with { Assumed = [.. assumed.Concat(outlook.Assumed).Distinct()] };
    }

    /// <summary>The document of an outlook.</summary>
    public static OutlookDocument Document(PreparedLake lake, Outlook outlook, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(units);
        ArmOutlook whole = outlook.Lake;
        return new OutlookDocument
        {
            Lake = lake.Site.Name,
            At = outlook.At,
            State = StateKey(whole.State),
            ChanceStratified = Math.Round(whole.ChanceStratified, 3),
            ThermoclineM = SpreadDocument.From(whole.ThermoclineM),
            WarmSkin = whole.Skin is { } skin
                ? new OutlookDocument.SkinRow(SpreadDocument.From(skin.DepthM), SpreadDocument.From(skin.WarmerK)) : null,
            OxygenFloorM = SpreadDocument.From(whole.OxygenFloorM),
            Turnover = DateSpreadDocument.From(whole.TurnoverInDays, outlook.At),
            Profile = [.. whole.Profile.Select(p => new OutlookDocument.ProfileRow(Math.Round(p.DepthM, 3), SpreadDocument.From(p.TempC),
                p.OxygenMgPerL is { } oxygen ? SpreadDocument.From(oxygen) : null))],
            Arms = [.. outlook.Arms.Select(a => new OutlookDocument.ArmRow(a.Name, StateKey(a.State), SpreadDocument.From(a.ThermoclineM),
                DateSpreadDocument.From(a.TurnoverInDays, outlook.At)))],
            Words =
            [
                OutlookWords.Say(outlook, !units.IsMetric),
                .. outlook.SkinNamed is { } named ? [named.Say(units)] : Array.Empty<string>(),
                .. NextReading.Ask(lake.Folder, outlook) is { } ask ? [ask] : Array.Empty<string>(),
            ],
            Assumed = outlook.Assumed.Say(units),
            Doubted = outlook.Doubted.Say(units),
            Unused = [.. UnusedReadings.Of(lake.Folder, outlook.At).Select(u => new OutlookDocument.UnusedRow(u.At, KindKey(u.Kind), u.Value, u.Source, WhyKey(u.Why)))],
        };
    }

    /// <summary>The key of a state in documents.</summary>
    public static string StateKey(LayerState state) => state switch
    {
        LayerState.Stratified => "stratified",
        LayerState.Turning => "turning",
        _ => "mixed",
    };

    private static string KindKey(ReadingKind? kind) => kind switch
    {
        ReadingKind.HazeDepth => "haze_depth_m",
        ReadingKind.SurfaceTemperature => "surface_temp_c",
        ReadingKind.Temperature => "temp_c",
        ReadingKind.Secchi => "secchi_m",
        ReadingKind.Oxygen => "oxygen_mg_l",
        _ => "profile",
    };

    private static string WhyKey(UnusedBecause why) => why == UnusedBecause.AfterTheInstant ? "after_the_answer" : "earlier_season";

    // With measured hypsography and no survey the lake is one arm.
    private static IReadOnlyList<ArmShape> ArmShapes(PreparedLake lake)
    {
        if (lake.Arms is not { Arms.Count: > 1 } set) return [new ArmShape(lake.Site.Name, lake.Hypsography)];
        return [.. set.Arms.Select(a => new ArmShape(a.Name, a.Hypsography)
        {
            FetchM = a.FetchM,
            Neighbours = [.. a.Links.Select(l => (set.Arms[l.Neighbour].Name, l.SillM))],
        })];
    }

    // The part of a broken record that holds the instant, else the last that began before it.
    private static WeatherSeries? SegmentFor(IReadOnlyList<WeatherSeries> segments, DateTimeOffset at) =>
        segments.LastOrDefault(s => s.StartUtc <= at) ?? (segments.Count > 0 ? segments[^1] : null);
}
