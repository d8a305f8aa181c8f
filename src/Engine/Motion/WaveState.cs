namespace SecondShore.Engine.Motion;

/// <summary>Waves and wind at a place and time. Default: flat calm.</summary>
/// <param name="HeightM">Significant height (mean of the highest third), m.</param>
/// <param name="PeriodS">Peak period, s; 0 when calm.</param>
/// <param name="LengthM">Wavelength of the peak period at the local depth, m; 0 when calm.</param>
/// <param name="FromDeg">Where the waves come from, degrees clockwise from north.</param>
/// <param name="WindMps">Mean wind at 10 m, m s-1.</param>
/// <param name="GustMps">Gusts, m s-1.</param>
/// <param name="BedSpeedMps">Greatest speed of the water at the bottom under these waves, m s-1.</param>
/// <param name="BreaksOnBottom">Whether the depth, not the wind, limits the height.</param>
public readonly record struct WaveState(double HeightM, double PeriodS, double LengthM, double FromDeg,
    double WindMps, double GustMps, double BedSpeedMps, bool BreaksOnBottom)
{
    /// <summary>Spread of published growth laws at short fetch, as a share of the height (EtemadShahidi2009; science page).</summary>
    public static readonly double HeightDoubtShare = 0.2;

    /// <summary>Low estimate of the height, m.</summary>
    public double HeightLowM => HeightM * (1.0 - HeightDoubtShare);

    /// <summary>High estimate of the height, m.</summary>
    public double HeightHighM => HeightM * (1.0 + HeightDoubtShare);

    /// <summary>Height of the highest tenth, m (LonguetHiggins1952).</summary>
    public double HighestTenthM => 1.27 * HeightM;

    /// <summary>Steepness: significant height over wavelength, dimensionless; 0 when calm.</summary>
    public double SteepnessIndex => LengthM > 0 ? HeightM / LengthM : 0.0;

    /// <summary>Whether the waves are short and steep enough to be called chop (steepness over 0.05).</summary>
    public bool IsChop => SteepnessIndex > 0.05;
}
