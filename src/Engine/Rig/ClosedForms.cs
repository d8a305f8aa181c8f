using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>Exact limits of the towed line: quick answers, first guesses and the yardstick of the solver.</summary>
public static class ClosedForms
{
    /// <summary>Depth of a jig towed freely on a weightless line with normal drag only, m.</summary>
    /// <param name="jigWeightN">Weight in water, N, above 0.</param>
    /// <param name="jigDragN">Drag of the jig, N.</param>
    /// <param name="lineDragNPerM">Drag of a metre of line square to the flow, N m-1.</param>
    /// <param name="lineOutM">Line out, m.</param>
    public static double FreeDepthM(double jigWeightN, double jigDragN, double lineDragNPerM, double lineOutM)
    {
        (double t, double c0, double c1) = Cotangents(jigWeightN, jigDragN, lineDragNPerM, lineOutM);
        return lineDragNPerM * lineOutM < 1e-9 * t
            ? lineOutM * jigWeightN / t
            : t / lineDragNPerM * (Math.Asinh(c1) - Math.Asinh(c0));
    }

    /// <summary>How far that jig trails behind, m. Parameters as in <see cref="FreeDepthM"/>.</summary>
    public static double FreeTrailM(double jigWeightN, double jigDragN, double lineDragNPerM, double lineOutM)
    {
        (double t, double c0, double c1) = Cotangents(jigWeightN, jigDragN, lineDragNPerM, lineOutM);
        return lineDragNPerM * lineOutM < 1e-9 * t
            ? lineOutM * jigDragN / t
            : t / lineDragNPerM * (Math.Sqrt(1.0 + (c1 * c1)) - Math.Sqrt(1.0 + (c0 * c0)));
    }

    /// <summary>The y above 0 with sinh(y)/y = line out over depth; 0 for a ratio of 1.</summary>
    /// <param name="scopeRatio">Line out over depth, 1 to 1000.</param>
    public static double ScopeRootRatio(double scopeRatio)
    {
        Require.InRange(scopeRatio, 1.0, 1000.0);
        if (scopeRatio < 1.0 + 1e-12) return 0;
        Scope scope = new(scopeRatio);
        return BracketedRoot.Find(ref scope, 0.0, scope.At(0.0), 12.0, scope.At(12.0), double.NaN, 1e-13, 0.0);
    }

    /// <summary>What is missing to sinh(y)/y = ratio; near 0 by the series, where the quotient has no digits.</summary>
    private readonly struct Scope(double ratio) : IResidual
    {
        public double At(double x) => (x < 1e-4 ? 1.0 + (x * x / 6.0) : Math.Sinh(x) / x) - ratio;
    }

    /// <summary>Least weight in water, N, of a dragless jig that keeps the bottom on a weightless line.</summary>
    /// <param name="lineDragNPerM">Drag of a metre of line square to the flow, N m-1.</param>
    /// <param name="depthM">Depth, m.</param>
    /// <param name="lineOutM">Line out, m, more than the depth.</param>
    public static double LeastWeightN(double lineDragNPerM, double depthM, double lineOutM) =>
        lineDragNPerM * depthM / ScopeRootRatio(lineOutM / depthM);

    /// <summary>Angle below level at which that line leaves the water as the jig just lifts, rad.</summary>
    /// <param name="scopeRatio">Line out over depth, above 1.</param>
    public static double LiftingAngleRad(double scopeRatio) => Math.Atan(1.0 / Math.Sinh(ScopeRootRatio(scopeRatio)));

    /// <summary>Height spanned by a heavy line without drag, m (catenary).</summary>
    /// <param name="wetWeightNPerM">Weight in water of a metre of line, N m-1, above 0.</param>
    /// <param name="levelPullN">Level part of the tension, N, above 0.</param>
    /// <param name="lowerPullN">Upright part of the tension at the lower end, N.</param>
    /// <param name="lineOutM">Line out, m.</param>
    public static double CatenaryDepthM(double wetWeightNPerM, double levelPullN, double lowerPullN, double lineOutM)
    {
        double a = levelPullN / wetWeightNPerM, low = lowerPullN / wetWeightNPerM, high = low + lineOutM;
        return Math.Sqrt((a * a) + (high * high)) - Math.Sqrt((a * a) + (low * low));
    }

    /// <summary>Angle below level to which a long heavy line settles, rad (<c>Pode1951</c>).</summary>
    /// <param name="lineDragNPerM">Drag of a metre of line square to the flow, N m-1, above 0.</param>
    /// <param name="wetWeightNPerM">Weight in water of a metre of line, N m-1, above 0.</param>
    public static double CriticalAngleRad(double lineDragNPerM, double wetWeightNPerM)
    {
        double q = lineDragNPerM / wetWeightNPerM;
        return Math.Acos((Math.Sqrt(1.0 + (4.0 * q * q)) - 1.0) / (2.0 * q));
    }

    /// <summary>Normal drag of a metre of line square to a flow, N m-1.</summary>
    /// <param name="lineDiameterM">Diameter, m.</param>
    /// <param name="speedMps">Speed of the flow, m s-1.</param>
    /// <param name="waterDensityKgPerM3">Density of the water, kg m-3.</param>
    /// <param name="viscosityM2PerS">Kinematic viscosity, m2 s-1.</param>
    public static double LineDragNPerM(double lineDiameterM, double speedMps, double waterDensityKgPerM3, double viscosityM2PerS) =>
        0.5 * waterDensityKgPerM3 * lineDiameterM * speedMps * speedMps
            * LineDrag.NormalCoefficient(lineDiameterM * speedMps / viscosityM2PerS);

    private static (double TensionN, double C0, double C1) Cotangents(double weightN, double dragN, double perM, double lineM)
    {
        Require.Positive(weightN);
        Require.NotNegative(perM);
        double t = Math.Sqrt((weightN * weightN) + (dragN * dragN)), c0 = dragN / weightN;
        return (t, c0, c0 + (perM * lineM / t));
    }
}
