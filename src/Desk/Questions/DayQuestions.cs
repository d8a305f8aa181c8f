using SecondShore.Desk.Views;

namespace SecondShore.Desk.Questions;

/// <summary>A day planned on the ranked places.</summary>
/// <param name="Ask">Which day, and what is wished.</param>
public sealed record PlanDay(DayAsk Ask) : Question<DayView>("plan", DeskJson.Default.DayView)
{
    internal override DayView AnsweredBy(LakeDesk desk) => desk.Day(this);
}

/// <summary>The same day with the plans that differ in kind from it; one of them in its place where it was taken.</summary>
/// <param name="Ask">The day as it was asked for.</param>
public sealed record PlanOthers(DayAsk Ask) : Question<DayView>("others", DeskJson.Default.DayView)
{
    internal override DayView AnsweredBy(LakeDesk desk) => desk.Others(this);
}

/// <summary>Does a kept plan still hold in the water as it is known now?</summary>
/// <param name="Plan">The plan.</param>
public sealed record HoldPlan(HoldAsk Plan) : Question<HoldView>("hold", DeskJson.Default.HoldView)
{
    internal override HoldView AnsweredBy(LakeDesk desk) => desk.Hold(this);
}

/// <summary>A day's sheet and the files that carry it out of the app.</summary>
/// <param name="Ask">The day as it was asked for.</param>
public sealed record DayPapers(DayAsk Ask) : Question<HandedOut>("papers", DeskJson.Default.HandedOut)
{
    internal override HandedOut AnsweredBy(LakeDesk desk) => desk.PapersOf(this);
}
