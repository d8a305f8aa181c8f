namespace SecondShore.Engine.Season;

/// <summary>Oxygen demand of a lake's deep water.</summary>
/// <param name="ArealGPerM2DayValue">Areal deficit at 10 degC, g m-2 d-1.</param>
public sealed record OxygenDemand(double ArealGPerM2DayValue)
{
    /// <summary>Factor on the exchange with the air, dimensionless.</summary>
    public double ReaerationFactor { get; init; } = 1.0;
}
