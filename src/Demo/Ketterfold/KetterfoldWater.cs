using System.Globalization;
using System.Text;
using SecondShore.Demo.Terrain;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Demo.Ketterfold;

/// <summary>What stood in the invented water, and what an angler wrote down of it.</summary>
internal sealed class KetterfoldWater
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;
    private readonly GeneratedLake _lake;
    private readonly LocalProjection _plane;
    private readonly KetterfoldColumn _column;
    private readonly SeededRandom _random;

    public KetterfoldWater(GeneratedLake lake, LocalProjection plane, KetterfoldColumn column, ulong seed)
    {
        (_lake, _plane, _column) = (lake, plane, column);
        _random = new SeededRandom(seed, 611);
    }

    public double SecchiM { get; } = 4.2;

    /// <summary>Surface temperature, degC.</summary>
    public double SurfaceC(DateTimeOffset at) => _column.TempC(at, 0.3);

    /// <summary>Depth of the thermocline, m.</summary>
    public double ThermoclineM(DateTimeOffset at) => _column.ThermoclineM(at);

    /// <summary>The pool through the season, day by day.</summary>
    public static IReadOnlyList<PoolLevel> Levels(WeatherSeries weather) =>
        [.. Enumerable.Range(0, (weather.Count / 24) + 1).Select(d => weather.StartUtc.AddDays(d)).Select(at => new PoolLevel(at, DropM(at)))];

    public static byte[] Level()
    {
        StringBuilder text = new("time,below_full_pool_m\n");
        for (int day = 0; day <= 219; day += 7)
        {
            DateTimeOffset at = new DateTimeOffset(2026, 3, 1, 15, 0, 0, TimeSpan.Zero).AddDays(day);
            text.Append(Plain, $"{at.UtcDateTime:yyyy-MM-ddTHH:mm}Z,{Math.Round(DropM(at), 2)}\n");
        }

        text.Append(Plain, $"{KetterfoldDemo.MeasuredUntil.UtcDateTime:yyyy-MM-ddTHH:mm}Z,{Math.Round(DropM(KetterfoldDemo.MeasuredUntil), 2)}\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>How far the surface lies below full pool, m: full in spring, drawn down from July.</summary>
    public static double DropM(DateTimeOffset at)
    {
        double days = (at - new DateTimeOffset(2026, 7, 10, 0, 0, 0, TimeSpan.Zero)).TotalDays;
        return days <= 0 ? 0.15 : 0.15 + (1.75 * Math.Min(1, days / 88));
    }

    public byte[] Readings()
    {
        StringBuilder text = new("time,latitude_deg,longitude_deg,haze_depth_m,surface_temp_c,secchi_m,note\n");
        (int Month, int Day, double XM, double YM, bool Secchi)[] trips =
        [
            (6, 20, 7400, -5750, true), (7, 18, 8600, -5250, false), (8, 15, 7400, -5750, true), (8, 29, 10100, -6700, false),
            (9, 12, 6350, -4950, true), (9, 19, 8600, -5250, false), (9, 26, 7400, -5750, true), (10, 3, 7400, -5750, false), (10, 5, 9600, -5750, true),
        ];
        foreach ((int month, int day, double x, double y, bool secchi) in trips)
        {
            DateTimeOffset at = new(2026, month, day, 16, 0, 0, TimeSpan.Zero);
            GeoPoint g = _plane.ToGeo(DeepNear(new PlanePoint(x, y)));
            string clear = secchi ? string.Create(Plain, $"{SecchiM + (0.35 * _random.NextNormal()):0.0}") : "";
            text.Append(Plain, $"{at.UtcDateTime:yyyy-MM-ddTHH:mm}Z,{g.LatDeg:0.00000},{g.LonDeg:0.00000},{ThermoclineM(at) + (0.45 * _random.NextNormal()):0.0},{SurfaceC(at) + (0.25 * _random.NextNormal()):0.0},{clear},invented\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    public byte[] Profiles()
    {
        StringBuilder text = new("time,depth_m,temp_c\n");
        DateTimeOffset at = new(2026, 9, 26, 17, 30, 0, TimeSpan.Zero);
        foreach (double depthM in (double[])[0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 16, 18, 20, 25, 30])
            text.Append(Plain, $"{at.UtcDateTime:yyyy-MM-ddTHH:mm}Z,{depthM},{_column.TempC(at, depthM) + (0.08 * _random.NextNormal()):0.0}\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    // A boat reads the sounder over deep water.
    private PlanePoint DeepNear(PlanePoint place)
    {
        PlanePoint best = place;
        double bestM = 0;
        for (double dx = -300; dx <= 300; dx += 30)
        {
            for (double dy = -300; dy <= 300; dy += 30)
            {
                PlanePoint p = new(place.XM + dx, place.YM + dy);
                if (_lake.DepthAtM(p) > bestM) { bestM = _lake.DepthAtM(p); best = p; }
            }
        }

        return best;
    }
}
