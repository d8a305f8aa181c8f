using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Season;

/// <summary>
/// The weathers a season may see: the measured and forecast one, before and after it the same dates of past years, or a made-up
/// climate where there are none. All scenarios share one start and one length.
/// </summary>
internal sealed class SeasonTimeline
{
    private const int BlendHours = 72, ClimateScenarios = 12;
    private const double WarmingKPerYear = 0.03;

    // Few past years leave much of the weather unseen: the same years some days early and late stand in for more (choice).
    private const int EnoughScenarios = 10;
    private static readonly int[] ShiftsDays = [0, -9, 9, -18, 18];

    // A past year serves when it reaches this far beyond the measured weather; a made-up climate carries it on to the end.
    private const int LeastPastHours = 30 * 24;

    public required DateTimeOffset StartUtc { get; init; }

    public required int Hours { get; init; }

    public required IReadOnlyList<ColumnForcing> Scenarios { get; init; }

    public required int AtStep { get; init; }

    /// <summary>Step from which doubt grows: <see cref="AtStep"/>, or 0 where the season has no weather of its own.</summary>
    public int KnownToStep { get; private init; }

    /// <summary>Whether all weather is made up.</summary>
    public bool IsMadeUp { get; private init; }

    public required IReadOnlyList<Finding> Assumed { get; init; }

    /// <summary>Mean air temperature of the first three weeks, degC: what a mixed start is guessed from.</summary>
    public double StartAirC { get; private init; }

    public static SeasonTimeline Build(OutlookRequest request)
    {
        LakeSite site = request.Site;
        DateTimeOffset start = SeasonStart(request.At, site.Position.LatDeg);
        DateTimeOffset end = request.Until is { } until ? start.AddDays(Math.Max(1, Math.Ceiling((until - start).TotalDays))) : Later(start.AddDays(310), request.At.ToUniversalTime().AddDays(75));
        int hours = (int)(end - start).TotalHours, atStep = (int)Math.Clamp((request.At - start).TotalHours, 0, hours - 1);
        List<Finding> assumed = [];
        WeatherSeries? main = request.Weather is { } w && w.EndUtc > start && w.StartUtc < end ? Hourly(w) : null;
        int gapFrom = main is null ? 0 : (int)Math.Max(0, (main.StartUtc - start).TotalHours);
        int gapTo = main is null ? 0 : (int)Math.Min(hours, (main.EndUtc - start).TotalHours);
        List<WeatherSeries> fills = gapFrom == 0 && gapTo == hours ? [] : Fills(request, start, hours, gapFrom, gapTo, assumed);
        Say(request, main, start, atStep, gapFrom, gapTo, fills.Count, assumed);
        List<ColumnForcing> scenarios = [];
        List<WeatherSeries?> chosen = fills.Count == 0 ? [null] : [.. fills];
        foreach (WeatherSeries? fill in chosen)
            scenarios.Add(new ColumnForcing(Join(main, fill, start, hours, gapFrom, gapTo), site.Position, site.ElevationM, scenarios.FirstOrDefault()));
        return new SeasonTimeline
        {
            StartUtc = start,
            Hours = hours,
            Scenarios = scenarios,
            AtStep = atStep,
            KnownToStep = main is null ? 0 : atStep,
            IsMadeUp = main is null && request.PastYears.Count == 0,
            Assumed = assumed,
            StartAirC = scenarios.Average(s => s.Weather.AirTempC.Take(21 * 24).Average()),
        };
    }

    /// <summary>The column starts where winter ends: 1 March in the north, 1 September in the south.</summary>
    public static DateTimeOffset SeasonStart(DateTimeOffset at, double latDeg)
    {
        DateTimeOffset utc = at.ToUniversalTime();
        DateTimeOffset start = new(utc.Year, latDeg >= 0 ? 3 : 9, 1, 0, 0, 0, TimeSpan.Zero);
        return start > utc ? start.AddYears(-1) : start;
    }

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;

    private static WeatherSeries Hourly(WeatherSeries weather) =>
        Math.Abs(weather.StepS - 3600) < 1e-6 ? weather : throw new ArgumentException($"The weather steps by {weather.StepS} s where hours are expected: prepare it first.", nameof(weather));

    // The same calendar hours of every other year that covers what is missing.
    private static List<WeatherSeries> Fills(OutlookRequest request, DateTimeOffset start, int hours, int gapFrom, int gapTo, List<Finding> assumed)
    {
        List<WeatherSeries> fills = [];
        List<WeatherSeries> past = [.. request.PastYears];
        if (request.Weather is { } own) past.Add(own);
        int after = gapTo >= hours ? hours : Math.Max(0, gapTo - 24), reach = Math.Min(hours, gapTo + LeastPastHours), shortest = hours;
        SeededRandom random = new(request.Seed, 77);
        foreach (int shiftDays in ShiftsDays)
        {
            if (shiftDays != 0 && fills.Count >= EnoughScenarios) break;
            foreach (WeatherSeries series in past) AddYears(series, shiftDays);
        }

        if (shortest < hours)
            assumed.Add(SeasonFindings.PastYearsEnd.Of(start.AddHours(shortest)));
        if (fills.Count > 0) return fills;
        assumed.Add(SeasonFindings.NoPastYears.Of());
        double anomaly = Anomaly(request, start, gapFrom, gapTo);
        for (int k = 0; k < ClimateScenarios; k++)
        {
            WeatherSeries made = ClimateWeather.Make(request.Site, start, hours, random.Split((ulong)k));
            for (int i = 0; i < hours; i++)
            {
                int from = i < gapFrom ? gapFrom - i : Math.Max(0, i - gapTo);
                made.AirTempC[i] += anomaly * (0.5 + (0.5 * Math.Exp(-from / (20.0 * 24.0))));
            }

            fills.Add(made);
        }

        return fills;

        void AddYears(WeatherSeries series, int shiftDays)
        {
            for (int back = -60; back <= 60; back++)
            {
                // Years after the outlook's own serve hindcasts only, and then all years but that one do.
                if (!(back > 0 || (request.ExcludeYear is not null && back < 0)) || Math.Abs(series.StepS - 3600) > 1e-6) continue;
                int offset = (int)Math.Round((start.AddYears(-back).AddDays(shiftDays) - series.StartUtc).TotalHours);
                bool covers = (gapFrom == 0 || (offset >= 0 && offset + gapFrom <= series.Count))
                    && (gapTo >= hours || (offset + after >= 0 && offset + reach <= series.Count));
                if (!covers) continue;
                WeatherSeries? tail = offset + hours > series.Count ? ClimateWeather.Make(request.Site, start, hours, random.Split((ulong)(1000 + fills.Count))) : null;
                if (tail is not null) shortest = Math.Min(shortest, series.Count - offset);
                fills.Add(Shift(series, tail, offset, start, hours, WarmingKPerYear * back));
            }
        }
    }

    private static double Anomaly(OutlookRequest request, DateTimeOffset start, int gapFrom, int gapTo)
    {
        if (request.Weather is not { } weather || gapTo <= gapFrom) return 0;
        double sum = 0;
        int count = 0;
        ClimateNormals normals = ClimateNormals.At(request.Site);
        for (int i = Math.Max(gapFrom, gapTo - (45 * 24)); i < gapTo; i++)
        {
            int k = weather.StepAt(start.AddHours(i));
            sum += weather.AirTempC[k] - normals.AirTempC(weather.TimeAt(k));
            count++;
        }

        return count > 240 ? Math.Clamp(sum / count, -8, 8) : 0;
    }

    private static WeatherSeries Shift(WeatherSeries source, WeatherSeries? tail, int offset, DateTimeOffset start, int hours, double warmingK)
    {
        double[] Take(Func<WeatherSeries, double[]> column, double plus = 0)
        {
            double[] to = new double[hours], from = column(source);
            double[]? after = tail is null ? null : column(tail);
            for (int i = 0; i < hours; i++)
                to[i] = after is not null && offset + i >= from.Length ? after[i] : from[Math.Clamp(offset + i, 0, from.Length - 1)] + plus;
            return to;
        }

        return new WeatherSeries(start, 3600, Take(s => s.AirTempC, warmingK), Take(s => s.RelativeHumidity), Take(s => s.WindMps), Take(s => s.WindFromDeg),
            Take(s => s.ShortwaveWPerM2), Take(s => s.LongwaveWPerM2, 5.0 * warmingK), Take(s => s.CloudFraction), Take(s => s.PrecipitationMmPerH), Take(s => s.GustMps));
    }

    private static WeatherSeries Join(WeatherSeries? main, WeatherSeries? fill, DateTimeOffset start, int hours, int gapFrom, int gapTo)
    {
        if (main is null) return fill!;
        int offset = (int)Math.Round((start - main.StartUtc).TotalHours);
        double[] Merge(Func<WeatherSeries, double[]> column, bool additive)
        {
            double[] to = new double[hours], own = column(main), other = fill is null ? own : column(fill);
            double jump = 0;
            if (additive && fill is not null && gapTo - gapFrom >= 24 && gapTo < hours)
            {
                for (int i = gapTo - 24; i < gapTo; i++) jump += (own[offset + i] - other[i]) / 24.0;
            }

            for (int i = 0; i < hours; i++)
            {
                if (i >= gapFrom && i < gapTo) to[i] = own[offset + i];
                else if (i < gapFrom) to[i] = other[i];
                else to[i] = other[i] + (jump * Math.Max(0, 1.0 - ((i - gapTo) / (double)BlendHours)));
            }

            return to;
        }

        return new WeatherSeries(start, 3600, Merge(s => s.AirTempC, true), Merge(s => s.RelativeHumidity, false), Merge(s => s.WindMps, false),
            Merge(s => s.WindFromDeg, false), Merge(s => s.ShortwaveWPerM2, false), Merge(s => s.LongwaveWPerM2, true), Merge(s => s.CloudFraction, false),
            Merge(s => s.PrecipitationMmPerH, false), Merge(s => s.GustMps, false));
    }

    private static void Say(OutlookRequest request, WeatherSeries? main, DateTimeOffset start, int atStep, int gapFrom, int gapTo, int fills, List<Finding> assumed)
    {
        if (main is null)
        {
            assumed.Add(SeasonFindings.NoSeasonWeather.Of());
            return;
        }

        if (gapFrom > 48) assumed.Add(SeasonFindings.WeatherStarts.Of(main.StartUtc, start));
        if (gapTo < atStep) assumed.Add(SeasonFindings.WeatherEnds.Of(main.EndUtc));
        if (fills > 0 && request.PastYears.Count > 0) assumed.Add(SeasonFindings.MembersFollow.Of(main.EndUtc, fills));
    }
}
