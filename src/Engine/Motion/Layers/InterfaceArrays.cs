namespace SecondShore.Engine.Motion.Layers;

/// <summary>The fields that one step of the interface model reads and writes; layout as <see cref="InterfaceGrid"/>.</summary>
internal sealed class InterfaceArrays(int length)
{
    /// <summary>Displacement of the interface, m, positive down.</summary>
    public double[] OffsetM { get; } = new double[length];

    /// <summary>East faces: sqrt(h_r) times the difference of the layers' velocities (upper less lower), m^1.5 s-1.</summary>
    public double[] East { get; } = new double[length];

    /// <summary>North faces: the same.</summary>
    public double[] North { get; } = new double[length];

    /// <summary>East faces: sqrt(h_r), m^0.5; 0 on walls.</summary>
    public double[] EastRoot { get; } = new double[length];

    /// <summary>North faces: the same.</summary>
    public double[] NorthRoot { get; } = new double[length];

    /// <summary>East faces: share of the motion kept over a step; -1 on walls, which keeps them still.</summary>
    public double[] EastKeep { get; } = Filled(length);

    /// <summary>North faces: the same.</summary>
    public double[] NorthKeep { get; } = Filled(length);

    /// <summary>East faces: push of the wind in a step, m^1.5 s-1.</summary>
    public double[] EastPush { get; } = new double[length];

    /// <summary>North faces: the same.</summary>
    public double[] NorthPush { get; } = new double[length];

    /// <summary>Copies the interface and the motion, not the coefficients.</summary>
    public void CopyMotionTo(InterfaceArrays other)
    {
        OffsetM.CopyTo(other.OffsetM, 0);
        East.CopyTo(other.East, 0);
        North.CopyTo(other.North, 0);
    }

    private static double[] Filled(int length)
    {
        double[] values = new double[length];
        Array.Fill(values, -1.0);
        return values;
    }
}

/// <summary>The three numbers of a step.</summary>
/// <param name="Flow">dt/dx.</param>
/// <param name="Slope">dt g'/dx.</param>
/// <param name="Turn">dt f/4.</param>
internal readonly record struct StepFactors(double Flow, double Slope, double Turn);
