using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;

namespace SecondShore.Answers.Wind;

/// <summary>One hour of a wind field in a few numbers.</summary>
/// <param name="At">The hour.</param>
/// <param name="WindMps">Mean wind, m s-1.</param>
/// <param name="WindFromDeg">Where it comes from.</param>
/// <param name="GustMps">Gusts, m s-1.</param>
/// <param name="Deepest">Where the thermocline lies deepest against its rest, and how much, m; null without layers.</param>
/// <param name="Shallowest">Where it is lifted most, m; null without layers.</param>
/// <param name="Roughest">Where the waves are highest.</param>
/// <param name="Waves">The waves there.</param>
/// <param name="Comfort">The class there for the user's boat.</param>
/// <param name="GoodShare">Share of the water that is comfortable, 0 to 1.</param>
public sealed record HourSummary(DateTimeOffset At, double WindMps, double WindFromDeg, double GustMps,
    HourSummary.Extreme? Deepest, HourSummary.Extreme? Shallowest, PlanePoint Roughest, WaveState Waves, Comfort Comfort, double GoodShare)
{
    /// <summary>How far the thermocline tips end to end, m; 0 without layers.</summary>
    public double TiltM => Deepest is { } deep && Shallowest is { } shallow ? deep.OffsetM - shallow.OffsetM : 0.0;

    /// <summary>Height of the waves on each water cell of the field's grid, m.</summary>
    public IReadOnlyList<float> WaveHeightsM { get; private init; } = [];

    /// <summary>A place and how far the thermocline lies off its rest there.</summary>
    /// <param name="Place">The place.</param>
    /// <param name="OffsetM">Displacement, m, positive down.</param>
    /// <param name="DepthM">Thermocline depth there with its spread, m.</param>
    public sealed record Extreme(PlanePoint Place, double OffsetM, Spread DepthM);

    internal static HourSummary Of(WindResult result, int hour)
    {
        WindField field = result.Field;
        DateTimeOffset at = field.Hours[hour];
        int step = field.Wind.StepAt(at);
        WaveState[] waves = field.Waves(hour);
        int roughest = 0, good = 0;
        Comfort worst = Comfort.Good;
        for (int w = 0; w < waves.Length; w++)
        {
            Comfort comfort = result.Question.Boat.ComfortOf(waves[w], result.SurfaceC);
            if (comfort == Comfort.Good) good++;
            if (comfort > worst) worst = comfort;
            if (waves[w].HeightM > waves[roughest].HeightM) roughest = w;
        }

        (Extreme? deepest, Extreme? shallowest) = Extremes(result, hour);
        return new HourSummary(at, field.Wind.WindMps(step), field.Wind.FromDeg(step), field.Wind.GustMps(step), deepest, shallowest,
            Place(field, roughest), waves[roughest], worst, waves.Length > 0 ? (double)good / waves.Length : 1.0)
        {
            WaveHeightsM = Array.ConvertAll(waves, w => (float)w.HeightM),
        };
    }

    private static (Extreme? Deepest, Extreme? Shallowest) Extremes(WindResult result, int hour)
    {
        WindField field = result.Field;
        if (!field.IsLayered || result.AtRestAt(field.Hours[hour]) is not { } atRest) return (null, null);
        float[] offsets = field.OffsetsM(hour);
        double restM = atRest.Quantile(0.5);
        int deep = -1, shallow = -1;
        for (int w = 0; w < offsets.Length; w++)
        {
            // Only where the thermocline is above the bottom is it anything to tell.
            if (field.Motion.Depths.DepthM[field.Motion.Cells[w]] < restM + offsets[w]) continue;
            if (deep < 0 || offsets[w] > offsets[deep]) deep = w;
            if (shallow < 0 || offsets[w] < offsets[shallow]) shallow = w;
        }

        return deep < 0 ? (null, null) : (At(deep), At(shallow));

        Extreme At(int w) => new(Place(field, w), offsets[w], field.ThermoclineM(atRest, Place(field, w), field.Hours[hour]).Spread);
    }

    private static PlanePoint Place(WindField field, int water) => field.Motion.Frame.Centre(field.Motion.Cells[water]);
}
