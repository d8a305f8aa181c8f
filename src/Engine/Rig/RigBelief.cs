namespace SecondShore.Engine.Rig;

/// <summary>
/// What is known of the two numbers that no label gives: factors on the line's and on the jig's drag, as a normal law of
/// their logarithms. Means of 0 say that the formulas are right on average.
/// </summary>
/// <param name="LineLnFactor">Mean of ln(factor on line drag).</param>
/// <param name="LineLnSd">Its standard deviation.</param>
/// <param name="JigLnFactor">Mean of ln(factor on jig drag area).</param>
/// <param name="JigLnSd">Its standard deviation.</param>
/// <param name="CorrelationCoefficient">Correlation of the two, -1 to 1.</param>
public readonly record struct RigBelief(double LineLnFactor, double LineLnSd, double JigLnFactor, double JigLnSd, double CorrelationCoefficient)
{
    /// <summary>Before any observation (choice; see docs/science/rig.md): 15 % on the line, 35 % on the jig.</summary>
    public static RigBelief Prior { get; } = new(0, 0.15, 0, 0.35, 0);

    /// <summary>Factor on line drag for standard normal draws.</summary>
    internal double LineFactor(double first) => Math.Exp(LineLnFactor + (LineLnSd * first));

    /// <summary>Factor on jig drag for standard normal draws, correlated with the line's.</summary>
    internal double JigFactor(double first, double second)
    {
        double r = CorrelationCoefficient;
        return Math.Exp(JigLnFactor + (JigLnSd * ((r * first) + (Math.Sqrt(Math.Max(1.0 - (r * r), 0)) * second))));
    }
}
