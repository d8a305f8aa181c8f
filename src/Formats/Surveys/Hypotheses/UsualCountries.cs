namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Where many surveys are made and shared: a tilt of the order of choices, and a reason to ask where turning a place leads there.</summary>
internal static class UsualCountries
{
    // From this on a country is where a file of no other words is likelier to come from.
    private const double Usual = 1;

    // Below it hardly any survey is shared.
    private const double Rare = 0.4;

    private static readonly Dictionary<string, double> Weights = new(StringComparer.Ordinal)
    {
        ["United States of America"] = 2,
        ["Canada"] = 1.2,
        ["Germany"] = 1.5,
        ["Poland"] = 1.2,
        ["United Kingdom"] = 1.2,
        ["France"] = 1,
        ["Netherlands"] = 1,
        ["Sweden"] = 1,
        ["Finland"] = 1,
        ["Denmark"] = 1,
        ["Norway"] = 0.8,
        ["Austria"] = 1,
        ["Switzerland"] = 1,
        ["Italy"] = 1,
        ["Spain"] = 1,
        ["Czechia"] = 1,
        ["Australia"] = 1,
        ["New Zealand"] = 1,
        ["Ireland"] = 0.8,
        ["Brazil"] = 0.8,
        ["Japan"] = 0.6,
        ["Belgium"] = 0.8,
        ["Estonia"] = 0.6,
        ["Latvia"] = 0.6,
        ["Lithuania"] = 0.6,
        ["Hungary"] = 0.6,
        ["Portugal"] = 0.6,
        ["South Africa"] = 0.5,
        ["Mexico"] = 0.4,
        ["Antarctica"] = -5,
        ["Greenland"] = -2,
    };

    /// <summary>Log-odds of a country; 0 where nothing is known.</summary>
    public static double Weight(string country) => Weights.GetValueOrDefault(country);

    /// <summary>Whether surveys often come from there.</summary>
    public static bool IsUsual(string country) => Weight(country) >= Usual;

    /// <summary>Whether surveys seldom come from there.</summary>
    public static bool IsRare(string country) => Weight(country) < Rare;
}
