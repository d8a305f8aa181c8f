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

    public IEnumerable<Measured> Measure()
    {
        foreach (LakeFolder folder in MeasuredLakes.Read())
        {
            RawWeather raw = WeatherInput.ToRaw(folder.Weather!);
            if (raw.TimeUtc.Count < 100 || (raw.TimeUtc[50] - raw.TimeUtc[49]).TotalHours > 12) continue;
            ScoredLake lake = ScoredLakeReader.From(folder);
            ErrorSums own = Blind(lake);
            foreach ((string copy, RawWeather poorer) in new[] { ("daily", Daily(raw)), ("wind2m", AtTwoMetres(raw, lake)), ("cloud", ByCloud(raw, lake)) })
            {
                ErrorSums sums = Blind(lake with { Weather = WeatherPreparation.Prepare(poorer, lake.Site) with { Source = lake.Weather.Source } });
                foreach ((string what, double? with, double? without, string unit) in new[]
                {
                    ("temperature-rmse", sums.TemperatureRmse, own.TemperatureRmse, "K"), ("thermocline-mae", sums.ThermoclineMae, own.ThermoclineMae, "m"),
                    ("overturn-mae", sums.OverturnMae, own.OverturnMae, "d"),
                })
                {
                    if (with is { } w && without is { } o) yield return new($"{Name}-{copy}-{lake.Name}-{what}", w - o, unit, FormattableString.Invariant($"{o:0.00} with the weather itself"));
                }
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
}
