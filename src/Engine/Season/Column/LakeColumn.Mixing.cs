using System.Runtime.CompilerServices;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

public sealed partial class LakeColumn
{
    private const double DensityTolerance = 1e-10, Gravity = 9.81, FreshWaterDiffusivity = 1.4e-7;
    private const double DeepMixingShare = 0.08, RockingMemoryS = 2 * 86400.0, LeastBuoyancyPerS2 = 1e-5, MostDiffusivityM2PerS = 3e-4;
    private double _rockingWPerKg, _waterVolumeM3, _mixedM;

    /// <summary>Spends stirring energy and nothing else: for tests of the energy law.</summary>
    internal void StirOnly(double energyJ, double nearJ = 0, double reachM = 1)
    {
        Densities();
        Entrain(energyJ, nearJ, reachM);
    }

    /// <summary>Diffuses and nothing else: for tests against exact solutions.</summary>
    internal void DiffuseOnly(double stepS)
    {
        Densities();
        DeepDiffusivity();
        Diffuse(stepS);
    }

    /// <summary>Works out the deep diffusivity at each layer's upper face, m2 s-1, [Grid.Count], for a tracer beside the heat.</summary>
    internal ReadOnlySpan<double> DiffusivityNow()
    {
        Densities();
        DeepDiffusivity();
        return _diffusivity;
    }

    /// <summary>Densities of the layers now, kg m-3; wet from <see cref="Top"/>.</summary>
    internal ReadOnlySpan<double> DensitiesNow()
    {
        Densities();
        return _densityKgPerM3;
    }

    /// <summary>Areas of the layers' upper faces today, m2, and one for the bottom.</summary>
    internal ReadOnlySpan<double> FaceAreas => _areaM2;

    /// <summary>Depths of the layers' centres below full pool today, m.</summary>
    internal ReadOnlySpan<double> Centres => _centreM;

    /// <summary>Moves two columns' layers above a sill toward each other, heat for heat.</summary>
    /// <param name="other">The neighbour; its grid shares this one's faces.</param>
    /// <param name="sillM">Depth of the sill below full pool, m.</param>
    /// <param name="share">Share of the smaller layer's volume that changes place, 0 to 1.</param>
    internal void Exchange(LakeColumn other, double sillM, double share)
    {
        int first = Math.Max(_top, other._top), last = Math.Min(_tempC.Length, other._tempC.Length);
        for (int i = first; i < last && _grid.FaceDepthM[i + 1] <= sillM + 1e-9; i++)
        {
            double moved = share * Math.Min(_volumeM3[i], other._volumeM3[i]) * (other._tempC[i] - _tempC[i]);
            _tempC[i] += moved / _volumeM3[i];
            other._tempC[i] -= moved / other._volumeM3[i];
            HeatInJ += moved * FreshWater.HeatCapacityJPerM3K;
            other.HeatInJ -= moved * FreshWater.HeatCapacityJPerM3K;
        }

        Touch(last - 1);
        other.Touch(last - 1);
        Adjust();
        other.Adjust();
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Densities()
    {
        double[] temp = _tempC, density = _densityKgPerM3;
        int to = Math.Min(_staleTo, temp.Length - 1);
        for (int i = _top; i <= to; i++) density[i] = FreshWater.DensityKgPerM3(temp[i]);
        _staleTo = -1;
    }

    /// <summary>Pools every run of layers that would overturn (pool adjacent violators on density); returns the energy freed, J.</summary>
    private double Adjust()
    {
        Densities();
        double[] temp = _tempC, density = _densityKgPerM3, volume = _volumeM3, centre = _centreM;
        // Water that did not change since it was last in order still is.
        int last = temp.Length - 1, i = _top, to = Math.Min(last - 1, _looseTo);
        _looseTo = -1;
        double freed = 0;
        while (i <= to)
        {
            if (!(density[i] > density[i + 1] + DensityTolerance))
            {
                i++;
                continue;
            }

            int a = i, b = i;
            double v = volume[i], heat = v * temp[i], moment = v * centre[i], before = density[i] * moment;
            double mean = temp[i], pooled = density[i];
            while (true)
            {
                int take = b < last && pooled > density[b + 1] + DensityTolerance ? ++b
                    : a > _top && density[a - 1] > pooled + DensityTolerance ? --a : -1;
                if (take < 0) break;
                double part = volume[take] * centre[take];
                v += volume[take];
                heat += volume[take] * temp[take];
                moment += part;
                before += density[take] * part;
                mean = heat / v;
                pooled = FreshWater.DensityKgPerM3(mean);
            }

            for (int j = a; j <= b; j++)
            {
                temp[j] = mean;
                density[j] = pooled;
            }

            freed += Gravity * ((pooled * moment) - before);
            i = b;
            if (b == last) break;
        }

        return freed;
    }

    /// <summary>Spends energy on mixing the surface layer downward, layer by layer, each at its exact cost.</summary>
    /// <param name="energyJ">Energy at the base of the mixed layer, J.</param>
    /// <param name="nearJ">More of it that fades evenly to nothing at <paramref name="reachM"/>, J.</param>
    /// <param name="reachM">How deep the waves stir, m.</param>
    private void Entrain(double energyJ, double nearJ, double reachM)
    {
        double[] temp = _tempC, density = _densityKgPerM3, volume = _volumeM3, centre = _centreM;
        int last = temp.Length - 1, m = _top;
        double partM = 0, spentNear = 0;
        double v = volume[m], moment = v * centre[m], mean = temp[m], own = density[m];
        while (m < last)
        {
            double v2 = volume[m + 1], moment2 = v2 * centre[m + 1], next = temp[m + 1];
            if (next == mean)
            {
                v += v2;
                moment += moment2;
                m++;
                continue;
            }

            double mixed = ((v * mean) + (v2 * next)) / (v + v2), mixedDensity = FreshWater.DensityKgPerM3(mixed);
            double cost = Math.Max(0, Gravity * ((own * moment) + (density[m + 1] * moment2) - (mixedDensity * (moment + moment2))));
            double near = Math.Max(0, (nearJ * (1.0 - ((_grid.FaceDepthM[m + 1] - _dropM) / reachM))) - spentNear);
            if (cost > energyJ + near)
            {
                double share = (energyJ + near) / cost;
                mean += share * (mixed - mean);
                own = FreshWater.DensityKgPerM3(mean);
                temp[m + 1] = next + (share * (mixed - next));
                density[m + 1] = FreshWater.DensityKgPerM3(temp[m + 1]);
                partM = share * (_grid.FaceDepthM[m + 2] - _grid.FaceDepthM[m + 1]);
                break;
            }

            double fromNear = Math.Min(near, cost);
            spentNear += fromNear;
            energyJ -= cost - fromNear;
            v += v2;
            moment += moment2;
            mean = mixed;
            own = mixedDensity;
            m++;
        }

        for (int j = _top; j <= m; j++)
        {
            temp[j] = mean;
            density[j] = own;
        }

        // Mixing across 4 degrees makes water heavier than either: the layer below may have to be looked at again.
        _looseTo = Math.Max(_looseTo, m + 1);
        MixedTo = m;
        _mixedM = _grid.FaceDepthM[m + 1] - _dropM + partM;
    }

    // Rocking of the layers feeds the deep water: a share of the stirring, smoothed over its decay, works against the layers.
    // K N^2 = share of the power, so weak layers mix fast and strong ones hardly at all.
    private void DeepDiffusivity()
    {
        double work = _parameters.DeepMixingFactor * DeepMixingShare * _rockingWPerKg, perM = Gravity / 1000.0;
        double[] density = _densityKgPerM3, perDistance = _perDistance, diffusivity = _diffusivity;
        for (int i = _top + 1; i < density.Length; i++)
        {
            double n2 = Math.Max(LeastBuoyancyPerS2, perM * (density[i] - density[i - 1]) * perDistance[i]);
            diffusivity[i] = Math.Min(MostDiffusivityM2PerS, FreshWaterDiffusivity + (work / n2));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void RememberRocking(double energyJ, double stepS)
    {
        double power = energyJ / (1000.0 * _waterVolumeM3 * stepS);
        _rockingWPerKg += (power - _rockingWPerKg) * Math.Min(1.0, stepS / RockingMemoryS);
    }

    // The published law for comparison: HondzoStefan1993, held to lakes of 10 km2 and less.
    private void StabilityDiffusivity()
    {
        double perM = Gravity / 1000.0;
        for (int i = _top + 1; i < _tempC.Length; i++)
        {
            double gradient = (_densityKgPerM3[i] - _densityKgPerM3[i - 1]) / (_centreM[i] - _centreM[i - 1]);
            _diffusivity[i] = FreshWaterDiffusivity + (0.2 * _parameters.DeepMixingFactor * HondzoStefanM2PerS(_areaM2[_top], perM * gradient));
        }
    }

    /// <summary>Deep diffusivity from stability and size, m2 s-1 (source: HondzoStefan1993), area held to 10 km2.</summary>
    /// <param name="areaM2">Surface area, m2.</param>
    /// <param name="buoyancyPerS2">Buoyancy frequency squared, s-2; held to 7.5e-5 or more.</param>
    public static double HondzoStefanM2PerS(double areaM2, double buoyancyPerS2) =>
        8.17e-8 * Math.Pow(Math.Min(10.0, areaM2 / 1e6), 0.56) * Math.Pow(Math.Max(7.5e-5, buoyancyPerS2), -0.43);

    // HendersonSellers1985: wind eddies damped by a Richardson number, with the stability law as a floor.
    private void WindDiffusivity(double wind2mMps, double latitudeDeg)
    {
        StabilityDiffusivity();
        if (wind2mMps < 0.1) return;
        double surface = 1.2e-3 * wind2mMps * _parameters.StirringFactor / 0.2;
        double decay = 6.6 * Math.Sqrt(Math.Max(0.05, Math.Sin(Math.Abs(latitudeDeg) * Math.PI / 180.0))) * Math.Pow(wind2mMps, -1.84);
        for (int i = _top + 1; i < _tempC.Length; i++)
        {
            double z = _grid.FaceDepthM[i] - _dropM, fade = Math.Exp(-decay * z);
            if (fade < 1e-6) break;
            double gradient = (_densityKgPerM3[i] - _densityKgPerM3[i - 1]) / (_centreM[i] - _centreM[i - 1]);
            double n2 = Math.Max(0, Gravity / 1000.0 * gradient);
            double inner = 40.0 * n2 * 0.16 * z * z / (surface * surface * fade * fade);
            double richardson = (Math.Sqrt(1.0 + inner) - 1.0) / 20.0;
            _diffusivity[i] += 0.4 * surface * z * fade / (1.0 + (37.0 * richardson * richardson));
        }
    }

    // Implicit, so stable for any step; what leaves one layer enters the next, so heat is kept. Elimination goes down as the rows
    // are made, back substitution comes up.
    private void Diffuse(double stepS)
    {
        double[] temp = _tempC, passedOn = _passedOn, area = _areaM2, diffusivity = _diffusivity, perDistance = _perDistance, perVolume = _perVolume;
        int last = temp.Length - 1;
        double fromAbove = 0, passed = 0, above = 0;
        for (int i = _top; i <= last; i++)
        {
            double toBelow = i < last ? stepS * area[i + 1] * diffusivity[i + 1] * perDistance[i + 1] : 0;
            double upper = fromAbove * perVolume[i], lower = toBelow * perVolume[i], pivot = 1.0 / (1.0 + lower + (upper * (1.0 - passed)));
            passed = lower * pivot;
            above = (temp[i] + (upper * above)) * pivot;
            passedOn[i] = passed;
            temp[i] = above;
            fromAbove = toBelow;
        }

        for (int i = last - 1; i >= _top; i--) temp[i] += passedOn[i] * temp[i + 1];
        TouchAll();
    }

    private int EndOfUniform()
    {
        int m = _top;
        while (m < _tempC.Length - 1 && Math.Abs(_tempC[m + 1] - _tempC[_top]) < 0.05) m++;
        return m;
    }
}
