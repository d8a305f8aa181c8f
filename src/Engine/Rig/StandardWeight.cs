namespace SecondShore.Engine.Rig;

/// <summary>A weight that heads are sold in.</summary>
/// <param name="Label">As printed, such as <c>3/4 oz</c>.</param>
/// <param name="MassKg">Mass, kg.</param>
public readonly record struct StandardWeight(string Label, double MassKg)
{
    /// <summary>Fractions of an ounce.</summary>
    public static IReadOnlyList<StandardWeight> Ounces { get; } =
    [
        Ounce("1/8", 0.125), Ounce("3/16", 0.1875), Ounce("1/4", 0.25), Ounce("3/8", 0.375), Ounce("1/2", 0.5), Ounce("5/8", 0.625),
        Ounce("3/4", 0.75), Ounce("1", 1), Ounce("1 1/4", 1.25), Ounce("1 1/2", 1.5), Ounce("2", 2), Ounce("3", 3),
    ];

    /// <summary>Whole grams.</summary>
    public static IReadOnlyList<StandardWeight> Grams { get; } =
    [
        Gram(3.5), Gram(5), Gram(7), Gram(10), Gram(14), Gram(18), Gram(21), Gram(28), Gram(35), Gram(42), Gram(56), Gram(84),
    ];

    private static StandardWeight Ounce(string label, double ounces) => new(label + " oz", ounces * Core.Units.Mass.KilogramsPerOunce);

    private static StandardWeight Gram(double grams) => new(FormattableString.Invariant($"{grams} g"), grams / 1000.0);
}
