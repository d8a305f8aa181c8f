using SecondShore.Engine.Core.Geo;

namespace SecondShore.Demo.Terrain;

/// <summary>How a lake came to be.</summary>
public enum LakeOrigin
{
    /// <summary>A river valley drowned behind a dam.</summary>
    DrownedValley,

    /// <summary>Basins left by ice.</summary>
    IceBasins,
}

/// <summary>What kind of lake the generator makes. Lengths in metres. Immutable.</summary>
public sealed record LakeRecipe
{
    /// <summary>How it came to be.</summary>
    public LakeOrigin Origin { get; init; }

    /// <summary>Length along the valley, or mean diameter of an ice-made lake, m.</summary>
    public double LengthM { get; init; } = 6000;

    /// <summary>Greatest depth, about, m.</summary>
    public double MaxDepthM { get; init; } = 30;

    /// <summary>Side of a cell, m.</summary>
    public double CellM { get; init; } = 8;

    /// <summary>Half the width of the valley floor, m.</summary>
    public double HalfFloorM { get; init; } = 150;

    /// <summary>Half the width of the river's bed, m.</summary>
    public double HalfChannelM { get; init; } = 20;

    /// <summary>How deep the river's bed is cut into the floor, m.</summary>
    public double ChannelCutM { get; init; } = 5;

    /// <summary>Typical radius of a hump, and the yardstick of all placed forms, m.</summary>
    public double FormM { get; init; } = 40;

    /// <summary>Height of the random unevenness, m.</summary>
    public double RoughM { get; init; } = 0.3;

    /// <summary>Arms or tributaries wished for (fewer when they do not fit); basins of an ice-made lake.</summary>
    public int Arms { get; init; } = 4;

    /// <summary>Humps wished for, besides those of saddles.</summary>
    public int Humps { get; init; } = 6;

    /// <summary>Pairs of humps with a saddle between.</summary>
    public int Saddles { get; init; } = 3;

    /// <summary>Points in the main lake.</summary>
    public int Points { get; init; } = 6;

    /// <summary>Points in each arm.</summary>
    public int PointsPerArm { get; init; } = 1;

    /// <summary>Terraces and benches whose lip is a ledge.</summary>
    public int Ledges { get; init; } = 5;

    /// <summary>Bluff walls.</summary>
    public int Bluffs { get; init; } = 5;

    /// <summary>Hollows.</summary>
    public int Holes { get; init; } = 3;

    /// <summary>Corners of the main valley's line, head first, dam last, m; null lets chance draw it.</summary>
    public IReadOnlyList<PlanePoint>? MainLine { get; init; }

    /// <summary>Corners of named arms, mouth first; null lets chance draw them.</summary>
    public IReadOnlyList<NamedLine>? ArmLines { get; init; }

    /// <summary>A farm pond behind a low dam.</summary>
    public static LakeRecipe Pond { get; } = new()
    {
        LengthM = 620,
        MaxDepthM = 7,
        CellM = 2,
        HalfFloorM = 32,
        HalfChannelM = 4,
        ChannelCutM = 1.3,
        FormM = 10,
        RoughM = 0.06,
        Arms = 2,
        Humps = 2,
        Saddles = 1,
        Points = 3,
        PointsPerArm = 0,
        Ledges = 2,
        Bluffs = 2,
        Holes = 1,
    };

    /// <summary>A reservoir of a few kilometres.</summary>
    public static LakeRecipe SmallReservoir { get; } = new();

    /// <summary>A long, deep reservoir.</summary>
    public static LakeRecipe LargeReservoir { get; } = new()
    {
        LengthM = 14000,
        MaxDepthM = 55,
        CellM = 15,
        HalfFloorM = 250,
        HalfChannelM = 32,
        ChannelCutM = 7,
        FormM = 65,
        RoughM = 0.4,
        Arms = 6,
        Humps = 9,
        Saddles = 4,
        Points = 9,
        PointsPerArm = 2,
        Ledges = 8,
        Bluffs = 8,
        Holes = 4,
    };

    /// <summary>A natural lake of several basins.</summary>
    public static LakeRecipe IceLake { get; } = new()
    {
        Origin = LakeOrigin.IceBasins,
        LengthM = 2600,
        MaxDepthM = 24,
        CellM = 6,
        FormM = 45,
        RoughM = 0.25,
        Arms = 3,
        Humps = 5,
        Saddles = 2,
        Points = 6,
        PointsPerArm = 0,
        Ledges = 0,
        Bluffs = 0,
        Holes = 2,
    };
}

/// <summary>A line with a name.</summary>
/// <param name="Name">The name.</param>
/// <param name="Corners">Its corners, m.</param>
public sealed record NamedLine(string Name, IReadOnlyList<PlanePoint> Corners);
