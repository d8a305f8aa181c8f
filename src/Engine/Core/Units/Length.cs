using System.Globalization;

namespace SecondShore.Engine.Core.Units;

/// <summary>A length or depth at an edge of the system: a form, an option, a record. Default: 0 m.</summary>
public readonly record struct Length : IComparable<Length>
{
    /// <summary>Metres in one international foot, exact.</summary>
    public static readonly double MetresPerFoot = 0.3048;

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

    /// <inheritdoc/>
    public int CompareTo(Length other) => Metres.CompareTo(other.Metres);

    /// <summary>Whether the left is shorter.</summary>
    public static bool operator <(Length left, Length right) => left.Metres < right.Metres;

    /// <summary>Whether the left is longer.</summary>
    public static bool operator >(Length left, Length right) => left.Metres > right.Metres;

    /// <summary>Whether the left is no longer.</summary>
    public static bool operator <=(Length left, Length right) => left.Metres <= right.Metres;

    /// <summary>Whether the left is no shorter.</summary>
    public static bool operator >=(Length left, Length right) => left.Metres >= right.Metres;

    /// <summary>Metres with the invariant culture, such as <c>8.4 m</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Metres} m");
}
