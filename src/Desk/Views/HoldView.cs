namespace SecondShore.Desk.Views;

/// <summary>A kept plan to be held against the water as it is known now.</summary>
/// <param name="Date">The plan's day.</param>
/// <param name="WasM">Thermocline depth it was planned for, m; null where none stood.</param>
/// <param name="Stops">The stops still to come.</param>
public sealed record HoldAsk(DateOnly Date, double? WasM, IReadOnlyList<HoldStop> Stops)
{
    /// <summary>The stops of a plan from one on.</summary>
    public static HoldAsk Of(DayView day, int from) => new(day.Date, day.ThermoclineM?.P50,
        [.. day.Stops.Skip(from).Select(s => new HoldStop(s.Letter, s.XM, s.YM, day.Chart?.Passes.FirstOrDefault(p => p.Letter == s.Letter)?.Points ?? []))]);
}

/// <summary>A stop still to come.</summary>
/// <param name="Letter">Its letter.</param>
/// <param name="XM">Place in the lake's plane, m.</param>
/// <param name="YM">Place in the lake's plane, m.</param>
/// <param name="Pass">x, y pairs of its pass in the lake's plane, m.</param>
public sealed record HoldStop(string Letter, double XM, double YM, IReadOnlyList<double> Pass);

/// <summary>What became of a kept plan.</summary>
/// <param name="WasM">Thermocline depth planned for, m.</param>
/// <param name="NowM">Thermocline depth as known now, m; null where none stands.</param>
/// <param name="Slides">Letters of stops where it still crosses the bottom, at the other depth.</param>
/// <param name="Gone">Letters of stops where it no longer meets the bottom.</param>
public sealed record HoldView(double? WasM, double? NowM, IReadOnlyList<string> Slides, IReadOnlyList<string> Gone)
{
    /// <summary>Whether there is anything to tell.</summary>
    public bool Changed => Slides.Count + Gone.Count > 0;
}
