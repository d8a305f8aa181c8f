using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Time of one column-year: hourly steps, 100 layers.</summary>
internal sealed class SeasonColumn : IFigure
{
    public string Name => "season-column";

    public string Claim => "one column-year of hourly steps on 100 layers; nothing is allocated in the step";

    public FigureMargin Margin => FigureMargin.OfValue(0.2);

    public IEnumerable<Measured> Measure()
    {
        ColumnYear year = new();
        double best = double.MaxValue;
        long allocated = 0;
        for (int round = 0; round < 60; round++)
        {
            (double ms, allocated) = year.Run();
            best = Math.Min(best, ms);
        }

        yield return new Measured("season-column-year", best, "ms", "best of 60, target 15");
        yield return new Measured("season-column-layer-step", best * 1e6 / (8760.0 * year.Layers), "ns", $"{year.Layers} layers");
        yield return new Measured("season-column-allocated", allocated, "bytes", "8760 steps, must be 0", FigureMargin.Exact);
    }
}
