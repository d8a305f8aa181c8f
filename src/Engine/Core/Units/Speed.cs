using System.Globalization;

namespace SecondShore.Engine.Core.Units;

/// <summary>A speed at an edge of the system. Default: 0 m/s.</summary>
public readonly record struct Speed
{
    /// <summary>Metres per second in one mile per hour, exact.</summary>
    public static readonly double MpsPerMph = 0.44704;

    /// <summary>Metres per second in one knot, exact.</summary>
    public static readonly double MpsPerKnot = 1852.0 / 3600.0;

    private Speed(double metresPerSecond) => MetresPerSecond = Require.Finite(metresPerSecond);

    /// <summary>The value in metres per second.</summary>
    public double MetresPerSecond { get; }

    /// <summary>The value in miles per hour.</summary>
    public double MilesPerHour => MetresPerSecond / MpsPerMph;

    /// <summary>The value in knots.</summary>
    public double Knots => MetresPerSecond / MpsPerKnot;

    /// <summary>The value in kilometres per hour.</summary>
    public double KilometresPerHour => MetresPerSecond * 3.6;

    /// <summary>A speed given in miles per hour.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static Speed FromMilesPerHour(double milesPerHour) => new(milesPerHour * MpsPerMph);

    /// <summary>Metres per second with the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{MetresPerSecond} m/s");
}
