namespace SecondShore.Engine.Season;

/// <summary>A reading tied to an arm and a step, with its error and where its words come from.</summary>
internal sealed record Observation(int Step, int Arm, ReadingKind Kind, double Value, double DepthM, double Sd, string Source)
{
    /// <summary>A cast as one observation: the run is moved toward it after it was compared.</summary>
    public WaterProfile? Cast { get; init; }

    /// <summary>The oxygen of a cast as one observation, likewise.</summary>
    public OxygenCast? OxygenCast { get; init; }

    /// <summary>Whether it is one depth of a cast.</summary>
    public bool OfCast { get; init; }

    /// <summary>How much of a haze depth the wind's tilt is, m; <see cref="Value"/> is what is left at rest.</summary>
    public double TiltM { get; init; }

    /// <summary>How much it counts: a cast's depths tell much the same.</summary>
    public double Weight { get; init; } = 1;

    /// <summary>The reading as it was made.</summary>
    public Finding Seen => Kind switch
    {
        ReadingKind.HazeDepth when TiltM == 0 => SeasonFindings.SeenStep.Of(Told.Difference(Value)),
        ReadingKind.HazeDepth => SeasonFindings.SeenStepTilted.Of(Told.Difference(Value + TiltM), Told.Difference(Value)),
        ReadingKind.SurfaceTemperature => SeasonFindings.SeenSurface.Of(Told.Temperature(Value)),
        ReadingKind.Temperature => SeasonFindings.SeenTemperature.Of(Told.Temperature(Value), Told.Difference(DepthM)),
        ReadingKind.Secchi => SeasonFindings.SeenSecchi.Of(Told.Difference(Value)),
        ReadingKind.Oxygen => SeasonFindings.SeenOxygen.Of(Value, Told.Difference(DepthM)),
        _ => SeasonFindings.SeenOther.Of(Value),
    };
}
