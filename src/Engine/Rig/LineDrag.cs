using System.Runtime.CompilerServices;

namespace SecondShore.Engine.Rig;

/// <summary>Drag of a thin smooth cylinder square to and along the flow, by Reynolds number (<c>ChooCasarella1971</c>).</summary>
public static class LineDrag
{
    // The published pieces differ by 1.7 % at Re 1 and by 1.1 % at Re 30; they are blended over these windows of ln Re so
    // that every answer stays continuous. Values at Re 10 and 100 are untouched.
    private const double LowFrom = -0.35, LowTo = 0.35, HighFrom = 3.05, HighTo = 3.75;
    private const double ReLowFrom = 0.70468808971871, ReLowTo = 1.41906754859326;
    private const double ReHighFrom = 21.1153442464365, ReHighTo = 42.5210820000628;

    /// <summary>Normal drag coefficient on diameter and length, dimensionless.</summary>
    /// <param name="reynoldsNumber">Diameter times normal speed over kinematic viscosity; used from 1e-6 up, meant for under 1e5.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double NormalCoefficient(double reynoldsNumber) =>
        reynoldsNumber >= ReHighTo ? High(reynoldsNumber) : NormalCoefficientBelowHigh(reynoldsNumber);

    /// <summary>Axial drag per metre of line and per m s-1 of axial speed, N s m-2 (<c>ChooCasarella1971</c>).</summary>
    /// <param name="reynoldsNumber">Reynolds number of the normal flow, as in <see cref="NormalCoefficient"/>.</param>
    /// <param name="viscosityPaS">Dynamic viscosity, Pa s.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double TangentialCoefficient(double reynoldsNumber, double viscosityPaS)
    {
        double cube = Math.Cbrt(reynoldsNumber);
        return Math.PI * viscosityPaS * ((0.55 * Math.Sqrt(reynoldsNumber)) + (0.084 * cube * cube));
    }

    private static double NormalCoefficientBelowHigh(double reynoldsNumber)
    {
        double re = Math.Max(reynoldsNumber, 1e-6);
        if (re <= ReLowFrom) return Low(re);
        if (re < ReLowTo) return Blend(Low(re), Mid(re), (Math.Log(re) - LowFrom) / (LowTo - LowFrom));
        if (re <= ReHighFrom) return Mid(re);
        return Blend(Mid(re), High(re), (Math.Log(re) - HighFrom) / (HighTo - HighFrom));
    }

    private static double Low(double re)
    {
        double s = Math.Log(8.0 / re) - 0.0772157;
        return 8.0 * Math.PI / (s * re) * (1.0 - (0.87 / (s * s)));
    }

    private static double Mid(double re) => 1.45 + (8.55 * Math.Exp(-0.9 * Math.Log(re)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double High(double re) => 1.1 + (4.0 / Math.Sqrt(re));

    private static double Blend(double low, double high, double share)
    {
        double t = Math.Clamp(share, 0.0, 1.0);
        return low + ((high - low) * t * t * (3.0 - (2.0 * t)));
    }
}
