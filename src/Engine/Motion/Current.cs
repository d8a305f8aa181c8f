namespace SecondShore.Engine.Motion;

/// <summary>A flow of water, named by where it goes. Default: still.</summary>
/// <param name="EastMps">Eastward part, m s-1.</param>
/// <param name="NorthMps">Northward part, m s-1.</param>
public readonly record struct Current(double EastMps, double NorthMps)
{
    /// <summary>Speed, m s-1.</summary>
    public double SpeedMps => Math.Sqrt((EastMps * EastMps) + (NorthMps * NorthMps));

    /// <summary>Where the water goes, degrees clockwise from north, 0 (inclusive) to 360; 0 when still.</summary>
    public double ToDeg => Bearings.OfVectorDeg(EastMps, NorthMps);

    /// <summary>A flow of a speed toward a bearing.</summary>
    /// <param name="speedMps">Speed, m s-1.</param>
    /// <param name="toDeg">Where it goes, degrees clockwise from north.</param>
    public static Current Toward(double speedMps, double toDeg)
    {
        (double east, double north) = Bearings.Unit(toDeg);
        return new Current(speedMps * east, speedMps * north);
    }

    /// <summary>Sum of two flows.</summary>
    public static Current operator +(Current left, Current right) => Add(left, right);

    /// <summary>Sum of two flows.</summary>
    public static Current Add(Current left, Current right) => new(left.EastMps + right.EastMps, left.NorthMps + right.NorthMps);

    /// <summary>The same flow, a factor stronger.</summary>
    public Current Times(double factor) => new(EastMps * factor, NorthMps * factor);
}
