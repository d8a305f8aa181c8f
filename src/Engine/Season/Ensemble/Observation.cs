namespace SecondShore.Engine.Season;

/// <summary>A reading tied to an arm and a step, with its error and where its words come from.</summary>
internal sealed record Observation(int Step, int Arm, ReadingKind Kind, double Value, double DepthM, double Sd, string Source)
{
    /// <summary>A cast as one observation: the run is moved toward it after it was compared.</summary>
    public WaterProfile? Cast { get; init; }

    /// <summary>How much of a haze depth the wind's tilt is, m; <see cref="Value"/> is what is left at rest.</summary>
    public double TiltM { get; init; }

    /// <summary>How much it counts: a cast's depths tell much the same.</summary>
    public double Weight { get; init; } = 1;

    /// <summary>The reading in words.</summary>
    public string Words => Kind switch
    {
        ReadingKind.HazeDepth => FormattableString.Invariant($"step seen at {Value + TiltM:0.0} m{(TiltM == 0 ? "" : $", {Value:0.0} m at rest,")}"),
        ReadingKind.SurfaceTemperature => FormattableString.Invariant($"surface temperature {Value:0.0} degC"),
        ReadingKind.Temperature => FormattableString.Invariant($"{Value:0.0} degC at {DepthM:0.0} m"),
        ReadingKind.Secchi => FormattableString.Invariant($"Secchi depth {Value:0.0} m"),
        ReadingKind.Oxygen => FormattableString.Invariant($"oxygen {Value:0.0} mg/L at {DepthM:0.0} m"),
        _ => FormattableString.Invariant($"{Value}"),
    };
}
