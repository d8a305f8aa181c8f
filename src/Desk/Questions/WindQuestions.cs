using SecondShore.Answers.Documents;
using SecondShore.Answers.Wind;
using SecondShore.Desk.Views;

namespace SecondShore.Desk.Questions;

/// <summary>What does the wind do to the water?</summary>
/// <param name="Ask">For how long.</param>
public sealed record BlowWind(WindAsk Ask) : Question<WindView>("wind", DeskJson.Default.WindView)
{
    internal override WindView AnsweredBy(LakeDesk desk) => desk.Wind(this);
}

/// <summary>A place hour by hour, the very series that the command line prints.</summary>
/// <param name="Wind">Which hours.</param>
/// <param name="Place">Where.</param>
public sealed record LookAtPoint(WindAsk Wind, PointAsk Place) : Question<PointSeries>("point", AnswersJson.Default.PointSeries)
{
    internal override PointSeries AnsweredBy(LakeDesk desk) => desk.Point(Wind, Place);
}

/// <summary>The wind's work as the command line writes it.</summary>
/// <param name="Wind">Which hours.</param>
public sealed record WindPapers(WindAsk Wind) : Question<HandedOut>("windPapers", DeskJson.Default.HandedOut)
{
    internal override HandedOut AnsweredBy(LakeDesk desk) => desk.PapersOf(this);
}

/// <summary>A place's hours as the command line writes them.</summary>
/// <param name="Wind">Which hours.</param>
/// <param name="Place">Where.</param>
public sealed record PointPapers(WindAsk Wind, PointAsk Place) : Question<HandedOut>("pointPapers", DeskJson.Default.HandedOut)
{
    internal override HandedOut AnsweredBy(LakeDesk desk) => desk.PapersOf(this);
}
