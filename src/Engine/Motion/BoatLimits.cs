using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion;

/// <summary>How the water treats the user's boat, best to worst.</summary>
public enum Comfort
{
    /// <summary>Comfortable.</summary>
    Good,

    /// <summary>Take care: wet, slow upwind.</summary>
    Caution,

    /// <summary>Rough: hard work, boat control suffers.</summary>
    Poor,

    /// <summary>Do not go.</summary>
    DoNotGo,
}

/// <summary>
/// What the user's boat bears. The defaults are our own choice for an open boat of 4 to 6 m; they are not an authority's
/// values, and a live advisory of the weather service overrides them.
/// </summary>
public sealed record BoatLimits
{
    /// <summary>Words to print beside any comfort class.</summary>
    public static readonly string Notice =
        "Comfort classes are this tool's editable defaults for an open boat of 4 to 6 m, not an authority's values. "
        + "Follow the weather service's live advisories and local regulations.";

    /// <summary>Significant height below which the water is good, m.</summary>
    public double GoodBelowM { get; init; } = 0.25;

    /// <summary>Significant height below which it calls for care, m.</summary>
    public double CautionBelowM { get; init; } = 0.5;

    /// <summary>Significant height above which the boat stays ashore, m.</summary>
    public double StayAshoreAboveM { get; init; } = 0.7;

    /// <summary>Mean wind from which the boat stays ashore, m s-1 (22 kt, the lowest small-craft threshold of the US Great Lakes).</summary>
    public double StayAshoreWindMps { get; init; } = 22.0 * 1852.0 / 3600.0;

    /// <summary>Gusts from which the boat stays ashore, m s-1 (34 kt, gale).</summary>
    public double StayAshoreGustMps { get; init; } = 34.0 * 1852.0 / 3600.0;

    /// <summary>Steepness above which the class is one worse, dimensionless.</summary>
    public double SteepnessIndex { get; init; } = 0.05;

    /// <summary>Water temperature below which the class is one worse, degC.</summary>
    public double ColdWaterBelowC { get; init; } = 15.0;

    /// <summary>The class of a wave state.</summary>
    /// <param name="waves">Waves, wind and gusts.</param>
    /// <param name="waterC">Surface temperature, degC; null when not known.</param>
    public Comfort ComfortOf(WaveState waves, double? waterC = null)
    {
        if (waves.HeightM > StayAshoreAboveM || waves.WindMps >= StayAshoreWindMps || waves.GustMps >= StayAshoreGustMps)
            return Comfort.DoNotGo;
        int comfort = waves.HeightM < GoodBelowM ? 0 : waves.HeightM < CautionBelowM ? 1 : 2;
        // Ripples are steep and harm nobody: steepness and cold count once there are waves to speak of.
        if (waves.HeightM < 0.4 * GoodBelowM) return (Comfort)comfort;
        if (waves.SteepnessIndex > SteepnessIndex) comfort++;
        if (waterC is { } water && water < ColdWaterBelowC) comfort++;
        return (Comfort)Math.Min(comfort, (int)Comfort.DoNotGo);
    }

    /// <summary>Checks that the limits stand in order.</summary>
    /// <exception cref="ArgumentException">They do not.</exception>
    public BoatLimits Checked()
    {
        Require.Positive(GoodBelowM);
        Require.Positive(StayAshoreWindMps);
        if (!(GoodBelowM <= CautionBelowM && CautionBelowM <= StayAshoreAboveM))
            throw new ArgumentException($"Wave limits {GoodBelowM}, {CautionBelowM}, {StayAshoreAboveM} m must rise from good to stay ashore.");
        return this;
    }
}
