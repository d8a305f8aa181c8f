using SecondShore.Engine.Core;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

public sealed partial class LakeColumn
{
    private const int Substeps = 8, MostPieces = 2000;

    // The deepest layer that the outlet draws from.
    private int _drawnTo;

    /// <summary>
    /// Brings the surface to a level. Water that leaves goes through the outlet where one is known, else off the surface;
    /// water that comes enters at the depth of its own density.
    /// </summary>
    /// <param name="dropM">Wanted level below full pool, m; held to what the grid can carry.</param>
    /// <param name="outletDepthM">Depth of the outlet below full pool, m; null lets water leave at the surface.</param>
    /// <param name="inflowTempC">Temperature of water that comes, degC; null takes the surface's.</param>
    /// <param name="overS">Time the change takes, s: it sets how thick a layer the outlet draws.</param>
    public void MoveLevel(double dropM, double? outletDepthM, double? inflowTempC, double overS)
    {
        double target = Math.Clamp(Require.Finite(dropM), -_grid.AboveM, LowestDropM);
        double volume = _grid.VolumeBetweenM3(Math.Min(_dropM, target), Math.Max(_dropM, target));
        if (volume <= 0) return;
        if (target > _dropM) Withdraw(volume, outletDepthM, overS);
        else Add(volume, inflowTempC ?? SurfaceTempC);
    }

    /// <summary>Lets a day's river through: water in at the depth of its density, the same volume out.</summary>
    /// <param name="volumeM3">Volume, m3, 0 or more; held to half the lake.</param>
    /// <param name="inflowTempC">Temperature, degC.</param>
    /// <param name="outletDepthM">Depth of the outlet below full pool, m; null lets water leave at the surface.</param>
    /// <param name="overS">Time it takes, s.</param>
    public void Flush(double volumeM3, double inflowTempC, double? outletDepthM, double overS)
    {
        double left = Math.Min(Require.NotNegative(volumeM3), 0.5 * VolumeM3), drop = _dropM;
        double piece = Math.Max(left / Substeps, 1e-9);
        for (int k = 0; k < Substeps && left > 0; k++)
        {
            Withdraw(piece, outletDepthM, overS / Substeps);
            Add(_grid.VolumeBetweenM3(drop, _dropM), inflowTempC);
            left -= piece;
        }
    }

    /// <summary>Takes water out; the layers above sink. Exact in heat and volume.</summary>
    private void Withdraw(double volumeM3, double? outletDepthM, double overS)
    {
        double limit = (VolumeM3 - _grid.VolumeBetweenM3(LowestDropM, _grid.FaceDepthM[^1]));
        double left = Math.Min(volumeM3, Math.Max(0, limit));
        for (int k = 0; k < 4000 && left > 1e-13 * VolumeM3; k++)
        {
            // No layer may lose more than a third of itself at once.
            double piece = Math.Min(left, 0.33 * _volumeM3[_top]);
            if (outletDepthM is { } depth) piece = Math.Min(piece, DrawLimit(depth, volumeM3 / Math.Max(1.0, overS)));
            WithdrawPiece(piece, outletDepthM.HasValue);
            left -= piece;
        }
    }

    // Fills _scratch with the share each layer gives, down to _drawnTo, and returns the largest safe volume.
    private double DrawLimit(double outletDepthM, double flowM3PerS)
    {
        int centre = Math.Clamp((int)((outletDepthM + _grid.AboveM) / _grid.LayerM), _top, _tempC.Length - 1);
        double half = _grid.LayerM;
        Densities();
        for (int pass = 0; pass < 3; pass++)
        {
            int up = Math.Clamp(centre - (int)(half / _grid.LayerM), _top, centre), down = Math.Clamp(centre + (int)(half / _grid.LayerM), centre, _tempC.Length - 1);
            if (up == down) up = Math.Max(_top, up - 1);
            double span = Math.Max(_centreM[down] - _centreM[up], _grid.LayerM);
            double n2 = Math.Max(1e-6, Gravity / 1000.0 * (_densityKgPerM3[down] - _densityKgPerM3[up]) / span);
            half = 0.5 * WithdrawalThicknessM(flowM3PerS, n2);
        }

        double sum = 0, reachM = Math.Max(half, 0.75 * _grid.LayerM), perReach = 0.5 * Math.PI / reachM;
        _drawnTo = centre;
        for (int i = _top; i < _tempC.Length; i++)
        {
            double distanceM = _centreM[i] - _centreM[centre];
            if (Math.Abs(distanceM) >= reachM)
            {
                _scratch[i] = 0;
                continue;
            }

            double cosine = Math.Cos(perReach * distanceM);
            _scratch[i] = cosine * cosine * _volumeM3[i];
            sum += _scratch[i];
            _drawnTo = i;
        }

        double largest = double.MaxValue, through = 0, share = 1.0 / sum;
        for (int i = _drawnTo; i >= _top; i--)
        {
            _scratch[i] *= share;
            through += _scratch[i];
            if (0.33 * _volumeM3[i] < largest * through) largest = 0.33 * _volumeM3[i] / through;
        }

        return largest;
    }

    /// <summary>Thickness of the layer an outlet draws, m (sources: ImbergerFischer1970, SpigelFarrant1984).</summary>
    /// <param name="flowM3PerS">Flow, m3 s-1.</param>
    /// <param name="buoyancyPerS2">Buoyancy frequency squared over the layer, s-2.</param>
    public static double WithdrawalThicknessM(double flowM3PerS, double buoyancyPerS2) =>
        1.4 * Math.Cbrt(flowM3PerS / Math.Sqrt(buoyancyPerS2));

    private void WithdrawPiece(double volumeM3, bool outlet)
    {
        double carried = 0;
        if (!outlet)
        {
            carried = volumeM3 * _tempC[_top];
        }
        else
        {
            // From the bottom up: what passes each face is what is drawn below it.
            double through = 0;
            for (int i = _drawnTo; i >= _top; i--)
            {
                double drawn = volumeM3 * _scratch[i];
                double fromAbove = through + drawn;
                if (i == _top) fromAbove = 0;
                double heat = (_volumeM3[i] * _tempC[i]) - ((through + drawn) * _tempC[i]) + (fromAbove * (i > _top ? _tempC[i - 1] : 0));
                carried += drawn * _tempC[i];
                double volume = _volumeM3[i] - through - drawn + fromAbove;
                _drawnC[i] = heat / volume;
                through += drawn;
            }

            for (int i = _top; i <= _drawnTo; i++) _tempC[i] = _drawnC[i];
        }

        HeatInJ -= carried * FreshWater.HeatCapacityJPerM3K;
        ResizeTop(-volumeM3);
    }

    /// <summary>Adds water where its density belongs; the layers above rise.</summary>
    private void Add(double volumeM3, double tempC)
    {
        double left = volumeM3, t = Math.Clamp(tempC, 0, 45), density = FreshWater.DensityKgPerM3(t);
        for (int k = 0; k < 4000 && left > 0; k++)
        {
            Densities();
            int level = _top;
            while (level < _tempC.Length - 1 && _densityKgPerM3[level + 1] < density) level++;
            double smallest = SmallestDownTo(level);
            // The thin layers of the deepest holes cannot pass on a flood: it enters where layers are thick enough for it.
            while (level > _top && left > MostPieces * 0.33 * smallest) smallest = SmallestDownTo(--level);
            double piece = k < 3999 ? Math.Min(left, 0.33 * smallest) : left;
            double carried = t;
            // Upward through every face above the level of entry, upwind.
            for (int i = level; i >= _top; i--)
            {
                double own = _tempC[i];
                double keeps = i == _top ? _volumeM3[i] : _volumeM3[i] - piece;
                _tempC[i] = i == _top
                    ? ((_volumeM3[i] * own) + (piece * carried)) / (_volumeM3[i] + piece)
                    : ((keeps * own) + (piece * carried)) / _volumeM3[i];
                carried = own;
            }

            HeatInJ += piece * t * FreshWater.HeatCapacityJPerM3K;
            ResizeTop(piece);
            left -= piece;
        }
    }

    private double SmallestDownTo(int level)
    {
        double smallest = double.MaxValue;
        for (int i = _top; i <= level; i++) smallest = Math.Min(smallest, _volumeM3[i]);
        return smallest;
    }

    // The surface layer grows or shrinks; when it leaves its allowed thickness it is split or joined, keeping its heat.
    private void ResizeTop(double volumeM3)
    {
        double surfaceHeat = 0, surfaceVolume = 0;
        int before = _top;
        double wanted = _volumeM3[_top] + volumeM3, lowerM = _grid.FaceDepthM[_top + 1];
        double drop = LevelOfVolumeM(wanted, lowerM);
        _volumeM3[_top] = wanted;
        double topTemp = _tempC[_top];
        int newTop = Math.Clamp((int)Math.Floor(((drop + _grid.AboveM) / _grid.LayerM) + 0.5), 0, _grid.Count - 2);
        if (newTop > before)
        {
            for (int i = before; i <= newTop; i++)
            {
                surfaceHeat += _volumeM3[i] * _tempC[i];
                surfaceVolume += _volumeM3[i];
            }

            _tempC[newTop] = surfaceHeat / surfaceVolume;
        }
        else
        {
            for (int i = newTop; i < before; i++) _tempC[i] = topTemp;
        }

        PlaceSurface(drop);
    }

    private double LevelOfVolumeM(double volumeM3, double lowerM)
    {
        double low = -_grid.AboveM, high = lowerM;
        double guess = lowerM - (volumeM3 / Math.Max(1e-9, 0.5 * (_areaM2[_top] + _areaM2[_top + 1])));
        for (int pass = 0; pass < 60; pass++)
        {
            guess = Math.Clamp(guess, low, high);
            double miss = _grid.VolumeBetweenM3(guess, lowerM) - volumeM3;
            if (miss > 0) low = guess; else high = guess;
            if (Math.Abs(miss) <= 1e-14 * volumeM3 || high - low < 1e-13) break;
            double next = guess + (miss / Math.Max(1e-9, _grid.Basin.AreaAtM2(guess)));
            guess = next > low && next < high ? next : 0.5 * (low + high);
        }

        return guess;
    }
}
