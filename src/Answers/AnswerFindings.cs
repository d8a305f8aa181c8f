namespace SecondShore.Answers;

/// <summary>What an answer finds, assumes and refuses on its way from a lake folder.</summary>
public static class AnswerFindings
{
    /// <summary>A haze that wind held deeper.</summary>
    public static readonly FindingKind HeldDeeper = new("answer.held-deeper", "source", "tilt", "seen", "rest");

    /// <summary>A haze that wind held shallower.</summary>
    public static readonly FindingKind HeldShallower = new("answer.held-shallower", "source", "tilt", "seen", "rest");

    /// <summary>A lake without weather.</summary>
    public static readonly FindingKind NoWeather = new("answer.no-weather", "lake");

    /// <summary>Weather without a row.</summary>
    public static readonly FindingKind WeatherEmpty = new("answer.weather-empty", "at");

    /// <summary>Weather of another time.</summary>
    public static readonly FindingKind WeatherElsewhere = new("answer.weather-elsewhere", "at", "from", "to");

    /// <summary>Fewer hours than asked for.</summary>
    public static readonly FindingKind WeatherEndsEarly = new("answer.weather-ends-early", "end", "hours", "asked");

    /// <summary>Weather that does not reach back.</summary>
    public static readonly FindingKind StillAtFirst = new("answer.still-at-first");

    /// <summary>Winds by place.</summary>
    public static readonly FindingKind WindByPlace = new("answer.wind-by-place", "count", "names");

    /// <summary>One wind over a lake of arms.</summary>
    public static readonly FindingKind OneWind = new("answer.one-wind", "arms");

    /// <summary>A station whose height is not said.</summary>
    public static readonly FindingKind StationHeight = new("answer.station-height", "height");

    /// <summary>A wind record with many calms.</summary>
    public static readonly FindingKind ManyCalms = new("answer.many-calms", "station", "percent");

    /// <summary>A point that is not on the water.</summary>
    public static readonly FindingKind PointOffWater = new("answer.point-off-water", "lat", "lon");

    /// <summary>A chain of less than a day.</summary>
    public static readonly FindingKind ChainTooShort = new("answer.chain-too-short", "from", "to");

    /// <summary>A chain whose place is not known.</summary>
    public static readonly FindingKind ChainWithoutPlace = new("answer.chain-without-place", "site");

    /// <summary>Clarity that the log's beliefs lack.</summary>
    public static readonly FindingKind ClarityUnknown = new("answer.clarity-unknown");

    /// <summary>A surface temperature that the log's beliefs lack.</summary>
    public static readonly FindingKind SurfaceUnknown = new("answer.surface-unknown");

    /// <summary>Food that the log's beliefs lack.</summary>
    public static readonly FindingKind FoodUnknown = new("answer.food-unknown");

    /// <summary>A way between stops that is not known.</summary>
    public static readonly FindingKind WayAssumed = new("answer.way-assumed");

    /// <summary>A ramp asked for where none is known.</summary>
    public static readonly FindingKind NoRamps = new("answer.no-ramps", "asked");

    /// <summary>A ramp that is not known.</summary>
    public static readonly FindingKind NoSuchRamp = new("answer.no-such-ramp", "asked", "known");

    /// <summary>A ramp above the water.</summary>
    public static readonly FindingKind RampDry = new("answer.ramp-dry", "ramp");

    /// <summary>A ramp without deep water.</summary>
    public static readonly FindingKind RampShallow = new("answer.ramp-shallow", "ramp", "way");

    /// <summary>No ramp.</summary>
    public static readonly FindingKind NoRampUsable = new("answer.no-ramp-usable");

    /// <summary>A lake too shallow for the boat.</summary>
    public static readonly FindingKind NowhereDeepEnough = new("answer.nowhere-deep-enough");

    /// <summary>A bottom without a spot.</summary>
    public static readonly FindingKind NoStopWorth = new("answer.no-stop-worth");

    /// <summary>A time to be back that was not given.</summary>
    public static readonly FindingKind HomeAssumed = new("answer.home-assumed", "home");

    /// <summary>A day too short for a stop.</summary>
    public static readonly FindingKind NoStopFits = new("answer.no-stop-fits", "launch", "home", "ramp", "unmet");

    /// <summary>A day without known wind.</summary>
    public static readonly FindingKind CalmTaken = new("answer.calm-taken", "why");

    /// <summary>An alternative the day does not have.</summary>
    public static readonly FindingKind NoSuchAlternative = new("answer.no-such-alternative");

    /// <summary>A boat off the lake.</summary>
    public static readonly FindingKind BoatFarAway = new("answer.boat-far-away");

    /// <summary>A mark on a spot that is not known.</summary>
    public static readonly FindingKind NoSuchSpot = new("answer.no-such-spot", "word");

    /// <summary>A day that ends before it begins.</summary>
    public static readonly FindingKind NoTimeToFish = new("answer.no-time-to-fish", "launch", "home");

    /// <summary>A lake without a place.</summary>
    public static readonly FindingKind NoPosition = new("answer.no-position", "lake");

    /// <summary>A lake without a bottom.</summary>
    public static readonly FindingKind NoSurvey = new("answer.no-survey", "lake");

    /// <summary>A lake with an outline alone.</summary>
    public static readonly FindingKind OnlyOutline = new("answer.only-outline", "lake");

    /// <summary>A basin of unknown shape.</summary>
    public static readonly FindingKind BowlTaken = new("answer.bowl-taken", "area", "depth");

    /// <summary>An outline without any depth.</summary>
    public static readonly FindingKind BowlInOutline = new("answer.bowl-in-outline", "area", "depth");

    /// <summary>An outline with a greatest depth.</summary>
    public static readonly FindingKind BowlInOutlineOfDepth = new("answer.bowl-in-outline-of-depth", "area", "depth");

    /// <summary>A jig that floats.</summary>
    public static readonly FindingKind JigFloats = new("answer.jig-floats", "jig", "trailer");

    /// <summary>A trailer of unknown kind.</summary>
    public static readonly FindingKind TrailerKindUnknown = new("answer.trailer-kind-unknown", "trailer", "kind");

    /// <summary>A line of unknown kind.</summary>
    public static readonly FindingKind LineKindUnknown = new("answer.line-kind-unknown", "line", "kind");

    /// <summary>A line that says nothing of itself.</summary>
    public static readonly FindingKind LineUnrated = new("answer.line-unrated", "line");

    /// <summary>A jig of unknown metal.</summary>
    public static readonly FindingKind MaterialUnknown = new("answer.material-unknown", "jig", "material");

    /// <summary>A jig of unknown head.</summary>
    public static readonly FindingKind HeadUnknown = new("answer.head-unknown", "jig", "head");

    /// <summary>A trailer that is not among the trailers.</summary>
    public static readonly FindingKind TrailerUnknown = new("answer.trailer-unknown", "jig", "trailer");

    /// <summary>An observation that cannot be used.</summary>
    public static readonly FindingKind SightingUnused = new("answer.sighting-unused", "jig", "kind", "problem");

    /// <summary>One observation of a jig.</summary>
    public static readonly FindingKind SightingTaken = new("answer.sighting-taken", "jig", "own", "line");

    /// <summary>Observations of a jig.</summary>
    public static readonly FindingKind SightingsTaken = new("answer.sightings-taken", "jig", "count", "own", "line");

    /// <summary>An observation on an unknown line.</summary>
    public static readonly FindingKind SightingLineUnknown = new("answer.sighting-line-unknown", "jig", "line", "taken");

    /// <summary>A reading by its place and time.</summary>
    public static readonly FindingKind ReadingOf = new("answer.reading-of", "source", "time");

    /// <summary>Some named, and how many more.</summary>
    public static readonly FindingKind AndMore = new("answer.and-more", "named", "more");

    /// <summary>A reading dated after the instant.</summary>
    public static readonly FindingKind ReadingAfter = new("answer.reading-after", "named", "at");

    /// <summary>Readings dated after the instant.</summary>
    public static readonly FindingKind ReadingsAfter = new("answer.readings-after", "count", "named", "at");

    /// <summary>A reading of an earlier season.</summary>
    public static readonly FindingKind ReadingEarlier = new("answer.reading-earlier", "named");

    /// <summary>Readings of an earlier season.</summary>
    public static readonly FindingKind ReadingsEarlier = new("answer.readings-earlier", "count", "named");
}
