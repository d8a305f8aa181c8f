using SecondShore.Answers.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Desk;

/// <summary>Ranked spots as the page and the chart show them.</summary>
internal static class SpotViews
{
    public static IReadOnlyList<SpotView> Of(ShoreResult shore, UnitSystem units)
    {
        return [.. shore.Spots.Select(s => new SpotView
        {
            Letter = s.Letter,
            Id = s.Id,
            Name = SpotNames.Of(s, shore, units),
            Form = units.Speech.Plain(FormWords.Of(s.Form)),
            XM = s.Place.XM,
            YM = s.Place.YM,
            DepthM = s.DepthM,
            Chance = s.ChanceInReach,
            Reasons = [.. s.Reasons.Select(r => ReasonText.Of(r, !units.IsMetric, units.Speech))],
            PassWords = s.Passes.Count > 0 ? StopValues.How(s.Passes[0], units) : "",
        })];
    }

    public static IReadOnlyList<SpotMark> Marks(IReadOnlyList<SpotView> spots) => [.. spots.Select(s => new SpotMark(s.Letter, s.Name, s.XM, s.YM, s.DepthM))];

    public static IReadOnlyList<PassMark> Passes(ShoreResult shore) =>
        [.. shore.Spots.Where(s => s.Passes.Count > 0).Select(s => Pass(s.Letter, s.Passes[0].Line))];

    public static PassMark Pass(string letter, IReadOnlyList<PlanePoint> line) => new(letter, Flat(line));

    /// <summary>Points as x, y pairs.</summary>
    public static double[] Flat(IReadOnlyList<PlanePoint> line)
    {
        double[] flat = new double[2 * line.Count];
        for (int i = 0; i < line.Count; i++) (flat[2 * i], flat[(2 * i) + 1]) = (Math.Round(line[i].XM, 1), Math.Round(line[i].YM, 1));
        return flat;
    }
}
