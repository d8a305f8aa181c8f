using System.Globalization;

namespace SecondShore.Engine.Core.Units;

/// <summary>A length or depth at an edge of the system: a form, an option, a record. Default: 0 m.</summary>
public readonly record struct Length
{
    /// <summary>Metres in one international foot, exact.</summary>
    public static readonly double MetresPerFoot = 0.3048;

    /// <summary>Metres in one fathom of six feet, exact.</summary>
    public static readonly double MetresPerFathom = 1.8288;

    /// <summary>Metres in one statute mile of 5,280 international feet, exact.</summary>
    public static readonly double MetresPerMile = 1609.344;

    private Length(double metres) => Metres = Require.Finite(metres);

    /// <summary>The value in metres.</summary>
    public double Metres { get; }

    /// <summary>The value in international feet.</summary>
    public double Feet => Metres / MetresPerFoot;

    /// <summary>A length given in metres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static Length FromMetres(double metres) => new(metres);

    /// <summary>A length given in international feet.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static Length FromFeet(double feet) => new(feet * MetresPerFoot);

    /// <summary>Metres with the invariant culture, such as <c>8.4 m</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Metres} m");
}
