using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Motion;

/// <summary>Waves by place and time from the fetch and the wind of the last hours. Immutable.</summary>
/// <remarks>
/// The sea at an hour is the highest that any stretch of one to six hours up to it raises: the mean wind vector of the stretch
/// over the lesser of the true fetch and the fetch of its age (UsArmy2002). So a young wind has low waves, and an old sea
/// outlives its wind by some hours.
/// </remarks>
public sealed class WindWaves
{
    private const double LongestStretchS = 6 * 3600.0;
    private readonly DepthGrid _grid;
    private readonly FetchField _fetch;
    private readonly WindHistory _wind;
    private readonly int _stretches;
    // By step, made when first asked for: an hour's stretches are the same at every place.
    private readonly Stretch[]?[] _ofStep;

    /// <summary>Joins fetch and wind.</summary>
    /// <param name="grid">Depths, for the local depth.</param>
    /// <param name="fetch">Fetch on the same lake and level.</param>
    /// <param name="wind">The wind.</param>
    public WindWaves(DepthGrid grid, FetchField fetch, WindHistory wind)
    {
        _grid = Require.NotNull(grid);
        _fetch = Require.NotNull(fetch);
        _wind = Require.NotNull(wind);
        _stretches = Math.Max(1, (int)Math.Round(LongestStretchS / wind.StepS));
        _ofStep = new Stretch[wind.Count][];
    }

    /// <summary>Waves at a place and time; calm off the water.</summary>
    public WaveState At(PlanePoint place, DateTimeOffset at)
    {
        int cell = _fetch.CellAt(place);
        double depthM = _grid.DepthAtM(place);
        return cell < 0 || !(depthM > 0) ? default : AtCell(cell, depthM, _wind.StepAt(at));
    }

    /// <summary>Waves on a block of the fetch field in a step of the wind.</summary>
    /// <param name="cell">A block from <see cref="FetchField.CellAt"/>.</param>
    /// <param name="depthM">Depth there, m, above 0.</param>
    /// <param name="step">A step of the wind.</param>
    public WaveState AtCell(int cell, double depthM, int step)
    {
        Stretch[] stretches = _ofStep[step] ??= StretchesTo(step);
        int best = -1;
        double most = 0, bestFetchM = 0, bestMeanM = 0;
        for (int i = 0; i < stretches.Length; i++)
        {
            ref readonly Stretch stretch = ref stretches[i];
            double fetchM = _fetch.FetchM(cell, stretch.Bearing), effectiveM = Math.Min(fetchM, stretch.AgeFetchM);
            double growth = WaveGrowth.Growth(effectiveM, stretch.ScaleM);
            // The bottom only ever lowers a sea: what deep water could not raise needs no closer look.
            if (stretch.Size * growth <= most) continue;
            double meanM = _fetch.MeanDepthM(cell, stretch.Bearing), energy = stretch.Size * WaveGrowth.Limited(growth, meanM, stretch.ScaleM);
            if (energy <= most) continue;
            (most, best, bestFetchM, bestMeanM) = (energy, i, effectiveM, meanM);
            if (effectiveM >= fetchM && stretch.IsPresentAndFull) break;
        }

        if (best < 0) return Finish(0, 0, _wind.FromDeg(step), depthM, step);
        double windMps = stretches[best].WindMps;
        return Finish(WaveGrowth.HeightM(windMps, bestFetchM, bestMeanM), WaveGrowth.PeriodS(windMps, bestFetchM, bestMeanM), stretches[best].FromDeg, depthM, step);
    }

    private Stretch[] StretchesTo(int step)
    {
        List<Stretch> stretches = [];
        double longMps = _wind.MeanWind(step, _stretches).WindMps;
        for (int count = 1; count <= _stretches && count <= step + 1; count++)
        {
            (double windMps, double fromDeg) = _wind.MeanWind(step, count);
            if (!(windMps > 0.3)) continue;
            stretches.Add(new Stretch(windMps, fromDeg, WaveGrowth.ScaleM(windMps), WaveGrowth.Size(windMps), WaveGrowth.FetchOfAgeM(windMps, count * _wind.StepS),
                _fetch.Bearing(fromDeg), count == 1 && _wind.WindMps(step) >= longMps));
        }

        return [.. stretches];
    }

    private WaveState Finish(double heightM, double periodS, double fromDeg, double depthM, int step)
    {
        double windMps = _wind.WindMps(step), gustMps = _wind.GustMps(step);
        if (!(heightM > 0.005) || !(periodS > 0.1)) return new WaveState(0, 0, 0, fromDeg, windMps, gustMps, 0, false);
        double k = WaveTheory.WaveNumberPerM(periodS, depthM), kd = k * depthM, lengthM = 2.0 * Math.PI / k;
        double carriedM = WaveTheory.SignificantDepthShare * depthM;
        bool breaks = heightM > carriedM;
        double limitedM = Math.Min(heightM, Math.Min(carriedM, 0.142 * lengthM * Math.Tanh(kd)));
        double bedMps = kd > 50 ? 0.0 : Math.PI * limitedM / (periodS * Math.Sinh(kd));
        return new WaveState(limitedM, periodS, lengthM, fromDeg, windMps, gustMps, bedMps, breaks);
    }

    /// <summary>One stretch of hours up to a step: its mean wind and what follows from it alone.</summary>
    /// <param name="WindMps">Mean wind, m s-1.</param>
    /// <param name="FromDeg">Where it comes from.</param>
    /// <param name="ScaleM">Its length scale, m.</param>
    /// <param name="Size">Its size in the comparison of seas.</param>
    /// <param name="AgeFetchM">Fetch that its age makes up for, m.</param>
    /// <param name="Bearing">Its bearing among those kept.</param>
    /// <param name="IsPresentAndFull">It is the present hour, and no weaker than the longest stretch.</param>
    private readonly record struct Stretch(double WindMps, double FromDeg, double ScaleM, double Size, double AgeFetchM, BearingShare Bearing, bool IsPresentAndFull);
}
