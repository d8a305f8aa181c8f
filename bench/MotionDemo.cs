using System.Diagnostics;
using SecondShore.Demo.Ketterfold;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Motion.Layers;
using SecondShore.Engine.Season;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Five days of hourly wind on the demo lake at 50 m.</summary>
internal sealed class MotionDemo : IFigure
{
    public string Name => "motion-demo";

    public string Claim => "five days of hourly wind on the demo lake at 50 m cells, target 5 s natively";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure()
    {
        KetterfoldLake lake = KetterfoldDemo.Build(KetterfoldDemo.UsualSeed);
        DepthGrid grid = lake.Lake.ToGrid(lake.Origin);
        WeatherSeries weather = Weather(11 * 24);
        List<TwoLayers> layers = [];
        for (int i = 0; i < 60; i++) layers.Add(new TwoLayers(7 + (0.03 * i), 998.4, 999.7, 1));
        DateTimeOffset from = weather.StartUtc.AddDays(5);
        long start = Stopwatch.GetTimestamp();
        FetchField fetch = FetchField.Of(grid);
        yield return new Measured("motion-fetch", Stopwatch.GetElapsedTime(start).TotalSeconds, "s", $"108 radials over {grid.Frame.Nx} x {grid.Frame.Ny} cells, {fetch.Count} kept");
        foreach ((string name, int members, double spinUp) in new[] { ("motion-demo-one", 1, 0.0), ("motion-demo", 5, 0.0), ("motion-demo-spun-up", 5, 5.0) })
        {
            start = Stopwatch.GetTimestamp();
            double cpuStart = CpuSeconds();
            WindField field = WindField.Compute(grid, layers, weather, from, 120, new WindFieldOptions { Members = members, SpinUpDays = spinUp });
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds, cpu = CpuSeconds() - cpuStart;
            float lowest = 0, highest = 0;
            for (int hour = 0; hour <= 120; hour++)
            {
                foreach (float offset in field.OffsetsM(hour))
                {
                    if (!float.IsFinite(offset)) throw new InvalidOperationException("The field is not finite.");
                    (lowest, highest) = (Math.Min(lowest, offset), Math.Max(highest, offset));
                }
            }

            yield return new Measured(name, seconds, "s",
                FormattableString.Invariant($"{members} members, {spinUp + 5} days, {field.Motion.Cells.Length} cells of {field.Motion.Frame.CellM} m; ")
                + FormattableString.Invariant($"offsets {lowest:0.0} to {highest:0.0} m, period {field.PeriodS / 3600:0.0} h; with fetch; target 5"));
            yield return new Measured(name + "-cpu", cpu, "s", "processor time of the same, all cores together");
        }
    }

    private static double CpuSeconds() => Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;

    private static WeatherSeries Weather(int hours)
    {
        double[] Column(Func<int, double> f)
        {
            double[] values = new double[hours];
            for (int i = 0; i < hours; i++) values[i] = f(i);
            return values;
        }

        return new WeatherSeries(new DateTimeOffset(2031, 9, 20, 0, 0, 0, TimeSpan.Zero), 3600, Column(_ => 15), Column(_ => 0.7),
            Column(i => 3 + (2.5 * Math.Sin(i * Math.PI / 12)) + (i % 96 > 66 ? 6 : 0)), Column(i => i % 96 < 70 ? 200 + (20 * Math.Sin(i)) : 320),
            Column(_ => 100), Column(_ => 300), Column(_ => 0.5), Column(_ => 0), Column(_ => double.NaN));
    }
}
