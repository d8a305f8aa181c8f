namespace SecondShore.Engine.Day;

/// <summary>The user's boat, as far as routes need it. Immutable; defaults are a small open boat, to be changed by the user.</summary>
public sealed record Boat
{
    /// <summary>Speed of a run on calm open water, m/s (default 30 mph).</summary>
    public double CruiseMps { get; init; } = 13.4;

    /// <summary>Speed in no-wake areas, m/s (default 5 mph).</summary>
    public double NoWakeMps { get; init; } = 2.2;

    /// <summary>Depth the hull and drive need, m.</summary>
    public double DraftM { get; init; } = 0.6;

    /// <summary>Water wanted under that, m.</summary>
    public double KeelMarginM { get; init; } = 0.6;

    /// <summary>Significant wave up to which the boat keeps its speed, m (Comfort band 'good').</summary>
    public double FairWaveM { get; init; } = 0.25;

    /// <summary>Significant wave at which the run is down to 0.6 of its speed, m.</summary>
    public double RoughWaveM { get; init; } = 0.5;

    /// <summary>Significant wave through which no run is planned, m.</summary>
    public double LimitWaveM { get; init; } = 0.7;

    /// <summary>Time to stow and to start fishing at each stop, s.</summary>
    public double StowS { get; init; } = 120;

    /// <summary>Fuel burnt at cruise, litres per hour (LPerH).</summary>
    public double FuelLPerH { get; init; } = 20;

    /// <summary>Fuel that may be used, litres (L); null does not limit the day.</summary>
    public double? FuelL { get; init; }

    /// <summary>Least depth a route may cross, m.</summary>
    public double LeastDepthM => DraftM + KeelMarginM;

    /// <summary>Share of its speed the boat keeps in a significant wave height, 0 where no run is planned.</summary>
    /// <remarks>Straight lines through 1, 0.6 and 0.4 at the three heights: our choice, after the public comfort bands of the science page.</remarks>
    public double SpeedShare(double waveM) =>
        !(waveM > FairWaveM) ? 1.0
        : waveM <= RoughWaveM ? 1.0 - (0.4 * (waveM - FairWaveM) / (RoughWaveM - FairWaveM))
        : waveM <= LimitWaveM ? 0.6 - (0.2 * (waveM - RoughWaveM) / (LimitWaveM - RoughWaveM))
        : 0.0;
}
