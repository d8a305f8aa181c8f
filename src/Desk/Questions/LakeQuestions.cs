using SecondShore.Answers.Documents;
using SecondShore.Answers.Learn;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Views;

namespace SecondShore.Desk.Questions;

/// <summary>Opens the lake whose files were laid on the desk, or the same again with this device's records of now.</summary>
/// <param name="Records">Readings and log entries kept on this device, corrected and removed ones too.</param>
/// <param name="At">The instant that all answers stand for; null takes the lake's own.</param>
public sealed record OpenLake(IReadOnlyList<RecordRow> Records, DateTimeOffset? At = null)
    : Question<LakeView>("open", DeskJson.Default.LakeView)
{
    internal override LakeView AnsweredBy(LakeDesk desk) => desk.Open(this);
}

/// <summary>Is the lake layered, how deep is the thermocline, when does it turn?</summary>
public sealed record FindOutlook() : Question<OutlookView>("outlook", DeskJson.Default.OutlookView)
{
    internal override OutlookView AnsweredBy(LakeDesk desk) => desk.Outlook();
}

/// <summary>The belt and the second shore alone, at once; the places stay as they were ranked.</summary>
/// <param name="ThermoclineM">A depth to try, m; null takes the outlook's.</param>
/// <param name="PoolDropM">How far below full pool to try, m; null takes the day's.</param>
/// <param name="Date">A day to try; null takes the outlook's.</param>
public sealed record SliceShore(double? ThermoclineM = null, double? PoolDropM = null, DateOnly? Date = null)
    : Question<ShoreView>("slice", DeskJson.Default.ShoreView)
{
    internal override ShoreView AnsweredBy(LakeDesk desk) => desk.Shore(new(ThermoclineM, PoolDropM, Date), ranks: false);
}

/// <summary>The belt, the second shore and the places on it, ranked.</summary>
/// <param name="ThermoclineM">A depth to try, m; null takes the outlook's.</param>
/// <param name="PoolDropM">How far below full pool to try, m; null takes the day's.</param>
/// <param name="Date">A day to try; null takes the outlook's.</param>
public sealed record RankPlaces(double? ThermoclineM = null, double? PoolDropM = null, DateOnly? Date = null)
    : Question<ShoreView>("rank", DeskJson.Default.ShoreView)
{
    internal override ShoreView AnsweredBy(LakeDesk desk) => desk.Shore(new(ThermoclineM, PoolDropM, Date), ranks: true);
}

/// <summary>The second shore and its places as the command line writes them.</summary>
public sealed record ShorePapers() : Question<HandedOut>("shorePapers", DeskJson.Default.HandedOut)
{
    internal override HandedOut AnsweredBy(LakeDesk desk) => desk.PapersOf(this);
}

/// <summary>What a log teaches.</summary>
/// <param name="Wish">What is asked of it.</param>
/// <param name="Records">This device's records; they may be more than when the lake was opened.</param>
public sealed record LearnFrom(LearnAsk Wish, IReadOnlyList<RecordRow> Records)
    : Question<LearnDocument>("learn", AnswersJson.Default.LearnDocument)
{
    internal override LearnDocument AnsweredBy(LakeDesk desk) => desk.Learn(this);
}

/// <summary>What to tie on.</summary>
/// <param name="Ask">Depth, speed, line and what else is known.</param>
/// <param name="Day">The day whose stop is meant; null where none is.</param>
public sealed record RigFor(RigAsk Ask, DayAsk? Day = null) : Question<RigView>("rig", DeskJson.Default.RigView)
{
    internal override RigView AnsweredBy(LakeDesk desk) => desk.Rig(this);
}
