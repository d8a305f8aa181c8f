using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion;

/// <summary>How much of the wind's stress reaches the water near a shore (choice; science page).</summary>
public static class Shelter
{
    /// <summary>Height of bank and trees taken where nothing is known, m.</summary>
    public static readonly double DefaultBankM = 10.0;

    /// <summary>Share of the open-water stress: min(1, F/(10 h)).</summary>
    /// <param name="fetchM">Fetch along the wind, m, 0 or more.</param>
    /// <param name="bankM">Height of bank and trees upwind, m; 0 gives 1.</param>
    public static double StressShare(double fetchM, double bankM)
    {
        Require.NotNegative(bankM);
        return bankM == 0 ? 1.0 : Math.Min(1.0, fetchM / (10.0 * bankM));
    }
}
