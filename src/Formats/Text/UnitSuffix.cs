using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Units;

namespace SecondShore.Formats.Text;

/// <summary>What a column or key measures; each has one SI unit it is turned into.</summary>
internal enum Quantity
{
    /// <summary>A bare number.</summary>
    Number,

    /// <summary>Length, m.</summary>
    Length,

    /// <summary>Temperature, degC.</summary>
    Temperature,

    /// <summary>Speed, m s-1.</summary>
    Speed,

    /// <summary>Mass, g.</summary>
    Mass,

    /// <summary>Force given as the mass it lifts, N.</summary>
    Strength,

    /// <summary>Area, m2.</summary>
    Area,

    /// <summary>Flow, m3 s-1.</summary>
    Flow,

    /// <summary>Share, 0 to 1.</summary>
    Share,

    /// <summary>Rain, mm per hour.</summary>
    RainRate,

    /// <summary>Power per area, W m-2.</summary>
    Flux,

    /// <summary>Angle, degrees.</summary>
    Angle,

    /// <summary>Concentration, mg per litre.</summary>
    Concentration,

    /// <summary>Duration, minutes.</summary>
    Minutes,

    /// <summary>Light extinction, m-1.</summary>
    PerLength,

    /// <summary>Modulus of elasticity, Pa.</summary>
    Modulus,
}

/// <summary>One way to write the unit of a quantity at the end of a name: value in SI = number * Scale + Offset.</summary>
internal sealed record UnitSuffix(string Text, Quantity Quantity, double Scale, double Offset = 0)
{
    private static readonly double Foot = Length.MetresPerFoot;
    private static readonly double Pound = 1000.0 * Mass.KilogramsPerPound;
    private static readonly double NewtonPerKg = PhysicalConstants.StandardGravityMps2;

    private static readonly UnitSuffix[] All =
    [
        new("m", Quantity.Length, 1), new("ft", Quantity.Length, Foot), new("feet", Quantity.Length, Foot),
        new("cm", Quantity.Length, 0.01), new("mm", Quantity.Length, 0.001), new("in", Quantity.Length, 0.0254),
        new("km", Quantity.Length, 1000), new("mi", Quantity.Length, 1609.344), new("yd", Quantity.Length, 0.9144),
        new("fathoms", Quantity.Length, Length.MetresPerFathom), new("metres", Quantity.Length, 1), new("meters", Quantity.Length, 1),
        new("c", Quantity.Temperature, 1), new("k", Quantity.Temperature, 1, -273.15),
        new("f", Quantity.Temperature, 5.0 / 9.0, -160.0 / 9.0),
        new("m_s", Quantity.Speed, 1), new("mps", Quantity.Speed, 1), new("ms", Quantity.Speed, 1),
        new("km_h", Quantity.Speed, 1 / 3.6), new("kmh", Quantity.Speed, 1 / 3.6), new("kph", Quantity.Speed, 1 / 3.6),
        new("mph", Quantity.Speed, 0.44704), new("kn", Quantity.Speed, 1852.0 / 3600.0),
        new("kt", Quantity.Speed, 1852.0 / 3600.0), new("kts", Quantity.Speed, 1852.0 / 3600.0), new("knots", Quantity.Speed, 1852.0 / 3600.0),
        new("g", Quantity.Mass, 1), new("kg", Quantity.Mass, 1000), new("oz", Quantity.Mass, Pound / 16), new("lb", Quantity.Mass, Pound),
        new("n", Quantity.Strength, 1), new("kg", Quantity.Strength, NewtonPerKg),
        new("lb", Quantity.Strength, Pound / 1000 * NewtonPerKg), new("lbs", Quantity.Strength, Pound / 1000 * NewtonPerKg),
        new("m2", Quantity.Area, 1), new("cm2", Quantity.Area, 1e-4), new("ha", Quantity.Area, 10000), new("km2", Quantity.Area, 1e6),
        new("acres", Quantity.Area, 4046.8564224), new("ft2", Quantity.Area, Foot * Foot),
        new("m3_s", Quantity.Flow, 1), new("cfs", Quantity.Flow, Foot * Foot * Foot), new("ft3_s", Quantity.Flow, Foot * Foot * Foot),
        new("l_s", Quantity.Flow, 0.001),
        new("fraction", Quantity.Share, 1), new("share", Quantity.Share, 1), new("pct", Quantity.Share, 0.01), new("percent", Quantity.Share, 0.01),
        new("mm_h", Quantity.RainRate, 1), new("in_h", Quantity.RainRate, 25.4),
        new("w_m2", Quantity.Flux, 1), new("deg", Quantity.Angle, 1),
        new("mg_l", Quantity.Concentration, 1), new("ppm", Quantity.Concentration, 1),
        new("min", Quantity.Minutes, 1), new("minutes", Quantity.Minutes, 1), new("h", Quantity.Minutes, 60), new("s", Quantity.Minutes, 1.0 / 60.0),
        new("pa", Quantity.Modulus, 1), new("mpa", Quantity.Modulus, 1e6), new("gpa", Quantity.Modulus, 1e9),
        new("per_m", Quantity.PerLength, 1), new("per_ft", Quantity.PerLength, 1 / Foot),
    ];

    /// <summary>The value in the quantity's SI unit.</summary>
    public double ToSi(double value) => (value * Scale) + Offset;

    /// <summary>The unit at the end of a name that starts with a base, such as <c>depth_ft</c> over <c>depth</c>; null when it is not one.</summary>
    public static UnitSuffix? Match(ReadOnlySpan<char> name, ReadOnlySpan<char> stem, Quantity quantity)
    {
        if (!name.StartsWith(stem, StringComparison.Ordinal)) return null;
        ReadOnlySpan<char> rest = name[stem.Length..];
        if (rest.Length < 2 || rest[0] != '_') return null;
        foreach (UnitSuffix unit in All)
            if (unit.Quantity == quantity && rest[1..].SequenceEqual(unit.Text)) return unit;
        return null;
    }

    /// <summary>A header as it is compared: lower case, unit in brackets set off by an underscore, blanks as underscores.</summary>
    public static string Normalise(ReadOnlySpan<char> header)
    {
        Span<char> buffer = header.Length <= 128 ? stackalloc char[header.Length] : new char[header.Length];
        int n = 0;
        foreach (char c in header)
        {
            char plain = c switch
            {
                ' ' or '(' or '[' or '/' or '-' or '.' or ':' => '_',
                ')' or ']' or '°' or '\'' or '"' => '\0',
                '%' => 'p',
                _ => char.ToLowerInvariant(c),
            };
            if (plain == '\0' || (plain == '_' && (n == 0 || buffer[n - 1] == '_'))) continue;
            buffer[n++] = plain;
        }

        while (n > 0 && buffer[n - 1] == '_') n--;
        return buffer[..n].ToString();
    }
}
