using SecondShore.Answers.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Desk;

/// <summary>Whether a plan that the page keeps still holds in the water as it is known now.</summary>
internal static class HoldDesk
{
    /// <param name="ask">The plan's stops still to come.</param>
    /// <param name="grid">Depths at the day's level.</param>
    /// <param name="outlook">The outlook as of the plan's day.</param>
    public static HoldView Answer(HoldAsk ask, DepthGrid grid, Outlook outlook)
    {
        double? nowM = outlook.Lake.State == LayerState.Mixed ? null : outlook.Lake.ThermoclineM.SpreadOrNull()?.P50;
        PlanHold hold = PlanHold.Of(grid, [.. ask.Stops.Select(s => new HeldStop(s.Letter, new PlanePoint(s.XM, s.YM), Line(s.Pass)))], ask.WasM, nowM);
        return new HoldView(ask.WasM, nowM, Letters(StopFate.Slides), Letters(StopFate.NoLongerCrosses));

        IReadOnlyList<string> Letters(StopFate fate) => [.. hold.Stops.Where(s => s.Fate == fate).Select(s => s.Letter)];
    }

    private static List<PlanePoint> Line(IReadOnlyList<double> flat)
    {
        List<PlanePoint> line = [];
        for (int i = 0; i + 1 < flat.Count; i += 2) line.Add(new PlanePoint(flat[i], flat[i + 1]));
        return line;
    }
}
