using SecondShore.Answers.Questions;
using SecondShore.Answers.Sheet;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Files;

/// <summary>What to do when the sounder shows the haze at another depth than planned.</summary>
internal static class HazeAdvice
{
    public static IReadOnlyList<SheetRow> Of(DayResult result, Spread thermoclineM, UnitSystem units)
    {
        double step = units.IsMetric ? 1.5 : 5 * Length.MetresPerFoot;
        return
        [
            Row(units.Speech.Say($"{units.Depth(Math.Max(1, thermoclineM.P10 - step))} or less"), thermoclineM.P10 - step),
            Row(units.Speech.Say($"{units.Depth(thermoclineM.P90 + step)} or more"), thermoclineM.P90 + step),
            new SheetRow(units.Speech.Plain("Not to be seen"), units.Speech.Say($"The lake may be turning: fish steep banks and channel edges at any depth, or {Mixed(result, units.Speech)}")),
        ];

        SheetRow Row(string head, double depthM)
        {
            PlannedStop[] cross = [.. result.Plan.Stops.Where(s => result.Spots[s.Candidate.Id] is { Passes.Count: > 0 } spot && spot.Passes[0].ShallowM <= depthM + 1 && spot.Passes[0].DeepM >= depthM - 1)];
            string shift = units.Speech.Plain(depthM < thermoclineM.P50 ? "Slide every pass up the slope" : "Slide every pass down the slope");
            string letters = string.Join(", ", cross.Select(s => s.Candidate.Letter));
            return new SheetRow(head, cross.Length switch
            {
                0 => units.Speech.Say($"{shift}; write the depth down and plan again from it."),
                1 => units.Speech.Say($"{shift}. {letters} still crosses it."),
                _ => units.Speech.Say($"{shift}. {letters} still cross it."),
            });
        }
    }

    private static string Mixed(DayResult result, Speech speech) =>
        result.Plan.Alternatives.FirstOrDefault(a => a.Kind == AlternativeKind.IfMixed) is { } other && other.Plan.Stops.Count > 0
            ? speech.Say($"go {string.Join(", ", other.Plan.Stops.Select(s => s.Candidate.Letter))}.")
            : speech.Plain("go shallow in the backs of the arms.");
}
