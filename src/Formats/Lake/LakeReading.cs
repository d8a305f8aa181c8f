using System.Globalization;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>One pass over a lake's files.</summary>
internal sealed class LakeReading(ILakeFiles files, IProgress<double>? progress, CancellationToken cancellation)
{
    private readonly ProblemLog _log = new();
    private readonly List<Finding> _assumed = [];

    public LakeFolder Run()
    {
        LakeDocument document = One("lake.json", (f, b) => LakeDocumentReader.Read(f, b, _log)) ?? new LakeDocument();
        Report(0.05);
        LakeSurveys surveys = new(files, document, _log, cancellation);
        surveys.Read(One("hypsography.csv", static (_, _) => "there") is not null);
        Report(0.4);
        GeoPoint? position = document.Position ?? surveys.Middle;
        TimeZoneInfo zone = ZoneOf(document, position);
        ReadContext context = new(_log, zone, document.ElevationM);
        LakeFolder lake = new()
        {
            Files = files,
            Document = document,
            TimeZone = zone,
            Survey = surveys.Survey,
            SurveyFiles = surveys.Understandings,
            SurveyQuestions = surveys.Questions,
            Shoreline = surveys.Shoreline,
            Hypsography = One("hypsography.csv", (f, b) => WaterReaders.Hypsography(f, b, context)),
            Weather = One("weather.csv", (f, b) => WeatherReader.Read(f, b, context)),
            Winds = Winds(document, context),
            Climate = Climate(context),
            Levels = One("level.csv", (f, b) => WaterReaders.Levels(f, b, context)) ?? [],
            Readings = One("readings.csv", (f, b) => UserReaders.Readings(f, b, context)) ?? [],
            Secchi = One("secchi.csv", (f, b) => WaterReaders.Secchi(f, b, context)) ?? [],
            Profiles = One("profiles.csv", (f, b) => WaterReaders.Profiles(f, b, context)) ?? [],
            Flows = One("flows.csv", (f, b) => WaterReaders.Flows(f, b, context)) ?? [],
            Cover = [.. One("cover.csv", (f, b) => UserReaders.Cover(f, b, context)) ?? [], .. One("cover.gpx", (f, b) => CoverGpxReader.Read(f, b, _log)) ?? []],
            Tackle = One("tackle.json", (f, b) => TackleReader.Read(f, b, _log)),
            LogRows = One("log.csv", (f, b) => LogReader.Read(f, b, context)) ?? [],
            Overturns = One("overturn.csv", (f, b) => WaterReaders.Overturns(f, b, context)) ?? [],
        };
        lake = lake with { SiteOrNull = SiteOf(document, position, zone, lake) };
        Judge(lake);
        Report(1);
        return lake with { Problems = _log.ToList(), Assumed = _assumed };
    }

    private T? One<T>(string name, Func<string, byte[], T?> read)
        where T : class
    {
        cancellation.ThrowIfCancellationRequested();
        string? filed = files.Find(name);
        if (filed is null)
        {
            if (files is FolderFiles folder && folder.HasFolder(name)) _log.Warn(name, "this is a folder, and a file of this name is looked for: rename it, or put the file in its place.");
            return null;
        }

        try
        {
            return read(filed, files.Read(filed));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _log.Error(filed, FileFaults.Of(e));
            return null;
        }
    }

    private List<PlacedWeather> Winds(LakeDocument document, ReadContext context)
    {
        List<PlacedWeather> winds = [];
        foreach (LakeFileEntry entry in files.Entries.Where(e => e.Name.StartsWith("wind/", StringComparison.OrdinalIgnoreCase) && FileNames.Ending(e.Name) == "csv"))
        {
            string stem = FileNames.Leaf(FileNames.Stem(entry.Name));
            if (document.WindStations.FirstOrDefault(s => string.Equals(s.Name, stem, StringComparison.OrdinalIgnoreCase)) is not { } station)
                _log.Warn(entry.Name, $"lake.json gives no place for this wind under wind_stations.{stem}; the file is not used.");
            else if (One(entry.Name, (f, b) => WeatherReader.Read(f, b, context, windOnly: true)) is WeatherTable table)
                winds.Add(new PlacedWeather(station, table));
        }

        foreach (WindStation station in document.WindStations)
            if (!files.Entries.Any(e => string.Equals(e.Name, $"wind/{station.Name}.csv", StringComparison.OrdinalIgnoreCase)))
                _log.Note("lake.json", $"wind_stations.{station.Name} has no file wind/{station.Name}.csv; it is not used.");
        return winds;
    }

    private Dictionary<int, WeatherTable> Climate(ReadContext context)
    {
        Dictionary<int, WeatherTable> climate = [];
        List<LakeFileEntry> entries = [.. files.Entries.Where(e => e.Name.StartsWith("climate/", StringComparison.OrdinalIgnoreCase) && FileNames.Ending(e.Name) == "csv")];
        for (int i = 0; i < entries.Count; i++)
        {
            string name = entries[i].Name, stem = FileNames.Leaf(FileNames.Stem(name));
            if (!int.TryParse(stem, NumberStyles.None, CultureInfo.InvariantCulture, out int year) || year < LakeClock.FirstYear || year >= LakeClock.EndYear)
                _log.Warn(name, $"the name is not a year, such as climate/2014.csv; the file is not used.");
            else if (One(name, (f, b) => WeatherReader.Read(f, b, context)) is WeatherTable table) climate[year] = table;
            Report(0.5 + (0.4 * (i + 1) / entries.Count));
        }

        return climate;
    }

    private TimeZoneInfo ZoneOf(LakeDocument document, GeoPoint? position)
    {
        if (document.TimeZoneId is string id)
        {
            if (TimeZones.TryFind(id, out TimeZoneInfo named)) return named;
            _log.Warn("lake.json", $"time_zone is '{TextDecoding.Excerpt(id)}', which is no IANA zone known here, such as America/New_York; standard time by longitude is taken.");
        }

        if (document.StandardOffsetH is double offset) return TimeZones.Fixed(offset);
        if (position is not GeoPoint place) return TimeZoneInfo.Utc;
        TimeZoneInfo solar = TimeZones.Solar(place.LonDeg);
        _assumed.Add($"No time zone is given; local times are taken as {solar.Id}, the whole hour of the longitude, without summer time.");
        return solar;
    }

    private LakeSite? SiteOf(LakeDocument document, GeoPoint? position, TimeZoneInfo zone, LakeFolder lake)
    {
        if (position is not GeoPoint place) return null;
        if (document.Position is null) _assumed.Add("The lake's position is taken from the middle of its survey.");
        if (document.ElevationM is null) _assumed.Add("The elevation of full pool is not known; sea level is taken for the air pressure.");
        double? wordSecchiM = document is { SecchiM: null, LightExtinctionPerM: null, Clarity: { } word } ? WaterClarities.SecchiM(word) : null;
        if (wordSecchiM is { } m)
            _assumed.Add($"The water is told of as {Finding.Of(WaterClarities.WordOf(document.Clarity!.Value))}: a Secchi depth of about {Told.Difference(m)} is taken.");
        return new LakeSite
        {
            Name = document.Name ?? files.Name,
            Position = place,
            ElevationM = document.ElevationM ?? 0,
            TimeZoneId = zone.Id,
            SurfaceAreaM2 = document.SurfaceAreaM2 ?? lake.Hypsography?.SurfaceAreaM2,
            MaxDepthM = document.MaxDepthM ?? lake.Hypsography?.MaxDepthM,
            SecchiM = document.SecchiM ?? wordSecchiM,
            SecchiLogSd = wordSecchiM is null ? null : WaterClarities.LogSd,
            LightExtinctionPerM = document.LightExtinctionPerM,
            OutletDepthM = document.OutletDepthM,
            IsReservoir = document.IsReservoir ?? document.OutletDepthM is not null,
            WindHeightM = document.WindHeightM,
        };
    }

    private void Judge(LakeFolder lake)
    {
        if (files.Entries.Count == 0)
        {
            _log.Error(files.Name, "the folder is empty; a lake needs at least a survey or a lake.json.");
            return;
        }

        if (!lake.HasSite && !_log.ToList().Any(p => p.Severity == ProblemSeverity.Error))
            _log.Error("lake.json", "nothing gives the lake's position; add lake.json with latitude_deg and longitude_deg, or a survey that lies on the earth.");
        if (lake.HasSite && lake.Survey is null && lake.Hypsography is null && lake.Document.MaxDepthM is null)
            _log.Warn(files.Name, "there is no survey, no hypsography.csv and no max_depth_m: the shape of the lake is unknown.");
    }

    private void Report(double share) => progress?.Report(share);
}
