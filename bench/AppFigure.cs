using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>One of the app's figures in Chromium; all are measured in one visit.</summary>
internal sealed class AppFigure(string name, string claim, string unit, string against, Func<AppVisit, double> value) : IFigure
{
    public static IReadOnlyList<IFigure> All { get; } =
    [
        new AppFigure("app-transfer", "Compressed bytes fetched on the first visit to the published app", "MB", "4 MB wanted; runtime, app, engine, fonts and the packed demo lake; readers of TIFF and XML and the weather service's client come when they are wanted", v => v.TransferBytes / 1e6),
        new AppFigure("app-start", "Seconds from opening the published app cold until its places can be used", "s", "4 s wanted", v => v.UsableS),
        new AppFigure("app-answer", "Seconds from opening the published app cold until the demo lake's answer stands on the screen", "s", "4 s wanted", v => v.AnswerS),
        new AppFigure("app-open", "Seconds for reading and gridding the demo lake in the browser, once a lake", "s", "no target of its own", v => v.OpenS),
        new AppFigure("app-outlook", "Seconds for an outlook of 30 members of the demo lake in the browser", "s", "part of app-recompute", v => v.OutlookS),
        new AppFigure("app-shore", "Seconds for bottom forms, second shore and ranked places in the browser", "s", "part of app-recompute", v => v.ShoreS),
        new AppFigure("app-day", "Seconds for wind and water in motion, route and rigs of a day in the browser", "s", "part of app-recompute", v => v.DayS),
        new AppFigure("app-replan", "Seconds for a day planned again in the browser on 16 places: ways, plan, rigs; the water is known", "s", "2 s wanted", v => v.ReplanS),
        new AppFigure("app-recompute", "Seconds for outlook, second shore, places and a day's plan of the demo lake in the browser; reading its files (app-open) comes once before", "s", "15 s wanted, with outlook of 30 members", v => v.OutlookS + v.ShoreS + v.DayS),
        new AppFigure("app-reslice", "Milliseconds for drawing the second shore at another depth", "ms", "200 ms wanted", v => v.ResliceMs),
        new AppFigure("app-rig", "Milliseconds for the rig's answer and its table at another depth", "ms", "100 ms wanted", v => v.RigMs),
        new AppFigure("app-longest-task", "Longest task of the page's own thread once its places can be used", "ms", "100 ms wanted", v => v.LongestTaskMs),
    ];

    public string Name => name;

    public string Claim => claim;

    public FigureMargin Margin => unit == "MB" ? FigureMargin.OfValue(0.01) : FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure() => [new Measured(name, value(AppVisit.Once.GetAwaiter().GetResult()), unit, against)];
}
