namespace SecondShore.Weather;

/// <summary>An hourly quantity of the service: names it goes by, units it may come in, values that are possible.</summary>
/// <param name="Name">The name asked for.</param>
/// <param name="OtherNames">Earlier names of the same.</param>
/// <param name="What">In words, for messages.</param>
/// <param name="Units">Units read, each with how it becomes ours: value times factor plus offset.</param>
/// <param name="Low">Least possible value in our unit.</param>
/// <param name="High">Greatest possible value in our unit.</param>
/// <param name="OfHourBefore">Whether the value is the mean, sum or greatest of the hour that ends at its stamp.</param>
/// <param name="MaxFillHours">Longest gap that is filled, hours; 0 for none.</param>
internal sealed record HourlyColumn(string Name, string[] OtherNames, string What, (string Unit, double Factor, double Offset)[] Units,
    double Low, double High, bool OfHourBefore, int MaxFillHours)
{
    /// <summary>Its name as a finding, to be said in any language.</summary>
    public Finding Said { get; } = Finding.Of(What);

    public static HourlyColumn AirTemp { get; } = new("temperature_2m", [], "air temperature",
        [("°C", 1, 0), ("°F", 5 / 9.0, -160 / 9.0), ("K", 1, -273.15)], -65, 60, false, 48);

    public static HourlyColumn Humidity { get; } = new("relative_humidity_2m", ["relativehumidity_2m"], "humidity",
        [("%", 0.01, 0)], 0, 1.06, false, 48);

    public static HourlyColumn Wind { get; } = new("wind_speed_10m", ["windspeed_10m"], "wind", Speeds, 0, 90, false, 48);

    public static HourlyColumn WindFrom { get; } = new("wind_direction_10m", ["winddirection_10m"], "wind direction",
        [("°", 1, 0)], 0, 360, false, 6);

    public static HourlyColumn Gust { get; } = new("wind_gusts_10m", ["windgusts_10m"], "gusts", Speeds, 0, 120, true, 6);

    public static HourlyColumn Shortwave { get; } = new("shortwave_radiation", [], "sunshine",
        [("W/m²", 1, 0), ("W/m2", 1, 0)], -10, 1500, true, 48);

    public static HourlyColumn Cloud { get; } = new("cloud_cover", ["cloudcover"], "cloud", [("%", 0.01, 0)], 0, 1, false, 48);

    public static HourlyColumn Rain { get; } = new("precipitation", [], "rain", [("mm", 1, 0), ("inch", 25.4, 0)], 0, 400, true, 6);

    /// <summary>All of them, in the order in which they are asked for.</summary>
    public static IReadOnlyList<HourlyColumn> All { get; } = [AirTemp, Humidity, Wind, WindFrom, Gust, Shortwave, Cloud, Rain];

    private static (string, double, double)[] Speeds => [("m/s", 1, 0), ("km/h", 1 / 3.6, 0), ("mp/h", 0.44704, 0), ("mph", 0.44704, 0), ("kn", 1852 / 3600.0, 0)];
}
