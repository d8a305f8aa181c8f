using SecondShore.Demo.Terrain;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Demo.Ketterfold;

/// <summary>The lay of Ketterfold Reservoir, a drowned valley that exists nowhere. Metres east and north of the lake's origin.</summary>
internal static class KetterfoldRecipe
{
    /// <summary>The lake's origin. No such lake lies there.</summary>
    public static GeoPoint Origin { get; } = new(38.63, -99.72);

    public static double ElevationM { get; } = 212;

    public static double MaxDepthM { get; } = 60;

    public static LakeRecipe Recipe { get; } = new()
    {
        LengthM = 14000,
        MaxDepthM = MaxDepthM,
        CellM = 15,
        HalfFloorM = 210,
        HalfChannelM = 26,
        ChannelCutM = 7,
        FormM = 42,
        RoughM = 0.4,
        Arms = 7,
        Humps = 10,
        Saddles = 4,
        Points = 9,
        PointsPerArm = 2,
        Ledges = 9,
        Bluffs = 9,
        Holes = 4,
        MainLine = Line(-900, -700, 300, -1500, 1400, -1150, 2350, -1700, 2650, -2900, 3700, -3750, 4900, -3300, 6000, -3750, 6350, -4950,
            7400, -5750, 8600, -5250, 9600, -5750, 10150, -6800, 11100, -7250, 11450, -7330),
        ArmLines =
        [
            new("Ash Arm", Line(4900, -3300, 5500, -2500, 5350, -1650, 6050, -950, 6200, -100, 6700, 900)),
            new("Lantern Arm", Line(6400, -5000, 5450, -5450, 4950, -6250, 4000, -6550, 3300, -7250, 2200, -7500, 1400, -8200)),
            new("Quarry Reach", Line(9550, -5700, 9950, -4850, 9550, -4000, 10050, -3150, 9750, -2200, 10300, -1100)),
            new("Tallow Arm", Line(8600, -5250, 8350, -6300, 8750, -7200, 8300, -8100, 8500, -9200)),
            new("Fern Arm", Line(2650, -2900, 1900, -3650, 1750, -4500, 900, -5000, 100, -5800)),
            new("Pender Brook", Line(7200, -5650, 7450, -4500, 7200, -3600, 7750, -2700)),
            new("Cotter Brook", Line(3550, -3650, 3150, -4700, 3350, -5500, 2700, -6200)),
        ],
    };

    private static PlanePoint[] Line(params ReadOnlySpan<double> metres)
    {
        PlanePoint[] points = new PlanePoint[metres.Length / 2];
        for (int i = 0; i < points.Length; i++) points[i] = new PlanePoint(metres[2 * i], metres[(2 * i) + 1]);
        return points;
    }
}
