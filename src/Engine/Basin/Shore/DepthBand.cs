namespace SecondShore.Engine.Basin.Shore;

/// <summary>A band of thermocline depth. Default: 0 to 0.</summary>
/// <param name="LowShare">Share of the distribution above the band's upper edge, 0 to 0.5.</param>
/// <param name="UpperM">Shallow edge, m.</param>
/// <param name="LowerM">Deep edge, m.</param>
public readonly record struct DepthBand(double LowShare, double UpperM, double LowerM)
{
    /// <summary>Share of the distribution inside the band.</summary>
    public double InsideShare => 1.0 - (2.0 * LowShare);
}
