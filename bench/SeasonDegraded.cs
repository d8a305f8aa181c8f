using SecondShore.Answers.Lake;
using SecondShore.Answers.Scoring;
using SecondShore.Bench.Priors;
using SecondShore.Engine.Season;
using SecondShore.Engine.Water;
using SecondShore.Formats.Lake;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>What a poorer copy of the same weather costs: daily means of hourly records, wind of another height, cloud in the place of radiation.</summary>
internal sealed class SeasonDegraded : IFigure
{
    public string Name => "season-degraded";

    public string Claim => "blind error with poorer copies of the same weather, less that with the weather itself, each lake with hourly weather";

    public FigureMargin Margin => new(0.02, 0.01);

    public string LeftOut => "each lake's region, when the numbers it is run with were learned";

    public IEnumerable<Measured> Measure()
    {
        Dictionary<string, PriorNumbers> without = PriorFile.ReadLeftOut(SeasonPriors.LeftOutPath);
        LakeFolder[] folders = [.. MeasuredLakes.Read().Where(f => IsHourly(WeatherInput.ToRaw(f.Weather!)))];
        Cost[][] costs = new Cost[folders.Length][];
        Parallel.For(0, folders.Length, i => costs[i] = [.. Costs(folders[i], without)]);
        Cost[] all = [.. costs.SelectMany(c => c)];
        foreach (Cost c in all)
        {
            string against = FormattableString.Invariant($"left out; {c.Own:0.00} with the weather itself");
            yield return new($"{Name}-{c.Copy}-{c.Lake}-{c.What}", c.Worse, c.Unit, against, OnPage: false);
        }

        foreach (IGrouping<(string Copy, string What), Cost> group in all.GroupBy(c => (c.Copy, c.What)))
        {
            double[] worse = [.. group.Select(c => c.Worse).Order()];
            double most = group.Key.What switch { "temperature-rmse" => 0.3, "thermocline-mae" => 0.4, _ => 3 };
            string name = $"{Name}-{group.Key.Copy}-{group.Key.What}", unit = group.First().Unit;
            yield return new($"{name}-median", worse[worse.Length / 2], unit, $"worse than with the weather itself, {worse.Length} lakes left out");
            yield return new($"{name}-worst", worse[^1], unit, $"the same, {group.MaxBy(c => c.Worse)!.Lake}");
            string held = FormattableString.Invariant($"lakes at most {most} {unit} worse");
            yield return new($"{name}-held", worse.Count(w => w <= most), $"of {worse.Length}", held);
        }
    }

    private static bool IsHourly(RawWeather raw) => raw.TimeUtc.Count >= 100 && (raw.TimeUtc[50] - raw.TimeUtc[49]).TotalHours <= 12;

    private static IEnumerable<Cost> Costs(LakeFolder folder, Dictionary<string, PriorNumbers> without)
    {
        RawWeather raw = WeatherInput.ToRaw(folder.Weather!);
        ScoredLake lake = ScoredLakeReader.From(folder);
        lake = lake with { Numbers = without.GetValueOrDefault(lake.Name) };
        ErrorSums own = Blind(lake);
        foreach ((string copy, RawWeather poorer) in new[]
        {
            ("daily", Daily(raw)), ("wind2m", AtTwoMetres(raw, lake)), ("dew-point", ByDewPoint(raw)), ("cloud", ByCloud(raw, lake)),
        })
        {
            PreparedWeather weather = WeatherPreparation.Prepare(poorer, lake.Site) with { Source = lake.Weather.Source };
            ErrorSums sums = Blind(lake with { Weather = weather });
            foreach ((string what, double? with, double? before, string unit) in new[]
            {
                ("temperature-rmse", sums.TemperatureRmse, own.TemperatureRmse, "K"),
                ("thermocline-mae", sums.ThermoclineMae, own.ThermoclineMae, "m"),
                ("overturn-mae", sums.OverturnMae, own.OverturnMae, "d"),
            })
            {
                if (with is { } w && before is { } o) yield return new Cost(copy, lake.Name, what, w - o, o, unit);
            }
        }
    }

    private static ErrorSums Blind(ScoredLake lake)
    {
        ColumnParameters centre = ScoreRunner.PriorsOf(lake).Centre;
        ErrorSums sums = new();
        foreach (SeasonCase season in SeasonCase.Of(lake)) sums.Add(season, SeasonTrace.Run(season, centre), DateTimeOffset.MinValue);
        return sums;
    }

    private static RawWeather Daily(RawWeather raw)
    {
        DateTimeOffset first = new(raw.TimeUtc[0].UtcDateTime.Date, TimeSpan.Zero);
        int days = (int)(raw.TimeUtc[^1] - first).TotalDays + 1;
        double[]? Mean(double[]? column)
        {
            if (column is null) return null;
            double[] sum = new double[days];
            int[] count = new int[days];
            for (int i = 0; i < column.Length; i++)
            {
                if (!double.IsFinite(column[i])) continue;
                int day = (int)(raw.TimeUtc[i] - first).TotalDays;
                sum[day] += column[i];
                count[day]++;
            }

            // A day with hours missing would be of the hours that are there.
            return [.. sum.Select((s, d) => count[d] >= 20 ? s / count[d] : double.NaN)];
        }

        return raw with
        {
            TimeUtc = [.. Enumerable.Range(0, days).Select(d => first.AddDays(d))],
            AirTempC = Mean(raw.AirTempC),
            RelativeHumidity = Mean(raw.RelativeHumidity),
            WindMps = Mean(raw.WindMps),
            WindFromDeg = null,
            ShortwaveWPerM2 = Mean(raw.ShortwaveWPerM2),
            LongwaveWPerM2 = Mean(raw.LongwaveWPerM2),
            CloudFraction = Mean(raw.CloudFraction),
            PrecipitationMmPerH = Mean(raw.PrecipitationMmPerH),
            GustMps = null,
        };
    }

    private static RawWeather AtTwoMetres(RawWeather raw, ScoredLake lake)
    {
        double height = raw.WindHeightM ?? lake.Site.WindHeightM ?? 10, factor = WindOverWater.HeightFactor(2, height);
        return raw with { WindHeightM = 2, WindMps = raw.WindMps is { } wind ? [.. wind.Select(w => w / factor)] : null };
    }

    // As a file gives it: to a tenth of a degree.
    private static RawWeather ByDewPoint(RawWeather raw)
    {
        if (raw is not { RelativeHumidity: { } humidity, AirTempC: { } air }) return raw;
        double[] back = [.. humidity.Select((h, i) =>
        {
            double full = MoistAir.SaturationVapourPa(air[i]), dewC = Math.Round(MoistAir.DewPointC(Math.Max(1, h * full)), 1);
            return MoistAir.SaturationVapourPa(dewC) / full;
        })];
        return raw with { RelativeHumidity = back };
    }

    private static RawWeather ByCloud(RawWeather raw, ScoredLake lake)
    {
        double[] cloud = new double[raw.TimeUtc.Count];
        Array.Fill(cloud, double.NaN);
        foreach (WeatherSeries s in lake.Weather.Segments)
        {
            for (int i = 0; i < cloud.Length; i++)
                if (raw.TimeUtc[i] >= s.StartUtc && raw.TimeUtc[i] < s.EndUtc) cloud[i] = s.CloudFraction[s.StepAt(raw.TimeUtc[i])];
        }

        return raw with { ShortwaveWPerM2 = null, LongwaveWPerM2 = null, CloudFraction = cloud };
    }

    private sealed record Cost(string Copy, string Lake, string What, double Worse, double Own, string Unit);
}
