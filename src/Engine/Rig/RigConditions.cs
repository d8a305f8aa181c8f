using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>Where and how a jig is dragged, with its doubt.</summary>
public sealed record RigConditions
{
    /// <summary>Depth of water at the jig, m.</summary>
    public required double DepthM { get; init; }

    /// <summary>Standard deviation of depth along the pass, m.</summary>
    public double DepthSdM { get; init; }

    /// <summary>Drag speed over the bottom, m s-1.</summary>
    public required double SpeedMps { get; init; }

    /// <summary>Standard deviation of drag speed, m s-1.</summary>
    public double SpeedSdMps { get; init; }

    /// <summary>Current by height over the bottom.</summary>
    public CurrentProfile Current { get; init; } = CurrentProfile.Still;

    /// <summary>Standard deviation of the current along the track, m s-1.</summary>
    public double CurrentSdMps { get; init; }

    /// <summary>Line out from the rod tip, m; null lets it follow depth by <see cref="ScopeRatio"/>.</summary>
    public double? LineOutM { get; init; }

    /// <summary>Line out over depth where line out is not given.</summary>
    public double ScopeRatio { get; init; } = 2.0;

    /// <summary>Height of the rod tip over the water, m.</summary>
    public double TipHeightM { get; init; } = 0.6;

    /// <summary>Kind of bottom.</summary>
    public BottomKind Bottom { get; init; }

    /// <summary>Slope along the track, rad, positive uphill.</summary>
    public double SlopeRad { get; init; }

    /// <summary>How the line moves.</summary>
    public TowMotion Motion { get; init; }

    /// <summary>Water.</summary>
    public RigWater Water { get; init; } = RigWater.Usual;

    /// <summary>Line out at a depth: as given, else by scope from rod tip to bottom, m.</summary>
    /// <param name="depthM">Depth, m.</param>
    public double LineOutAtM(double depthM) => LineOutM ?? (ScopeRatio * (depthM + TipHeightM));

    /// <summary>The tow of a jig and line under these conditions, at the middle of every doubt.</summary>
    /// <param name="jig">Jig.</param>
    /// <param name="line">Line.</param>
    public TowCase Tow(Jig jig, FishingLine line)
    {
        Require.NotNull(jig);
        Require.NotNull(line);
        return new TowCase
        {
            DepthM = DepthM,
            LineOutM = LineOutAtM(DepthM),
            SpeedMps = SpeedMps,
            TipHeightM = TipHeightM,
            Motion = Motion,
            Current = Current,
            SlopeRad = SlopeRad,
            JigWeightN = jig.WeightInWaterN(Water.DensityKgPerM3),
            JigDragAreaM2 = jig.DragAreaM2() * jig.Belief.JigFactor(0, 0),
            FrictionCoefficient = BottomFriction.Coefficient(Bottom),
            LineDiameterM = line.DiameterM,
            LineDensityKgPerM3 = line.DensityKgPerM3,
            LineModulusPa = line.ModulusPa,
            LineDragFactor = jig.Belief.LineFactor(0),
            WaterDensityKgPerM3 = Water.DensityKgPerM3,
            ViscosityM2PerS = Water.ViscosityM2PerS,
        };
    }
}
