namespace SecondShore.Engine.Rig;

/// <summary>A drop on slack line, in plain numbers.</summary>
public readonly record struct FallCase
{
    /// <summary>Depth to fall, m.</summary>
    public double DepthM { get; init; }

    /// <summary>Weight of jig and trailer in water, N.</summary>
    public double JigWeightN { get; init; }

    /// <summary>Mass that moves with the jig, kg: head, trailer and the water it drags along.</summary>
    public double MovingMassKg { get; init; }

    /// <summary>Drag coefficient times area of the falling jig, m2.</summary>
    public double DragAreaM2 { get; init; }

    /// <summary>Line diameter, m.</summary>
    public double LineDiameterM { get; init; }

    /// <summary>Line density, kg m-3.</summary>
    public double LineDensityKgPerM3 { get; init; }

    /// <summary>Pull needed to turn a spool or slip line through the guides, N; 0 on free slack.</summary>
    public double SpoolN { get; init; }

    /// <summary>Density of the water, kg m-3.</summary>
    public double WaterDensityKgPerM3 { get; init; }

    /// <summary>Kinematic viscosity of the water, m2 s-1.</summary>
    public double ViscosityM2PerS { get; init; }

    /// <summary>The drop of a jig under conditions, at the middle of every doubt.</summary>
    /// <param name="jig">Jig.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Conditions.</param>
    public static FallCase Of(Jig jig, FishingLine line, RigConditions conditions)
    {
        Core.Require.NotNull(jig);
        Core.Require.NotNull(line);
        Core.Require.NotNull(conditions);
        double rho = conditions.Water.DensityKgPerM3;
        double trailerM3 = jig.Trailer.MassKg > 0 ? jig.Trailer.MassKg / jig.Trailer.DensityKgPerM3 : 0;
        return new FallCase
        {
            DepthM = conditions.DepthM,
            JigWeightN = jig.WeightInWaterN(rho),
            MovingMassKg = jig.MassKg + jig.Trailer.MassKg
                + (FallSolver.AddedMassCoefficient * rho * ((jig.MassKg / jig.Material.DensityKgPerM3) + trailerM3)),
            DragAreaM2 = jig.DragAreaM2() * jig.Belief.JigFactor(0, 0),
            LineDiameterM = line.DiameterM,
            LineDensityKgPerM3 = line.DensityKgPerM3,
            WaterDensityKgPerM3 = rho,
            ViscosityM2PerS = conditions.Water.ViscosityM2PerS,
        };
    }
}

/// <summary>A drop, solved.</summary>
/// <param name="TimeS">Time to the bottom, s.</param>
/// <param name="LandingSpeedMps">Speed on landing, m s-1.</param>
/// <param name="AlongM">How far a current carried the jig along the track, m.</param>
/// <param name="AcrossM">How far across it, m, positive to the left.</param>
public readonly record struct FallResult(double TimeS, double LandingSpeedMps, double AlongM, double AcrossM);
