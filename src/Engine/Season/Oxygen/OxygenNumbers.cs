using System.Globalization;
using System.Text.Json;

namespace SecondShore.Engine.Season;

/// <summary>
/// The numbers that a lake's oxygen demand is made of, learned over the measured lakes with oxygen casts. Immutable.
/// The learned ones come with the product as <c>oxygen.json</c>, which also says from which lakes.
/// </summary>
public sealed record OxygenNumbers
{
    private static readonly Lazy<OxygenNumbers> Embedded = new(() => Parse(EmbeddedText()));

    /// <summary>The learned numbers.</summary>
    public static OxygenNumbers Learned => Embedded.Value;

    /// <summary>Areal demand of deep water at 10 degC under water of 3 m Secchi depth, g m-2 d-1.</summary>
    public double DemandGPerM2Day { get; init; } = 0.4;

    /// <summary>Power of the Secchi depth by which clearer lakes use less, dimensionless.</summary>
    public double SecchiPower { get; init; } = 0.75;

    /// <summary>Factor on the exchange with the air, dimensionless.</summary>
    public double ReaerationFactor { get; init; } = 1.0;

    /// <summary>Spread of the demand, standard deviation of the logarithm.</summary>
    public double DemandLogSd { get; init; } = 0.45;

    /// <summary>All numbers by their names in the file.</summary>
    public static IReadOnlyList<OxygenNumber> All { get; } =
    [
        new("demand_g_per_m2_day", n => n.DemandGPerM2Day, (n, v) => n with { DemandGPerM2Day = v }),
        new("secchi_power", n => n.SecchiPower, (n, v) => n with { SecchiPower = v }),
        new("reaeration_factor", n => n.ReaerationFactor, (n, v) => n with { ReaerationFactor = v }),
        new("demand_log_sd", n => n.DemandLogSd, (n, v) => n with { DemandLogSd = v }),
    ];

    /// <summary>What a lake of some clarity uses.</summary>
    /// <param name="extinctionPerM">Extinction of light, m-1: twice its inverse stands for the Secchi depth.</param>
    public OxygenDemand Demand(double extinctionPerM) =>
        new(Math.Clamp(DemandGPerM2Day * Math.Pow(1.5 * extinctionPerM, SecchiPower), 0.03, 3.0)) { ReaerationFactor = ReaerationFactor };

    /// <summary>Spread of the logarithm of the demand where clarity has one of its own.</summary>
    /// <param name="extinctionLogSd">Spread of the logarithm of the extinction.</param>
    public double LogSd(double extinctionLogSd) => double.Hypot(DemandLogSd, SecchiPower * extinctionLogSd);

    /// <summary>Reads numbers from a learned file.</summary>
    /// <param name="json">Its text.</param>
    /// <exception cref="FormatException">It is not JSON, or a number is missing; the message says which.</exception>
    public static OxygenNumbers Parse(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        OxygenNumbers read = new();
        try
        {
            using var document = JsonDocument.Parse(json);
            foreach (OxygenNumber number in All)
            {
                if (!document.RootElement.TryGetProperty("numbers", out JsonElement numbers)
                    || !numbers.TryGetProperty(number.Name, out JsonElement value) || !value.TryGetDouble(out double there))
                    throw new FormatException($"The learned oxygen demand lacks the number '{number.Name}': learn it again.");
                read = number.With(read, there);
            }
        }
        catch (JsonException e)
        {
            string where = string.Create(CultureInfo.InvariantCulture, $"line {e.LineNumber + 1}");
            throw new FormatException($"The learned oxygen demand is not JSON: {where}.", e);
        }

        return read;
    }

    /// <summary>The text of the learned file.</summary>
    public static string EmbeddedText()
    {
        using Stream stream = typeof(OxygenNumbers).Assembly.GetManifestResourceStream("SecondShore.Engine.Season.oxygen.json")
            ?? throw new InvalidOperationException("The learned oxygen demand is missing from the engine.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

/// <summary>One number of <see cref="OxygenNumbers"/>.</summary>
/// <param name="Name">Its name in the file.</param>
/// <param name="Of">Reads it.</param>
/// <param name="With">Sets it.</param>
public sealed record OxygenNumber(string Name, Func<OxygenNumbers, double> Of, Func<OxygenNumbers, double, OxygenNumbers> With);
