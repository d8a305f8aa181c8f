namespace SecondShore.Engine.Season;

/// <summary>How a lake answers its weather: the few numbers a column is tuned by. Immutable.</summary>
/// <remarks>Defaults are neutral; a lake's own start from <see cref="LakePriors"/>.</remarks>
public sealed record ColumnParameters
{
    /// <summary>Extinction of visible light, m-1.</summary>
    public double LightExtinctionPerM { get; init; } = 0.7;

    /// <summary>Factor on the wind that drives fluxes and stress, dimensionless.</summary>
    public double WindFactor { get; init; } = 1.0;

    /// <summary>Stirring efficiency m_w: share of rho u*^3 that reaches the mixed layer's base, dimensionless.</summary>
    public double StirringFactor { get; init; } = 0.2;

    /// <summary>Factor on the mixing of deep water by the rocking of the layers, dimensionless.</summary>
    public double DeepMixingFactor { get; init; } = 1.0;

    /// <summary>Factor on shortwave, dimensionless.</summary>
    public double ShortwaveFactor { get; init; } = 1.0;

    /// <summary>Added to the air temperature, K; humidity stays as measured.</summary>
    public double AirTempBiasK { get; init; }

    /// <summary>Added to downward longwave, W m-2.</summary>
    public double LongwaveBiasWPerM2 { get; init; }

    /// <summary>Share of the energy freed by convection that entrains, dimensionless (Zilitinkevich1991).</summary>
    public double ConvectionFactor { get; init; } = 0.2;

    /// <summary>Reach of stirring in units of u*/f, the depth the wind's own layer has on a turning earth: over it stirring fades to
    /// 1/e on its way down the mixed layer, dimensionless; infinite for the bare energy law.</summary>
    public double StirringReachFactor { get; init; } = double.PositiveInfinity;

    /// <summary>Stirring efficiency right under the surface, beside <see cref="StirringFactor"/>, dimensionless: waves and the wind's own eddies.</summary>
    public double NearStirringFactor { get; init; }

    /// <summary>Depth to which that fades evenly to nothing, m, above 0.</summary>
    public double NearStirringReachM { get; init; } = 1.0;

    /// <summary>Wedderburn number at which the shear at a tilting thermocline stirs as much as the wind at the surface, dimensionless; 0 leaves it out.</summary>
    public double TiltFactor { get; init; }

    /// <summary>Share of the difference between land air and water that is lost on the way over the lake, 0 to 1.</summary>
    public double AirAdjustmentShare { get; init; }

    /// <summary>Which mixing the column runs.</summary>
    public MixingStructure Structure { get; init; } = MixingStructure.EnergyBudget;
}

/// <summary>Mixing schemes a column can run.</summary>
public enum MixingStructure
{
    /// <summary>Exact potential-energy bookkeeping of a mixed layer over slow deep diffusion.</summary>
    EnergyBudget,

    /// <summary>Wind eddy diffusivity closed by a gradient Richardson number (HendersonSellers1985).</summary>
    EddyDiffusivity,
}
