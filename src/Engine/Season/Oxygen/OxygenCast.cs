namespace SecondShore.Engine.Season;

/// <summary>What a cast tells of oxygen: its depths with a value that water can have, increasing.</summary>
/// <param name="DepthM">Depths, m.</param>
/// <param name="MgPerL">Oxygen, mg/L.</param>
public sealed record OxygenCast(double[] DepthM, double[] MgPerL)
{
    private const double MostMgPerL = 25;

    /// <summary>The oxygen of a cast; null where it has none.</summary>
    /// <param name="profile">The cast.</param>
    /// <param name="deepestM">Deeper ones are left out, m.</param>
    public static OxygenCast? Of(WaterProfile profile, double deepestM)
    {
        ArgumentNullException.ThrowIfNull(profile);
        if (profile.OxygenMgPerL is not { } oxygen) return null;
        List<double> depth = [], value = [];
        for (int i = 0; i < oxygen.Length; i++)
        {
            double z = profile.DepthM[i], v = oxygen[i];
            if (!(v is >= 0 and <= MostMgPerL) || z < 0 || z > deepestM || (depth.Count > 0 && z <= depth[^1])) continue;
            depth.Add(z);
            value.Add(v);
        }

        return depth.Count > 0 ? new OxygenCast([.. depth], [.. value]) : null;
    }

    /// <summary>
    /// Depth below which all that was measured is under <see cref="OxygenColumn.FloorMgPerL"/>, straight between two depths, m;
    /// NaN where the deepest has enough.
    /// </summary>
    public double FloorM
    {
        get
        {
            int i = MgPerL.Length - 1;
            if (MgPerL[i] >= OxygenColumn.FloorMgPerL) return double.NaN;
            while (i > 0 && MgPerL[i - 1] < OxygenColumn.FloorMgPerL) i--;
            if (i == 0) return DepthM[0];
            double t = (OxygenColumn.FloorMgPerL - MgPerL[i - 1]) / (MgPerL[i] - MgPerL[i - 1]);
            return DepthM[i - 1] + (t * (DepthM[i] - DepthM[i - 1]));
        }
    }

    /// <summary>How far the two depths stand apart that the floor lies between, m; NaN without one.</summary>
    public double FloorGapM
    {
        get
        {
            double floor = FloorM;
            if (double.IsNaN(floor)) return double.NaN;
            int below = Array.FindIndex(DepthM, z => z >= floor);
            return below > 0 ? DepthM[below] - DepthM[below - 1] : DepthM[0];
        }
    }
}
