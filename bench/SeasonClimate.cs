using SecondShore.Answers.Scoring;
using SecondShore.Engine.Season;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>How far the made-up climate stands off the measured lakes' own weather: mean of the year and half its swing, by the means of calendar months.</summary>
internal sealed class SeasonClimate : IFigure
{
    public string Name => "season-climate";

    public string Claim => "air of the made-up climate less that of the measured lakes' weather files: annual mean and half the swing of the year";

    public FigureMargin Margin => FigureMargin.Within(0.05);

    public string LeftOut => "all weather files: the climate is made of published normals alone";

    public IEnumerable<Measured> Measure()
    {
        List<double> means = [], swings = [];
        foreach (ScoredLake lake in MeasuredLakes.Read().Select(ScoredLakeReader.From))
        {
            if (Year(lake.Weather.Segments) is not { } seen) continue;
            ClimateNormals made = ClimateNormals.At(lake.Site);
            means.Add(made.MeanC - seen.MeanC);
            swings.Add(made.SwingK - seen.SwingK);
            yield return new($"{Name}-{lake.Name}-mean", means[^1], "K", FormattableString.Invariant($"{seen.MeanC:0.0} degC in its weather file"), OnPage: false);
            yield return new($"{Name}-{lake.Name}-swing", swings[^1], "K", FormattableString.Invariant($"{seen.SwingK:0.0} K in its weather file"), OnPage: false);
        }

        if (means.Count == 0) yield break;
        yield return new($"{Name}-mean-rms", Math.Sqrt(means.Average(e => e * e)), "K", $"root mean square over {means.Count} lakes");
        yield return new($"{Name}-swing-rms", Math.Sqrt(swings.Average(e => e * e)), "K", $"root mean square over {swings.Count} lakes");
    }

    // The first wave through the means of the twelve months; null where a month is missing.
    private static (double MeanC, double SwingK)? Year(IReadOnlyList<WeatherSeries> segments)
    {
        double[] sum = new double[12];
        int[] count = new int[12];
        foreach (WeatherSeries s in segments)
        {
            for (int i = 0; i < s.Count; i++)
            {
                int month = s.TimeAt(i).Month - 1;
                sum[month] += s.AirTempC[i];
                count[month]++;
            }
        }

        if (count.Any(c => c < 240)) return null;
        double mean = 0, a = 0, b = 0;
        for (int m = 0; m < 12; m++)
        {
            double t = sum[m] / count[m], angle = 2 * Math.PI * (m + 0.5) / 12;
            mean += t / 12;
            a += t * Math.Cos(angle) / 6;
            b += t * Math.Sin(angle) / 6;
        }

        return (mean, Math.Sqrt((a * a) + (b * b)));
    }
}
