namespace SecondShore.Engine.Rig;

/// <summary>Kind of bottom, by how a jig rubs on it.</summary>
public enum BottomKind
{
    /// <summary>Not known: friction between the others', with more doubt.</summary>
    Unknown,

    /// <summary>Mud or silt.</summary>
    Mud,

    /// <summary>Clay.</summary>
    Clay,

    /// <summary>Sand.</summary>
    Sand,

    /// <summary>Gravel or cobble.</summary>
    Gravel,

    /// <summary>Rock.</summary>
    Rock,

    /// <summary>Wood: brush, stumps, timber.</summary>
    Wood,
}

/// <summary>Friction of jigs on bottoms (choice within the ranges of docs/science/rig.md; to be calibrated).</summary>
public static class BottomFriction
{
    /// <summary>Coulomb friction coefficient, middle of its range.</summary>
    public static double Coefficient(BottomKind bottom) => bottom switch
    {
        BottomKind.Mud => 0.30,
        BottomKind.Clay => 0.40,
        BottomKind.Sand => 0.50,
        BottomKind.Gravel => 0.65,
        BottomKind.Rock => 0.60,
        BottomKind.Wood => 0.50,
        _ => 0.50,
    };

    /// <summary>Standard deviation of ln(coefficient).</summary>
    public static double LnSd(BottomKind bottom) => bottom == BottomKind.Unknown ? 0.35 : 0.25;
}
