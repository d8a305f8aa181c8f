namespace SecondShore.Bench;

/// <summary>One of the app's figures in Chromium; all are measured in one visit.</summary>
internal sealed class AppFigure(string name, string claim, string unit, string against, Func<AppVisit, double> value) : IFigure
{
    public static IReadOnlyList<IFigure> All { get; } =
    [
        new AppFigure("app-transfer", "Compressed bytes fetched on the first visit to the published app", "MB", "4 MB wanted; app, engine, fonts and the packed demo lake", v => v.TransferBytes / 1e6),
        new AppFigure("app-start", "Seconds from opening the published app cold until its places can be used", "s", "4 s wanted", v => v.UsableS),
        new AppFigure("app-recompute", "Seconds for opening the demo lake, outlook and second shore in the browser", "s", "15 s wanted, with outlook of 30 members", v => v.RecomputeS),
        new AppFigure("app-reslice", "Milliseconds for drawing the second shore at another depth", "ms", "200 ms wanted", v => v.ResliceMs),
    ];

    public string Name => name;

    public string Claim => claim;

    public IEnumerable<Measured> Measure() => [new Measured(name, value(AppVisit.Once.GetAwaiter().GetResult()), unit, against)];
}
