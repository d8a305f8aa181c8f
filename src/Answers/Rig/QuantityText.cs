using System.Globalization;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>Depths, speeds, weights and lines as people type them: <c>27 ft</c>, <c>0.6 mph</c>, <c>3/4 oz</c>, <c>15 lb fluorocarbon</c>.</summary>
public static class QuantityText
{
    /// <summary>A length, m. A bare number is feet, or metres in the metric system.</summary>
    public static bool TryLengthM(string? text, UnitSystem units, out double lengthM)
    {
        ArgumentNullException.ThrowIfNull(units);
        bool found = TrySplit(text, out double number, out string unit);
        double scale = unit switch
        {
            "" => units.IsMetric ? 1 : Length.MetresPerFoot,
            "m" or "metres" or "meters" => 1,
            "cm" => 0.01,
            "ft" or "'" or "feet" or "foot" => Length.MetresPerFoot,
            "in" or "\"" => Length.MetresPerFoot / 12,
            "yd" => 3 * Length.MetresPerFoot,
            _ => double.NaN,
        };
        lengthM = number * scale;
        return found && double.IsFinite(lengthM);
    }

    /// <summary>An area, m2. A bare number is acres, or hectares in the metric system.</summary>
    public static bool TryAreaM2(string? text, UnitSystem units, out double areaM2)
    {
        ArgumentNullException.ThrowIfNull(units);
        bool found = TrySplit(text, out double number, out string unit);
        double scale = unit switch
        {
            "" => units.IsMetric ? 1e4 : UnitSystem.SquareMetresPerAcre,
            "acre" or "acres" or "ac" => UnitSystem.SquareMetresPerAcre,
            "ha" or "hectare" or "hectares" => 1e4,
            "km2" or "km²" => 1e6,
            "m2" or "m²" => 1,
            "mi2" or "sqmi" => 640 * UnitSystem.SquareMetresPerAcre,
            _ => double.NaN,
        };
        areaM2 = number * scale;
        return found && double.IsFinite(areaM2);
    }

    /// <summary>A speed, m s-1. A bare number is miles per hour, or kilometres per hour in the metric system.</summary>
    public static bool TrySpeedMps(string? text, UnitSystem units, out double speedMps)
    {
        ArgumentNullException.ThrowIfNull(units);
        bool found = TrySplit(text, out double number, out string unit);
        double scale = unit switch
        {
            "" => units.IsMetric ? 1.0 / 3.6 : Speed.MpsPerMph,
            "mph" => Speed.MpsPerMph,
            "m/s" or "mps" => 1,
            "km/h" or "kmh" or "kph" => 1.0 / 3.6,
            "kn" or "kt" or "kts" or "knots" => Speed.MpsPerKnot,
            _ => double.NaN,
        };
        speedMps = number * scale;
        return found && double.IsFinite(speedMps);
    }

    /// <summary>A jig's weight, kg. A bare number is ounces, or grams in the metric system; fractions such as <c>3/4</c> or <c>1 1/4</c> are read.</summary>
    public static bool TryMassKg(string? text, UnitSystem units, out double massKg)
    {
        ArgumentNullException.ThrowIfNull(units);
        bool found = TrySplit(text, out double number, out string unit);
        double scale = unit switch
        {
            "" => units.IsMetric ? 0.001 : Mass.KilogramsPerOunce,
            "oz" or "ounce" or "ounces" => Mass.KilogramsPerOunce,
            "g" or "gram" or "grams" => 0.001,
            _ => double.NaN,
        };
        massKg = number * scale;
        return found && massKg > 0 && double.IsFinite(massKg);
    }

    /// <summary>A line: one of those owned by its name, else strength and kind, such as <c>15 lb fluorocarbon</c>, with a diameter where
    /// wanted, such as <c>15 lb fluoro 0.35 mm</c>. Null when it is neither.</summary>
    public static FishingLine? Line(string? text, IReadOnlyList<FishingLine> owned)
    {
        ArgumentNullException.ThrowIfNull(owned);
        if (string.IsNullOrWhiteSpace(text)) return null;
        foreach (FishingLine line in owned)
            if (string.Equals(line.Name, text.Trim(), StringComparison.OrdinalIgnoreCase)) return line;
        double pounds = double.NaN, diameterM = double.NaN;
        LineMaterial? material = null;
        string[] words = text.Replace("lb", " lb ", StringComparison.OrdinalIgnoreCase).Replace("mm", " mm ", StringComparison.OrdinalIgnoreCase)
            .Split([' ', ',', '\t'], StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < words.Length; i++)
        {
            if (LineMaterial.Find(words[i]) is { } known) { material = known; continue; }
            if (!TryNumber(words[i], out double number)) return null;
            string unit = i + 1 < words.Length ? words[i + 1].ToUpperInvariant() : "";
            if (unit == "MM") { diameterM = number / 1000; i++; }
            else if (unit == "N") { pounds = number / FishingLine.PoundForceN; i++; }
            else if (unit == "KG") { pounds = number * PhysicalConstants.StandardGravityMps2 / FishingLine.PoundForceN; i++; }
            else { pounds = number; if (unit == "LB") i++; }
        }

        material ??= LineMaterial.Fluorocarbon;
        if (double.IsNaN(pounds) && diameterM is >= 5e-5 and <= 2e-3)
            pounds = material.StrengthPa * 0.25 * Math.PI * diameterM * diameterM / FishingLine.PoundForceN;
        if (!(pounds is >= 1 and <= 300)) return null;
        FishingLine made = FishingLine.OfPoundsWeight(material, pounds);
        return double.IsNaN(diameterM) ? made : diameterM is >= 5e-5 and <= 2e-3 ? made with { DiameterM = diameterM, DiameterMeasured = true } : null;
    }

    private static bool TrySplit(string? text, out double number, out string unit)
    {
        number = double.NaN;
        unit = "";
        if (string.IsNullOrWhiteSpace(text)) return false;
        string all = text.Trim();
        int cut = 0;
        while (cut < all.Length && (char.IsAsciiDigit(all[cut]) || all[cut] is '.' or ',' or '-' or '+' or '/' or ' ')) cut++;
        unit = all[cut..].Trim().ToLowerInvariant();
        return TryNumber(all[..cut].Trim(), out number);
    }

    private static bool TryNumber(string text, out double number)
    {
        number = double.NaN;
        string[] parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length is 0 or > 2) return false;
        double sum = 0;
        foreach (string part in parts)
        {
            string[] fraction = part.Split('/');
            if (fraction.Length > 2 || !TryPlain(fraction[0], out double top)) return false;
            double bottom = 1;
            if (fraction.Length == 2 && (!TryPlain(fraction[1], out bottom) || bottom == 0)) return false;
            if (parts.Length == 2 && part == parts[1] && fraction.Length == 1) return false;
            sum += top / bottom;
        }

        number = sum;
        return double.IsFinite(sum);
    }

    private static bool TryPlain(string text, out double number) =>
        double.TryParse(text.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out number);
}
