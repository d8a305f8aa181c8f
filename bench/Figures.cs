using SecondShore.Answers.Scoring;

namespace SecondShore.Bench;

/// <summary>Every figure that can be run.</summary>
internal static class Figures
{
    public static IReadOnlyList<IFigure> All { get; } =
    [
        new SeasonColumn(),
        new SeasonOutlook(),
        new SeasonRandom(),
        new SeasonFloor(),
        new SeasonSkin(),
        new Priors.SeasonPriors(),
        new SeasonDegraded(),
        new SeasonScoreFigure(ScoreMode.Blind),
        new SeasonScoreFigure(ScoreMode.Few),
        new SeasonScoreFigure(ScoreMode.Fit),
        new SeasonScoreFigure(ScoreMode.Hindcast),
        new SeasonClimate(),
        new SeasonScoreFigure(ScoreMode.Bare),
        new SeasonScoreFigure(ScoreMode.BareDepthUnknown),
        new RigSteadyFigure(),
        new RigTableFigure(),
        new DayPlanLarge(),
        new DayRoutes(),
        new BasinGridding(),
        new BasinMillion(),
        new BasinContours(),
        new FormsF1(),
        new MotionCells(),
        new MotionDemo(),
        new MotionChains(),
        new FormatsSurveys(),
        new FormatsSynthetic(),
        new FormatsSystems(),
        new FormatsMutations(),
        new LearnSeasonsFigure(),
        new HostLoad(),
        new HostTrips(HostDatabase.Sqlite),
        new HostTrips(HostDatabase.Postgres),
        new HostLakes(HostDatabase.Sqlite),
        new HostLakes(HostDatabase.Postgres),
        .. AppFigure.All,
        new AppRun(),
        new AppProgress(),
        new AppWater(),
        new AppInStep(),
        new InBrowserFigure(),
    ];
}
