namespace SecondShore.Formats.Lake;

/// <summary>The user's tackle as filed in tackle.json, in SI. Immutable.</summary>
public sealed record TackleDocument
{
    /// <summary>Jigs.</summary>
    public IReadOnlyList<JigItem> Jigs { get; init; } = [];

    /// <summary>Trailers.</summary>
    public IReadOnlyList<TrailerItem> Trailers { get; init; } = [];

    /// <summary>Lines.</summary>
    public IReadOnlyList<LineItem> Lines { get; init; } = [];

    /// <summary>Rods.</summary>
    public IReadOnlyList<RodItem> Rods { get; init; } = [];
}

/// <summary>A jig, or a kind of jig in one weight.</summary>
public sealed record JigItem
{
    /// <summary>The user's name for it.</summary>
    public required string Name { get; init; }

    /// <summary>Weight of the head, g.</summary>
    public required double WeightG { get; init; }

    /// <summary>Metal: lead, tungsten, or another word.</summary>
    public string Material { get; init; } = "";

    /// <summary>Density of the metal, kg m-3, where given.</summary>
    public double? DensityKgPerM3 { get; init; }

    /// <summary>Head shape in words.</summary>
    public string Head { get; init; } = "";

    /// <summary>Skirt in words.</summary>
    public string Skirt { get; init; } = "";

    /// <summary>Colour family.</summary>
    public string Colour { get; init; } = "";

    /// <summary>How many the user has; null when not said.</summary>
    public int? Count { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";
}

/// <summary>A trailer.</summary>
public sealed record TrailerItem
{
    /// <summary>The user's name for it.</summary>
    public required string Name { get; init; }

    /// <summary>Kind: slim, bulky, swimming, or another word.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Length, m.</summary>
    public double? LengthM { get; init; }

    /// <summary>Weight in air, g.</summary>
    public double? WeightG { get; init; }

    /// <summary>Colour family.</summary>
    public string Colour { get; init; } = "";

    /// <summary>How many; null when not said.</summary>
    public int? Count { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";
}

/// <summary>A line.</summary>
public sealed record LineItem
{
    /// <summary>The user's name for it.</summary>
    public required string Name { get; init; }

    /// <summary>Kind: fluorocarbon, braid, nylon.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Diameter, m.</summary>
    public double? DiameterM { get; init; }

    /// <summary>Breaking strength, N.</summary>
    public double? StrengthN { get; init; }

    /// <summary>Density, kg m-3.</summary>
    public double? DensityKgPerM3 { get; init; }

    /// <summary>Length on the reel, m.</summary>
    public double? LengthM { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";
}

/// <summary>A rod.</summary>
public sealed record RodItem
{
    /// <summary>The user's name for it.</summary>
    public required string Name { get; init; }

    /// <summary>Length, m.</summary>
    public double? LengthM { get; init; }

    /// <summary>Power and action in words.</summary>
    public string Power { get; init; } = "";

    /// <summary>Name of the line on it.</summary>
    public string FishingLine { get; init; } = "";

    /// <summary>Height of the tip over the water while dragging, m.</summary>
    public double? TipHeightM { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";
}
