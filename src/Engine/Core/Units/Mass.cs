using System.Globalization;

namespace SecondShore.Engine.Core.Units;

/// <summary>A mass at an edge of the system, such as a jig's. Default: 0 kg.</summary>
public readonly record struct Mass
{
    /// <summary>Kilograms in one avoirdupois ounce, exact.</summary>
    public static readonly double KilogramsPerOunce = 0.028349523125;

    /// <summary>Kilograms in one avoirdupois pound, exact.</summary>
    public static readonly double KilogramsPerPound = 0.45359237;

    private Mass(double kilograms) => Kilograms = Require.NotNegative(kilograms);

    /// <summary>The value in kilograms.</summary>
    public double Kilograms { get; }

    /// <summary>The value in grams.</summary>
    public double Grams => Kilograms * 1000.0;

    /// <summary>The value in avoirdupois ounces.</summary>
    public double Ounces => Kilograms / KilogramsPerOunce;

    /// <summary>The value in avoirdupois pounds.</summary>
    public double Pounds => Kilograms / KilogramsPerPound;

    /// <summary>A mass given in kilograms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Mass FromKilograms(double kilograms) => new(kilograms);

    /// <summary>A mass given in avoirdupois ounces.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Mass FromOunces(double ounces) => new(ounces * KilogramsPerOunce);

    /// <summary>Kilograms with the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kilograms} kg");
}
