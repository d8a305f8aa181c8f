using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Desk.Graph;

/// <summary>What is tried in the outlook's stead; null leaves a thing as the outlook has it.</summary>
/// <param name="ThermoclineM">Depth of the thermocline, m.</param>
/// <param name="PoolDropM">Level, m below full pool.</param>
/// <param name="Date">Day at the lake.</param>
internal sealed record Tried(double? ThermoclineM = null, double? PoolDropM = null, DateOnly? Date = null)
{
    /// <summary>Nothing is tried.</summary>
    public static Tried Nothing { get; } = new();

    /// <summary>It as a word of a content id.</summary>
    public string Word => $"{ContentId.Word(ThermoclineM)} {ContentId.Word(PoolDropM)} {Date?.DayNumber}";

    /// <summary>The lake at the level tried.</summary>
    public PreparedLake Lake(PreparedLake lake, Outlook outlook) =>
        PoolDropM is { } dropM ? lake.With(lake.Folder with { Levels = [new PoolLevel(Outlook(outlook).At, dropM)] }) : lake;

    /// <summary>The outlook tried: a depth keeps the width of doubt and moves its middle; a day is that day of the course.</summary>
    public Outlook Outlook(Outlook outlook)
    {
        if (Date is { } date) outlook = DayOutlook.OnDay(outlook, date);
        if (ThermoclineM is not { } triedM || outlook.Lake.ThermoclineM is not { } law) return outlook;
        double shiftM = triedM - law.Quantile(0.5);
        double[] moved = [.. law.Values.ToArray().Select(m => Math.Max(0.1, m + shiftM))];
        return outlook with { Lake = outlook.Lake with { ThermoclineM = SampleDistribution.Of(moved, [.. law.Weights]) } };
    }
}
