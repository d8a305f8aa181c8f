using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Motion;

/// <content>Whole grids of an hour, for maps: one value for each water cell of <see cref="Motion"/>.</content>
public sealed partial class WindField
{
    /// <summary>Mean displacement of the thermocline over the members, m positive down; 0 without layers.</summary>
    /// <param name="hour">Index in <see cref="Hours"/>.</param>
    /// <returns>[Motion.Cells.Length].</returns>
    public float[] OffsetsM(int hour)
    {
        Require.InRange(hour, 0, Hours.Count - 1);
        float[] mean = new float[Motion.Cells.Length];
        for (int m = 0; m < _members.Length; m++)
            for (int w = 0; w < mean.Length; w++) mean[w] += (float)(_weights[m] * _members[m].OffsetM[hour][w]);
        return mean;
    }

    /// <summary>The same on the cells of another grid in the same plane, for belts and maps.</summary>
    /// <param name="depths">The grid; cells of land get 0.</param>
    /// <param name="hour">Index in <see cref="Hours"/>.</param>
    /// <returns>[Ny*Nx].</returns>
    public float[] OffsetsM(DepthGrid depths, int hour)
    {
        Require.NotNull(depths);
        float[] mean = OffsetsM(hour), offsets = new float[depths.Frame.Count];
        Span<int> cells = stackalloc int[4];
        Span<double> weights = stackalloc double[4];
        ReadOnlySpan<float> depthM = depths.DepthM;
        for (int i = 0; i < offsets.Length; i++)
        {
            if (!(depthM[i] > 0)) continue;
            int count = Motion.Around(depths.Frame.Centre(i), cells, weights);
            double sum = 0;
            for (int k = 0; k < count; k++) sum += weights[k] * mean[cells[k]];
            offsets[i] = (float)sum;
        }

        return offsets;
    }

    /// <summary>Current at a depth below the surface, m s-1; 0 where the water is shallower.</summary>
    /// <param name="hour">Index in <see cref="Hours"/>.</param>
    /// <param name="depthM">Depth, m.</param>
    /// <returns>Two arrays [Motion.Cells.Length].</returns>
    public (float[] EastMps, float[] NorthMps) Currents(int hour, double depthM)
    {
        Require.InRange(hour, 0, Hours.Count - 1);
        float[] east = new float[Motion.Cells.Length], north = new float[east.Length];
        for (int w = 0; w < east.Length; w++)
        {
            PlanePoint place = Motion.Frame.Centre(Motion.Cells[w]);
            if (ColumnAt(place, Hours[hour]) is not { } column || column.DepthM < depthM) continue;
            Current current = column.At(depthM);
            east[w] = (float)current.EastMps;
            north[w] = (float)current.NorthMps;
        }

        return (east, north);
    }

    /// <summary>Velocity of the lower layer from the layers' rocking, of the middle member, m s-1; 0 without layers.</summary>
    /// <param name="hour">Index in <see cref="Hours"/>.</param>
    /// <returns>Two arrays [Motion.Cells.Length].</returns>
    public (float[] EastMps, float[] NorthMps) LowerRocking(int hour)
    {
        Require.InRange(hour, 0, Hours.Count - 1);
        float[] east = new float[Motion.Cells.Length], north = new float[east.Length];
        if (!IsLayered) return (east, north);
        MemberMotion member = _members[_middle];
        for (int w = 0; w < east.Length; w++)
        {
            double depthM = Motion.Depths.DepthM[Motion.Cells[w]], upperM = member.Course[hour].UpperM + member.OffsetM[hour][w];
            double share = Math.Clamp(upperM / depthM, 0.0, 1.0);
            east[w] = (float)(-share * member.EastMps![hour][w]);
            north[w] = (float)(-share * member.NorthMps![hour][w]);
        }

        return (east, north);
    }

    /// <summary>Waves of every water cell.</summary>
    /// <param name="hour">Index in <see cref="Hours"/>.</param>
    public WaveState[] Waves(int hour)
    {
        Require.InRange(hour, 0, Hours.Count - 1);
        WaveState[] waves = new WaveState[Motion.Cells.Length];
        int step = Wind.StepAt(Hours[hour]);
        for (int w = 0; w < waves.Length; w++)
        {
            int cell = _fetch.CellAt(Motion.Frame.Centre(Motion.Cells[w]));
            if (cell >= 0) waves[w] = _waves.AtCell(cell, Motion.Depths.DepthM[Motion.Cells[w]], step);
        }

        return waves;
    }
}
