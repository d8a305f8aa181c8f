using System.Globalization;
using System.Text.Json;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Season;

/// <summary>
/// The numbers that <see cref="LakePriors"/> makes a lake's priors of, learned over many measured lakes at once. Immutable.
/// The learned ones come with the product as <c>priors.json</c>, which also says from which lakes and how well they foretell lakes of other regions.
/// </summary>
public sealed record PriorNumbers
{
    private static readonly Lazy<PriorNumbers> Embedded = new(() => Parse(EmbeddedText()));

    /// <summary>The learned numbers.</summary>
    public static PriorNumbers Learned => Embedded.Value;

    /// <summary>The lakes they were learned from, and where they lie.</summary>
    public static IReadOnlyList<(string Name, GeoPoint At)> LearnedFrom { get; } = ReadLakes();

    /// <summary>Extinction of a lake 1 m deep whose clarity nobody gave, m-1.</summary>
    public double LightAtOneMetrePerM { get; init; } = 2.0;

    /// <summary>Power of the greatest depth by which deeper lakes are clearer, dimensionless.</summary>
    public double LightDepthPower { get; init; } = 0.41;

    /// <summary>Factor on the wind of a station, dimensionless, on a lake of 1 km2.</summary>
    public double StationWindFactor { get; init; } = 1.0;

    /// <summary>Factor on the wind of a grid cell, dimensionless, on a lake of 1 km2.</summary>
    public double GridWindFactor { get; init; } = 0.95;

    /// <summary>Power of the area (km2) in the wind's factor, dimensionless.</summary>
    public double WindAreaPower { get; init; }

    /// <summary>Power by which a record slower than open country understates the wind over the water, dimensionless.</summary>
    public double LeeWindPower { get; init; } = 0.2;

    /// <summary>Stirring efficiency of a lake of 1 km2, dimensionless.</summary>
    public double StirringFactor { get; init; } = 0.2;

    /// <summary>Power of the area (km2) in the stirring efficiency, dimensionless.</summary>
    public double StirringAreaPower { get; init; } = 0.45;

    /// <summary>Power by which a station in the lee understates stirring, dimensionless.</summary>
    public double LeePower { get; init; } = 1.0;

    /// <summary>Factor on deep mixing of a lake of 1 km2, dimensionless.</summary>
    public double DeepMixingFactor { get; init; } = 1.0;

    /// <summary>Power of the area (km2) in deep mixing, dimensionless.</summary>
    public double DeepMixingAreaPower { get; init; }

    /// <summary>Share of the energy freed by convection that entrains, dimensionless.</summary>
    public double ConvectionFactor { get; init; } = 0.2;

    /// <summary>Reach of stirring in units of u*/f, dimensionless.</summary>
    public double StirringReachFactor { get; init; } = 0.25;

    /// <summary>Stirring efficiency right under the surface, dimensionless.</summary>
    public double NearStirringFactor { get; init; } = 0.3;

    /// <summary>Depth at which it is spent, m.</summary>
    public double NearStirringReachM { get; init; } = 2.0;

    /// <summary>Wedderburn number at which tilt stirs as much as the wind, dimensionless.</summary>
    public double TiltFactor { get; init; } = 0.3;

    /// <summary>Factor on the shortwave of a grid cell, dimensionless.</summary>
    public double GridShortwaveFactor { get; init; } = 0.95;

    /// <summary>Factor on the shortwave of a station or made from cloud, dimensionless.</summary>
    public double StationShortwaveFactor { get; init; } = 1.0;

    /// <summary>Share of the difference between land air and water that is lost over a very large lake, dimensionless.</summary>
    public double AirAdjustmentShare { get; init; } = 0.3;

    /// <summary>Added to the air temperature of a grid cell, K.</summary>
    public double GridAirBiasK { get; init; }

    /// <summary>Added to longwave where it was not measured but made from air, humidity and sun, W m-2.</summary>
    public double MadeLongwaveBiasWPerM2 { get; init; }

    /// <summary>Numbers of the oxygen demand, learned on their own.</summary>
    public OxygenNumbers Oxygen { get; init; } = OxygenNumbers.Learned;

    /// <summary>Spread of extinction where nobody gave it, standard deviation of the logarithm.</summary>
    public double LightLogSd { get; init; } = 0.59;

    /// <summary>Spread of the wind's factor, standard deviation of the logarithm.</summary>
    public double WindLogSd { get; init; } = 0.2;

    /// <summary>Spread of stirring, standard deviation of the logarithm.</summary>
    public double StirringLogSd { get; init; } = 1.0;

    /// <summary>Spread of deep mixing, standard deviation of the logarithm.</summary>
    public double DeepMixingLogSd { get; init; } = 0.8;

    /// <summary>Spread of the factor on shortwave, dimensionless.</summary>
    public double ShortwaveSd { get; init; } = 0.05;

    /// <summary>Spread of the air's bias, K.</summary>
    public double AirBiasSdK { get; init; } = 0.8;

    /// <summary>Spread of the longwave's bias, W m-2.</summary>
    public double LongwaveSdWPerM2 { get; init; } = 10;

    /// <summary>Every number with its name in the file and how it is learned, in the file's order.</summary>
    public static IReadOnlyList<PriorNumber> All { get; } =
    [
        new("light_at_one_metre_per_m", n => n.LightAtOneMetrePerM, (n, v) => n with { LightAtOneMetrePerM = v }, 0.5, IsLog: true),
        new("light_depth_power", n => n.LightDepthPower, (n, v) => n with { LightDepthPower = v }, 0.2),
        new("station_wind_factor", n => n.StationWindFactor, (n, v) => n with { StationWindFactor = v }, 0.15, IsLog: true),
        new("grid_wind_factor", n => n.GridWindFactor, (n, v) => n with { GridWindFactor = v }, 0.15, IsLog: true),
        new("wind_area_power", n => n.WindAreaPower, (n, v) => n with { WindAreaPower = v }, 0.05),
        new("lee_wind_power", n => n.LeeWindPower, (n, v) => n with { LeeWindPower = v }, 0.3),
        new("stirring_factor", n => n.StirringFactor, (n, v) => n with { StirringFactor = v }, 0.7, IsLog: true),
        new("stirring_area_power", n => n.StirringAreaPower, (n, v) => n with { StirringAreaPower = v }, 0.2),
        new("lee_power", n => n.LeePower, (n, v) => n with { LeePower = v }, 0.7),
        new("deep_mixing_factor", n => n.DeepMixingFactor, (n, v) => n with { DeepMixingFactor = v }, 0.7, IsLog: true),
        new("deep_mixing_area_power", n => n.DeepMixingAreaPower, (n, v) => n with { DeepMixingAreaPower = v }, 0.2),
        new("convection_factor", n => n.ConvectionFactor, (n, v) => n with { ConvectionFactor = v }, 0.4, IsLog: true),
        new("stirring_reach_factor", n => n.StirringReachFactor, (n, v) => n with { StirringReachFactor = v }, 0.5, IsLog: true),
        new("near_stirring_factor", n => n.NearStirringFactor, (n, v) => n with { NearStirringFactor = v }, 0.7, IsLog: true),
        new("near_stirring_reach_m", n => n.NearStirringReachM, (n, v) => n with { NearStirringReachM = v }, 0.5, IsLog: true),
        new("tilt_factor", n => n.TiltFactor, (n, v) => n with { TiltFactor = v }, 0.7, IsLog: true),
        new("grid_shortwave_factor", n => n.GridShortwaveFactor, (n, v) => n with { GridShortwaveFactor = v }, 0.04),
        new("station_shortwave_factor", n => n.StationShortwaveFactor, (n, v) => n with { StationShortwaveFactor = v }, 0.04),
        new("air_adjustment_share", n => n.AirAdjustmentShare, (n, v) => n with { AirAdjustmentShare = v }, 0.15),
        new("grid_air_bias_k", n => n.GridAirBiasK, (n, v) => n with { GridAirBiasK = v }, 0.5),
        new("made_longwave_bias_w_per_m2", n => n.MadeLongwaveBiasWPerM2, (n, v) => n with { MadeLongwaveBiasWPerM2 = v }, 6),
        new("light_log_sd", n => n.LightLogSd, (n, v) => n with { LightLogSd = v }, 0),
        new("wind_log_sd", n => n.WindLogSd, (n, v) => n with { WindLogSd = v }, 0),
        new("stirring_log_sd", n => n.StirringLogSd, (n, v) => n with { StirringLogSd = v }, 0),
        new("deep_mixing_log_sd", n => n.DeepMixingLogSd, (n, v) => n with { DeepMixingLogSd = v }, 0),
        new("shortwave_sd", n => n.ShortwaveSd, (n, v) => n with { ShortwaveSd = v }, 0),
        new("air_bias_sd_k", n => n.AirBiasSdK, (n, v) => n with { AirBiasSdK = v }, 0),
        new("longwave_sd_w_per_m2", n => n.LongwaveSdWPerM2, (n, v) => n with { LongwaveSdWPerM2 = v }, 0),
    ];

    /// <summary>Reads numbers from a learned file.</summary>
    /// <param name="json">Its text.</param>
    /// <exception cref="FormatException">It is not JSON, or a number is missing; the message says which.</exception>
    public static PriorNumbers Parse(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        PriorNumbers read = new();
        try
        {
            using var document = JsonDocument.Parse(json);
            foreach (PriorNumber number in All)
            {
                if (!document.RootElement.TryGetProperty("numbers", out JsonElement numbers) || !numbers.TryGetProperty(number.Name, out JsonElement value)
                    || !value.TryGetDouble(out double there)) throw new FormatException($"The learned priors lack the number '{number.Name}': learn them again.");
                read = number.With(read, there);
            }
        }
        catch (JsonException e)
        {
            throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"The learned priors are not JSON: line {e.LineNumber + 1}."), e);
        }

        return read;
    }

    private static List<(string Name, GeoPoint At)> ReadLakes()
    {
        using var document = JsonDocument.Parse(EmbeddedText());
        if (!document.RootElement.TryGetProperty("learned", out JsonElement learned) || !learned.TryGetProperty("lakes", out JsonElement lakes)) return [];
        return [.. lakes.EnumerateArray().Select(l => (l.GetProperty("name").GetString() ?? "",
            new GeoPoint(l.GetProperty("latitude_deg").GetDouble(), l.GetProperty("longitude_deg").GetDouble())))];
    }

    /// <summary>The text of the learned file.</summary>
    public static string EmbeddedText()
    {
        using Stream stream = typeof(PriorNumbers).Assembly.GetManifestResourceStream("SecondShore.Engine.Season.priors.json")
            ?? throw new InvalidOperationException("The learned priors are missing from the engine.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

/// <summary>One number of <see cref="PriorNumbers"/>.</summary>
/// <param name="Name">Its name in the file.</param>
/// <param name="Of">Reads it.</param>
/// <param name="With">Sets it.</param>
/// <param name="LearnSd">How far learning may move it from its start before it costs one: of the logarithm where <paramref name="IsLog"/>, else in its unit; 0 where it is not learned by descent.</param>
/// <param name="IsLog">Whether it is learned as a logarithm.</param>
public sealed record PriorNumber(string Name, Func<PriorNumbers, double> Of, Func<PriorNumbers, double, PriorNumbers> With, double LearnSd, bool IsLog = false);
