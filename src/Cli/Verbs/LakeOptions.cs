using System.CommandLine;
using SecondShore.Answers.Rig;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Lake;
using SecondShore.Open.Places;

namespace SecondShore.Cli.Verbs;

/// <summary>Options of <c>lake</c> and what was typed with them.</summary>
internal sealed class LakeOptions
{
    private readonly Option<string?> _deepest = new("--deepest") { Description = "Deepest water, such as 45ft or 14m." };
    private readonly Option<bool> _dammed = new("--dammed") { Description = "A dam holds the lake." };
    private readonly Option<bool> _natural = new("--natural") { Description = "No dam holds the lake." };
    private readonly Option<string?> _dam = new("--dam") { Description = "Where the dam stands, as LAT,LON; says --dammed as well." };
    private readonly Option<string?> _clarity =
        new("--clarity") { Description = "How deep a white disc is seen, such as 6ft or 1.8m; or clear, stained, muddy." };
    private readonly Option<string?> _area =
        new("--area") { Description = "Area, such as 320acres, 130ha or 1.3km2: a round outline of it stands in where none comes." };
    private readonly Option<string?> _outline =
        new("--outline") { Description = "An outline of your own (GeoJSON polygon of the water); none is asked for." };
    private readonly Option<bool> _noOutline = new("--no-outline") { Description = "Ask for no outline." };
    private readonly Option<int?> _choose =
        new("--choose") { Description = "Which of several places of that name, by its number in the list." };
    private readonly Option<int?> _water = new("--water") { Description = "Which of several waters there, by its number in the list." };
    private readonly Option<int> _years = new("--years") { Description = "Past years of weather wanted.", DefaultValueFactory = _ => 15 };
    private readonly Option<bool> _offline =
        new("--offline") { Description = "Ask no service at all: the place comes as LAT,LON, weather later." };
    private readonly Option<string?> _geocoder = new("--geocoder") { Description = "Address of another place search of the same form." };
    private readonly Option<string?> _map = new("--map") { Description = "Address of another Overpass interface to the open map." };
    private readonly Option<string?> _forecast =
        new("--service") { Description = "Address of another forecast that speaks the same form." };
    private readonly Option<string?> _archive = new("--archive") { Description = "Address of its archive." };
    private readonly Option<string?> _units =
        new("--units") { Description = "feet or metric, for bare numbers and to show; left out, feet." };

    /// <summary>All of them.</summary>
    public IEnumerable<Option> All =>
        [_deepest, _dammed, _natural, _dam, _clarity, _area, _outline, _noOutline, _choose, _water, _years, _offline, _geocoder, _map,
            _forecast, _archive, _units];

    /// <summary>Reads what was typed.</summary>
    /// <exception cref="BadUsageException">Something of it has no meaning.</exception>
    public LakeWish Read(ParseResult parsed)
    {
        UnitSystem units = parsed.GetValue(_units) switch
        {
            null or "feet" or "ft" => UnitSystem.Feet,
            "metric" or "m" => UnitSystem.Metric,
            { } other => throw new BadUsageException($"--units {other} is not known; use feet or metric."),
        };
        bool dammed = parsed.GetValue(_dammed), natural = parsed.GetValue(_natural);
        GeoPoint? dam = parsed.GetValue(_dam) is { } place ? Place(place) : null;
        if (natural && (dammed || dam is not null)) throw new BadUsageException(
            "--natural and --dam or --dammed contradict each other; say one of them.");
        int years = parsed.GetValue(_years);
        if (years is < 0 or > 40) throw new BadUsageException($"--years {years} is out of range; use 0 to 40.");
        (double? secchiM, WaterClarity? clarity) = parsed.GetValue(_clarity) is { } seen ? Clarity(seen, units) : (null, null);
        return new LakeWish(units)
        {
            DeepestM = parsed.GetValue(_deepest) is { } deepest ? Deepest(deepest, units) : null,
            IsReservoir = dammed || dam is not null ? true : natural ? false : null,
            Dam = dam,
            SecchiM = secchiM,
            Clarity = clarity,
            AreaM2 = parsed.GetValue(_area) is { } area ? Area(area, units) : null,
            OutlineFile = parsed.GetValue(_outline),
            WantsOutline = !parsed.GetValue(_noOutline) && !parsed.GetValue(_offline),
            Choose = parsed.GetValue(_choose),
            Water = parsed.GetValue(_water),
            Years = years,
            IsOffline = parsed.GetValue(_offline),
            Geocoder = OpenHttp.Address(parsed.GetValue(_geocoder), "--geocoder"),
            Map = OpenHttp.Address(parsed.GetValue(_map), "--map"),
            Forecast = OpenHttp.Address(parsed.GetValue(_forecast), "--service"),
            Archive = OpenHttp.Address(parsed.GetValue(_archive), "--archive"),
        };
    }

    /// <summary>A deepest water as typed, m.</summary>
    /// <exception cref="BadUsageException">The text is none.</exception>
    public static double Deepest(string text, UnitSystem units) => QuantityText.TryLengthM(text, units, out double depthM)
        && depthM is >= 0.3 and <= 2000
        ? depthM
        : throw new BadUsageException($"--deepest {text} is no depth of a lake; write it like 45ft or 14m.");

    /// <summary>A clarity as typed: a depth, m, or a word.</summary>
    /// <exception cref="BadUsageException">The text is neither.</exception>
    public static (double? SecchiM, WaterClarity? Clarity) Clarity(string text, UnitSystem units)
    {
        if (WaterClarities.Of(text) is { } word) return (null, word);
        return QuantityText.TryLengthM(text, units, out double secchiM) && secchiM is >= 0.01 and <= 60
            ? (secchiM, null)
            : throw new BadUsageException($"--clarity {text} is neither clear, stained or muddy nor a depth; write it like 6ft or 1.8m.");
    }

    private static double Area(string text, UnitSystem units) => QuantityText.TryAreaM2(text, units, out double areaM2)
        && areaM2 is >= 500 and <= 1e11
        ? areaM2
        : throw new BadUsageException($"--area {text} is no area of a lake; write it like 320acres, 130ha or 1.3km2.");

    private static GeoPoint Place(string text) => PlaceSearch.TryCoordinates(text, out GeoPoint place)
        ? place
        : throw new BadUsageException($"--dam {text} is no place; write it like 45.123,-84.567.");
}

/// <summary>What was asked of <c>lake</c>. Immutable; null where it was left open.</summary>
internal sealed record LakeWish(UnitSystem Units)
{
    public double? DeepestM { get; init; }

    public bool? IsReservoir { get; init; }

    public GeoPoint? Dam { get; init; }

    public double? SecchiM { get; init; }

    public WaterClarity? Clarity { get; init; }

    public double? AreaM2 { get; init; }

    public string? OutlineFile { get; init; }

    public bool WantsOutline { get; init; }

    public int? Choose { get; init; }

    public int? Water { get; init; }

    public int Years { get; init; }

    public bool IsOffline { get; init; }

    public Uri? Geocoder { get; init; }

    public Uri? Map { get; init; }

    public Uri? Forecast { get; init; }

    public Uri? Archive { get; init; }
}
