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

    /// <summary>Skirt in words; <c>none</c> is a jig without.</summary>
    public string Skirt { get; init; } = "";

    /// <summary>Drag coefficient times area of the skirt, m2, where known.</summary>
    public double? SkirtDragAreaM2 { get; init; }

    /// <summary>Name of the trailer it wears, or a kind of trailer; empty when not said.</summary>
    public string Trailer { get; init; } = "";

    /// <summary>Colour family.</summary>
    public string Colour { get; init; } = "";

    /// <summary>How many the user has; null when not said.</summary>
    public int? Count { get; init; }

    /// <summary>What the user saw of it, by which its drag is corrected.</summary>
    public IReadOnlyList<JigObservationItem> Observations { get; init; } = [];

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

    /// <summary>Drag coefficient times area, m2, where known.</summary>
    public double? DragAreaM2 { get; init; }

    /// <summary>Density, kg m-3, where known.</summary>
    public double? DensityKgPerM3 { get; init; }

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

    /// <summary>Whether the diameter was measured, not read off a label; null when not said.</summary>
    public bool? IsDiameterMeasured { get; init; }

    /// <summary>Breaking strength, N.</summary>
    public double? StrengthN { get; init; }

    /// <summary>Density, kg m-3.</summary>
    public double? DensityKgPerM3 { get; init; }

    /// <summary>Young's modulus, Pa, where known.</summary>
    public double? ModulusPa { get; init; }

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

    /// <summary>Lightest lure it is rated for, g.</summary>
    public double? LightestLureG { get; init; }

    /// <summary>Heaviest lure it is rated for, g.</summary>
    public double? HeaviestLureG { get; init; }

    /// <summary>Power and action in words.</summary>
    public string Power { get; init; } = "";

    /// <summary>Name of the line on it.</summary>
    public string FishingLine { get; init; } = "";

    /// <summary>Height of the tip over the water while dragging, m.</summary>
    public double? TipHeightM { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";
}
