using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>
/// Turns weather with gaps into gap-free hourly series a column can run on, and says every fill aloud: wind to 10 m,
/// daily means to hours, cloud from shortwave, longwave from cloud.
/// </summary>
public static class WeatherPreparation
{
    /// <summary>Gaps up to this long are filled from the days around; longer ones split the record, hours.</summary>
    public static readonly double LongestFillH = 45 * 24;

    private const int LinearHours = 6;

    /// <summary>Prepares a record for a lake.</summary>
    /// <param name="raw">The record; stamps that go back or repeat are merged into their hour.</param>
    /// <param name="site">Where the lake lies and how high the wind was measured.</param>
    public static PreparedWeather Prepare(RawWeather raw, LakeSite site)
    {
        Require.NotNull(raw);
        Require.NotNull(site);
        List<Finding> notes = [];
        int[] order = [.. Enumerable.Range(0, raw.TimeUtc.Count).Where(i => HasAny(raw, i)).OrderBy(i => raw.TimeUtc[i])];
        if (order.Length < 2) return new PreparedWeather([], [SeasonFindings.NoWeather.Of()], WeatherSource.Climate);
        double stepS = TypicalStepS(raw, order);
        double windFactor = WindFactor(raw.WindHeightM ?? site.WindHeightM, notes);
        bool daily = stepS > 0.75 * PhysicalConstants.DayS;
        WeatherSource source = Guess(raw);
        List<WeatherSeries> segments = [];
        for (int from = 0; from < order.Length;)
        {
            int to = from + 1;
            while (to < order.Length && (raw.TimeUtc[order[to]] - raw.TimeUtc[order[to - 1]]).TotalHours <= LongestFillH) to++;
            if (to < order.Length)
            {
                notes.Add(SeasonFindings.WeatherGap.Of(raw.TimeUtc[order[to - 1]], raw.TimeUtc[order[to]]));
            }

            HourlyTable table = HourlyTable.Bin(raw, order.AsSpan(from, to - from), stepS, windFactor);
            if (table.Count >= 24)
            {
                if (daily) DailyWeather.Spread(table, site, source);
                segments.Add(Complete(table, site, notes));
            }

            from = to;
        }

        if (daily) notes.Add(SeasonFindings.DailyWeather.Of());
        return new PreparedWeather(segments, [.. notes.Distinct()], source);
    }

    private static bool HasAny(RawWeather raw, int i) =>
        Has(raw.AirTempC, i) || Has(raw.WindMps, i) || Has(raw.ShortwaveWPerM2, i) || Has(raw.RelativeHumidity, i);

    private static bool Has(double[]? column, int i) => column is not null && i < column.Length && double.IsFinite(column[i]);

    private static double TypicalStepS(RawWeather raw, int[] order)
    {
        double[] steps = new double[Math.Min(order.Length - 1, 2000)];
        for (int i = 0; i < steps.Length; i++) steps[i] = (raw.TimeUtc[order[i + 1]] - raw.TimeUtc[order[i]]).TotalSeconds;
        Array.Sort(steps);
        return Math.Clamp(steps[steps.Length / 2], 60, PhysicalConstants.DayS);
    }

    private static double WindFactor(double? heightM, List<Finding> notes)
    {
        if (heightM is null)
        {
            notes.Add(SeasonFindings.WindHeightUnknown.Of());
            return 1;
        }

        if (Math.Abs(heightM.Value - 10) < 0.5) return 1;
        double factor = WindOverWater.HeightFactor(Math.Clamp(heightM.Value, 0.5, 200), 10);
        notes.Add(SeasonFindings.WindCarried.Of(heightM.Value, factor));
        return factor;
    }

    private static WeatherSource Guess(RawWeather raw)
    {
        if (raw.LongwaveWPerM2 is not { } longwave) return WeatherSource.Station;
        int there = longwave.Count(double.IsFinite);
        return there > 0.98 * raw.TimeUtc.Count ? WeatherSource.Grid : WeatherSource.Station;
    }

    private static WeatherSeries Complete(HourlyTable table, LakeSite site, List<Finding> notes)
    {
        ClimateNormals normals = ClimateNormals.At(site);
        Fill(table.AirTempC, SeasonFindings.AirTemperature, notes, i => normals.AirTempC(table.TimeAt(i)));
        double[] air = table.AirTempC;
        Fill(table.RelativeHumidity, SeasonFindings.Humidity, notes, i => ClimateWeather.RelativeHumidity(air, i));
        Fill(table.WindMps, SeasonFindings.Wind, notes, _ => ClimateWeather.WindMps);
        Clamp(table.RelativeHumidity, 0.05, 1.0);
        Clamp(table.WindMps, 0, 60);
        SkyLight.Complete(table, site, notes);
        for (int i = 0; i < table.Count; i++)
        {
            if (double.IsNaN(table.PrecipitationMmPerH[i])) table.PrecipitationMmPerH[i] = 0;
        }

        return table.ToSeries();
    }

    internal static void Clamp(double[] values, double low, double high)
    {
        for (int i = 0; i < values.Length; i++) values[i] = Math.Clamp(values[i], low, high);
    }

    /// <summary>Fills one column: short gaps straight, longer ones with the same hour of the days around, all-empty ones from a climate.</summary>
    internal static void Fill(double[] values, FindingKind name, List<Finding> notes, Func<int, double> climate)
    {
        int missing = values.Count(double.IsNaN);
        if (missing == 0) return;
        if (missing == values.Length)
        {
            for (int i = 0; i < values.Length; i++) values[i] = climate(i);
            notes.Add(SeasonFindings.NotGiven.Of(name.Of()));
            return;
        }

        int longFills = 0;
        for (int i = 0; i < values.Length;)
        {
            if (!double.IsNaN(values[i])) { i++; continue; }
            int end = i;
            while (end < values.Length && double.IsNaN(values[end])) end++;
            if (end - i <= LinearHours || i == 0 || end == values.Length) Straight(values, i, end);
            else { longFills += end - i; FromDaysAround(values, i, end); }
            i = end;
        }

        notes.Add(longFills > 0
            ? SeasonFindings.FilledLong.Of(missing, values.Length, name.Of(), longFills)
            : SeasonFindings.Filled.Of(missing, values.Length, name.Of()));
    }

    private static void Straight(double[] values, int from, int end)
    {
        double before = from > 0 ? values[from - 1] : values[end], after = end < values.Length ? values[end] : before;
        for (int i = from; i < end; i++) values[i] = before + ((after - before) * (i - from + 1) / (end - from + 1));
    }

    private static void FromDaysAround(double[] values, int from, int end)
    {
        double[] fill = new double[end - from];
        for (int i = from; i < end; i++)
        {
            double sum = 0, weight = 0;
            int phase = (i - from) % 24;
            for (int day = 1; day <= 10; day++)
            {
                int before = from - (24 * day) + phase, after = end + (24 * (day - 1)) + (((phase - (end - from)) % 24) + 24) % 24;
                double share = (i - from + 1.0) / (end - from + 1.0);
                if (before >= 0 && !double.IsNaN(values[before])) { sum += (1 - share) * values[before]; weight += 1 - share; }
                if (after < values.Length && !double.IsNaN(values[after])) { sum += share * values[after]; weight += share; }
            }

            fill[i - from] = weight > 0 ? sum / weight : double.NaN;
        }

        fill.CopyTo(values, from);
        for (int i = from; i < end; i++)
        {
            if (!double.IsNaN(values[i])) continue;
            Straight(values, from, end);
            return;
        }
    }
}
