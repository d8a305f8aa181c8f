using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>
/// The outlook of a calm sunny day at seven in the morning and at five in the afternoon, from the same readings, on every measured
/// lake with hourly weather: the afternoon's warm skin must not pass for the thermocline.
/// </summary>
internal sealed class SeasonSkin : IFigure
{
    private const int MostDays = 6, LeastApartDays = 10;
    private const double LeastSunWPerM2 = 180;

    public string Name => "season-skin";

    public string Claim => "thermocline of the outlook at 7 am and 5 pm of the same calm day, same readings: how far apart, of the spread";

    public FigureMargin Margin => new(0.02, 0.02);

    public IEnumerable<Measured> Measure()
    {
        List<double> all = [];
        int outside = 0, skins = 0;
        foreach (LakeFolder folder in MeasuredLakes.Read())
        {
            RawWeather raw = WeatherInput.ToRaw(folder.Weather!);
            if (raw.TimeUtc.Count < 100 || (raw.TimeUtc[50] - raw.TimeUtc[49]).TotalHours > 1.5) continue;
            List<double> shares = [];
            double mostM = 0;
            foreach (DateTimeOffset morning in CalmDays(folder))
            {
                PreparedLake lake = PreparedLake.From(folder with { Profiles = [.. folder.Profiles.Where(p => p.At < morning)] });
                Outlook early = OutlookAnswer.Compute(lake, morning), late = OutlookAnswer.Compute(lake, morning.AddHours(10));
                if (late.Lake.Skin is not null) skins++;
                if (early.Lake.ThermoclineM?.Spread is not { } a || late.Lake.ThermoclineM?.Spread is not { } b) continue;
                double apartM = Math.Abs(a.P50 - b.P50);
                mostM = Math.Max(mostM, apartM);
                shares.Add(apartM / (0.5 * (a.P90 - a.P10 + b.P90 - b.P10)));
                if (!Holds(a, b.P50) || !Holds(b, a.P50))
                {
                    outside++;
                    Console.Error.WriteLine(FormattableString.Invariant($"{folder.Files.Name} {morning:yyyy-MM-dd}: {a} at 7, {b} at 17"));
                }
            }

            if (shares.Count == 0) continue;
            all.AddRange(shares);
            string of = FormattableString.Invariant($"{shares.Count} days, {shares.Max():0.00} of p10 to p90");
            yield return new($"{Name}-{folder.Files.Name}-most", mostM, "m", of, OnPage: false);
        }

        if (all.Count == 0) yield break;
        all.Sort();
        string days = $"{all.Count} calm days with a step; {skins} calm days with a skin that is named";
        yield return new($"{Name}-median", all[all.Count / 2], "of p10 to p90", days);
        yield return new($"{Name}-worst", all[^1], "of p10 to p90", "the worst of the same; at most 1 wanted");
        yield return new($"{Name}-outside", outside, "days", "one of the medians outside the other's p10 to p90; none wanted");
    }

    private static bool Holds(Spread spread, double depthM) => depthM >= spread.P10 - 1e-9 && depthM <= spread.P90 + 1e-9;

    // Sunny days of the warm half of the year with the least wind from seven to five; nearer ones are one spell.
    private static List<DateTimeOffset> CalmDays(LakeFolder folder)
    {
        PreparedLake lake = PreparedLake.From(folder);
        bool north = lake.Site.Position.LatDeg >= 0;
        int offsetH = (int)Math.Round(lake.Site.Position.LonDeg / 15);
        List<(double WindMps, DateTimeOffset Morning)> days = [];
        foreach (WeatherSeries series in WeatherPreparation.Prepare(WeatherInput.ToRaw(folder.Weather!), lake.Site).Segments)
        {
            DateTime first = DateTime.SpecifyKind(series.StartUtc.AddHours(offsetH).UtcDateTime.Date.AddDays(60), DateTimeKind.Unspecified);
            for (DateTimeOffset at = new(first.AddHours(7), TimeSpan.FromHours(offsetH)); at.AddDays(1) < series.EndUtc; at = at.AddDays(1))
            {
                if (north ? at.Month is < 6 or > 10 : at.Month is > 4 and < 12) continue;
                int from = series.StepAt(at);
                double wind = 0, sun = 0;
                for (int h = 0; h < 24; h++)
                {
                    if (h < 10) wind += series.WindMps[from + h] / 10;
                    sun += series.ShortwaveWPerM2[from - 7 + h] / 24;
                }

                if (sun >= LeastSunWPerM2) days.Add((wind, at));
            }
        }

        List<DateTimeOffset> chosen = [];
        foreach ((_, DateTimeOffset morning) in days.OrderBy(d => d.WindMps).ThenBy(d => d.Morning))
        {
            if (chosen.Count == MostDays) break;
            if (chosen.TrueForAll(c => Math.Abs((c - morning).TotalDays) >= LeastApartDays)) chosen.Add(morning);
        }

        return chosen;
    }
}
