namespace SecondShore.Engine.Season;

/// <summary>What is found, assumed and refused about weather, readings and the season.</summary>
public static class SeasonFindings
{
    /// <summary>A word: air temperature.</summary>
    public static readonly FindingKind AirTemperature = new("season.air-temperature");

    /// <summary>A word: humidity.</summary>
    public static readonly FindingKind Humidity = new("season.humidity");

    /// <summary>A word: wind.</summary>
    public static readonly FindingKind Wind = new("season.wind");

    /// <summary>A word: cloud.</summary>
    public static readonly FindingKind Cloud = new("season.cloud");

    /// <summary>Weather without two hours.</summary>
    public static readonly FindingKind NoWeather = new("season.no-weather");

    /// <summary>A gap too long to fill.</summary>
    public static readonly FindingKind WeatherGap = new("season.weather-gap", "from", "to");

    /// <summary>Weather by the day.</summary>
    public static readonly FindingKind DailyWeather = new("season.daily-weather");

    /// <summary>Wind of unknown height.</summary>
    public static readonly FindingKind WindHeightUnknown = new("season.wind-height-unknown");

    /// <summary>Wind carried to another height.</summary>
    public static readonly FindingKind WindCarried = new("season.wind-carried", "height", "factor");

    /// <summary>A column of the weather that is missing.</summary>
    public static readonly FindingKind NotGiven = new("season.not-given", "what");

    /// <summary>Gaps of the weather filled.</summary>
    public static readonly FindingKind Filled = new("season.filled", "missing", "hours", "what");

    /// <summary>Gaps of the weather filled, some of them long.</summary>
    public static readonly FindingKind FilledLong = new("season.filled-long", "missing", "hours", "what", "around");

    /// <summary>Sunshine guessed from temperature.</summary>
    public static readonly FindingKind NoSunNoCloud = new("season.no-sun-no-cloud");

    /// <summary>Hours of sunshine found from cloud.</summary>
    public static readonly FindingKind SunMissing = new("season.sun-missing", "hours");

    /// <summary>All sunshine found from cloud.</summary>
    public static readonly FindingKind SunFromCloud = new("season.sun-from-cloud");

    /// <summary>All longwave found.</summary>
    public static readonly FindingKind NoLongwave = new("season.no-longwave");

    /// <summary>Hours of longwave found.</summary>
    public static readonly FindingKind LongwaveMissing = new("season.longwave-missing", "hours");

    /// <summary>Past years shorter than the season.</summary>
    public static readonly FindingKind PastYearsEnd = new("season.past-years-end", "end");

    /// <summary>A warm skin of the day.</summary>
    public static readonly FindingKind WarmSkin = new("season.warm-skin", "depth", "top", "night");

    /// <summary>No past years.</summary>
    public static readonly FindingKind NoPastYears = new("season.no-past-years");

    /// <summary>No weather of this season.</summary>
    public static readonly FindingKind NoSeasonWeather = new("season.no-season-weather");

    /// <summary>Weather that begins late.</summary>
    public static readonly FindingKind WeatherStarts = new("season.weather-starts", "start", "before");

    /// <summary>Weather that ends before the time asked for.</summary>
    public static readonly FindingKind WeatherEnds = new("season.weather-ends", "end");

    /// <summary>What comes after the forecast.</summary>
    public static readonly FindingKind MembersFollow = new("season.members-follow", "end", "years");

    /// <summary>A start without a deep cast.</summary>
    public static readonly FindingKind NoSpringCast = new("season.no-spring-cast");

    /// <summary>A lake of unknown clarity.</summary>
    public static readonly FindingKind ClarityUnknown = new("season.clarity-unknown", "extinction", "secchi");

    /// <summary>A reading that cannot be true.</summary>
    public static readonly FindingKind LeftOut = new("season.left-out", "source", "why");

    /// <summary>A cast that cannot be true.</summary>
    public static readonly FindingKind CastLeftOut = new("season.cast-left-out", "source");

    /// <summary>A reading without a number.</summary>
    public static readonly FindingKind NotANumber = new("season.not-a-number");

    /// <summary>A haze deeper than the water.</summary>
    public static readonly FindingKind StepTooDeep = new("season.step-too-deep", "depth", "bottom");

    /// <summary>A temperature no lake has.</summary>
    public static readonly FindingKind NoSuchTemperature = new("season.no-such-temperature", "temperature");

    /// <summary>A reading without its depth.</summary>
    public static readonly FindingKind NoDepth = new("season.no-depth");

    /// <summary>A reading below the bottom.</summary>
    public static readonly FindingKind BelowBottom = new("season.below-bottom", "depth", "bottom");

    /// <summary>An oxygen no lake has.</summary>
    public static readonly FindingKind NoSuchOxygen = new("season.no-such-oxygen", "oxygen");

    /// <summary>A Secchi depth no lake has.</summary>
    public static readonly FindingKind NoSuchSecchi = new("season.no-such-secchi", "depth");

    /// <summary>A haze where the season has none.</summary>
    public static readonly FindingKind NoStepThen = new("season.no-step-then", "source", "reading");

    /// <summary>A depth far from what all else says.</summary>
    public static readonly FindingKind FarOffDepth = new("season.far-off-depth", "source", "reading", "expected");

    /// <summary>A temperature far from what all else says.</summary>
    public static readonly FindingKind FarOffTemperature = new("season.far-off-temperature", "source", "reading", "expected");

    /// <summary>A reading far from what all else says.</summary>
    public static readonly FindingKind FarOff = new("season.far-off", "source", "reading", "expected");

    /// <summary>A haze as seen.</summary>
    public static readonly FindingKind SeenStep = new("season.seen-step", "depth");

    /// <summary>A haze as seen under wind.</summary>
    public static readonly FindingKind SeenStepTilted = new("season.seen-step-tilted", "depth", "rest");

    /// <summary>A surface temperature.</summary>
    public static readonly FindingKind SeenSurface = new("season.seen-surface", "temperature");

    /// <summary>A temperature at a depth.</summary>
    public static readonly FindingKind SeenTemperature = new("season.seen-temperature", "temperature", "depth");

    /// <summary>A Secchi depth.</summary>
    public static readonly FindingKind SeenSecchi = new("season.seen-secchi", "depth");

    /// <summary>Oxygen at a depth.</summary>
    public static readonly FindingKind SeenOxygen = new("season.seen-oxygen", "oxygen", "depth");

    /// <summary>Any other reading.</summary>
    public static readonly FindingKind SeenOther = new("season.seen-other", "value");
}
