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
        double heightM = 0, periodS = 0, fromDeg = _wind.FromDeg(step);
        for (int count = 1; count <= _stretches && count <= step + 1; count++)
        {
            (double windMps, double meanFromDeg) = _wind.MeanWind(step, count);
            if (!(windMps > 0.3)) continue;
            (double fetchM, double meanDepthM) = _fetch.Sample(cell, meanFromDeg);
            double effectiveM = Math.Min(fetchM, WaveGrowth.FetchOfAgeM(windMps, count * _wind.StepS));
            double candidateM = WaveGrowth.HeightM(windMps, effectiveM, meanDepthM);
            if (candidateM <= heightM) continue;
            heightM = candidateM;
            periodS = WaveGrowth.PeriodS(windMps, effectiveM, meanDepthM);
            fromDeg = meanFromDeg;
            if (effectiveM >= fetchM && count == 1 && _wind.WindMps(step) >= _wind.MeanWind(step, _stretches).WindMps) break;
        }

        return Finish(heightM, periodS, fromDeg, depthM, step);
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
}
