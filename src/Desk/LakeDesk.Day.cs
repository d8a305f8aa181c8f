using SecondShore.Answers.Files;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.Desk;

/// <summary>A day planned on the spots, what to tie on, and the files that carry the day out of the app.</summary>
public sealed partial class LakeDesk
{
    internal DayView Day(PlanDay question) => Shown(question.Ask, _graph.Day(question.Ask with { Taken = null }));

    internal DayView Others(PlanOthers question) => Shown(question.Ask, _graph.Whole(question.Ask, () => _tray.Progress(0, Steps.Others)));

    internal HandedOut PapersOf(DayPapers question)
    {
        DayResult day = _graph.Whole(question.Ask);
        _tray.Progress(0, Steps.Papers);
        return Hand(DayFiles.Of(day, _units, _clock.GetUtcNow()));
    }

    internal HoldView Hold(HoldPlan question)
    {
        HoldAsk plan = question.Plan;
        return _graph.Grid(_graph.DropM() ?? 0) is not { } grid ? new HoldView(plan.WasM, plan.WasM, [], [])
            : HoldDesk.Answer(plan, grid, DayOutlook.OnDay(_graph.Outlook(), plan.Date));
    }

    // A stop's rig is the plan's where the plan is at hand. Nobody waits for a day to be planned to be told a weight.
    internal RigView Rig(RigFor question)
    {
        RigRequest? planned = question is { Ask.Stop: { } stop, Day: { } ask } && _graph.KnownDay(ask) is { } day
            && day.Rigs.TryGetValue(stop, out RigPick? pick) ? pick.Request : null;
        return RigDesk.Answer(question.Ask, _graph.HasLake ? _graph.Filed().Tackle : null, _units, planned);
    }

    private DayView Shown(DayAsk ask, DayResult day)
    {
        DayAsk meant = _graph.Meant(ask);
        DayView view = DayViews.Of(day, meant with { Ramp = day.RampName, RampOpen = meant.Ramp is null }, _units) with { Row = Row(meant) };
        _tray.Draw(view.Chart!);
        return view;
    }

    private static RowDayView[] Row(DayAsk asked) => asked is { IsRow: true, Date: { } first }
        ? [.. Enumerable.Range(0, asked.Days).Select(d => new RowDayView(first.AddDays(d), asked.IsPractice(d)))]
        : [];
}
