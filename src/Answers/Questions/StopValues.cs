using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Passes;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Questions;

/// <summary>Turns a ranked spot into a stop with bites by the hour: where the thermocline lies then, and what the waves leave of the fishing.</summary>
public static class StopValues
{
    // A prior, not a fact of any lake: bites an hour of a place worth 50 points (docs/science/day.md).
    private const double BitesPerHAtFifty = 0.6;
    private const double LeastWaveShare = 0.3;

    internal static StopCandidate Candidate(Spot spot, Outlook outlook, IWaterMotion motion, Boat boat, DayClock clock, UnitSystem units)
    {
        int hours = (int)Math.Ceiling((clock.HomeBy - clock.Launch).TotalHours) + 1;
        double[] perH = new double[hours];
        SampleDistribution? law = outlook.Lake.ThermoclineM;
        double atRest = law is null ? 0 : BandShare(spot, law, 0);
        for (int h = 0; h < hours; h++)
        {
            DateTimeOffset at = clock.Launch.AddHours(h);
            double tilt = law is not null && spot.Kind == SpotKind.Belt && atRest > 0.02
                ? Math.Clamp(BandShare(spot, law, motion.ThermoclineOffsetM(spot.Place, at)) / atRest, 0.2, 3.0)
                : 1.0;
            perH[h] = BitesPerHAtFifty * spot.Value.P50 / 50.0 * tilt * WaveShare(motion.WavesAt(spot.Place, at).HeightM, boat);
        }

        Pass? pass = spot.Passes.Count > 0 ? spot.Passes[0] : null;
        return new StopCandidate
        {
            Id = spot.Id,
            Letter = spot.Letter,
            Name = spot.Name.Length > 0 ? spot.Name : Capital(units.Speech.Plain(FormWords.Of(spot.Form))),
            Place = pass?.Line[0] ?? spot.Place,
            EndPlace = pass?.Line[^1],
            Pass = pass?.Line ?? [],
            DepthM = spot.DepthM,
            Bites = new RateTable(clock.Launch, 3600, perH),
            BitesIfMixed = RateTable.Constant(clock.Launch, BitesPerHAtFifty * (spot.Kind == SpotKind.Belt ? 0.35 : 1.0) * spot.Value.P50 / 50.0),
            Form = FormWords.Of(spot.Form),
            ChanceInReach = spot.ChanceInReach,
            How = pass is null ? "" : How(pass, units),
            Why = string.Join("; ", spot.Reasons.Take(3).Select(r => ReasonText.Of(r, !units.IsMetric, units.Speech))),
        };
    }

    /// <summary>How a pass is fished: length, heading and the depths to keep.</summary>
    public static string How(Pass pass, UnitSystem units) =>
        units.Speech.Say($"pass {units.Distance(pass.LengthM)}, heading {pass.HeadingDeg:0}°, keep {units.DepthRange(pass.ShallowM, pass.DeepM)}");

    // Share of the thermocline's law within reach of the ground that the pass covers, when it lies offsetM deeper than at rest.
    private static double BandShare(Spot spot, SampleDistribution law, double offsetM)
    {
        (double shallowM, double deepM) = spot.Passes.Count > 0 ? (spot.Passes[0].ShallowM, spot.Passes[0].DeepM) : (spot.DepthM, spot.DepthM);
        return law.ShareBelow(deepM + ShoreAnswer.ReachM - offsetM) - law.ShareBelow(shallowM - ShoreAnswer.ReachM - offsetM);
    }

    private static double WaveShare(double waveM, Boat boat)
    {
        if (waveM <= boat.FairWaveM) return 1;
        if (waveM >= boat.LimitWaveM) return LeastWaveShare;
        return 1 - ((1 - LeastWaveShare) * (waveM - boat.FairWaveM) / (boat.LimitWaveM - boat.FairWaveM));
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
