using System.Globalization;
using SecondShore.Cli.Verbs;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;
using SecondShore.Open;
using SecondShore.Open.Asking;
using SecondShore.Open.Lakes;
using SecondShore.Open.Outlines;
using SecondShore.Open.Places;

namespace SecondShore.Cli;

/// <summary>Finds a lake for its angler: the place, the outline, and what only they know, asked on a terminal.</summary>
internal sealed class LakeFinding(LakeWish wish, Surroundings surroundings)
{
    private readonly OpenServices _services = OpenServices.At(wish.Geocoder, wish.Map);

    /// <summary>The lake as far as it can be told.</summary>
    /// <exception cref="OpenException">The place is not found.</exception>
    /// <exception cref="BadUsageException">Something must be chosen or said otherwise.</exception>
    public async Task<LakeDraft> DraftAsync(string asked, CancellationToken stop)
    {
        using HttpClient http = OpenHttp.Client();
        FolderAnswerCache cache = new(OpenHttp.CacheFolder("open"));
        using PoliteClient client = new(http, cache, surroundings.Clock, told => surroundings.Err.WriteLine(told.Say(wish.Units)));
        bool isPlace = PlaceSearch.TryCoordinates(asked, out GeoPoint place);
        if (!isPlace && wish.IsOffline)
            throw new BadUsageException("With --offline the place must be given as LAT,LON, such as 45.123,-84.567.");
        FoundPlace? found = isPlace ? null : await PlaceAsync(client, asked, stop).ConfigureAwait(false);
        if (found is not null) place = found.Place;
        string? called = found is { IsWater: true } ? found.Name : isPlace ? null : asked;
        (LakeOutline? outline, FoundWater? water) = await OutlineAsync(client, place, called, stop).ConfigureAwait(false);
        string name = water is { Name.Length: > 0 } ? water.Name
            : found?.Name ?? string.Create(CultureInfo.InvariantCulture, $"Lake at {place.LatDeg:0.###}, {place.LonDeg:0.###}");
        LakeDraft draft = new(name, place)
        {
            ElevationM = found?.ElevationM,
            TimeZoneId = found?.TimeZoneId,
            PlaceAttribution = found is null ? null : _services.PlaceAttribution,
            Outline = outline,
            DeepestM = wish.DeepestM,
            IsReservoir = wish.IsReservoir ?? (water is { IsReservoir: true } ? true : null),
            Dam = wish.Dam,
            SecchiM = wish.SecchiM,
            Clarity = wish.Clarity,
            Units = wish.Units.IsMetric ? DisplayUnits.Metric : DisplayUnits.UsCustomary,
        };
        return Told(draft);
    }

    private async Task<FoundPlace> PlaceAsync(PoliteClient client, string asked, CancellationToken stop)
    {
        IReadOnlyList<FoundPlace> places = await new PlaceSearch(client, _services).FindAsync(asked, stop).ConfigureAwait(false);
        if (places.Count == 1 && wish.Choose is null or 1) return places[0];
        string[] labels = [.. places.Select(p => string.Create(CultureInfo.InvariantCulture,
            $"{p.Name}{(p.IsWater ? "" : " (no lake itself)")}, {p.Region} ({p.Place.LatDeg:0.00}, {p.Place.LonDeg:0.00})"))];
        return places[NumberedChoice.Of($"{places.Count} places are called so", labels, wish.Choose, "--choose", surroundings)];
    }

    private async Task<(LakeOutline? Outline, FoundWater? Water)> OutlineAsync(PoliteClient client, GeoPoint place, string? name,
        CancellationToken stop)
    {
        if (wish.OutlineFile is { } file) return (FromFile(file), null);
        if (!wish.WantsOutline) return (StandIn(place), null);
        try
        {
            WaterSearch search = new(client, _services);
            IReadOnlyList<FoundWater> waters = await search.NearAsync(place, name, stop).ConfigureAwait(false);
            if (waters.Count == 0)
            {
                surroundings.Err.WriteLine(
                    "The open map has no lake there. Give --area or an --outline of your own; the lake goes on without.");
                return (StandIn(place), null);
            }

            FoundWater water = (wish.Water is null ? WaterSearch.Certain(waters) : null)
                ?? waters[NumberedChoice.Of("Several waters lie there", [.. waters.Select(Label)], wish.Water, "--water", surroundings)];
            LakeOutline outline = await search.OutlineAsync(water, stop).ConfigureAwait(false);
            string said = water.Name.Length > 0 ? water.Name : "A lake without a name";
            surroundings.Err.WriteLine($"{said}, {wish.Units.Area(outline.AreaM2)}. {outline.Attribution}");
            return (outline, water);
        }
        catch (OpenException e)
        {
            surroundings.Err.WriteLine(e.Finding.Say(wish.Units));
            return (StandIn(place), null);
        }
    }

    private string Label(FoundWater water)
    {
        string name = water.Name.Length > 0 ? water.Name : "(without a name)";
        string size = $"{wish.Units.Distance(water.Box.WidthM)} by {wish.Units.Distance(water.Box.HeightM)}";
        return $"{name}, {size}{(water.DistanceM > 0 ? $", {wish.Units.Distance(water.DistanceM)} away" : "")}";
    }

    private LakeOutline? StandIn(GeoPoint place) => wish.AreaM2 is { } areaM2 ? LakeOutline.Round(place, areaM2) : null;

    private static LakeOutline FromFile(string path)
    {
        if (!File.Exists(path)) throw new BadInputException($"{path}: there is no such file; give a GeoJSON polygon of the water.");
        MemoryFiles files = new("outline", [KeyValuePair.Create("outline.geojson", File.ReadAllBytes(path))]);
        SurveyImport import = SurveyImporter.Read(new SurveySource(files, "outline.geojson"), new SurveyOptions(), SurveyContext.Nothing);
        string name = Path.GetFileName(path);
        if (import.Survey?.Shoreline is { } shore && LakeOutline.Of(shore.Polygons, "", $"own file {name}") is { } outline) return outline;
        Problem[] errors = [.. import.Problems.Where(p => p.Severity == ProblemSeverity.Error)];
        throw new BadInputException(errors.Length > 0
            ? string.Join(Environment.NewLine, errors.Select(p => (p with { File = name }).Say(UnitSystem.Metric)))
            : $"{path}: the file holds no polygon of water; a GeoJSON Polygon or MultiPolygon with islands as holes is expected.");
    }

    // Three questions an angler can answer; nothing typed is 'I do not know'.
    private LakeDraft Told(LakeDraft draft)
    {
        if (surroundings.Answers is null) return draft;
        if (draft.DeepestM is null
            && Asked("Deepest water (such as 45ft; nothing if you do not know): ", t => LakeOptions.Deepest(t, wish.Units),
            out double deepestM))
            draft = draft with { DeepestM = deepestM };
        // The map may call it a reservoir; its angler knows better, and where the dam stands.
        string held = draft.IsReservoir == true ? "The map calls it a reservoir. Where does the dam stand? (LAT,LON; or no): "
            : "Does a dam hold it? (yes, no, or the dam's place as LAT,LON): ";
        if (wish.IsReservoir is null && Asked(held, Dam, out (bool Is, GeoPoint? Place) dam))
            draft = draft with { IsReservoir = dam.Is, Dam = dam.Place };
        if (draft is { SecchiM: null, Clarity: null }
            && Asked("How clear? (clear, stained, muddy, or how deep a white disc is seen): ", t => LakeOptions.Clarity(t, wish.Units),
            out (double? SecchiM, WaterClarity? Word) seen))
            draft = draft with { SecchiM = seen.SecchiM, Clarity = seen.Word };
        return draft;
    }

    private bool Asked<T>(string question, Func<string, T> read, out T value)
    {
        value = default!;
        for (int tries = 0; tries < 5; tries++)
        {
            surroundings.Err.Write(question);
            string? line = surroundings.Answers!.ReadLine()?.Trim();
            if (string.IsNullOrEmpty(line)) return false;
            try
            {
                value = read(line);
                return true;
            }
            catch (BadUsageException e)
            {
                surroundings.Err.WriteLine(e.Message[(e.Message.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
            }
        }

        return false;
    }

    private static (bool Is, GeoPoint? Place) Dam(string text) => text.ToLowerInvariant() switch
    {
        "yes" or "y" => (true, null),
        "no" or "n" => (false, null),
        _ => PlaceSearch.TryCoordinates(text, out GeoPoint place) ? (true, place)
            : throw new BadUsageException($"--dam {text} is neither yes or no nor a place; write it like 45.123,-84.567."),
    };
}
