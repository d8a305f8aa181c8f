using System.Globalization;

namespace SecondShore.Engine.Core.Units;

/// <summary>A temperature at an edge of the system. Default: 0 degC.</summary>
public readonly record struct Temperature
{
    private Temperature(double celsius) => Celsius = Require.InRange(celsius, -273.15, 1e6);

    /// <summary>The value in degrees Celsius.</summary>
    public double Celsius { get; }

    /// <summary>The value in degrees Fahrenheit.</summary>
    public double Fahrenheit => (Celsius * 1.8) + 32.0;

    /// <summary>A temperature given in degrees Celsius.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or below absolute zero.</exception>
    public static Temperature FromCelsius(double celsius) => new(celsius);

    /// <summary>Degrees Celsius with the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Celsius} °C");
}
