using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Answers.Scoring;

/// <summary>The interval from the tenth to the ninetieth hundredth.</summary>
internal static class Interval80
{
    /// <summary>1 where the interval meets what was measured to lie between two values, which may be one; else 0.</summary>
    public static double Holds(SampleDistribution law, double first, double last) => law.Quantile(0.1) <= last && law.Quantile(0.9) >= first ? 1 : 0;
}
