using System.Globalization;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Words;

/// <summary>Where words are read.</summary>
public enum ReadIn
{
    /// <summary>At a terminal, where a sentence may name an option or another verb.</summary>
    Terminal,

    /// <summary>In the app, where it names a place or a button.</summary>
    App,
}

/// <summary>How a person wants to read numbers: feet, pounds, ounces, miles and Fahrenheit, or metric.</summary>
/// <remarks>Two instances in English, and others in other languages; every sentence the product says goes through one of them.</remarks>
public sealed class UnitSystem
{
    /// <summary>An acre, m2.</summary>
    public static readonly double SquareMetresPerAcre = 4046.8564224;

    private readonly bool _metric;

    private UnitSystem(bool metric, Speech speech, ReadIn place) => (_metric, Speech, Place) = (metric, speech, place);

    /// <summary>Feet, miles, ounces, Fahrenheit.</summary>
    public static UnitSystem Feet { get; } = new(false, Speech.English, ReadIn.Terminal);

    /// <summary>Metres, kilometres, grams, Celsius.</summary>
    public static UnitSystem Metric { get; } = new(true, Speech.English, ReadIn.Terminal);

    /// <summary>The language of its words.</summary>
    public Speech Speech { get; }

    /// <summary>Where the words are read: only a terminal is told of options.</summary>
    public ReadIn Place { get; }

    /// <summary>The same units in another language.</summary>
    public UnitSystem In(Speech speech) => new(_metric, speech, Place);

    /// <summary>The same units and language, read elsewhere.</summary>
    public UnitSystem In(ReadIn place) => new(_metric, Speech, place);

    /// <summary>Whether this is the metric system.</summary>
    public bool IsMetric => _metric;

    /// <summary>Sign of the depth unit: <c>ft</c> or <c>m</c>.</summary>
    public string DepthUnit => _metric ? "m" : "ft";

    /// <summary>One of that unit, m.</summary>
    public double DepthUnitM => _metric ? 1 : Length.MetresPerFoot;

    /// <summary>Sign of the unit of a boat's or drag speed: <c>mph</c> or <c>km/h</c>.</summary>
    public string PaceUnit => _metric ? "km/h" : "mph";

    /// <summary>One of that unit, m/s.</summary>
    public double PaceUnitMps => _metric ? 1 / 3.6 : Speed.MpsPerMph;

    /// <summary>Sign of the temperature unit: <c>°F</c> or <c>°C</c>.</summary>
    public string TemperatureUnit => _metric ? "°C" : "°F";

    /// <summary>A depth in this system's unit.</summary>
    public double DepthFrom(double depthM) => _metric ? depthM : depthM / Length.MetresPerFoot;

    /// <summary>A temperature in this system's unit.</summary>
    public double TemperatureFrom(double tempC) => _metric ? tempC : Temperature.FromCelsius(tempC).Fahrenheit;

    /// <summary>A depth without its unit: whole feet, or metres to a tenth.</summary>
    public string DepthNumber(double depthM) => _metric ? Text(depthM, "0.0") : Text(DepthFrom(depthM), "0");

    /// <summary>A depth such as <c>27 ft</c> or <c>8.2 m</c>.</summary>
    public string Depth(double depthM) => $"{DepthNumber(depthM)} {DepthUnit}";

    /// <summary>A range of depths such as <c>24 to 31 ft</c>.</summary>
    public string DepthRange(double shallowM, double deepM)
    {
        string shallow = DepthNumber(shallowM), deep = DepthNumber(deepM);
        return shallow == deep ? $"{deep} {DepthUnit}" : Speech.Say($"{shallow} to {deep} {DepthUnit}");
    }

    /// <summary>A temperature such as <c>64 °F</c>.</summary>
    public string Temp(double tempC) => $"{Text(TemperatureFrom(tempC), _metric ? "0.0" : "0")} {TemperatureUnit}";

    /// <summary>A way on the water: yards or miles, metres or kilometres.</summary>
    public string Distance(double distanceM)
    {
        if (_metric) return distanceM < 950 ? $"{Text(Math.Round(distanceM / 10) * 10, "0")} m" : $"{Text(distanceM / 1000, "0.0")} km";
        double yards = distanceM / 0.9144;
        return yards < 800 ? $"{Text(Math.Round(yards / 10) * 10, "0")} yd" : $"{Text(yards / 1760, "0.0")} mi";
    }

    /// <summary>A short way: feet or metres.</summary>
    public string ShortDistance(double distanceM) =>
        _metric ? $"{Text(distanceM, "0")} m" : $"{Text(distanceM / Length.MetresPerFoot, "0")} ft";

    /// <summary>A small difference of depth, to a tenth: <c>1.3 ft</c> or <c>0.4 m</c>.</summary>
    public string Difference(double differenceM) => $"{Text(DepthFrom(differenceM), "0.0")} {DepthUnit}";

    /// <summary>An area of water: <c>494 acres</c> or <c>2 km2</c>.</summary>
    public string Area(double areaM2) => _metric
        ? $"{Text(areaM2 / 1e6, "0.##")} km2"
        : Speech.Say($"{Text(areaM2 / SquareMetresPerAcre, areaM2 < 40_000 ? "0.#" : "0")} acres");

    /// <summary>A speed such as <c>0.7 mph</c> or <c>1.1 km/h</c>.</summary>
    public string Pace(double speedMps) => _metric
        ? $"{Text(speedMps * 3.6, "0.0")} km/h"
        : $"{Text(speedMps / Speed.MpsPerMph, "0.0")} mph";

    /// <summary>A wind such as <c>12 mph</c> or <c>5 m/s</c>.</summary>
    public string Wind(double windMps) => _metric ? $"{Text(windMps, "0")} m/s" : $"{Text(windMps / Speed.MpsPerMph, "0")} mph";

    /// <summary>A jig's weight such as <c>3/4 oz</c> or <c>21 g</c>.</summary>
    public string JigWeight(double massKg) => _metric
        ? $"{Text(massKg * 1000, massKg < 0.01 ? "0.0" : "0")} g"
        : $"{OunceFraction(massKg / Mass.KilogramsPerOunce)} oz";

    /// <summary>Ounces as the trade writes them: a fraction in sixteenths where it fits within a hundredth.</summary>
    public string OunceFraction(double ounces)
    {
        int sixteenths = (int)Math.Round(ounces * 16);
        if (sixteenths == 0 || Math.Abs(ounces - (sixteenths / 16.0)) > 0.012) return Text(ounces, "0.##");
        int whole = sixteenths / 16, rest = sixteenths % 16, denominator = 16;
        if (rest == 0) return whole.ToString(CultureInfo.InvariantCulture);
        while (rest % 2 == 0) { rest /= 2; denominator /= 2; }
        return whole == 0 ? $"{rest}/{denominator}" : $"{whole} {rest}/{denominator}";
    }

    private string Text(double value, string format)
    {
        // A rounded zero must not keep the sign of what was rounded away.
        string text = Speech.Number(value, format);
        return text is "-0" or "-0.0" or "-0,0" ? text[1..] : text.Replace('-', '−');
    }
}
