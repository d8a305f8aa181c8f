using SecondShore.Desk.Views;

namespace SecondShore.App.Shell;

/// <summary>How a lake chart is drawn.</summary>
public sealed record ChartOptions(bool Still, bool Rule, bool Route, bool Wind, string RuleLabel, double FeetBarM, double MetricBarM);

/// <summary>A spread in the user's unit, with its labels.</summary>
public sealed record BandLabel(double P10, double P50, double P90, string Label, string Range);

/// <summary>A measured point in the user's units.</summary>
public sealed record ReadingDot(double Depth, double Temp);

/// <summary>Temperature by depth, in the user's units.</summary>
public sealed record ProfileChart(string Aria, string TempUnit, double MaxDepth, double[] Depth, double[] P10, double[] P50, double[] P90,
    IReadOnlyList<ReadingDot> Readings, BandLabel? Thermocline, BandLabel? Oxygen);

/// <summary>A spread without labels.</summary>
public sealed record BandDay(double P10, double P50, double P90);

/// <summary>A month's first day on the axis.</summary>
public sealed record MonthTick(int Day, string Label);

/// <summary>A bar of the turnover chart.</summary>
public sealed record TurnoverBar(int Day, double Share);

/// <summary>The season by depth and date, in the user's units.</summary>
public sealed record SeasonChart(string Aria, int Today, string TodayLabel, string ForecastLabel, string WarmLabel, string TurnoverLabel,
    int Days, double[] Depth, double MaxDepth, double[] Temps, double Low, double High, BandDay?[] Thermocline, IReadOnlyList<MonthTick> Months,
    IReadOnlyList<TurnoverBar> Turnover, int TurnoverFrom, int TurnoverTo, string TurnoverMain, string TurnoverRange);

/// <summary>An hour of wind, in the user's unit.</summary>
public sealed record WindHour(string Label, double Wind, double? Gust, double? FromDeg, bool Dark, bool Chosen);

/// <summary>A stay in hours from the first.</summary>
public sealed record StayBar(double From, double To);

/// <summary>Wind by hour.</summary>
public sealed record WindChart(string Aria, IReadOnlyList<WindHour> Hours, IReadOnlyList<StayBar> Stops, bool Stale);

/// <summary>The thermocline at an hour, in the user's unit.</summary>
public sealed record DepthHour(string Label, double P10, double P50, double P90, bool Chosen);

/// <summary>The thermocline at a place hour by hour, over its bottom.</summary>
public sealed record HoursChart(string Aria, double Bottom, string BottomLabel, double AtRest, string AtRestLabel, IReadOnlyList<DepthHour> Hours);

/// <summary>The belt as a band of depth.</summary>
public sealed record BeltBand(double From, double To, string Label);

/// <summary>The line under water.</summary>
public sealed record LineChart(string Aria, double Depth, IReadOnlyList<LinePoint> Shape, IReadOnlyList<LinePoint> Low, IReadOnlyList<LinePoint> High,
    BeltBand? Belt, string SpeedLabel, string LineLabel, string BehindLabel);
