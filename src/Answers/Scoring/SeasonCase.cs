using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>One season of a measured lake: where a run starts and what it is scored on.</summary>
internal sealed class SeasonCase
{
    public required ScoredLake Lake { get; init; }

    public required int Year { get; init; }

    public required ColumnForcing Forcing { get; init; }

    public required LakeBoundary Boundary { get; init; }

    public required ColumnGrid Grid { get; init; }

    /// <summary>The first profile of the season, which the run starts from.</summary>
    public required WaterProfile Start { get; init; }

    public required int StartStep { get; init; }

    public required int EndStep { get; init; }

    /// <summary>Profiles after the start, April to November, only temperatures.</summary>
    public required ObservedProfile[] Observed { get; init; }

    public MeasuredOverturn? Overturn { get; init; }

    /// <summary>Depths that stand for top and bottom in the overturn rule: 1 m, and as deep as the lake's deepest sensor.</summary>
    public required double BottomM { get; init; }

    /// <summary>Whether the year runs from July to June, as it does south of the equator.</summary>
    public bool IsSouthern => Lake.Site.Position.LatDeg < 0;

    /// <summary>The day that stands where 1 January does in the north.</summary>
    public DateOnly FirstDay => Day(1, 1);

    /// <summary>A day of the season's year: half a year earlier south of the equator.</summary>
    /// <param name="month">Month of the northern season.</param>
    /// <param name="day">Day of that month, 1 to 28, or the last.</param>
    public DateOnly Day(int month, int day) => Day(Lake, Year, month, day);

    /// <summary>The same at midnight, UTC.</summary>
    public DateTimeOffset Instant(int month, int day) => Instant(Lake, Year, month, day);

    internal static DateOnly Day(ScoredLake lake, int year, int month, int day)
    {
        int shifted = lake.Site.Position.LatDeg < 0 ? (year * 12) + month - 7 : (year * 12) + month - 1;
        return new DateOnly(shifted / 12, (shifted % 12) + 1, Math.Min(day, DateTime.DaysInMonth(shifted / 12, (shifted % 12) + 1)));
    }

    private static DateTimeOffset Instant(ScoredLake lake, int year, int month, int day) =>
        new(Day(lake, year, month, day).ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);

    /// <summary>The same season with other profiles.</summary>
    public SeasonCase With(ObservedProfile[] observed) => With(observed, Start, StartStep);

    private SeasonCase With(ObservedProfile[] observed, WaterProfile start, int startStep) => new()
    {
        Lake = Lake,
        Year = Year,
        Forcing = Forcing,
        Boundary = Boundary,
        Grid = Grid,
        Start = start,
        StartStep = startStep,
        EndStep = EndStep,
        Observed = observed,
        Overturn = Overturn,
        BottomM = BottomM,
    };

    /// <summary>The same season from the mixed lake of 1 March, as warm as the air lets it be; null where the weather begins later or the first cast is as early.</summary>
    public SeasonCase? FromWinter()
    {
        DateTimeOffset march = Instant(3, 1);
        WeatherSeries weather = Forcing.Weather;
        if (weather.StartUtc > march || Start.At < march.AddDays(10)) return null;
        int step = weather.StepAt(march);
        double airC = weather.AirTempC.Skip(step).Take(21 * 24).Average();
        return With(Observed, new WaterProfile(march, [0], [MixedStart.TempC(airC)], null, Start.Source), step);
    }

    public int StepAt(DateTimeOffset at) => Forcing.Weather.StepAt(at);

    /// <summary>Every season of a lake that has weather and profiles.</summary>
    public static List<SeasonCase> Of(ScoredLake lake)
    {
        List<SeasonCase> cases = [];
        double above = lake.Levels.Count > 0 ? Math.Max(0, -lake.Levels.Min(l => l.BelowFullPoolM)) + 0.5 : 0;
        ColumnGrid grid = new(lake.Basin, Math.Clamp(lake.Basin.MaxDepthM / 40, 0.25, 0.5), above);
        foreach (WeatherSeries weather in lake.Weather.Segments)
        {
            ColumnForcing forcing = new(weather, lake.Site.Position, lake.Site.ElevationM);
            LakeBoundary boundary = LakeBoundary.Build(lake.Site, weather, lake.Levels, lake.Flows, lake.Secchi);
            for (int year = weather.StartUtc.Year; year <= weather.EndUtc.Year + 1; year++)
            {
                if (Make(lake, year, forcing, boundary, grid) is { } made) cases.Add(made);
            }
        }

        return cases;
    }

    private static SeasonCase? Make(ScoredLake lake, int year, ColumnForcing forcing, LakeBoundary boundary, ColumnGrid grid)
    {
        WeatherSeries weather = forcing.Weather;
        DateTimeOffset from = Instant(lake, year, 3, 1), to = Instant(lake, year, 12, 31);
        WaterProfile[] year_ = [.. lake.Profiles.Where(p => p.At >= from && p.At < to && p.At >= weather.StartUtc && p.At < weather.EndUtc)];
        ObservedProfile[] all = [.. year_.Select(ObservedProfile.From).Where(p => p.DepthM.Length > 0)];
        double deep = 0.6 * (lake.Basin.MaxDepthM - boundary.DropM((int)(from - weather.StartUtc).TotalDays));
        ObservedProfile? start = all.FirstOrDefault(p => p.DepthM.Length >= 4 && p.DepthM[^1] >= deep) ?? all.FirstOrDefault(p => p.DepthM.Length >= 3);
        if (start is null || start.At > Instant(lake, year, 8, 1)) return null;
        DateTimeOffset first = Instant(lake, year, 4, 1), last = Instant(lake, year, 12, 1);
        ObservedProfile[] observed = [.. all.Where(p => p.At > start.At && p.At >= first && p.At < last)];
        if (observed.Length == 0) return null;
        int startStep = weather.StepAt(start.At);
        int endStep = Math.Min(weather.Count, weather.StepAt(to) + 1);
        return new SeasonCase
        {
            Lake = lake,
            Year = year,
            Forcing = forcing,
            Boundary = boundary,
            Grid = grid,
            Start = new WaterProfile(start.At, start.DepthM, start.TempC, null, start.Source),
            StartStep = startStep,
            EndStep = endStep,
            Observed = observed,
            Overturn = lake.Overturns.FirstOrDefault(o => o.Year == year),
            BottomM = 0.95 * observed.Max(p => p.DepthM[^1]),
        };
    }
}

/// <summary>A measured profile without its gaps.</summary>
internal sealed record ObservedProfile(DateTimeOffset At, double[] DepthM, double[] TempC, string Source)
{
    /// <summary>Its layers, where it has at least six depths, spans 0.5 kg/m3 and reaches below its thermocline; else no thermocline.</summary>
    public double ThermoclineM { get; private init; } = double.NaN;

    public static ObservedProfile From(WaterProfile profile)
    {
        List<double> depth = [], temp = [];
        for (int i = 0; i < profile.DepthM.Length; i++)
        {
            if (!double.IsFinite(profile.TempC[i]) || depth.Count > 0 && profile.DepthM[i] <= depth[^1]) continue;
            depth.Add(profile.DepthM[i]);
            temp.Add(profile.TempC[i]);
        }

        ObservedProfile made = new(profile.At, [.. depth], [.. temp], profile.Source);
        return made with { ThermoclineM = Thermocline(made) };
    }

    private static double Thermocline(ObservedProfile p)
    {
        if (p.DepthM.Length < 6) return double.NaN;
        Stratification layers = Stratification.Of(p.DepthM, p.TempC);
        if (!layers.HasThermocline || layers.DensityDifferenceKgPerM3 <= 0.5) return double.NaN;
        return layers.ThermoclineM < 0.5 * (p.DepthM[^1] + p.DepthM[^2]) - 1e-9 ? layers.ThermoclineM : double.NaN;
    }
}
