using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>
/// The layers a lake column lives on, fixed in elevation: index 0 is the highest, depths count from full pool.
/// Immutable; shared by all members of an ensemble.
/// </summary>
public sealed class ColumnGrid
{
    /// <summary>Cuts a basin into even layers.</summary>
    /// <param name="basin">Areas by depth below full pool.</param>
    /// <param name="layerM">Wanted thickness, m, 0.05 to 5; the grid takes the nearest that fits, and keeps 8 to 400 layers.</param>
    /// <param name="aboveM">Room above full pool, m, for a flood; the shore is taken as vertical there.</param>
    /// <param name="exact">Keeps the thickness exactly, and gives the remainder to the bottom layer: so arms share their faces.</param>
    public ColumnGrid(Hypsography basin, double layerM = 0.5, double aboveM = 0, bool exact = false)
    {
        Basin = Require.NotNull(basin);
        Require.InRange(layerM, 0.05, 5);
        AboveM = Require.InRange(aboveM, 0, 100);
        double depthM = WetDepthM(basin);
        // Water thinner than two layers would leave a layer with nothing in it.
        exact &= depthM + aboveM >= 2 * layerM;
        int count = (int)Math.Clamp(Math.Round((depthM + aboveM) / layerM), 8, 400);
        LayerM = exact ? Math.Max(layerM, (depthM + aboveM) / 400) : (depthM + aboveM) / count;
        if (exact) count = Math.Max(2, (int)((depthM + aboveM) / LayerM));
        FaceDepthM = new double[count + 1];
        FaceAreaM2 = new double[count + 1];
        VolumeM3 = new double[count];
        CentreM = new double[count];
        for (int i = 0; i <= count; i++)
        {
            FaceDepthM[i] = i == count ? Math.Max(depthM, (2 * LayerM) - aboveM) : (i * LayerM) - aboveM;
            FaceAreaM2[i] = basin.AreaAtM2(FaceDepthM[i]);
        }

        for (int i = 0; i < count; i++)
        {
            double upperM = FaceDepthM[i], lowerM = FaceDepthM[i + 1];
            VolumeM3[i] = VolumeBetweenM3(upperM, lowerM);
            CentreM[i] = CentreBetweenM(upperM, lowerM);
        }

        (PerVolume, PerDistance, BelowM3) = (new double[count], new double[count], new double[count + 1]);
        for (int i = count - 1; i >= 0; i--)
        {
            PerVolume[i] = 1.0 / VolumeM3[i];
            PerDistance[i] = i > 0 ? 1.0 / (CentreM[i] - CentreM[i - 1]) : 0;
            BelowM3[i] = BelowM3[i + 1] + VolumeM3[i];
        }
    }

    /// <summary>The basin that was cut.</summary>
    public Hypsography Basin { get; }

    /// <summary>Number of layers.</summary>
    public int Count => VolumeM3.Length;

    /// <summary>Thickness of a layer, m.</summary>
    public double LayerM { get; }

    /// <summary>Room above full pool, m.</summary>
    public double AboveM { get; }

    /// <summary>Depth of each face below full pool, m; [Count + 1], increasing.</summary>
    public double[] FaceDepthM { get; }

    /// <summary>Area of each face, m2; [Count + 1].</summary>
    public double[] FaceAreaM2 { get; }

    /// <summary>Volume of each layer, m3; [Count].</summary>
    public double[] VolumeM3 { get; }

    /// <summary>Depth of each layer's centre of volume, m below full pool; [Count].</summary>
    public double[] CentreM { get; }

    /// <summary>One over the volume of each layer, m-3; [Count].</summary>
    internal double[] PerVolume { get; }

    /// <summary>One over the distance of each layer's centre from the one above, m-1; [Count], the first 0.</summary>
    internal double[] PerDistance { get; }

    /// <summary>Volume under each face, m3; [Count + 1].</summary>
    internal double[] BelowM3 { get; }

    /// <summary>Volume between two depths below full pool, m3; above full pool the shore is vertical.</summary>
    public double VolumeBetweenM3(double upperM, double lowerM)
    {
        double above = Math.Max(0, Math.Min(0, lowerM) - upperM) * Basin.SurfaceAreaM2;
        return above + Basin.VolumeBelowM3(Math.Max(0, upperM)) - Basin.VolumeBelowM3(Math.Max(0, lowerM));
    }

    /// <summary>Centre of volume between two depths, m below full pool, for areas that change evenly between them.</summary>
    public double CentreBetweenM(double upperM, double lowerM)
    {
        double a = Basin.AreaAtM2(upperM), b = Basin.AreaAtM2(lowerM), middle = 0.5 * (upperM + lowerM);
        return a + b > 0 ? middle + ((lowerM - upperM) / 6.0 * (b - a) / (a + b)) : middle;
    }

    // Rows of area 0 under the deepest water hold nothing.
    private static double WetDepthM(Hypsography basin)
    {
        ReadOnlySpan<double> areasM2 = basin.AreasM2;
        int last = areasM2.Length - 1;
        while (last > 1 && areasM2[last - 1] <= 0) last--;
        return basin.DepthsM[last];
    }
}
